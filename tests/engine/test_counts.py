"""How many settled situations a book has: golden counts, written by the second reading, not by the engine.

Five-out with passes alone, 600 situations, 960 passes, at most 16 passes deep, is common practice, computed; so are the
counts on rings without free corners. The rest is written by `python -m tests.engine.count_again`.
"""

from __future__ import annotations

import json

import pytest

from backcut.court.spots import Spot
from backcut.engine.explore import Count, explore
from backcut.offence.event import EventKind

from .count_again import COUNTS, MOVES, names
from .floor import FOUR_SPOTS, THREE_SPOTS, book, on_ring


def golden(name: str) -> dict[str, list[int]]:
    """The counts written down for a book."""
    counts: dict[str, list[int]] = json.loads((COUNTS / f"{name}.json").read_text("utf-8"))
    return counts


def as_list(count: Count) -> list[int]:
    """A count as it is written down."""
    return [count.situations, count.moves, count.depth]


@pytest.mark.parametrize("moves", [", ".join(moves) for moves in MOVES])
@pytest.mark.parametrize("name", names())
def test_a_book_has_as_many_situations_as_were_counted(name: str, moves: str) -> None:
    count, depth = explore(book(name), frozenset(EventKind(kind) for kind in moves.split(", ")))
    assert as_list(count) == golden(name)[moves]
    assert len(depth) == count.situations
    assert max(depth.values()) == count.depth


def test_every_book_has_its_counts_and_no_other() -> None:
    assert {path.stem for path in COUNTS.glob("*.json")} == set(names())


def test_five_out_with_passes_alone_is_what_coaches_count() -> None:
    # Common practice, computed: 5! x 5 ways to stand with the ball, 8 neighbour passes for each 5 spots of the ball.
    assert golden("five-out")["pass"] == [600, 960, 16]
    assert 600 == 120 * 5
    assert 960 == 120 * 8


# Situations with neighbour passes alone, with skips, and all ways to stand with the ball (common practice, computed).
@pytest.mark.parametrize(
    ("name", "ring", "alone", "with_skips", "all_ways"),
    [("three-out", THREE_SPOTS, 18, 18, 18), ("four-out", FOUR_SPOTS, 48, 96, 96)],
)
def test_who_walks_through_neighbour_passes_has_not_walked_through_four_out(
    name: str, ring: tuple[Spot, ...], alone: int, with_skips: int, all_ways: int
) -> None:
    this = on_ring(name, ring, skip_passer="cut")
    passes = frozenset({EventKind.PASS})
    assert explore(this, passes)[0].situations == alone
    assert explore(this, passes | {EventKind.SKIP})[0].situations == with_skips == all_ways


def test_with_skips_answered_by_a_cut_five_out_is_seven_passes_deep() -> None:
    # Common practice, computed.
    this = book(skip_passer="cut")
    count, _ = explore(this, frozenset({EventKind.PASS, EventKind.SKIP}))
    assert (count.situations, count.depth) == (600, 7)


def test_on_six_spots_neighbour_passes_open_a_third_of_four_out() -> None:
    # Four in an unbroken run, who stands where, the ball with any: 3 x 4! x 4 = 288 (common practice, computed).
    counts = golden("four-out")
    assert counts["pass, skip"][0] == 3 * 24 * 4
    assert counts["pass"][0] * 3 == counts["pass, skip"][0]


def test_the_count_tells_how_far_it_is() -> None:
    told: list[int] = []
    count, _ = explore(book("three-out"), frozenset({EventKind.PASS}), told.append)
    assert told == list(range(2, count.situations + 1))
