"""Paths over the floor as chains of points in metres: spaced evenly, rounded, cut to length, bent aside."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.interpolate import CubicSpline
from scipy.ndimage import gaussian_filter1d

from backcut.errors import MotionError

Floats = NDArray[np.float64]
Place = tuple[float, float]

SPACING_M = 0.05  # estimate: a twentieth of a step keeps the timing error under 0.01 s
FEWEST = 9  # even a run of one step has to speed up and stop
ROUNDING_M = 0.15  # estimate: half a foot's length; a planted foot still turns the body over this distance


def lengths_m(path_m: Floats) -> Floats:
    """Length along a path (n, 2) up to each of its points, (n,), metres."""
    steps = np.hypot(*np.diff(path_m, axis=0).T)
    return np.concatenate(([0.0], np.cumsum(steps)))


def along(path_m: Floats, at_m: Floats) -> Floats:
    """The places at lengths `at_m` (k,) along a path (n, 2): (k, 2) metres."""
    s = lengths_m(path_m)
    return np.column_stack([np.interp(at_m, s, column) for column in path_m.T])


def spaced(path_m: ArrayLike, spacing_m: float = SPACING_M) -> Floats:
    """The same path with points every `spacing_m` or less, ends kept. (n, 2) -> (k, 2).

    Raises: MotionError if the path has fewer than two points or a gap.
    """
    path = np.asarray(path_m, dtype=np.float64)
    if path.ndim != 2 or path.shape[1] != 2 or len(path) < 2 or not np.isfinite(path).all():
        raise MotionError(f"A path of shape {path.shape} cannot be run; give two or more points (x, y) in metres.")
    total = float(lengths_m(path)[-1])
    return along(path, np.linspace(0.0, total, max(FEWEST, int(np.ceil(total / spacing_m)) + 1)))


def rounded(path_m: ArrayLike, rounding_m: float = ROUNDING_M) -> Floats:
    """The path with its corners rounded, spaced evenly; both ends stay exactly where they are."""
    path = spaced(path_m)
    gap = float(np.hypot(*(path[1] - path[0])))
    sigma = rounding_m / max(gap, 1e-9)
    if len(path) < 4:
        return path
    width = min(len(path) - 1, int(4 * sigma) + 1)
    # Odd reflection keeps both ends and the directions there.
    wide = np.concatenate([2 * path[0] - path[width:0:-1], path, 2 * path[-1] - path[-2 : -2 - width : -1]])
    smooth = gaussian_filter1d(wide, min(sigma, width / 3), axis=0, mode="nearest")[width:-width]
    smooth[0], smooth[-1] = path[0], path[-1]
    return spaced(smooth)


def through(points: Sequence[ArrayLike]) -> Floats:
    """A smooth path through points in order (a cubic spline over the lengths between them)."""
    knots = np.asarray(points, dtype=np.float64)
    kept = [knots[0]] + [b for a, b in pairwise(knots) if np.hypot(*(b - a)) > 1e-6]
    if len(kept) < 3:
        return spaced(np.array([knots[0], knots[-1]]))
    knots = np.array(kept)
    # The square root of the gaps keeps the spline from swinging out at uneven ones.
    gaps = np.sqrt(np.hypot(*np.diff(knots, axis=0).T))
    u = np.concatenate(([0.0], np.cumsum(gaps)))
    return spaced(CubicSpline(u, knots, bc_type="natural")(np.linspace(0.0, u[-1], 120)))


def bent(path_m: Floats, aside_m: float) -> Floats:
    """The path pushed `aside_m` to its left (negative: right) half way, ends kept."""
    if aside_m == 0.0:
        return path_m
    s = lengths_m(path_m)
    if s[-1] < 1e-6:
        return path_m
    heading = path_m[-1] - path_m[0]
    length = float(np.hypot(*heading))
    left = np.array([-heading[1], heading[0]]) / length if length > 1e-6 else np.array([1.0, 0.0])
    return path_m + np.outer(np.sin(np.pi * s / s[-1]) * aside_m, left)


def unit(vector: ArrayLike) -> Floats:
    """The vector (2,) at length one; (0, 0) stays."""
    v = np.asarray(vector, dtype=np.float64)
    length = float(np.hypot(v[0], v[1]))
    return v / length if length > 1e-9 else np.zeros(2)
