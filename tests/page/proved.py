"""Findings for the tests of their page: a real book with one sentence changed, played where it breaks."""

from __future__ import annotations

from functools import cache

from backcut.court.spots import Spot
from backcut.engine.play import play
from backcut.engine.words import event_words
from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.library import preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.page.finding import Asked, Heading, Item

SILENT = "No sentence says what the cutter does, in the lane, while the ball is at the top."
CLASH = "The cutter is sent to a corner where somebody already is."
NEVER = "The sentence Jammed never speaks."
STARTS = "Two stand on one side at the start."


@cache
def opposite() -> Book:
    """The shipped school team, but the cutter goes to the corner opposite the ball."""
    text = preset_text("school-team").replace("the first open spot", "the corner opposite the ball")
    book, problems = book_from_text(text, SQUADS)
    assert problems == ()
    return book


def item(title: str, prop: str, moves: str, at: tuple[int, int], letters: tuple[str, ...] = ("H",)) -> Item:
    """A finding that moves lead to."""
    book = opposite()
    steps = play(book, book.start(), moves_from_text(moves))
    lines = tuple(event_words(step) for step in steps)
    return Item(
        title, prop, lines, "12 situations, the nearest after 2 events", moves, steps, book, at, letters=letters
    )


def silent() -> Item:
    """2 is in the lane, the ball at the top, and no corner is opposite."""
    return item(SILENT, "an answer for everybody", "T>RW, RW>T", (1, 3))


def clash() -> Item:
    """4 is sent to the left corner, where 2 stands."""
    return item(CLASH, "one to a spot", "T>RW, RW>RC, RC>RW", (2, 2))


def never() -> Item:
    """What never happens has no steps."""
    return Item(NEVER, "every sentence speaks", (), "never", "", None, opposite(), letters=("G",))


def starts() -> Item:
    """What shows before anything has happened."""
    book = opposite()
    return Item(STARTS, "both sides", (), "1 situation, at the start", "", (), book, start=book.start(), spot=Spot.LC)


def heading() -> Heading:
    """A proof with four things asked, one of them not judged."""
    asked = (
        Asked("an answer for everybody", "Every player has an answer, and to hold is one."),
        Asked("one to a spot", "Nobody is sent where somebody stands or is going."),
        Asked("every sentence speaks", "Each sentence speaks somewhere."),
        Asked("somebody back", "Somebody is above the free-throw line."),
        Asked("runs in time", "Nobody is asked for a run longer than 3 seconds.", judged=False),
    )
    return Heading(
        opposite(),
        ("600 situations, 0.4 s.", "4,812 moves."),
        asked,
        ("No skip passes were tried: the book has no sentence for them.",),
    )
