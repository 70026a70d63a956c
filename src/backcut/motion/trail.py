"""A track under construction: cut it at a moment, run on from there, thin it when it is done."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.errors import MotionError
from backcut.motion.path import lengths_m, through, unit
from backcut.motion.run import TICK_S, TimedRun, braking, quickest_run
from backcut.motion.runner import Runner
from backcut.motion.timeline import Track

Floats = NDArray[np.float64]
Place = tuple[float, float]

STANDS_M_S = 0.3  # estimate: slower than this a body may set off anywhere
CARRIES_S = 0.35  # estimate: how long a running body keeps its direction when it is told to go elsewhere


def standing(place_m: Place) -> Track:
    """Somebody who stands at one place from the beginning."""
    return Track(np.zeros(1), np.array([place_m], dtype=np.float64))


def places(track: Track, t_s: Floats) -> Floats:
    """Where a track is at times (n,): (n, 2) metres."""
    return np.column_stack([np.interp(t_s, track.t_s, column) for column in track.place_m[:, :2].T])


def cut(track: Track, t_s: float) -> Track:
    """The track as far as `t_s`; from there on he has not decided yet."""
    if t_s >= track.t_s[-1]:
        return track
    kept = track.t_s < t_s - 1e-9
    return Track(np.append(track.t_s[kept], t_s), np.vstack([track.place_m[kept], track.at(t_s)]))


def followed_by(track: Track, run: TimedRun) -> Track:
    """The track with a run after it; until the run starts he stands."""
    t, place = track.t_s, track.place_m
    if run.start_s > t[-1] + 1e-9:
        t, place = np.append(t, run.start_s), np.vstack([place, place[-1]])
    return Track(np.concatenate([t, run.t_s[1:]]), np.vstack([place, run.place_m[1:]]))


def velocity(track: Track, t_s: float) -> Floats:
    """The velocity (2,) right after `t_s`, in m/s."""
    if t_s >= track.t_s[-1] - 1e-9:
        return np.zeros(2)
    i = max(int(np.searchsorted(track.t_s, t_s + 1e-9, side="right")) - 1, 0)
    return np.asarray((track.place_m[i + 1] - track.place_m[i])[:2] / (track.t_s[i + 1] - track.t_s[i]))


@dataclass(frozen=True, eq=False)
class Answer:
    """A track with one more run on it, and when that run starts and ends."""

    track: Track
    start_s: float
    end_s: float


def run_on(track: Track, start_s: float, draw: Callable[[Place], Floats], runner: Runner) -> Answer:
    """The track with a new run from `start_s` on, along the path that `draw` gives from where he is then.

    Standing, he sets off. Running, he carries his speed into the new path; where that cannot be (it turns too sharply
    for his speed), he plants his feet on the old path, turns, and goes.
    """
    told_s, now = start_s, velocity(track, start_s)
    speed = float(np.hypot(*now))
    done = cut(track, start_s)
    if speed > STANDS_M_S:
        carried = _carried(draw(_end(done)), now, runner, start_s)
        if carried is not None:
            return Answer(followed_by(done, carried), told_s, carried.end_s)
        done = _planted(track, start_s, speed, runner)
        start_s = float(done.t_s[-1]) + _turning_s(now, draw(_end(done)), runner)
    run = quickest_run(draw(_end(done)), runner, start_s=start_s)
    return Answer(followed_by(done, run), told_s, run.end_s)


def _end(track: Track) -> Place:
    x, y = track.place_m[-1, :2]
    return float(x), float(y)


def _planted(track: Track, t_s: float, speed_m_s: float, runner: Runner) -> Track:
    """The track braked to a stop from `t_s` on; who is about to stop anyway does that."""
    rest = np.vstack([track.at(t_s), track.place_m[track.t_s > t_s]])
    if lengths_m(rest)[-1] <= 1.1 * speed_m_s**2 / (2 * runner.braking_m_s2):
        return track
    return followed_by(cut(track, t_s), braking(rest, runner, start_s=t_s, start_speed_m_s=speed_m_s))


def _carried(path: Floats, now: Floats, runner: Runner, start_s: float) -> TimedRun | None:
    """The run that enters a path at the velocity (2,) he has; None if his speed cannot be carried into it."""
    speed = float(np.hypot(*now))
    later = path[lengths_m(path) > 2 * speed * CARRIES_S][::8]
    bowed = through([path[0], path[0] + now * CARRIES_S / 2, *later, path[-1]])
    try:
        run = quickest_run(bowed, runner, start_s=start_s, start_speed_m_s=speed)
    except MotionError:
        return None
    if len(run.t_s) < 2:
        return None
    first = (run.place_m[1] - run.place_m[0]) / (run.t_s[1] - run.t_s[0])
    most = (runner.first_acceleration_m_s2 + runner.sideways_m_s2) * TICK_S
    return run if np.hypot(*(first - now)) <= most else None


def _turning_s(now: Floats, path: Floats, runner: Runner) -> float:
    away = unit(path[min(10, len(path) - 1)] - path[0])
    angle = float(np.arccos(np.clip(unit(now) @ away, -1.0, 1.0)))
    return runner.turn_s * angle / np.pi
