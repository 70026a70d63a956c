"""Fits of the sprint to measured sprints: a squad's own split times, or a trace of speeds."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.optimize import least_squares

from backcut.errors import MotionError
from backcut.motion.sprint import Sprint

Floats = NDArray[np.float64]

#: Photocells start the clock after the body moves (repository mladenjovanovic/shorts, README: about 0.3 s).
START_CORRECTION_S = 0.3


def fit_splits(distances_m: ArrayLike, times_s: ArrayLike, start_correction_s: float = START_CORRECTION_S) -> Sprint:
    """The sprint that fits split times best, by least squares in time.

    `distances_m` and `times_s` are (n,) with n of two or more; `start_correction_s` is added to every time.
    Raises: MotionError if the lists do not match, are too short, or no sprint fits.
    """
    distances, times = _pairs(distances_m, times_s, "distances", "times")

    def model(distance: Floats, top: float, tau: float) -> Floats:
        return Sprint(top, tau).time_s(distance)

    return _fit(model, distances, times + start_correction_s)


def fit_velocity(t_s: ArrayLike, speed_m_s: ArrayLike, *, free_start: bool = False) -> Sprint:
    """The sprint that fits a trace of speeds best, by least squares in speed.

    `t_s` and `speed_m_s` are (n,) with n of two or more; `free_start` also fits when the runner really started.
    Raises: MotionError if the lists do not match, are too short, or no sprint fits.
    """
    t, speed = _pairs(t_s, speed_m_s, "times", "speeds")

    def model(time: Floats, top: float, tau: float, start: float = 0.0) -> Floats:
        return np.asarray(-top * np.expm1(-np.maximum(time - start, 0.0) / tau))

    return _fit(model, t, speed, extra=1 if free_start else 0)


def _pairs(first: ArrayLike, second: ArrayLike, first_name: str, second_name: str) -> tuple[Floats, Floats]:
    a, b = np.asarray(first, dtype=np.float64), np.asarray(second, dtype=np.float64)
    if a.ndim != 1 or a.shape != b.shape or a.size < 2:
        raise MotionError(
            f"A sprint is fitted to {first_name} {a.shape} and {second_name} {b.shape}; "
            "give two lists of one length, two numbers or more."
        )
    if not (np.isfinite(a).all() and np.isfinite(b).all()):
        raise MotionError(f"A sprint is fitted to {first_name} and {second_name} with gaps; leave the empty ones out.")
    return a, b


def _fit(model: Callable[..., Floats], x: Floats, y: Floats, extra: int = 0) -> Sprint:
    # The bounds are wider than any human runner; they only keep the search out of nonsense.
    lower, upper = [1.0, 0.05] + [-1.0] * extra, [15.0, 5.0] + [1.0] * extra
    found = least_squares(lambda guess: model(x, *guess) - y, [8.0, 1.0] + [0.0] * extra, bounds=(lower, upper))
    if not found.success:
        raise MotionError("No sprint fits these numbers; check the units: metres, seconds, metres a second.")
    return Sprint(float(found.x[0]), float(found.x[1]))
