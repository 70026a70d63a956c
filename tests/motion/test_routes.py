"""Routes: what tells a front cut from a rear cut, where a back cut goes, and which way a fill runs."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from numpy.typing import NDArray

from backcut.court.courts import COURTS
from backcut.court.placing import place_spots
from backcut.court.spots import PERIMETER, Spot
from backcut.motion.defender import defender_place
from backcut.motion.floor import FIBA_FLOOR
from backcut.motion.path import lengths_m
from backcut.motion.routes import Scene, path_of
from backcut.offence.action import Route
from backcut.offence.situation import Guard

SPOTS = place_spots(COURTS["fiba"])


def _path(route: Route, start: Spot, target: Spot, ball: Spot, guard: Guard = Guard.PLAIN) -> NDArray[np.float64]:
    scene = Scene(SPOTS[ball], defender_place(guard, SPOTS[start], SPOTS[ball]))
    return path_of(route, SPOTS[start], SPOTS[target], scene)


def _side_of_defender(path: NDArray[np.float64], start: Spot, ball: Spot, guard: Guard) -> float:
    """How far on the ball's side of his defender he is as he passes him; negative: behind him. Metres."""
    defender = np.array(defender_place(guard, SPOTS[start], SPOTS[ball]))
    along = (np.array(SPOTS[Spot.R]) - SPOTS[start]) / np.hypot(*(np.array(SPOTS[Spot.R]) - SPOTS[start]))
    across = np.array([-along[1], along[0]])
    across = across if across @ (np.array(SPOTS[ball]) - SPOTS[start]) > 0 else -across
    late = len(path) // 8  # the step that sets up a back cut is not the passing
    at = late + np.abs((path[late:] - defender) @ along).argmin()
    return float((path[at] - defender) @ across)


@pytest.mark.parametrize(
    ("start", "ball"), [(Spot.T, Spot.RW), (Spot.T, Spot.LW), (Spot.RW, Spot.T), (Spot.LW, Spot.LC)]
)
def test_a_front_cut_passes_between_defender_and_ball_and_a_rear_cut_behind_him(start: Spot, ball: Spot) -> None:
    front = _side_of_defender(_path(Route.FRONT, start, Spot.R, ball), start, ball, Guard.PLAIN)
    rear_path = _path(Route.REAR, start, Spot.R, ball, Guard.JUMPED)
    rear = _side_of_defender(rear_path, start, ball, Guard.JUMPED)
    assert front > 0.4
    assert rear < -0.4


@pytest.mark.parametrize(
    ("start", "ball"), [(Spot.RW, Spot.T), (Spot.LW, Spot.T), (Spot.T, Spot.RW), (Spot.RS, Spot.LS)]
)
def test_a_back_cut_steps_toward_the_ball_and_goes_behind_the_denier(start: Spot, ball: Spot) -> None:
    path = _path(Route.BEHIND_DEFENDER, start, Spot.R, ball, Guard.DENIES)
    to_ball = np.hypot(*(path - np.array(SPOTS[ball])).T)
    lure = int(lengths_m(path).searchsorted(0.5))
    assert to_ball[lure] < to_ball[0] - 0.3
    assert np.hypot(*path[lure]) > np.hypot(*path[0])
    assert _side_of_defender(path, start, ball, Guard.DENIES) < -0.4


@pytest.mark.parametrize(("start", "ball"), [(Spot.RC, Spot.RW), (Spot.LC, Spot.LW)])
def test_a_back_cut_from_the_corner_runs_along_the_baseline_in_bounds(start: Spot, ball: Spot) -> None:
    path = _path(Route.BASELINE, start, Spot.R, ball, Guard.DENIES)
    defender = defender_place(Guard.DENIES, SPOTS[start], SPOTS[ball])
    passing = path[np.abs(path[30:, 0] - defender[0]).argmin() + 30]
    assert passing[1] < defender[1] - 0.5
    assert path[:, 1].min() < -0.6
    assert path[:, 1].min() > -FIBA_FLOOR.baseline_m


@pytest.mark.parametrize("route", list(Route))
def test_every_route_between_any_two_spots_stays_in_bounds_and_gets_there(route: Route) -> None:
    for start, target, ball in product((*PERIMETER, Spot.N, Spot.RB), (*PERIMETER, Spot.R), PERIMETER):
        if start is target or start is ball:
            continue
        path = _path(route, start, target, ball)
        assert path == pytest.approx(FIBA_FLOOR.inside(path), abs=0.31), (start, target, ball)
        assert np.abs(path[:, 0]).max() < FIBA_FLOOR.half_width_m
        assert path[:, 1].min() > -FIBA_FLOOR.baseline_m
        assert path[0] == pytest.approx(SPOTS[start])
        if route is not Route.FAR_SIDE:
            assert path[-1] == pytest.approx(SPOTS[target])


def test_a_fill_along_the_arc_stays_outside_it() -> None:
    path = _path(Route.ALONG_ARC, Spot.LW, Spot.T, Spot.RW)
    assert np.hypot(*path.T).min() > 6.75  # FIBA Art. 2: the arc


def test_a_fill_through_the_elbow_touches_it_and_one_through_the_lane_enters_it() -> None:
    elbow = _path(Route.THROUGH_ELBOW, Spot.LW, Spot.T, Spot.RW)
    lane = _path(Route.THROUGH_LANE, Spot.LW, Spot.T, Spot.RW)
    assert np.hypot(*(elbow - np.array(SPOTS[Spot.LE])).T).min() < 0.5
    assert ((np.abs(lane[:, 0]) < 2.45) & (lane[:, 1] < 4.225)).any()


def test_a_corner_lifts_toward_the_elbow_without_running_all_the_way_to_it() -> None:
    straight = float(np.hypot(*(np.array(SPOTS[Spot.RC]) - SPOTS[Spot.RW])))
    path = _path(Route.THROUGH_ELBOW, Spot.RC, Spot.RW, Spot.T)
    assert straight * 1.2 < lengths_m(path)[-1] <= straight * 1.5


def test_the_far_side_cut_ends_on_the_side_away_from_the_ball() -> None:
    assert _path(Route.FAR_SIDE, Spot.T, Spot.R, Spot.RW)[-1][0] < -0.8
    assert _path(Route.FAR_SIDE, Spot.T, Spot.R, Spot.LW)[-1][0] > 0.8


@pytest.mark.parametrize("route", [r for r in Route if r is not Route.FAR_SIDE])
def test_the_mirrored_route_is_the_mirror_of_the_route(route: Route) -> None:
    right = _path(route, Spot.RW, Spot.R, Spot.T, Guard.DENIES)
    left = _path(route, Spot.LW, Spot.R, Spot.T, Guard.DENIES)
    assert right == pytest.approx(left * np.array([-1.0, 1.0]), abs=1e-6)


def test_a_cut_bent_aside_for_a_team_mate_bends_away_from_the_ball() -> None:
    for ball, away in ((Spot.RW, -1.0), (Spot.LW, 1.0)):
        scene = Scene(SPOTS[ball], (0.0, 5.0))
        path = path_of(Route.PLAIN, SPOTS[Spot.T], SPOTS[Spot.R], scene, aside_m=1.0)
        assert path[:, 0][np.abs(path[:, 0]).argmax()] == pytest.approx(away, abs=0.01)
