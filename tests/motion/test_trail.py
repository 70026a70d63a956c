"""Tracks under construction: a player told to go elsewhere turns without a jump, and nobody runs through anybody."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.motion.path import Floats, Place, spaced
from backcut.motion.room import ROOM_M, Way, clearance_m, find_room
from backcut.motion.run import TICK_S
from backcut.motion.squads import SQUADS
from backcut.motion.thin import thinned
from backcut.motion.timeline import Track
from backcut.motion.trail import Answer, cut, places, run_on, standing

RUNNER = SQUADS["boys-u16"].runner
PLACES = st.tuples(st.floats(-7, 7), st.floats(-1, 8))


def _straight(track: Track, start_s: float, target: Place) -> Answer:
    return run_on(track, start_s, lambda here: spaced(np.array([here, target])), RUNNER)


@settings(max_examples=60, deadline=None)
@given(PLACES, PLACES, PLACES, st.floats(0.1, 2.5))
def test_a_player_told_to_go_elsewhere_turns_without_a_jump(a: Place, b: Place, c: Place, later_s: float) -> None:
    first = _straight(standing(a), 1.0, b)
    both = _straight(first.track, 1.0 + later_s, c).track
    t = np.arange(0.0, both.t_s[-1] + 0.2, TICK_S)
    velocity = np.diff(places(both, t), axis=0) / TICK_S
    assert np.hypot(*velocity.T).max() <= RUNNER.top_speed_m_s + 1e-6
    change = np.hypot(*np.diff(velocity, axis=0).T) / TICK_S
    assert change.max() <= RUNNER.first_acceleration_m_s2 + RUNNER.braking_m_s2 + RUNNER.sideways_m_s2
    assert both.place_m[-1] == pytest.approx(c, abs=0.03)
    before = np.arange(0.0, 1.0 + later_s, TICK_S)
    assert places(both, before) == pytest.approx(places(first.track, before))


def test_going_on_the_same_way_costs_no_stop() -> None:
    first = _straight(standing((0.0, 0.0)), 0.0, (4.0, 0.0))
    on = _straight(first.track, 0.8, (8.0, 0.0))
    whole = _straight(standing((0.0, 0.0)), 0.0, (8.0, 0.0))
    assert on.end_s == pytest.approx(whole.end_s, abs=0.08)


def test_turning_round_costs_braking_and_a_turn() -> None:
    first = _straight(standing((0.0, 0.0)), 0.0, (6.0, 0.0))
    back = _straight(first.track, 1.0, (0.0, 0.0))
    assert back.track.place_m[:, 0].max() > first.track.at(1.0)[0] + 0.5
    assert back.end_s > 1.0 + float(RUNNER.sprint.time_s(3.0))


def test_a_cut_track_ends_at_the_cut() -> None:
    track = _straight(standing((0.0, 0.0)), 0.5, (6.0, 0.0)).track
    short = cut(track, 1.03)
    assert short.t_s[-1] == 1.03
    assert short.at(1.03) == pytest.approx(track.at(1.03))


def _ways(target: Place) -> Callable[[Way], Answer]:
    def run(way: Way) -> Answer:
        def draw(here: Place) -> Floats:
            heading = np.array(target) - here
            left = np.array([-heading[1], heading[0]]) / np.hypot(*heading)
            share = np.linspace(0.0, 1.0, 60)[:, None]
            bow = np.sin(np.pi * share) * way.aside_m * left
            return np.asarray(np.array(here) + share * heading + bow + share * way.beside_m)

        return run_on(standing((0.0, 7.0)), 1.0 + way.delay_s, draw, RUNNER)

    return run


def test_a_cut_bends_round_a_player_who_stands_in_the_way() -> None:
    post = standing((0.0, 4.2))
    answer = find_room(_ways((0.0, 1.2)), [post], 1.0)
    assert clearance_m(answer.track, [post], 0.0) >= ROOM_M
    assert answer.start_s == 1.0


def test_who_has_room_runs_straight() -> None:
    answer = find_room(_ways((0.0, 1.2)), [standing((3.0, 4.2))], 1.0)
    assert np.abs(answer.track.place_m[:, 0]).max() < 1e-9


def test_two_sent_to_one_place_end_beside_each_other() -> None:
    answer = find_room(_ways((0.0, 1.2)), [standing((0.0, 1.2))], 1.0)
    assert clearance_m(answer.track, [standing((0.0, 1.2))], 0.0) >= ROOM_M


@settings(max_examples=40, deadline=None)
@given(PLACES, PLACES, st.floats(0.001, 0.1))
def test_thinning_keeps_every_place_within_its_tolerance(a: Place, b: Place, tolerance: float) -> None:
    track = _straight(_straight(standing((0.0, 3.0)), 0.4, a).track, 1.4, b).track
    thin = thinned(track, tolerance)
    gaps = places(track, track.t_s) - places(thin, track.t_s)
    assert np.hypot(*gaps.T).max() <= tolerance + 1e-9
    assert len(thin.t_s) <= len(track.t_s)
