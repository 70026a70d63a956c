"""Drills: from a sentence of the book, the smallest situation that trains it."""
