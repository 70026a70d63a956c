"""One arrow of a moment as lines of the floor: trimmed clear of the discs, with its head, its hand, its marker."""

from __future__ import annotations

import math
from collections.abc import Sequence

from backcut.picture.lines import (
    Place,
    along,
    in_cm,
    length_cm,
    simplified,
    smooth_path,
    straight_path,
    trimmed,
    zigzag_path,
)
from backcut.picture.marks import DISC_CM, HOLDER_CM, PLATE_CM, SPOT_CM
from backcut.picture.scene import Line
from backcut.picture.show import Arrow, ArrowKind

#: Own design, no source: the paper left between a disc and a line, and half a hand across a lane.
AIR_CM = 10.0
HAND_CM = 26.0
#: What is left of a run under a long stride is told in words only (own design, no source).
STEP_CM = 120.0

CURVED = {ArrowKind.CUT: "run", ArrowKind.FILL: "fill", ArrowKind.HAND_OFF: "fill"}


def drawn_path(arrow: Arrow, discs: Sequence[Place], open_cm: Sequence[Place]) -> list[Place]:
    """The arrow's path in cm as it is drawn: clear of the discs at its ends, short of an empty spot's ring.

    Empty when it is no way at all.
    """
    path = in_cm(arrow.path_m)
    if len(path) < 2 or (length_cm(path) < STEP_CM and not arrow.lit):
        return []
    thrown = arrow.kind in (ArrowKind.PASS, ArrowKind.SHUT)
    start = (HOLDER_CM if thrown or arrow.kind is ArrowKind.DRIBBLE else DISC_CM) + AIR_CM

    def near(places: Sequence[Place], reach: float) -> bool:
        return any(math.dist(path[-1], place) < reach for place in places)

    end = 0.0
    if near(discs, DISC_CM):
        end = DISC_CM + AIR_CM
    elif near(open_cm, SPOT_CM):
        end = SPOT_CM + AIR_CM / 2
    elif thrown:
        end = DISC_CM
    whole, clear = length_cm(path), DISC_CM + AIR_CM / 2
    while end < whole / 2 and any(math.dist(along(path, whole - end)[0], disc) < clear for disc in discs):
        end += AIR_CM  # somebody else stands where the way ends: the head stays in sight
    return simplified(trimmed(path, start, end))


def hand_at(path: Sequence[Place], defender: Place | None) -> float:
    """How far along a shut lane the hand stands: beside the defender, or before him when he stands in the lane."""
    whole = length_cm(path)
    if defender is None:
        return whole * 0.8
    (ax, ay), (dx, dy) = path[0], along(path, 0.0)[1]
    beside = (defender[0] - ax) * dx + (defender[1] - ay) * dy
    if abs((defender[1] - ay) * dx - (defender[0] - ax) * dy) < PLATE_CM:
        beside -= PLATE_CM
    return min(max(beside, whole * 0.4), whole * 0.94)


def under(arrow: Arrow, path: Sequence[Place], defender: Place | None) -> list[tuple[int, Line]]:
    """The arrow's lines with their layer: 0 the marker, 1 shut lanes, 2 lines of action."""
    if len(path) < 2:
        return []
    if arrow.kind is ArrowKind.SHUT:
        stop = hand_at(path, defender)
        (x, y), (dx, dy) = along(path, stop)
        lane = straight_path([path[0], along(path, stop - 12.0)[0]])
        hand = straight_path([(x - dy * HAND_CM, y + dx * HAND_CM), (x + dy * HAND_CM, y - dx * HAND_CM)])
        return [(1, Line("shut", lane)), (1, Line("hand", hand))]
    if arrow.kind is ArrowKind.PASS:
        return [(2, Line("pass", straight_path([path[0], path[-1]])))]
    if arrow.kind is ArrowKind.DRIBBLE:
        return [(2, Line("dribble", zigzag_path(path)))]
    curve = smooth_path(path)
    if arrow.kind is ArrowKind.SCREEN:
        return [(2, Line("screen", curve))]
    style = CURVED[arrow.kind]
    out = [(2, Line(f"{style} hot" if arrow.lit else style, curve, arrow.player))]
    if arrow.lit:
        out.insert(0, (0, Line("lit", curve, arrow.player)))
    if arrow.kind is ArrowKind.HAND_OFF:
        (x, y), (dx, dy) = along(path, length_cm(path) / 2)
        bars = "".join(
            straight_path([(x + dx * d - dy * 36, y + dy * d + dx * 36), (x + dx * d + dy * 36, y + dy * d - dx * 36)])
            for d in (-11, 11)
        )
        out.append((2, Line("bars", bars)))
    return out
