"""Paths for the routes of an offence: how a front cut, a rear cut, a back cut and a fill run over the floor."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.motion.floor import FIBA_FLOOR, HOOP_M, Floor
from backcut.motion.path import bent, lengths_m, rounded, spaced, unit
from backcut.offence.action import Route

Floats = NDArray[np.float64]

PASSING_M = 0.8  # estimate: two shoulders and a hand between a cutter and the defender he passes
CURVE_M = 0.6  # estimate: how widely a turn at speed is rounded
LURE_M = 0.6  # estimate: one long step, the step toward the ball that sets up a back cut
FAR_SIDE_M = 1.2  # estimate: a block's distance past the front of the rim
DETOUR = 1.5  # estimate: a fill goes no further round than this many times the straight way
ELBOW_M = (2.45, 4.225)  # FIBA Art. 2: lane 4.90 m wide, free-throw line 4.225 m from the ring's centre
LANE_M = (1.9, 3.6)  # estimate: half a metre inside the lane, a step below the free-throw line


@dataclass(frozen=True, slots=True)
class Scene:
    """What a route looks at: the ball, the runner's own defender, the edges of the floor, the right elbow. Metres."""

    ball_m: tuple[float, float]
    defender_m: tuple[float, float]
    floor: Floor = FIBA_FLOOR
    elbow_m: tuple[float, float] = ELBOW_M


def path_of(
    route: Route, start_m: tuple[float, float], target_m: tuple[float, float], scene: Scene, aside_m: float = 0.0
) -> Floats:
    """The path (n, 2) of a route from `start_m` to `target_m`, in bounds.

    `aside_m` bends it away from the ball (negative: toward it), to leave a team-mate room.
    """
    start, target = np.asarray(start_m, dtype=np.float64), np.asarray(target_m, dtype=np.float64)
    if np.hypot(*(target - start)) < 0.05:
        return np.array([start, target])
    drawn = _DRAWN[route](start, target, scene)
    path = scene.floor.inside(bent(drawn, aside_m * _away(start, target, scene)))
    # A spot may stand closer to a line than the margin; the ends stay where they were asked for.
    path[0], path[-1] = start, target if route is not Route.FAR_SIDE else path[-1]
    return path


def _away(start: Floats, target: Floats, scene: Scene) -> float:
    """1 where the side away from the ball is on the runner's left, -1 on his right; the holder goes by the hoop."""
    heading = target - start
    for seen in (np.asarray(scene.ball_m), HOOP_M):
        left = float(heading[0] * (seen - start)[1] - heading[1] * (seen - start)[0])
        if abs(left) > 1e-6:
            return -1.0 if left > 0 else 1.0
    return 1.0


def _frame(start: Floats, target: Floats, scene: Scene) -> tuple[Floats, Floats, float]:
    """Along the straight way, across it toward the ball, and its length."""
    along = unit(target - start)
    across = np.array([-along[1], along[0]])
    if float(across @ (np.asarray(scene.ball_m) - start)) < 0:
        across = -across
    return along, across, float(np.hypot(*(target - start)))


def _beside_defender(start: Floats, target: Floats, scene: Scene, ball_side: bool) -> Floats:
    """The point at which a cut passes the runner's own defender, on the ball's side of him or behind him."""
    along, across, length = _frame(start, target, scene)
    to_defender = np.asarray(scene.defender_m) - start
    ahead = float(np.clip(to_defender @ along, 0.2 * length, 0.7 * length))
    side = 1.0 if ball_side else -1.0
    # Never less than a shoulder off the straight way, so that the two cuts look different from afar too.
    off = max(side * float(to_defender @ across) + PASSING_M, 0.4)
    return np.asarray(start + along * ahead + across * side * min(off, 2.0))


def _turning(*points: Floats | tuple[float, float]) -> Floats:
    """Straight from point to point with each turn run as a curve, the way a cutter runs who knows where he is going."""
    return rounded(np.array(points, dtype=np.float64), CURVE_M)


def _plain(start: Floats, target: Floats, scene: Scene | None = None) -> Floats:
    return spaced(np.array([start, target]))


def _front(start: Floats, target: Floats, scene: Scene) -> Floats:
    return _turning(start, _beside_defender(start, target, scene, ball_side=True), target)


def _rear(start: Floats, target: Floats, scene: Scene) -> Floats:
    return _turning(start, _beside_defender(start, target, scene, ball_side=False), target)


def _lure(start: Floats, scene: Scene) -> Floats:
    """Where the step that sets up a back cut ends: toward the ball and away from the basket."""
    toward_ball, higher = unit(np.asarray(scene.ball_m) - start), unit(start - HOOP_M)
    return np.asarray(start + LURE_M * unit(toward_ball + 0.6 * higher))


def _behind_defender(start: Floats, target: Floats, scene: Scene) -> Floats:
    lure = scene.floor.inside(_lure(start, scene)[None])[0]
    gone = _turning(lure, _beside_defender(start, target, scene, ball_side=False), target)
    return np.vstack([spaced(np.array([start, lure]))[:-1], gone])


def _baseline(start: Floats, target: Floats, scene: Scene) -> Floats:
    toward_ball = unit(np.asarray(scene.ball_m) - start)
    lure = scene.floor.inside((start + LURE_M * toward_ball)[None])[0]
    low = -scene.floor.baseline_m + scene.floor.margin_m + 0.2
    gone = _turning(lure, (0.6 * start[0], low), (0.2 * start[0], low + 0.3), target)
    return np.vstack([spaced(np.array([start, lure]))[:-1], gone])


def _far_side(start: Floats, target: Floats, scene: Scene) -> Floats:
    away = -1.0 if scene.ball_m[0] > 0 else 1.0
    end = target + np.array([away * FAR_SIDE_M, -0.3])
    return _turning(start, (start + end) / 2 + np.array([away * 0.8, 0.3]), end)


def _along_arc(start: Floats, target: Floats, scene: Scene) -> Floats:
    (r0, r1), (a0, a1) = (
        (float(np.hypot(*start)), float(np.hypot(*target))),
        (float(np.arctan2(start[0], start[1])), float(np.arctan2(target[0], target[1]))),
    )
    share = np.linspace(0.0, 1.0, 60)
    radius, angle = r0 + (r1 - r0) * share, a0 + (a1 - a0) * share
    return spaced(np.column_stack([radius * np.sin(angle), radius * np.cos(angle)]))


def _by_way_of(start: Floats, target: Floats, way: Floats) -> Floats:
    """Through `way`, or as near to it as the longest sensible detour lets him come."""
    middle, straight = (start + target) / 2, float(np.hypot(*(target - start)))
    for share in np.linspace(1.0, 0.0, 21):
        path = _turning(start, middle + share * (way - middle), target)
        if lengths_m(path)[-1] <= DETOUR * straight:
            return path
    return _plain(start, target)


def _side_of(start: Floats, target: Floats) -> float:
    middle = float(start[0] + target[0]) / 2
    return 1.0 if middle > 0 else -1.0


def _through_elbow(start: Floats, target: Floats, scene: Scene) -> Floats:
    x, y = scene.elbow_m
    return _by_way_of(start, target, np.array([_side_of(start, target) * x, y]))


def _through_lane(start: Floats, target: Floats, scene: Scene) -> Floats:
    middle = float(start[0] + target[0]) / 2
    return _by_way_of(start, target, np.array([np.clip(middle, -LANE_M[0], LANE_M[0]), LANE_M[1]]))


_DRAWN: dict[Route, Callable[[Floats, Floats, Scene], Floats]] = {
    Route.PLAIN: _plain,
    Route.FRONT: _front,
    Route.REAR: _rear,
    Route.BEHIND_DEFENDER: _behind_defender,
    Route.BASELINE: _baseline,
    Route.FAR_SIDE: _far_side,
    Route.ALONG_ARC: _along_arc,
    Route.THROUGH_ELBOW: _through_elbow,
    Route.THROUGH_LANE: _through_lane,
}
