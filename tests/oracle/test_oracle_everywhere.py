"""What a coach wants to hold in every situation, asked of the second reading under every choice, one at a time."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from .floor import is_one_pass_away
from .reading import (
    CHOICES,
    RIM,
    WITH_PAIRS,
    Choices,
    Outcome,
    Where,
    after_dribble,
    after_move,
    explore,
    mirror,
    mirror_spot,
    possible_moves,
    reach,
    renumber,
)
from .starts import STARTS

ONE_CHOICE_AT_A_TIME = [{name: value} for name, values in CHOICES.items() for value in values]
EACH_CHOICE = pytest.mark.parametrize("choices", ONE_CHOICE_AT_A_TIME, ids=lambda one: str(one)[1:-1])

MAY_BE_SILENT = ("opposite corner", "opposite own", "filler's spot")


# Situations, (situation, move) pairs and longest shortest way; all measured here but 600, 960 and 16, which are common
# practice, computed.
COUNTS = [
    ("five-out", ("pass",), (600, 960, 16)),
    ("five-out", ("pass", "skip"), (600, 2400, 8)),
    ("five-out", ("pass", "deny"), (600, 1920, 10)),
    ("five-out", ("pass", "skip", "deny"), (600, 3360, 7)),
    ("four-out", ("pass",), (96, 168, 12)),
    ("four-out", ("pass", "skip"), (288, 864, 12)),
    ("four-out", ("pass", "deny"), (192, 672, 11)),
    ("four-out", ("pass", "skip", "deny"), (288, 1296, 11)),
    ("three-out", ("pass",), (30, 48, 6)),
    ("three-out", ("pass", "skip"), (42, 84, 7)),
    ("three-out", ("pass", "deny"), (30, 96, 6)),
    ("three-out", ("pass", "skip", "deny"), (42, 144, 6)),
    ("five-out", WITH_PAIRS, (600, 3720, 7)),
    ("four-out", ("pass", "deny pair"), (192, 480, 12)),
    ("four-out", WITH_PAIRS, (288, 1440, 11)),
    ("three-out", WITH_PAIRS, (42, 162, 6)),
]


@pytest.mark.parametrize(("formation", "moves", "count"), COUNTS)
def test_each_kind_of_move_opens_as_much_of_the_offence_as_was_counted(
    formation: str, moves: tuple[str, ...], count: tuple[int, int, int]
) -> None:
    assert explore(*STARTS[formation], moves) == count


def play(ring: tuple[str, ...], where: Where, ball: int, move: str, whom: int | str, choices: Choices) -> Outcome:
    if isinstance(whom, str):
        return after_dribble(ring, where, ball, whom, choices)
    return after_move(ring, where, ball, move, whom, choices)


def every_move(formation: str, choices: Choices) -> Iterator[tuple[Where, int, str, int | str]]:
    """Give every pass, skip, denial, pair of denials and dribble from every situation that these reach undribbled."""
    ring = STARTS[formation][0]
    for where, ball in reach(*STARTS[formation], WITH_PAIRS, choices)[0]:
        for move, player in possible_moves(ring, where, ball, WITH_PAIRS):
            yield where, ball, move, player
        for spot in ring:
            if is_one_pass_away(ring, spot, where[ball]):
                yield where, ball, "dribble", spot


@EACH_CHOICE
@pytest.mark.parametrize("formation", ["four-out", "three-out"])
def test_nobody_shares_a_spot_and_nobody_is_lost(formation: str, choices: Choices) -> None:
    ring = STARTS[formation][0]
    for where, ball, move, whom in every_move(formation, choices):
        outcome = play(ring, where, ball, move, whom, choices)
        standing = [spot for spot in outcome.where.values() if spot != RIM]
        assert len(set(standing)) == len(standing), (where, ball, move, whom)
        assert {player for player, spot in outcome.where.items() if spot == RIM} == outcome.unanswered
        assert not outcome.unanswered or choices.get("exit") in MAY_BE_SILENT


@EACH_CHOICE
def test_every_run_begins_where_the_one_before_it_ended(choices: Choices) -> None:
    ring = STARTS["four-out"][0]
    for where, ball, move, whom in every_move("four-out", choices):
        outcome = play(ring, where, ball, move, whom, choices)
        for player, runs in outcome.did.items():
            at = whom if isinstance(whom, str) and player == ball else where[player]
            for _, begin, end in runs:
                assert begin == at, (where, ball, move, whom)
                at = end
            assert at == outcome.where[player] or player == outcome.ball


@pytest.mark.parametrize("formation", ["five-out", "four-out", "three-out"])
def test_when_all_have_settled_they_stand_in_an_unbroken_line(formation: str) -> None:
    ring = STARTS[formation][0]
    for where, ball, move, whom in every_move(formation, {}):
        outcome = play(ring, where, ball, move, whom, {})
        places = sorted(ring.index(spot) for spot in outcome.where.values())
        assert places == list(range(places[0], places[0] + len(where))), (where, ball, move, whom)


@pytest.mark.parametrize("formation", ["five-out", "four on four spots", "three on three spots"])
def test_on_a_full_ring_first_open_and_end_of_the_line_are_one_sentence(formation: str) -> None:
    ring = STARTS[formation][0]
    for where, ball, move, whom in every_move(formation, {}):
        end_of_the_line = play(ring, where, ball, move, whom, {"exit": "end of the line"})
        assert play(ring, where, ball, move, whom, {}) == end_of_the_line


@EACH_CHOICE
def test_what_is_right_on_the_right_is_right_on_the_left(choices: Choices) -> None:
    ring = STARTS["four-out"][0]
    for where, ball, move, whom in every_move("four-out", choices):
        across = {player: mirror_spot(spot) for player, spot in where.items()}
        whom_across = mirror_spot(whom) if isinstance(whom, str) else whom
        outcome = play(ring, where, ball, move, whom, choices)
        assert mirror(outcome) == play(ring, across, ball, move, whom_across, choices)


@EACH_CHOICE
def test_the_numbers_on_the_shirts_change_nothing(choices: Choices) -> None:
    ring = STARTS["four-out"][0]
    numbers = {1: 7, 2: 4, 3: 15, 4: 9}
    for where, ball, move, whom in every_move("four-out", choices):
        renamed = {numbers[player]: spot for player, spot in where.items()}
        whom_renamed = whom if isinstance(whom, str) else numbers[whom]
        outcome = play(ring, where, ball, move, whom, choices)
        assert renumber(outcome, numbers) == play(ring, renamed, numbers[ball], move, whom_renamed, choices)


def test_a_situation_without_an_answer_is_a_dead_end() -> None:
    start = STARTS["five-out"]
    assert explore(*start, {"pass"}, {"exit": "opposite own"}) == (1, 2, 0)
