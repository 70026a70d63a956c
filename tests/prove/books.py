"""Books for the tests of proofs: shipped, plain, small ones, and the one-line exits of tests/books."""

from __future__ import annotations

from pathlib import Path

from backcut.offence.book import Book
from backcut.offence.library import open_book
from backcut.offence.reading import book_from_text

FOLDER = Path(__file__).parents[1] / "books"
SHIPPED = ("first-month", "school-team", "four-out-school-team", "two-bigs")

_SMALL = """
Title: Three on three spots
Formation: three-out
Ring: LW T RW
Inside players: 0

Dribble. When the ball is dribbled at me, I back cut.
Back. When I am one pass away and my defender denies me, I back cut.
Skip. When I skip the ball, I hold for a count.
Cut. When I pass to the next spot, I cut to the rim.
Jammed. When my cut is taken away, I screen away.
Fill. When the next spot toward the ball is empty, I fill it once the catcher has looked.
Back home. When a shot goes up, the highest of us gets back and the rest rebound.
Wide. Otherwise I hold, wide, feet set.
"""

_FOUR = (
    _SMALL.replace("three-out", "four-out").replace("LW T RW", "LW LS RS RW").replace("Three on three", "Four on four")
)


def small() -> Book:
    """Three on LW T RW, nobody inside."""
    return read(_SMALL)


def four() -> Book:
    """Four on LW LS RS RW, nobody inside; 4 never cuts, so not all are alike."""
    return read(_FOUR + "4 never cuts.\n")


def read(text: str) -> Book:
    """The book in a text that has no problems."""
    book, problems = book_from_text(text)
    assert not problems, problems
    return book


def named(name: str) -> Book:
    """A shipped book, a formation's plain book, or one of tests/books."""
    file = FOLDER / f"{name}.txt"
    book, problems = open_book(str(file) if file.exists() else name)
    assert not problems, problems
    return book
