"""Every kind of sheet by its name: what the command and the pack of handouts print."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from backcut.errors import BackcutError
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.teaching.examples import NoExampleError, example, examples
from backcut.teaching.sheets.bench import bench_pdf
from backcut.teaching.sheets.booklet import booklet_pdf
from backcut.teaching.sheets.handout import handout_pdf
from backcut.teaching.sheets.paper import PAPERS, Paper, Stamp
from backcut.teaching.sheets.poster import poster_pdf
from backcut.teaching.sheets.quiz import quiz_sheet


class Sheet(StrEnum):
    """The kinds of sheet; the value is what is typed."""

    HANDOUT = "handout"
    POSTER = "poster"
    BENCH = "bench"
    BOOKLET = "booklet"
    QUIZ = "quiz"


@dataclass(frozen=True, slots=True)
class Made:
    """A sheet that is ready: a name for its file, the PDF, and the rank of its sentence where it is about one."""

    name: str
    pdf: bytes
    rank: int | None = None


def sheets(
    book: Book, kind: Sheet, stamp: Stamp, paper: Paper, *, rank: int | None = None, large: bool = False, seed: int = 1
) -> Iterator[Made]:
    """The sheets of a kind, one after the other: a handout for each sentence, or for the one of this rank.

    Sentences that never speak have no handout. Raises: BackcutError where the paper or the sentence does not fit.
    """
    if kind is not Sheet.POSTER and paper.cards == (1, 1):
        small = ", ".join(name for name, one in PAPERS.items() if one.cards != (1, 1))
        raise BackcutError(f'--paper "{paper.name}" is for posters. For a {kind} take {small}.')
    if rank is not None and kind not in (Sheet.HANDOUT, Sheet.QUIZ):
        raise BackcutError(f"A {kind} is of the whole book: leave {letter(rank)} {book.cue(rank)} out.")
    if large and kind is not Sheet.BENCH:
        raise BackcutError(f"--large is for the bench sheet, not for a {kind}.")
    name = f"{file_name(stamp.title)}-{kind}"
    match kind:
        case Sheet.HANDOUT:
            yield from _handouts(book, name, stamp, paper, rank)
        case Sheet.POSTER:
            yield Made(f"{name}-{paper.large}.pdf", poster_pdf(book, stamp, paper))
        case Sheet.BENCH:
            end = "-large" if large else ""
            yield Made(f"{name}{end}-{paper.name}.pdf", bench_pdf(book, stamp, paper, large=large))
        case Sheet.BOOKLET:
            yield Made(f"{name}-{paper.name}.pdf", booklet_pdf(book, stamp, paper))
        case Sheet.QUIZ:
            about = "" if rank is None else f"-{str(letter(rank)).lower()}"
            yield Made(f"{name}{about}-{paper.name}.pdf", quiz_sheet(book, stamp, paper, seed=seed, rank=rank), rank)


def _handouts(book: Book, name: str, stamp: Stamp, paper: Paper, rank: int | None) -> Iterator[Made]:
    shown = examples(book) if rank is None else {rank: example(book, rank)}
    if not shown:
        raise NoExampleError("No sentence of this book ever tells anybody what to do, so there is nothing to show.")
    for at, one in shown.items():
        own = f"{str(letter(at)).lower()}-{file_name(book.cue(at))}"
        yield Made(f"{name}-{own}-{paper.name}.pdf", handout_pdf(one, stamp, paper), at)


def file_name(text: str) -> str:
    """A text as part of a file's name: small letters, figures and hyphens; "book" where nothing is left."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:40] or "book"
