"""Lines of action: a path in metres becomes a smooth, trimmed, short SVG path in centimetres."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from backcut.picture.scene import number

Place = tuple[float, float]

#: A point that lies this near to the straight line between its neighbours is not drawn (estimate: half a line's width).
FLAT_CM = 3.0
#: No corner is drawn this near to either end, so that a head points where the line goes (own design, no source).
STUB_CM = 16.0
ZIGZAG_CM = 24.0  # half width of a dribble's zigzag; own design, no source
ZIGZAG_STEP_CM = 20.0  # length of half a tooth; own design, no source


def in_cm(path_m: Sequence[Place]) -> list[Place]:
    """The path in centimetres, without points that repeat the one before."""
    out: list[Place] = []
    for x, y in path_m:
        point = (x * 100.0, y * 100.0)
        if not out or math.dist(out[-1], point) > 0.5:
            out.append(point)
    return out


def length_cm(path: Sequence[Place]) -> float:
    """The length of the path."""
    return sum(math.dist(a, b) for a, b in pairwise(path))


def along(path: Sequence[Place], distance_cm: float) -> tuple[Place, Place]:
    """The place `distance_cm` along the path and the unit direction of the path there."""
    left = max(distance_cm, 0.0)
    for a, b in pairwise(path):
        step = math.dist(a, b)
        if left <= step or b is path[-1]:
            share = min(left / step, 1.0)
            return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share), (
                (b[0] - a[0]) / step,
                (b[1] - a[1]) / step,
            )
        left -= step
    return path[-1], (0.0, 1.0)


def trimmed(path: Sequence[Place], start_cm: float, end_cm: float) -> list[Place]:
    """The path without its first `start_cm` and last `end_cm`; a short path keeps its middle third at least."""
    whole = length_cm(path)
    if whole < 1.0:
        return list(path)
    spare = whole * 2 / 3
    if start_cm + end_cm > spare:
        share = spare / (start_cm + end_cm)
        start_cm, end_cm = start_cm * share, end_cm * share
    done, kept = 0.0, [along(path, start_cm)[0]]
    for a, b in pairwise(path):
        done += math.dist(a, b)
        if start_cm + STUB_CM < done < whole - end_cm - STUB_CM:
            kept.append(b)
    return [*kept, along(path, whole - end_cm)[0]]


def simplified(path: Sequence[Place], flat_cm: float = FLAT_CM) -> list[Place]:
    """Fewer points on the same line (Douglas and Peucker 1973): none strays more than `flat_cm` from the path."""
    if len(path) < 3:
        return list(path)
    (ax, ay), (bx, by) = path[0], path[-1]
    span = math.hypot(bx - ax, by - ay)

    def off(p: Place) -> float:
        if span < 1e-9:
            return math.dist(p, path[0])
        return abs((bx - ax) * (p[1] - ay) - (by - ay) * (p[0] - ax)) / span

    far = max(range(1, len(path) - 1), key=lambda i: off(path[i]))
    if off(path[far]) <= flat_cm:
        return [path[0], path[-1]]
    return simplified(path[: far + 1], flat_cm)[:-1] + simplified(path[far:], flat_cm)


def straight_path(path: Sequence[Place]) -> str:
    """SVG path data through the points, straight."""
    return "M" + "L".join(f"{number(x)} {number(y)}" for x, y in path)


def smooth_path(path: Sequence[Place]) -> str:
    """SVG path data of a smooth curve through the points.

    Each tangent leans on both neighbours by their nearness and reaches a third of the shorter way, so that a long
    straight stays straight beside a sharp turn.
    """
    if len(path) < 3:
        return straight_path(path)
    steps = [math.dist(a, b) for a, b in pairwise(path)]
    tangents: list[Place] = []
    for i, (x, y) in enumerate(path):
        back, on = path[max(i - 1, 0)], path[min(i + 1, len(path) - 1)]
        if 0 < i < len(path) - 1:
            d, e = steps[i - 1], steps[i]
            tangents.append(
                (
                    ((x - back[0]) / d * e + (on[0] - x) / e * d) / (d + e),
                    ((y - back[1]) / d * e + (on[1] - y) / e * d) / (d + e),
                )
            )
        else:
            d = math.dist(back, on)
            tangents.append(((on[0] - back[0]) / d, (on[1] - back[1]) / d))
    out = f"M{number(path[0][0])} {number(path[0][1])}C"
    pieces = []
    shorter = [min(steps[max(i - 1, 0)], steps[min(i, len(steps) - 1)]) / 3 for i in range(len(path))]
    for (a, b), (u, v), (m, n) in zip(pairwise(path), pairwise(tangents), pairwise(shorter), strict=True):
        bends = (a[0] + u[0] * m, a[1] + u[1] * m, b[0] - v[0] * n, b[1] - v[1] * n, *b)
        pieces.append(" ".join(number(value) for value in bends))
    return out + " ".join(pieces)


def zigzag_path(path: Sequence[Place]) -> str:
    """SVG path data of the federation manuals' dribble: teeth along the path, straight at both ends."""
    whole = length_cm(path)
    tail = min(46.0, whole / 4)
    count = max(int((whole - 2 * tail) / ZIGZAG_STEP_CM), 0)
    out = [path[0], along(path, tail)[0]]
    for i in range(count):
        (x, y), (dx, dy) = along(path, tail + (i + 0.5) * ZIGZAG_STEP_CM)
        swing = ZIGZAG_CM if i % 2 else -ZIGZAG_CM
        out.append((x - dy * swing, y + dx * swing))
    return straight_path([*out, along(path, whole - tail)[0], path[-1]])
