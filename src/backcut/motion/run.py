"""The quickest run along a path: sprint out, slow for the curves, brake into the end.

A forward pass accelerates as the sprint model allows, a limit slows the curves, a backward pass brakes in time: the
usual two-pass solution of a speed profile along a fixed path (Bobrow, Dubowsky and Gibson 1985, there for robot arms).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from backcut.errors import MotionError
from backcut.motion.path import along, lengths_m, rounded
from backcut.motion.runner import Runner

Floats = NDArray[np.float64]

TICK_S = 0.04  # 25 Hz, the rate of optical tracking


@dataclass(frozen=True, eq=False)
class TimedRun:
    """A run in time: `t_s` (n,) rising, `place_m` (n, 2) metres, `speed_m_s` (n,) along the path."""

    t_s: Floats
    place_m: Floats
    speed_m_s: Floats

    @property
    def start_s(self) -> float:
        """When it begins."""
        return float(self.t_s[0])

    @property
    def end_s(self) -> float:
        """When he is there."""
        return float(self.t_s[-1])


def ticks(end_s: float) -> Floats:
    """Moments 0.04 s apart from zero to `end_s`, which is included."""
    return np.append(np.arange(0.0, max(end_s - TICK_S / 4, 1e-9), TICK_S), end_s)


def quickest_run(
    path_m: ArrayLike, runner: Runner, *, start_s: float = 0.0, start_speed_m_s: float = 0.0, end_speed_m_s: float = 0.0
) -> TimedRun:
    """The quickest run of `runner` along a path (n, 2), corners rounded, with a knot every 0.04 s.

    Raises: MotionError if the path cannot be run, or the first curve is too tight for `start_speed_m_s`.
    """
    path = rounded(path_m)
    s = lengths_m(path)
    if s[-1] < 1e-6:
        return TimedRun(np.array([start_s]), path[:1], np.zeros(1))
    speed = _speeds(path, s, runner, start_speed_m_s, end_speed_m_s)
    gaps = 2 * np.diff(s) / np.maximum(speed[1:] + speed[:-1], 1e-9)
    t = np.concatenate(([0.0], np.cumsum(gaps)))
    at_s = ticks(float(t[-1]))
    # Constant acceleration between points: the length at a tick is quadratic in time, not linear.
    i = np.clip(np.searchsorted(t, at_s, side="right") - 1, 0, len(gaps) - 1)
    dt = at_s - t[i]
    at = s[i] + speed[i] * dt + (speed[i + 1] - speed[i]) / (2 * gaps[i]) * dt**2
    place = np.column_stack([np.interp(at, s, column) for column in path.T])
    return TimedRun(start_s + at_s, place, np.interp(at_s, t, speed))


def braking(path_m: Floats, runner: Runner, *, start_s: float, start_speed_m_s: float) -> TimedRun:
    """The run that stops as soon as it can on a path (n, 2) entered at `start_speed_m_s`, at its end at the latest."""
    room_m = max(float(lengths_m(path_m)[-1]), 1e-3)
    slowing = max(runner.braking_m_s2, start_speed_m_s**2 / (2 * room_m))
    end_s = start_speed_m_s / slowing
    at_s = ticks(end_s)
    speed = start_speed_m_s - slowing * at_s
    return TimedRun(start_s + at_s, along(path_m, (start_speed_m_s + speed) / 2 * at_s), speed)


def _turns(path: Floats) -> Floats:
    """How far the path turns at each of its points, radians (n,); none at the ends."""
    heading = np.unwrap(np.arctan2(*np.diff(path, axis=0).T[::-1]))
    return np.concatenate(([0.0], np.abs(np.diff(heading)), [0.0]))


def _speeds(path: Floats, s: Floats, runner: Runner, start_speed: float, end_speed: float) -> Floats:
    gap = np.diff(s)
    turns = _turns(path)
    curvature = turns / np.maximum(np.minimum(np.append(gap, gap[-1]), np.insert(gap, 0, gap[0])), 1e-9)
    limit = np.minimum(runner.top_speed_m_s, np.sqrt(runner.sideways_m_s2 / np.maximum(curvature, 1e-9)))
    # Where a foot is planted the path turns within one spacing: then the change of velocity within a tick counts.
    limit = np.minimum(limit, runner.sideways_m_s2 * TICK_S / (2 * np.sin(np.clip(turns, 1e-6, np.pi) / 2)))
    # Each point leans on the one before it, so this is plain arithmetic: arrays would cost twenty times as much.
    limits, bends, gaps = limit.tolist(), curvature.tolist(), gap.tolist()
    top, first, braking = runner.top_speed_m_s, runner.first_acceleration_m_s2, runner.braking_m_s2
    sideways = runner.sideways_m_s2
    # Backward: what the coming curves and the end allow.
    limits[-1] = coming = min(limits[-1], end_speed)
    for i in range(len(gaps) - 1, -1, -1):
        now = coming * coming
        brake = braking * _grip_left(now * bends[i] / sideways)
        limits[i] = coming = min(limits[i], math.sqrt(now + 2 * brake * gaps[i]))
    if start_speed > limits[0] + 1e-6:
        raise MotionError(
            f"At {start_speed:.2f} m/s this path's first curve is too tight; it can be entered at {limits[0]:.2f} m/s."
        )
    # Forward: what the sprint allows; Heun's rule in v squared, since dv2/ds = 2 a.
    speed, speeds = start_speed, [start_speed]
    for i, room in enumerate(gaps):
        now = speed * speed
        push = first * max(0.0, 1.0 - speed / top) * _grip_left(now * bends[i] / sideways)
        trial = math.sqrt(now + 2 * push * room)
        later = first * max(0.0, 1.0 - trial / top) * _grip_left(trial * trial * bends[i + 1] / sideways)
        speed = min(limits[i + 1], math.sqrt(now + 2 * ((push + later) / 2) * room))
        speeds.append(speed)
    return np.array(speeds)


def _grip_left(used: float) -> float:
    """The share of grip that a curve leaves for speeding up or braking when it uses this share (a friction circle)."""
    return math.sqrt(1.0 - used * used) if used < 1.0 else 0.0
