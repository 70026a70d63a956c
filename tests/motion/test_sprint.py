"""The sprint model against published numbers."""

from __future__ import annotations

import csv
import os
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.errors import MotionError
from backcut.motion.fit import fit_splits, fit_velocity
from backcut.motion.sprint import Sprint

DISTANCES_M = [5, 10, 15, 20, 30, 40]

# Split times without noise; parameter sets of github.com/mladenjovanovic/shorts, data-raw/split-times.R, gates at zero.
TABLE = [
    (8.0, 7.5, [1.406, 2.178, 2.869, 3.528, 4.805, 6.063]),
    (9.0, 7.0, [1.413, 2.157, 2.808, 3.418, 4.583, 5.715]),
    (8.0, 9.0, [1.310, 2.050, 2.722, 3.369, 4.634, 5.888]),
    (10.0, 9.0, [1.251, 1.912, 2.493, 3.039, 4.083, 5.100]),
    (6.5, 9.5, [1.360, 2.195, 2.983, 3.758, 5.299, 6.838]),
]


@pytest.mark.parametrize(("top", "first", "times"), TABLE)
def test_split_times_are_those_of_the_closed_form(top: float, first: float, times: list[float]) -> None:
    assert Sprint(top, top / first).time_s(DISTANCES_M) == pytest.approx(times, abs=0.0006)


def test_split_times_are_those_of_the_shorts_readme() -> None:
    # github.com/mladenjovanovic/shorts, README: top speed 8.591 m/s, first acceleration 10.589 m/s2.
    times = Sprint(8.591, 8.591 / 10.589).time_s(DISTANCES_M)
    assert times == pytest.approx([1.21, 1.90, 2.52, 3.12, 4.30, 5.47], abs=0.01)


def test_the_record_race_is_met_at_20_and_at_100_metres() -> None:
    # 9.58 s race: reaction 0.146 s, 20 m in 2.89 s (federation biomechanics project, 2009).
    times = Sprint(12.24, 1.257).time_s([20, 100]) + 0.146
    assert times == pytest.approx([2.89, 9.58], abs=0.02)


@given(
    st.floats(4.0, 12.0),
    st.floats(0.4, 2.0),
    st.lists(st.floats(0.0, 60.0), min_size=1, max_size=8),
)
def test_time_and_distance_undo_each_other(top: float, tau: float, distances: list[float]) -> None:
    sprint = Sprint(top, tau)
    assert sprint.distance_m(sprint.time_s(distances)) == pytest.approx(distances, abs=1e-6)


def test_after_one_time_constant_he_runs_at_63_percent() -> None:
    assert Sprint(8.0, 1.1).speed_m_s(1.1) == pytest.approx(8.0 * (1 - np.exp(-1)))


def test_his_own_split_times_give_the_runner_back() -> None:
    sprint = Sprint(7.6, 1.05)
    found = fit_splits([5, 10, 20], sprint.time_s([5, 10, 20]), start_correction_s=0.0)
    assert (found.top_speed_m_s, found.time_constant_s) == pytest.approx((7.6, 1.05), abs=1e-3)


@pytest.mark.parametrize(
    ("distances", "times", "says"),
    [
        ([5, 10], [1.2], "one length"),
        ([5], [1.2], "two numbers or more"),
        ([5, 10], [1.2, float("nan")], "gaps"),
    ],
)
def test_split_times_that_cannot_be_fitted_say_why(distances: list[float], times: list[float], says: str) -> None:
    with pytest.raises(MotionError, match=says):
        fit_splits(distances, times)


@pytest.mark.parametrize(("top", "tau"), [(0.0, 1.0), (8.0, -1.0), (float("nan"), 1.0)])
def test_a_sprint_that_cannot_be_is_refused(top: float, tau: float) -> None:
    with pytest.raises(MotionError, match="above zero"):
        Sprint(top, tau)


def test_a_distance_below_zero_is_refused() -> None:
    with pytest.raises(MotionError, match="zero or more"):
        Sprint(8.0, 1.0).time_s(-1.0)


SHIPPED = Path(__file__).parent / "sprints"


def _rows(name: str) -> list[dict[str, str]]:
    """The rows of an open sprint file: one beside the tests, else one in the folder that BACKCUT_DATA names."""
    path = SHIPPED / name
    if not path.is_file():
        folder = os.environ.get("BACKCUT_DATA")
        if not folder or not (Path(folder) / name).is_file():
            pytest.skip(f"{name} is not at hand: BACKCUT_DATA does not name a folder that holds it")
        path = Path(folder) / name
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def test_the_open_radar_trace_is_fitted_as_published() -> None:
    # github.com/mladenjovanovic/shorts, data-raw/jb-morin-data.csv: 9.18 m/s, 1.31 s, 7.00 m/s2; start free 9.21, 1.33.
    rows = _rows("jb-morin-data.csv")
    t, speed = [float(r["time"]) for r in rows], [float(r["velocity"]) for r in rows]
    held, free = fit_velocity(t, speed), fit_velocity(t, speed, free_start=True)
    assert len(rows) == 232
    assert held.top_speed_m_s == pytest.approx(9.18, abs=0.05)
    assert held.time_constant_s == pytest.approx(1.31, abs=0.03)
    assert held.first_acceleration_m_s2 == pytest.approx(7.00, abs=0.15)
    assert (free.top_speed_m_s, free.time_constant_s) == pytest.approx((9.21, 1.33), abs=0.05)


def test_the_laser_trace_of_35_metres_is_met_when_the_start_is_free() -> None:
    # github.com/mladenjovanovic/shorts, data-raw/laser-gun-data.csv: the runner stands for the first 0.6 s or so.
    rows = _rows("laser-gun-data.csv")
    t = np.array([float(r["time"]) for r in rows])
    speed = np.array([float(r["velocity"]) for r in rows])
    held, free = fit_velocity(t, speed), fit_velocity(t, speed, free_start=True)
    assert free.top_speed_m_s == pytest.approx(speed.max(), abs=0.3)
    assert free.time_constant_s < held.time_constant_s


GATES_M = [5, 10, 20, 30, 35]


def _worst_residual_s(times: list[float], correction_s: float) -> float:
    sprint = fit_splits(GATES_M, times, correction_s)
    return float(np.abs(sprint.time_s(GATES_M) - correction_s - times).max())


def test_the_start_correction_straightens_the_womens_split_times() -> None:
    # github.com/mladenjovanovic/shorts, data-raw/vescovi-data.csv: 52 players in four groups; group means.
    rows = _rows("vescovi-data.csv")
    groups = sorted({row["Team"] for row in rows})
    means = [[float(np.mean([float(r[f"{d}m"]) for r in rows if r["Team"] == g])) for d in GATES_M] for g in groups]
    assert (len(rows), len(groups)) == (52, 4)
    assert max(_worst_residual_s(times, 0.3) for times in means) <= 0.02 + 0.005
    assert max(_worst_residual_s(times, 0.0) for times in means) == pytest.approx(0.05, abs=0.005)
    soccer = fit_splits(GATES_M, means[groups.index("W Soccer")])
    assert (soccer.top_speed_m_s, soccer.time_constant_s) == pytest.approx((7.72, 1.19), abs=0.01)
