"""Clips for the phone: a habit or a possession, still first, then slow, then at game speed."""
