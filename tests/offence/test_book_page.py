"""The page that explains a book's lines: its example is a book without a problem, and every line is explained."""

from __future__ import annotations

from pathlib import Path

from backcut.court.spots import Spot
from backcut.motion.squads import SQUADS
from backcut.offence.pieces import written
from backcut.offence.reading import book_from_text
from backcut.offence.settings import HEADERS, PROOFS

PAGE = (Path(__file__).parents[2] / "docs" / "book.md").read_text("utf-8")


def test_the_example_of_the_page_is_a_book_without_a_problem() -> None:
    book, problems = book_from_text(PAGE.split("```")[1], SQUADS)
    assert problems == ()
    assert book.start().spots() == {1: Spot.LS, 2: Spot.RS, 3: Spot.LW, 4: Spot.RW}
    assert book.exceptions.never_cuts == {4}


def test_the_sentence_that_is_off_on_the_page_can_be_read() -> None:
    text = PAGE.split("**A sentence that is off**")[1].split("```")[1].lstrip()
    (off,) = written(text)
    assert (off.off, off.rank, off.cue) == (True, None, "Fill")
    assert off.why
    assert off.waves == ()


def test_every_line_of_a_book_is_explained() -> None:
    for header in (*HEADERS, *PROOFS, "off"):
        assert f"`{header.capitalize()}:`" in PAGE
