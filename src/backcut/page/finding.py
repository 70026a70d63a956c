"""What a page of findings is told: plain data, filled in by whoever proved the book."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backcut.court.spots import Spot
from backcut.engine.possession import Step
from backcut.offence.book import Book
from backcut.offence.situation import Situation


@dataclass(frozen=True, slots=True)
class Item:
    """One finding. Texts are plain words.

    `title` is what is wrong, in a sentence; `property` the name of what has to hold; `lines` the possession in words;
    `count` how often and how near; `moves` the move list. `steps` is None for what never happens, and empty where the
    `start` itself shows it; a `start` that is not the book's own is printed with the moves. `at` is the place of the
    step and of the beat that show it (a place after the last beat is the end of the step). `here` says it of this very
    moment; `ways_out` are changes that remove it. `players` and `spot` are marked on the still; `letters` are the
    sentences behind it.
    """

    title: str
    property: str
    lines: tuple[str, ...]
    count: str
    moves: str
    steps: Sequence[Step] | None
    book: Book
    at: tuple[int, int] = (0, 0)
    here: str = ""
    ways_out: tuple[str, ...] = ()
    players: tuple[int, ...] = ()
    spot: Spot | None = None
    letters: tuple[str, ...] = ()
    start: Situation | None = None


@dataclass(frozen=True, slots=True)
class Asked:
    """One thing that has to hold: its name, its sentence, and whether it was judged at all."""

    name: str
    sentence: str
    judged: bool = True


@dataclass(frozen=True, slots=True)
class Heading:
    """What stands round the findings of a proof of `book`.

    `covered` are lines on what was looked at, `not_looked_at` lines on what was not. `stopped` where the proof was
    stopped early. The possessions are played on the book's court and with its squad, or on those named here.
    """

    book: Book
    covered: tuple[str, ...]
    asked: tuple[Asked, ...]
    not_looked_at: tuple[str, ...] = ()
    stopped: bool = False
    court_name: str | None = None
    squad_name: str | None = None
