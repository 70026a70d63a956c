"""The second reading must print the known tables and counts before it may judge anything else.

The tables and counts are common practice, computed; no federation prints them.
"""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import permutations
from pathlib import Path

import pytest

from .floor import empty_spots, half_of_floor, is_one_pass_away, who_is_at
from .reading import CHOICES, Choices, Outcome, after_pass, explore, line_up, mirror_spot
from .starts import FIVE, FOUR, STARTS, THREE

EVERYBODY_CUTS = {"skip passer": "cut"}

# Ring, pass, who moves up, where the cutter ends, how many move; the right side, mirror for the left (common practice,
# computed).
TABLES = [
    (FIVE, "T", "RW", {"LW": "T", "LC": "LW"}, "LC", 3),
    (FIVE, "RW", "RC", {"T": "RW", "LW": "T", "LC": "LW"}, "LC", 4),
    (FIVE, "RW", "T", {"RC": "RW"}, "RC", 2),
    (FIVE, "RC", "RW", {}, "RC", 1),
    (FIVE, "RW", "LW", {"RC": "RW"}, "RC", 2),
    (FIVE, "T", "RC", {"LW": "T", "LC": "LW"}, "LC", 3),
    (FIVE, "RC", "T", {}, "RC", 1),
    (FIVE, "RC", "LW", {}, "RC", 1),
    (FIVE, "RC", "LC", {}, "RC", 1),
    (FIVE, "RW", "LC", {"RC": "RW"}, "RC", 2),
    (FOUR, "RS", "RW", {"LS": "RS", "LW": "LS"}, "LW", 3),
    (FOUR, "RS", "LS", {"RW": "RS"}, "RW", 2),
    (FOUR, "RW", "RS", {}, "RW", 1),
    (FOUR, "RW", "LS", {}, "RW", 1),
    (FOUR, "RW", "LW", {}, "RW", 1),
    (FOUR, "RS", "LW", {"RW": "RS"}, "RW", 2),
    (THREE, "T", "RW", {"LW": "T"}, "LW", 2),
    (THREE, "RW", "T", {}, "RW", 1),
    (THREE, "RW", "LW", {}, "RW", 1),
]


def passed(ring: Sequence[str], begin: str, end: str, choices: Choices | None = None) -> Outcome:
    """Play the pass between two spots of a full ring."""
    return after_pass(ring, line_up(*ring), ring.index(begin) + 1, ring.index(end) + 1, choices)


def fills(outcome: Outcome) -> dict[str, str]:
    return {begin: end for runs in outcome.did.values() for kind, begin, end in runs if kind == "fill"}


def comes_out_at(outcome: Outcome) -> str | None:
    return next((end for runs in outcome.did.values() for kind, _, end in runs if kind == "come out"), None)


def every_pass(*, neighbours_only: bool) -> Iterator[tuple[str, str]]:
    for begin, end in permutations(FIVE, 2):
        if not neighbours_only or is_one_pass_away(FIVE, begin, end):
            yield begin, end


def test_the_second_reading_knows_nothing_of_the_first() -> None:
    for file in Path(__file__).parent.glob("*.py"):
        if file.name.startswith("test_"):
            continue
        tree = ast.parse(file.read_text(encoding="utf-8"))
        from_where = [node for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)]
        outside = {node.module for node in from_where if node.level == 0}
        outside |= {name.name for node in ast.walk(tree) if isinstance(node, ast.Import) for name in node.names}
        assert outside <= {"__future__", "collections.abc", "dataclasses"}, file.name


@pytest.mark.parametrize("exit_choice", ["first open", "end of the line", "fewest"])
@pytest.mark.parametrize(("ring", "begin", "end", "fill", "cutter", "movers"), TABLES)
def test_on_a_full_ring_all_behind_the_passer_move_up_and_he_takes_the_spot_that_is_left(
    ring: Sequence[str], begin: str, end: str, fill: dict[str, str], cutter: str, movers: int, exit_choice: str
) -> None:
    outcome = passed(ring, begin, end, EVERYBODY_CUTS | {"exit": exit_choice})
    assert fills(outcome) == fill
    assert comes_out_at(outcome) == cutter
    assert len(fills(outcome)) + 1 == movers
    assert sorted(outcome.where.values()) == sorted(ring)


def test_in_five_out_only_the_corner_passer_ends_where_he_began() -> None:
    passes = every_pass(neighbours_only=False)
    back = {begin for begin, end in passes if comes_out_at(passed(FIVE, begin, end, EVERYBODY_CUTS)) == begin}
    assert back == {"LC", "RC"}  # common practice, no source


def test_a_skip_passer_holds_and_on_a_full_ring_nobody_else_moves_either() -> None:
    outcome = passed(FIVE, "RW", "LC")
    assert outcome.where == line_up(*FIVE)
    assert outcome.ball == 1
    assert {kind for runs in outcome.did.values() for kind, _, _ in runs} == {"hold"}


@pytest.mark.parametrize(
    ("formation", "moves", "choices", "count"),
    [  # common practice, computed: all but the moves and the depths outside five-out, which are measured here
        ("five-out", {"pass"}, {}, (600, 960, 16)),
        ("five-out", {"pass", "skip"}, EVERYBODY_CUTS, (600, 2400, 7)),
        ("three on three spots", {"pass"}, {}, (18, 24, 7)),
        ("four on four spots", {"pass"}, {}, (48, 72, 8)),
        ("four on four spots", {"pass", "skip"}, EVERYBODY_CUTS, (96, 288, 6)),
    ],
)
def test_from_the_start_as_many_situations_are_reached_as_are_printed(
    formation: str, moves: set[str], choices: Choices, count: tuple[int, int, int]
) -> None:
    assert explore(*STARTS[formation], moves, choices) == count


@pytest.mark.parametrize("skip_passer", CHOICES["skip passer"])
def test_four_out_drilled_with_neighbour_passes_alone_is_half_drilled_and_skips_open_the_rest(skip_passer: str) -> None:
    start, choices = STARTS["four on four spots"], {"skip passer": skip_passer}
    assert explore(*start, {"pass"}, choices)[0] == 48  # common practice, computed
    assert explore(*start, {"pass", "skip"}, choices)[0] == 96  # common practice, computed


def test_the_longest_way_with_skips_is_seven_when_the_skip_passer_cuts_and_eight_when_he_holds() -> None:
    assert explore(*STARTS["five-out"], {"pass", "skip"}, {"skip passer": "cut"})[2] == 7  # common practice, computed
    assert explore(*STARTS["five-out"], {"pass", "skip"}, {"skip passer": "hold"})[2] == 8  # measured here


def verdict(begin: str, end: str, exit_choice: str) -> str:
    """Say what a one-line exit comes to for this pass in five-out: right, wrong, undefined or occupied."""
    outcome = passed(FIVE, begin, end, EVERYBODY_CUTS | {"exit": exit_choice})
    if not outcome.unanswered:
        return "right" if outcome.where == passed(FIVE, begin, end, EVERYBODY_CUTS).where else "wrong"
    half = half_of_floor(end if exit_choice == "opposite corner" else begin)
    if half is None:
        return "undefined"
    corner = "RC" if half == "left" else "LC"
    return "occupied" if corner not in empty_spots(FIVE, outcome.where) else "silent with the corner open"


@pytest.mark.parametrize(
    ("exit_choice", "neighbours_only", "counts"),
    [  # common practice, computed
        ("opposite corner", True, {"right": 4, "undefined": 2, "occupied": 2}),
        ("opposite corner", False, {"right": 14, "undefined": 4, "occupied": 2}),
        ("opposite own", True, {"right": 2, "undefined": 2, "occupied": 4}),
        ("opposite own", False, {"right": 2, "undefined": 4, "occupied": 14}),
    ],
)
def test_a_one_line_exit_leaves_the_cutter_without_a_spot(
    exit_choice: str, neighbours_only: bool, counts: dict[str, int]
) -> None:
    said = Counter(verdict(begin, end, exit_choice) for begin, end in every_pass(neighbours_only=neighbours_only))
    assert said == counts


def test_the_corner_opposite_the_ball_fails_from_wing_to_top_and_from_corner_to_wing() -> None:
    holes = {
        (begin, end)
        for begin, end in every_pass(neighbours_only=True)
        if passed(FIVE, begin, end, {"exit": "opposite corner"}).unanswered
    }
    assert holes == {("LW", "T"), ("RW", "T"), ("LC", "LW"), ("RC", "RW")}  # common practice, computed


@pytest.mark.parametrize(
    ("neighbours_only", "counts"),
    [(True, {"one": 6, "nobody": 2}), (False, {"one": 12, "tie": 6, "nobody": 2})],  # common practice, computed
)
def test_the_nearest_fills_the_gap_names_nobody_when_the_corner_passes_to_the_wing(
    neighbours_only: bool, counts: dict[str, int]
) -> None:
    said: Counter[str] = Counter()
    for begin, end in every_pass(neighbours_only=neighbours_only):
        where = line_up(*FIVE)
        del where[FIVE.index(begin) + 1]
        beside_the_gap = [spot for spot in FIVE if is_one_pass_away(FIVE, spot, begin)]
        free = [spot for spot in beside_the_gap if who_is_at(where, spot) is not None and spot != end]
        said[{0: "nobody", 1: "one", 2: "tie"}[len(free)]] += 1
    assert said == counts


@pytest.mark.parametrize(
    ("fillers", "neighbours_only", "counts"),
    [  # common practice, computed
        ("nearest only", True, {"five spots": 6, "silent": 2}),
        ("chain", True, {"five spots": 6, "silent": 2}),
        ("chain", False, {"five spots": 12, "silent": 8}),
    ],
)
def test_the_spot_the_filler_left_is_none_when_the_corner_passes(
    fillers: str, neighbours_only: bool, counts: dict[str, int]
) -> None:
    choices = {"exit": "filler's spot", "fillers": fillers, "skip passer": "cut"}
    said: Counter[str] = Counter()
    for begin, end in every_pass(neighbours_only=neighbours_only):
        outcome = passed(FIVE, begin, end, choices)
        assert bool(outcome.unanswered) == (begin in ("LC", "RC"))
        said["silent" if outcome.unanswered else "five spots"] += 1
        assert outcome.unanswered or sorted(outcome.where.values()) == sorted(FIVE)
    assert said == counts


def test_left_of_the_table_is_its_mirror() -> None:
    for ring, begin, end, _, cutter, _ in TABLES:
        assert comes_out_at(passed(ring, mirror_spot(begin), mirror_spot(end), EVERYBODY_CUTS)) == mirror_spot(cutter)
