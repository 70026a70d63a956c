"""The books that come with Backcut, with an example of every sentence: what everything in teaching is made from."""

from __future__ import annotations

from functools import cache

from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.library import open_book, presets
from backcut.teaching.examples import Example, examples

BOOKS = presets()


@cache
def book(name: str) -> Book:
    """A book that comes with Backcut."""
    return open_book(name, SQUADS)[0]


@cache
def shown(name: str) -> dict[int, Example]:
    """An example of each of its sentences, by rank."""
    return examples(book(name))


def every() -> list[tuple[str, int]]:
    """Every sentence of every book that comes with Backcut: the book's name and the rank."""
    return [(name, rank) for name in BOOKS for rank in range(len(book(name).sentences))]
