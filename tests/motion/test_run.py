"""Runs along a path: as quick as the runner is, and never quicker."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.errors import MotionError
from backcut.motion.run import TICK_S, quickest_run
from backcut.motion.squads import SQUADS

MEN = SQUADS["men"].runner
POINTS = st.lists(st.tuples(st.floats(-7, 7), st.floats(-1, 12)), min_size=2, max_size=6)


def test_a_straight_run_without_a_stop_takes_the_sprints_time() -> None:
    run = quickest_run([(0, 0), (7, 0)], MEN, end_speed_m_s=99.0)
    assert run.end_s == pytest.approx(float(MEN.sprint.time_s(7.0)), abs=0.005)


def test_stopping_costs_time() -> None:
    through, stop = (quickest_run([(0, 0), (7, 0)], MEN, end_speed_m_s=v).end_s for v in (99.0, 0.0))
    assert stop > through + 0.3


def test_the_last_metres_are_braked_as_hard_as_he_can() -> None:
    run = quickest_run([(0, 0), (8, 0)], MEN)
    braking = run.place_m[:, 0] > 7.2
    slowing = -np.diff(run.speed_m_s[braking]) / np.diff(run.t_s[braking])
    assert slowing[:-1] == pytest.approx(MEN.braking_m_s2, abs=0.1)


def test_a_bent_run_takes_longer_than_a_straight_one_of_the_same_length() -> None:
    angle = np.linspace(0, np.pi, 40)
    bend = np.column_stack([np.cos(angle), np.sin(angle)]) * 7 / np.pi
    assert quickest_run(bend, MEN).end_s > quickest_run([(0, 0), (7, 0)], MEN).end_s + 0.1


@settings(max_examples=80, deadline=None)
@given(POINTS, st.sampled_from(sorted(SQUADS)))
def test_no_run_jumps_or_asks_more_than_the_runner_has(points: list[tuple[float, float]], name: str) -> None:
    runner = SQUADS[name].runner
    run = quickest_run(points, runner)
    assert run.place_m[0] == pytest.approx(points[0])
    if len(run.t_s) < 4:
        return
    assert run.place_m[-1] == pytest.approx(points[-1])
    velocity = np.diff(run.place_m, axis=0) / np.diff(run.t_s)[:, None]
    assert np.hypot(*velocity.T).max() <= runner.top_speed_m_s + 1e-6
    assert run.speed_m_s[[0, -1]] == pytest.approx([0.0, 0.0], abs=1e-6)
    # Within one tick he may both brake into a planted foot and push off from it: the two together are the most he has.
    change = np.hypot(*np.diff(velocity[:-1], axis=0).T) / TICK_S
    assert change.max(initial=0.0) <= runner.first_acceleration_m_s2 + runner.braking_m_s2


def test_a_run_starts_where_and_as_fast_as_he_already_runs() -> None:
    run = quickest_run([(0, 0), (6, 0)], MEN, start_s=3.0, start_speed_m_s=4.0)
    first = (run.place_m[1] - run.place_m[0]) / TICK_S
    assert run.start_s == 3.0
    assert first[0] == pytest.approx(4.0, abs=0.2)


def test_a_curve_too_tight_for_his_speed_is_refused_with_the_speed_that_would_do() -> None:
    with pytest.raises(MotionError, match="can be entered at"):
        quickest_run([(0, 0), (0.5, 0), (0.5, 5)], MEN, start_speed_m_s=6.0)


@pytest.mark.parametrize("path", [[(0, 0)], [(0, 0, 0), (1, 1, 1)], [(0, 0), (float("nan"), 1)]])
def test_a_path_that_is_none_is_refused(path: list[tuple[float, ...]]) -> None:
    with pytest.raises(MotionError, match="two or more points"):
        quickest_run(path, MEN)


def test_half_an_inch_is_a_run_too() -> None:
    assert 0.0 < quickest_run([(0, 0), (0.012, 0)], MEN).end_s < 0.5
