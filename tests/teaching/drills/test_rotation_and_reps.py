"""Rotation brings every player through every spot and both cues; repetitions and waiting are counted, not hoped for."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.teaching.drills.reps import RESET_S, Lines, lines, repetitions
from backcut.teaching.drills.rotation import false_turns, turns
from backcut.teaching.drills.stages import Stage, defenders, one_in


def test_the_worked_example_of_two_fours_at_one_basket() -> None:
    """Common practice, no source: eight players, two fours by turns for eight minutes, four seconds a pass: 15 each."""
    assert repetitions(block_s=8 * 60, decision_s=4, roles=1, groups=1, players=8) == 15


@pytest.mark.parametrize("players", range(2, 31))
def test_one_spot_round_brings_everybody_through_every_spot(players: int) -> None:
    for size in range(2, min(players, 5) + 1):
        whole = list(turns(players, size, players))
        for turn in whole:
            assert len(set(turn)) == size
        for spot in range(size):
            assert sorted(turn[spot] for turn in whole) == list(range(players))
        for before, after in pairwise(whole):
            assert after[1:] == before[:-1]


@given(st.integers(2, 30), st.integers(0, 4), st.sampled_from([2, 3, 4, 10]), st.integers(0, 99))
def test_everybody_meets_the_false_cue_once_and_the_true_one_besides(
    players: int, decider: int, one: int, seed: int
) -> None:
    decider = min(decider, players - 1)
    whole = list(turns(players, decider + 1, players * one))
    false = false_turns(players, decider, one, seed)
    assert len(false) == len(set(false)) == players
    assert sorted(whole[turn][decider] for turn in false) == list(range(players))
    true = [whole[turn][decider] for turn in range(players * one) if turn not in false]
    assert set(true) == set(range(players))


def test_the_false_cue_is_rare_at_first_and_half_of_the_time_live() -> None:
    shares = [1 / one_in(stage) for stage in (Stage.ALONE, Stage.GUIDED, Stage.ADVANTAGE, Stage.LIVE)]
    assert shares == sorted(shares)
    assert shares[0] <= 0.1
    assert shares[-1] == 0.5


def test_defenders_grow_from_none_to_as_many_as_attackers() -> None:
    for size in (2, 3, 4):
        many = [defenders(stage, size) for stage in (Stage.ALONE, Stage.GUIDED, Stage.ADVANTAGE, Stage.LIVE)]
        assert many == [0, 1, size - 1, size]


@given(st.integers(2, 30), st.integers(2, 5), st.integers(1, 6), st.integers(1, 12), st.floats(1, 10))
def test_nobody_is_left_out_and_each_line_has_enough_for_a_turn(
    players: int, size: int, places: int, balls: int, run_s: float
) -> None:
    if players < size:
        with pytest.raises(ValueError, match="make no line"):
            lines(players, size, places=places, balls=balls, run_s=run_s)
        return
    made = lines(players, size, places=places, balls=balls, run_s=run_s)
    assert made.players == players
    assert min(made.counts) >= size
    assert max(made.counts) - min(made.counts) <= 1
    assert len(made.counts) <= min(balls, 2 * places)
    assert made.at_work <= places


@pytest.mark.parametrize("made", [Lines((5, 4), 3, 2, 4.0), Lines((9,), 3, 1, 8.0), Lines((4, 4), 4, 1, 6.0)])
def test_waiting_is_what_a_stopwatch_would_show(made: Lines) -> None:
    """By brute force: everybody in a line, turn by turn, and how long nobody calls one of them."""
    line = max(made.counts)
    at_work = [set(turn) for turn in turns(line, made.size, 5 * line)]
    longest = 0
    for player in range(line):
        stood = 0
        for turn in at_work:
            stood = 0 if player in turn else stood + 1
            longest = max(longest, stood)
    assert made.wait_s == longest * made.turn_s * made.share


def test_two_lines_at_one_basket_take_turns_while_the_other_goes_back() -> None:
    made = lines(8, 3, places=1, balls=4, run_s=3.0)
    assert made.counts == (4, 4)
    assert made.turn_s == (3.0 + RESET_S) / 2
    alone = lines(8, 3, places=1, balls=1, run_s=3.0)
    assert made.each(480) == 2 * alone.each(480)
