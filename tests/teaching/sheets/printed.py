"""Sheets as their readers get them: printed once for all tests, their text, their pages as pictures."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from functools import cache
from io import BytesIO

import numpy as np
import pypdfium2
from pypdf import PdfReader
from tests.teaching.books import BOOKS, book, shown

from backcut.teaching.sheets import PAPERS, Card, Made, Sheet, Stamp, cards_pdf, handout_pdf, sheets, stamp
from backcut.teaching.sheets.decisions import told
from backcut.teaching.sheets.handout import drawn

DAY = date(2026, 11, 25)
#: Pixels a millimetre in the pictures of pages.
SCALE = 4.0
POINT_MM = 25.4 / 72


def mark(name: str) -> Stamp:
    """The stamp of a book."""
    return stamp(book(name), DAY)


@cache
def made(name: str, kind: Sheet, paper: str = "a4", large: bool = False) -> tuple[Made, ...]:
    """The sheets of a kind of a shipped book."""
    return tuple(sheets(book(name), kind, mark(name), PAPERS[paper], large=large))


@cache
def handout(name: str, rank: int, paper: str = "a4") -> bytes:
    """The handout of one sentence."""
    return handout_pdf(shown(name)[rank], mark(name), PAPERS[paper])


@cache
def cards(name: str, count: int, paper: str = "a4") -> bytes:
    """So many cards, with words as long as they come."""
    one = told(shown(name)[0])
    picture = drawn(one, one.decision).svg
    words = "Leave the false cue out for one round, or take a defender away, and then begin again from the top."
    card = Card(
        tab="A",
        name="Fill, guided defence",
        purpose="When the next spot toward the ball is empty, I fill it once the catcher has looked.",
        needs="9 players, 1 line of 5 and 1 line of 4, 2 balls, 1 basket, 7 min",
        picture=picture,
        rotation=(f"{words} Once.", f"{words} Twice.", f"{words} Thrice."),
        true="1 passes to 3: 2 fills the top.",
        false="X2 denies 2: 2 back cuts.",
        say="Fill.",
        score=words,
        easier=words,
        harder=words,
        care="Warm up first. Stop on pain.",
    )
    return cards_pdf([card] * count, mark(name), PAPERS[paper])


def text(pdf: bytes, page: int | None = None) -> str:
    """The text of a PDF, or of one page, in one line."""
    read = PdfReader(BytesIO(pdf)).pages
    pages = read if page is None else [read[page]]
    return " ".join(" ".join(one.extract_text() for one in pages).split())


def pages(pdf: bytes) -> Iterator[np.ndarray]:
    """Each page as a picture: height x width x 3, 0 to 255."""
    for page in pypdfium2.PdfDocument(pdf):
        yield page.render(scale=SCALE * POINT_MM).to_numpy()[:, :, :3]


def sizes_mm(pdf: bytes) -> list[tuple[float, float]]:
    """Width and height of every page."""
    boxes = (page.mediabox for page in PdfReader(BytesIO(pdf)).pages)
    return [(float(box.width) * POINT_MM, float(box.height) * POINT_MM) for box in boxes]


def some_of_every_kind() -> list[tuple[str, bytes]]:
    """A sheet of every kind and paper."""
    out = [("handout", handout("school-team", 2)), ("handout, letter", handout("two-bigs", 0, "letter"))]
    out += [("cards", cards("school-team", 5)), ("cards, letter", cards("school-team", 3, "letter"))]
    for kind in (Sheet.POSTER, Sheet.BENCH, Sheet.BOOKLET, Sheet.QUIZ):
        for paper in ("a4", "letter"):
            out.append((f"{kind}, {paper}", made("four-out-school-team", kind, paper)[0].pdf))
    return [*out, ("bench, large", made("school-team", Sheet.BENCH, "a4", True)[0].pdf)]


__all__ = ["BOOKS", "book", "shown"]
