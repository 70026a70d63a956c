"""What the shipped books leave open: exactly what the page about proving lists, with the reason to live with it."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from tests.prove.books import named

from backcut.offence.library import presets
from backcut.prove.depth import Depth
from backcut.prove.proof import Proof, prove

PAGE = Path(__file__).parents[2] / "docs" / "proving.md"
HEADING = "## What the shipped books leave open"

#: Book, depth, finding, and why a coach lives with it.
Row = tuple[str, str, str, str]


@cache
def rows() -> tuple[Row, ...]:
    """The table under the heading, without its head."""
    _, _, below = PAGE.read_text("utf-8").partition(f"{HEADING}\n")
    section = below.partition("\n## ")[0]
    lines = [line for line in section.splitlines() if line.startswith("|")]
    cells = [tuple(cell.strip() for cell in line.strip("|").split("|")) for line in lines[2:]]
    return tuple((book, depth, finding, why) for book, depth, finding, why in cells)


@cache
def proved(name: str) -> Proof:
    """The whole proof: every property, at every depth; a finding is told at the first depth that shows it."""
    return prove(named(name), tuple(Depth))


@pytest.mark.parametrize("name", presets())
def test_a_shipped_book_leaves_open_what_the_page_lists_and_nothing_else(name: str) -> None:
    found = [(str(finding.depth), finding.breach.cause) for finding in proved(name).findings]
    listed = [(depth, cause) for book, depth, cause, _ in rows() if book == name]
    assert sorted(found) == sorted(listed)
    assert proved(name).clean is (not listed)


@pytest.mark.parametrize("name", presets())
def test_everything_is_looked_at_and_judged_in_a_shipped_book(name: str) -> None:
    proof = proved(name)
    assert not proof.stopped
    assert not proof.not_judged
    assert {covered.depth for covered in proof.covered} == set(Depth)
    assert not any(covered.waiting for covered in proof.covered)


def test_the_page_gives_a_reason_for_every_finding_it_lists() -> None:
    assert rows()
    assert {book for book, *_ in rows()} <= set(presets())
    assert {depth for _, depth, _, _ in rows()} <= set(Depth)
    assert len(set(rows())) == len(rows())
    assert all(why.endswith(".") for *_, why in rows())
