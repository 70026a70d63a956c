"""Who has the ball, from places alone."""

from collections.abc import Sequence
from typing import Any

import numpy as np
import pytest

from backcut.film.holder import AIR_M, ENTER_M, LEAVE_M, NOBODY, changes, held, holders
from backcut.motion.timeline import Floats

FIVE = np.array([(0.0, 7.5), (5.2, 5.2), (6.9, 0.2), (-5.2, 5.2), (-6.9, 0.2)])  # invented
NUMBERS = (1, 2, 3, 4, 5)


def film(ball: Sequence[Any], step_s: float = 0.04) -> tuple[Floats, Floats, Floats]:
    """A film in which the attackers stand and the ball lies where it is told at each moment."""
    ball_m = np.array(ball, dtype=float)
    t_s: Floats = np.arange(len(ball_m), dtype=np.float64) * np.float64(step_s)
    return t_s, np.tile(FIVE, (len(ball_m), 1, 1)), ball_m


def who(ball: Sequence[Any], step_s: float = 0.04) -> list[int]:
    return [int(man) for man in holders(*film(ball, step_s))]


def test_the_ball_in_his_hands_is_his_from_the_first_moment() -> None:
    assert who([FIVE[1]] * 20) == [1] * 20


def test_a_ball_that_flies_past_a_man_is_not_his() -> None:
    # from wing to wing at 10 m/s, half a metre past 1, who stands at the top
    line = np.column_stack([np.linspace(5.2, -5.2, 27), np.full(27, 7.0)])
    assert 0 not in who([FIVE[1]] * 10 + line.tolist() + [FIVE[3]] * 10)


def test_a_pass_has_a_giver_a_flight_and_a_taker() -> None:
    line = np.linspace(FIVE[0], FIVE[1], 16)
    found = who([FIVE[0]] * 15 + line.tolist() + [FIVE[1]] * 15)
    assert (found[0], found[-1]) == (0, 1)
    assert NOBODY in found
    assert 0 not in found[found.index(NOBODY) :]


def test_a_dribble_in_front_of_him_stays_his_until_it_is_lost() -> None:
    away = (ENTER_M + LEAVE_M) / 2
    assert who([FIVE[0]] * 10 + [FIVE[0] + (0, away)] * 10) == [0] * 20
    assert who([FIVE[0]] * 10 + [FIVE[0] + (0, LEAVE_M + 0.1)] * 10) == [0] * 10 + [NOBODY] * 10


def test_a_ball_above_the_ring_is_nobodys() -> None:
    low = [(*FIVE[0], 1.0)] * 10
    assert who(low + [(*FIVE[0], AIR_M + 0.5)] * 10) == [0] * 10 + [NOBODY] * 10


def test_a_man_who_loses_the_ball_and_picks_it_up_again_had_it_throughout() -> None:
    t_s, five, ball_m = film([FIVE[0]] * 10 + [FIVE[0] + (0, 2.5)] * 10 + [FIVE[0]] * 10)
    (only,) = held(t_s, holders(t_s, five, ball_m), five, NUMBERS)
    assert only.player == 1
    assert (only.start_s, only.end_s) == pytest.approx((0.0, 1.16))


def test_a_ball_that_comes_back_has_changed_hands_twice() -> None:
    t_s, five, ball_m = film([FIVE[0]] * 10 + [FIVE[1]] * 10 + [FIVE[0]] * 10)
    assert changes(held(t_s, holders(t_s, five, ball_m), five, NUMBERS)) == 2


def test_whoever_carries_it_four_metres_has_dribbled() -> None:
    t_s, five, _ = film([FIVE[0]] * 26)
    five[:, 0, 1] = np.linspace(7.5, 3.5, 26)
    stretches = held(t_s, holders(t_s, five, five[:, 0].copy()), five, NUMBERS)
    assert [one.dribbled for one in stretches] == [True]
