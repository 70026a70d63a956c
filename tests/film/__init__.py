"""Tests of the readers of real tracking."""
