"""The ball in the air."""

from __future__ import annotations

import numpy as np
import pytest

from backcut.motion.ball import GRAVITY_M_S2, HEIGHTS_M, RING_M, Throw, loose_track, pass_track, shot_track, throw
from backcut.motion.squads import SQUADS, PassType
from backcut.offence.event import PASSES, EventKind

MEN = SQUADS["men"]


@pytest.mark.parametrize("event", sorted(PASSES))
def test_every_pass_takes_its_length_over_its_speed(event: EventKind) -> None:
    ball = throw(event, (0.0, 7.1), (5.7, 4.2), MEN)
    track = pass_track(ball, start_s=2.0)
    length = float(np.hypot(5.7, 7.1 - 4.2))
    assert track.t_s[0] == 2.0
    assert track.t_s[-1] - 2.0 == pytest.approx(length / MEN.ball_speed_m_s(ball.kind))
    assert track.place_m[0, :2] == pytest.approx([0.0, 7.1])
    assert track.place_m[-1, :2] == pytest.approx([5.7, 4.2])
    assert (track.place_m[0, 2], track.place_m[-1, 2]) == pytest.approx(HEIGHTS_M[ball.kind])


@pytest.mark.parametrize("kind", [PassType.CHEST, PassType.OVERHEAD, PassType.SKIP])
def test_a_pass_falls_under_gravity_alone(kind: PassType) -> None:
    track = pass_track(Throw(kind, (0, 0), (0, 9), 9.0), 0.0)
    fall = np.diff(track.place_m[:, 2], n=2) / np.diff(track.t_s)[0] ** 2
    assert fall == pytest.approx(-GRAVITY_M_S2)


def test_a_bounce_pass_bounces_once_nearer_to_the_receiver() -> None:
    track = pass_track(Throw(PassType.BOUNCE, (0, 0), (0, 6), 6.0), 0.0)
    low = track.place_m[:, 2].argmin()
    assert 3.0 < track.place_m[low, 1] < 4.5
    assert track.place_m[low, 2] < 0.2


@pytest.mark.parametrize("start", [(0.0, 1.2), (6.9, -0.3), (0.0, 7.1)])
@pytest.mark.parametrize("lay_up", [False, True])
def test_a_shot_comes_down_into_the_middle_of_the_ring(start: tuple[float, float], lay_up: bool) -> None:
    track = shot_track(start, 1.0, lay_up=lay_up)
    assert track.place_m[-1] == pytest.approx([0.0, 0.0, RING_M])
    assert track.place_m[-2, 2] > RING_M


def test_a_loose_ball_lies_two_metres_off() -> None:
    track = loose_track((3.0, 4.0), (0.0, 0.0), 0.0)
    assert np.hypot(*(track.place_m[-1, :2] - np.array([3.0, 4.0]))) == pytest.approx(2.0)
    assert track.place_m[-1, 2] < 0.2
