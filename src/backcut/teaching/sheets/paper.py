"""Papers, and the stamp that says which book a sheet was made from and when."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Final

from backcut.errors import BackcutError
from backcut.files import digest
from backcut.language import noted, say
from backcut.offence.book import Book
from backcut.offence.edit import text_of

INCH_MM: Final = 25.4

#: Letters of the digest that are printed: enough to tell the versions of one book apart (own choice).
SHORT: Final = 8

#: Letters of a title that stand in one line of a sheet (measured: 60 of Literata at 10 pt are about 110 mm).
IN_A_LINE: Final = 60

_MONTHS = (
    noted("January"),
    noted("February"),
    noted("March"),
    noted("April"),
    noted("May"),
    noted("June"),
    noted("July"),
    noted("August"),
    noted("September"),
    noted("October"),
    noted("November"),
    noted("December"),
)


@dataclass(frozen=True, slots=True)
class Paper:
    """A size of paper, upright. `large` names the paper of posters that goes with it, `cards` the cards cut from it."""

    name: str
    width_mm: float
    height_mm: float
    large: str
    cards: tuple[int, int] = (1, 1)

    @property
    def turned(self) -> Paper:
        """The same paper on its side."""
        return Paper(self.name, self.height_mm, self.width_mm, self.large, self.cards)


#: ISO 216 and ANSI/ASME Y14.1 (US Letter 8.5 x 11 in, tabloid 11 x 17 in).
PAPERS: Final[dict[str, Paper]] = {
    paper.name: paper
    for paper in (
        Paper("a4", 210.0, 297.0, "a3", (2, 2)),
        Paper("letter", 8.5 * INCH_MM, 11 * INCH_MM, "tabloid", (2, 1)),
        Paper("a3", 297.0, 420.0, "a3"),
        Paper("tabloid", 11 * INCH_MM, 17 * INCH_MM, "tabloid"),
    )
}


def paper_named(name: str) -> Paper:
    """The paper of this name. Raises: BackcutError for one that is not known."""
    paper = PAPERS.get(name.strip().lower())
    if paper is None:
        raise BackcutError(f'--paper "{name}": there is no such paper here. Take {", ".join(PAPERS)}.')
    return paper


@dataclass(frozen=True, slots=True)
class Stamp:
    """What the foot of every sheet says: the book's title, the short name of its text, the day it was printed."""

    title: str
    version: str
    dated: date

    @property
    def short_title(self) -> str:
        """The title as it stands in one line at the head and the foot."""
        return self.title if len(self.title) <= IN_A_LINE else f"{self.title[: IN_A_LINE - 1].rstrip()}…"

    @property
    def words(self) -> str:
        """The foot line: "School team. Text 3f2a9c81, 25 November 2026"."""
        return say(
            "{title}. Text {version}, {day}", title=self.short_title, version=self.version, day=day_words(self.dated)
        )


def stamp(book: Book, dated: date, text: str | None = None) -> Stamp:
    """The stamp of a book. `text` is the book's file as it was read; without it the book is written out."""
    return Stamp(book.title, digest(text_of(book) if text is None else text)[:SHORT], dated)


def day_words(day: date) -> str:
    """A day in words: "25 November 2026"."""
    return say("{day} {month} {year}", day=day.day, month=say(_MONTHS[day.month - 1]), year=day.year)
