"""`pose` reads a timeline and nothing else."""

from __future__ import annotations

import numpy as np
import pytest

from backcut.motion.timeline import Held, Timeline, Track, pose

TIMELINE = Timeline(
    duration_s=2.0,
    players={1: Track(np.array([0.0, 2.0]), np.array([[0.0, 7.0], [4.0, 5.0]]))},
    defenders={1: Track(np.array([0.0]), np.array([[0.0, 5.0]]))},
    facing_deg={1: Track(np.array([0.0, 2.0]), np.array([[170.0], [190.0]]))},
    ball=Track(np.array([0.0, 1.0, 2.0]), np.array([[0.0, 7.0, 1.1], [2.0, 6.0, 2.0], [4.0, 5.0, 1.1]])),
    held=(Held(1, 0.0, 0.5),),
    runs=(),
    flights=(),
)


def test_half_way_in_time_is_half_way_between_the_knots() -> None:
    now = pose(TIMELINE, 1.0)
    assert now.players[1] == pytest.approx((2.0, 6.0))
    assert now.ball == pytest.approx((2.0, 6.0, 2.0))
    assert now.defenders[1] == pytest.approx((0.0, 5.0, 180.0))


def test_he_holds_the_ball_while_he_holds_it() -> None:
    assert (pose(TIMELINE, 0.4).holder, pose(TIMELINE, 0.6).holder) == (1, None)


@pytest.mark.parametrize(("outside_s", "inside_s"), [(-3.0, 0.0), (9.0, 2.0)])
def test_before_the_start_and_after_the_end_the_picture_stands(outside_s: float, inside_s: float) -> None:
    assert pose(TIMELINE, outside_s) == pose(TIMELINE, inside_s)
