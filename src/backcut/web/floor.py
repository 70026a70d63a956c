"""What is on the floor: a book as text, a start, and moves. One value; every change makes another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from backcut.engine.play import play
from backcut.engine.possession import Step
from backcut.errors import BackcutError, NotationError, SituationError
from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.book_text import MOST_BYTES
from backcut.offence.moves import Move, moves_from_text
from backcut.offence.problems import Problem
from backcut.offence.reading import book_from_text
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_from_text
from backcut.offence.start import check_start

#: More moves than any possession has (own design): what is longer is a mistake, and would be slow to draw.
MOST_MOVES = 40
#: More lines than any book has (own design; those that come with Backcut have under 100): each is read word by word.
MOST_LINES = 500


@dataclass(frozen=True, slots=True)
class Floor:
    """A book's text, where a possession of it starts (empty: the book's own start) and its moves, one a step.

    Formation, court, squad, denial mark, moved spots and exceptions are lines of the text.
    """

    text: str
    start: str = ""
    moves: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Played:
    """A floor played as far as it goes.

    `steps` are the moves that can be played; where there are fewer than the floor has, `stuck` says why the next one
    cannot be, as it does where the floor's start is not one of this book.
    """

    book: Book
    problems: tuple[Problem, ...]
    begins: Situation
    steps: tuple[Step, ...]
    stuck: str = ""


def book_text(text: str) -> str:
    """A text as it would be read from a book's file: even line ends, the last one too, and no mark in front.

    Raises: NotationError for what could be put on the floor, but not be read again once it is kept.
    """
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    text = text if text.endswith("\n") else f"{text}\n"
    if "\x00" in text:
        line = text[: text.index("\x00")].count("\n") + 1
        raise NotationError(f"Line {line} of the book holds a character that is none (U+0000). Take it out.")
    if len(text.encode()) > MOST_BYTES:
        raise NotationError(f"The book is longer than {MOST_BYTES // 1000} kB; a book is a few pages of text.")
    if text.count("\n") > MOST_LINES:
        raise NotationError(f"The book has more than {MOST_LINES} lines; a book is a few pages of text.")
    return text


@lru_cache(maxsize=256)
def read(text: str) -> tuple[Book, tuple[Problem, ...]]:
    """The book in a text, with its problems; the same text gives the same book."""
    return book_from_text(text, SQUADS)


@lru_cache(maxsize=64)
def played(floor: Floor) -> Played:
    """The floor played as far as its book goes. Raises: NotationError for moves that cannot be read at all."""
    book, problems = read(floor.text)
    begins, stuck = _begins(book, floor.start)
    moves = moves_from_text(", ".join(floor.moves)) if floor.moves else []
    steps, why = _as_far_as_it_goes(book, begins, moves)
    return Played(book, problems, begins, steps, stuck or why)


def _begins(book: Book, start: str) -> tuple[Situation, str]:
    """Where the possession starts: as asked, else the book's own start, else its formation's; and why not as asked."""
    why = ""
    if start:
        try:
            return check_start(book, situation_from_text(start)), ""
        except BackcutError as error:
            why = str(error)
    try:
        return check_start(book, book.start()), why
    except SituationError as error:
        return book.formation.situation(), why or str(error)


def _as_far_as_it_goes(book: Book, begins: Situation, moves: Sequence[Move]) -> tuple[tuple[Step, ...], str]:
    """The longest beginning of the moves that can be played, and why the move after it cannot."""
    why = ""
    for count in range(len(moves), 0, -1):
        try:
            return tuple(play(book, begins, moves[:count])), why
        except BackcutError as error:
            why = str(error)
    return (), why
