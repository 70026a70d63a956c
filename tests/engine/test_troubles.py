"""Where a book is silent or sends two to one spot. Computed: no federation prints these counts."""

from __future__ import annotations

from collections import Counter
from itertools import permutations

import pytest

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.event import EventKind

from .everywhere import every_step
from .floor import FIVE, answer, book, full_ring, played, stands, troubles

RING = (Spot.LC, Spot.LW, Spot.T, Spot.RW, Spot.RC)


def failures(exit_: str, neighbours: bool) -> Counter[str]:
    """How often an exit is right, silent or clashes over the passes of five-out, all passers cutting."""
    this = book(exit=exit_, skip_passer="cut")
    found: Counter[str] = Counter()
    for begin, end in permutations(RING, 2):
        if neighbours and abs(RING.index(begin) - RING.index(end)) != 1:
            continue
        [step] = played(this, f"{begin}>{end}", full_ring(RING, begin))
        passer = RING.index(begin) + 1
        kinds = {kind for kind, player in troubles(step) if player == passer}
        found[kinds.pop() if kinds else "right"] += 1
        assert {player for _, player in troubles(step)} <= {passer}
    return found


# Neighbour passes 8, all passes 20 (common practice, computed).
@pytest.mark.parametrize(
    ("exit_", "neighbours", "right", "silent", "taken"),
    [
        ("opposite corner", True, 4, 2, 2),
        ("opposite corner", False, 14, 4, 2),
        ("opposite own", True, 2, 2, 4),
        ("opposite own", False, 2, 4, 14),
        ("first open", True, 8, 0, 0),
        ("end of the line", False, 20, 0, 0),
        ("fewest", False, 20, 0, 0),
    ],
)
def test_the_popular_one_line_exits_break_where_the_table_says(
    exit_: str, neighbours: bool, right: int, silent: int, taken: int
) -> None:
    expected = Counter({"right": right, "silent": silent, "clash": taken})
    assert failures(exit_, neighbours) == +expected


def test_only_the_nearest_filling_leaves_the_corner_passer_alone_and_nothing_open() -> None:
    # "The nearest free neighbour fills the gap" is silent on two of the eight: corner to wing (computed).
    silent = 0
    for begin, end in permutations(RING, 2):
        if abs(RING.index(begin) - RING.index(end)) == 1:
            [step] = played(book(who_fills="nearest only"), f"{begin}>{end}", full_ring(RING, begin))
            silent += not any(a.kind is Kind.FILL and a.moves for b in step.beats for a in b.decision.actions)
            assert troubles(step) == set()
    assert silent == 2


@pytest.mark.parametrize("exit_", ["opposite corner", "opposite own"])
def test_a_trouble_names_the_player_the_spot_and_the_sentence(exit_: str) -> None:
    this = book(exit=exit_)
    [step] = played(this, "RC>RW", full_ring(RING, "RC"))
    [trouble] = step.beats[-1].decision.troubles
    assert (trouble.kind, trouble.player, trouble.spot) == ("clash", 5, "LC")
    assert this.sentences[trouble.habit or 0].phrase.name == "cut"
    assert "5 is sent to the left corner, where 1 already is" in trouble.text


def test_a_silent_exit_leaves_the_cutter_in_the_lane_and_says_so() -> None:
    [step] = played(book(exit="opposite corner"), "RW>T", full_ring(RING, "RW"))
    assert (stands(step)[4], troubles(step)) == ("R", {("silent", 4)})
    assert answer(step, 4, len(step.beats) - 1).kind is Kind.NO_ANSWER


@pytest.mark.parametrize("name", ["five-out", "four-out", "three-out"])
@pytest.mark.parametrize("exit_", ["opposite corner", "opposite own"])
def test_even_where_a_book_breaks_nobody_shares_a_spot(name: str, exit_: str) -> None:
    for step in every_step(book(name, exit=exit_)):
        for beat in step.beats:
            standing = [p.at for p in beat.before.players if p.at is not Spot.R]
            assert len(standing) == len(set(standing)), (step.before, step.text)


def test_play_goes_on_from_a_hole() -> None:
    steps = played(book(exit="opposite corner"), "RW>T, T>LW, LW>LC", full_ring(RING, "RW"))
    assert len(steps) == 3


def test_without_otherwise_everybody_no_sentence_asks_is_silent() -> None:
    this = book(without=["hold"])
    [step] = played(this, "T>RW", FIVE)
    first = step.beats[0].decision
    assert {(t.kind, t.player) for t in first.troubles} == {("silent", 3), ("silent", 4), ("silent", 5)}
    assert answer(step, 2).kind is Kind.BALL


def test_holding_is_an_answer() -> None:
    [step] = played(book(), "T>RW", FIVE)
    assert answer(step, 4).kind is Kind.HOLD
    assert troubles(step) == set()


@pytest.mark.parametrize("name", ["five-out", "four-out", "three-out", "two-bigs"])
def test_the_shipped_books_leave_nothing_open(name: str) -> None:
    for step in every_step(book(name)):
        assert troubles(step) == set(), (step.before, step.text)


@pytest.mark.parametrize("name", ["first-month", "school-team"])
def test_the_shipped_books_leave_nothing_open_after_a_pass(name: str) -> None:
    for step in every_step(book(name), (EventKind.PASS, EventKind.SKIP)):
        assert troubles(step) == set(), (step.before, step.text)
