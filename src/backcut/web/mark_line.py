"""The denial mark as a line on the floor: where it runs at any depth, where its handle is, and which depth a place is.

The line is where `engine.reads.past_mark_m` is zero. Metres of the house frame in and out, unless a name says cm.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np

from backcut.court.record import Court, Point
from backcut.court.spots import Spot
from backcut.court.units import in_metres
from backcut.court.usual import stand_in_ring_m
from backcut.engine.reads import past_mark_m

#: How far the mark can be dragged, and in which steps (own design): inside it nobody denies, outside nobody is reached.
MOST_M = 2.0
STEP_M = 0.05
#: The ring of the mark is never smaller than this (own design): inside it stands the cutter at the rim.
LEAST_RING_M = 1.5


def ring_m(court: Court) -> float:
    """The radius of the arc, to its outer edge, or of the stand-in ring on a court without an arc."""
    return court.arc_radius.m if court.has_arc else stand_in_ring_m(court)


def limits_m(court: Court) -> tuple[float, float]:
    """The least and the greatest depth of the mark on this court, whole steps: the line stays on the floor."""
    ring = ring_m(court)
    low = max(-MOST_M, LEAST_RING_M - ring)
    high = max(min(MOST_M, court.mid_court_y_m - ring), 0.0)
    least, most = math.ceil(low / STEP_M - 1e-9), math.floor(high / STEP_M + 1e-9)
    return min(round(least * STEP_M, 2), 0.0), round(most * STEP_M, 2)


def mark_at(court: Court, place_m: Point) -> float:
    """The depth of the mark that runs through a place, in whole steps and within the limits."""
    low, high = limits_m(court)
    past = float(past_mark_m(np.asarray(place_m, dtype=np.float64), court))
    return round(min(max(round(past / STEP_M) * STEP_M, low), high), 2) + 0.0


def handle_m(court: Court, spots: Mapping[Spot, Point], mark_m: float) -> Point:
    """Where the mark is taken hold of: on the line from the basket to the right wing."""
    x, y = spots[Spot.RW]
    far = math.hypot(x, y)
    low, high = 0.0, 2.0 * far + MOST_M
    for _ in range(50):  # the line is crossed once on the way out
        middle = (low + high) / 2
        inside = float(past_mark_m(np.array([x / far * middle, y / far * middle]), court, mark_m)) < 0
        low, high = (middle, high) if inside else (low, middle)
    return x / far * high, y / far * high


def mark_path(court: Court, mark_m: float, out_cm: float = 0.0) -> str:
    """The mark as SVG path data in cm, from left to right, as far as it lies on the floor; `out_cm` farther out.

    Teeth of 14 cm on its outer side stand on the line that runs 7 cm out.
    """
    return "M" + "L".join(
        f"{round(x * 100, 1) + 0:g} {round(y * 100, 1) + 0:g}" for x, y in _line(court, mark_m, out_cm)
    )


def _line(court: Court, mark_m: float, out_cm: float) -> Sequence[Point]:
    """The right half mirrored, then the right half: from the baseline up to the top and down again."""
    depth = mark_m + out_cm / 100
    radius, half, bottom = ring_m(court) + depth, court.half_width_m, court.baseline_y_m
    right: list[Point] = []
    if court.junction_m is None:
        level = max(bottom, -radius)
    else:
        corner, level = court.junction_m[0] + depth, court.junction_m[1]
        if corner <= half:
            right += [(corner, bottom), (corner, level)]
    first = math.asin(max(-1.0, min(1.0, level / radius)))
    if radius > half:
        first = max(first, math.acos(half / radius))
    right += [(radius * math.cos(a), radius * math.sin(a)) for a in np.linspace(first, math.pi / 2, 46).tolist()]
    on = [(x, y) for x, y in right if y <= court.mid_court_y_m + 1e-9]
    return [*((-x, y) for x, y in on), *reversed(on[:-1])]


def mark_text(mark_m: float) -> str:
    """The mark as the book's own line says it: "the arc", "0.40 m inside the arc"."""
    if abs(mark_m) < STEP_M / 2:
        return "the arc"
    return f"{in_metres(abs(mark_m))} {'outside' if mark_m > 0 else 'inside'} the arc"
