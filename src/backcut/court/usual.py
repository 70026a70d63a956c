"""Where custom puts the spots on a court: a step behind the arc, the wing on the free-throw line extended, and so on.

The offence's left is -x: as it faces the basket from the top, +x of the drawing is its right.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from backcut.court.record import Court, Point
from backcut.court.spots import Spot
from backcut.court.units import feet

FIVE_OUT = (Spot.LC, Spot.LW, Spot.T, Spot.RW, Spot.RC)
BASKET_M: Point = (0.0, 0.0)  # under the centre of the basket: the origin of the house frame
STAND_IN_RING_M = feet(15)  # ring of a court without an arc: common practice, no source
_SIDELINE_M = 0.25  # a foot's length between spot and sideline: estimate
_MID_COURT_M = 0.5  # a step between the top and mid-court on a tiny floor: estimate
_HIGHEST_WING_DEG = 46.0  # a wing farther round the ring than this is no wing but a second top: estimate
_WIDEST_SLOT = 0.5  # a slot is no farther off the axis than this part of its ring: estimate


@dataclass(frozen=True, slots=True)
class Steps:
    """Where players stand by custom, in metres; all common practice, no source."""

    behind_arc_m: float = 0.35  # a step behind the line
    slot_off_axis_m: float = 2.4  # a step or two outside the lane line extended
    slot_off_axis_no_arc_m: float = 1.9  # the same on the stand-in ring of 15 ft
    corner_below_basket_m: float = 0.3  # toward the baseline from the basket's level
    outside_lane_m: float = 0.3  # a foot outside the lane line, or three seconds are called
    above_block_m: float = 0.3  # feet above the block
    short_corner_from_baseline_m: float = 0.75  # in bounds
    in_front_of_rim_m: float = 1.2  # where a cutter arrives: within 5 ft of the basket's centre


USUAL = Steps()


def usual_spots_m(court: Court, ring: tuple[Spot, ...], steps: Steps = USUAL) -> dict[Spot, Point]:
    """Every spot where custom puts it (metres, house frame).

    The wing stands on the free-throw line extended; on a ring with slots it goes down to midway between slot and
    corner, because on the line it would be 9.7 ft from the slot on the NFHS court.
    """
    right = _perimeter(court, steps, with_slots=bool({Spot.LS, Spot.RS} & set(ring))) | _inside(court, steps)
    left = {spot.mirror: (-x, y) for spot, (x, y) in right.items()}
    axis = {
        Spot.T: (0.0, _top_y_m(court, steps)),
        Spot.N: (0.0, court.free_throw_y_m),
        Spot.R: (0.0, steps.in_front_of_rim_m),
    }
    found = left | right | axis
    return {spot: found[spot] for spot in Spot}


def stand_in_ring_m(court: Court, steps: Steps = USUAL) -> float:
    """Radius of the ring that takes the arc's place: 15 ft, or the largest that the floor has room for."""
    beside = court.half_width_m - _SIDELINE_M - steps.behind_arc_m
    above = court.mid_court_y_m - _MID_COURT_M - steps.behind_arc_m
    return min(STAND_IN_RING_M, beside, above)


def _ring_m(court: Court, steps: Steps) -> float:
    line = court.arc_radius.m if court.has_arc else stand_in_ring_m(court, steps)
    return line + steps.behind_arc_m


def _corner_x_m(court: Court, steps: Steps) -> float:
    line = court.corner_three_from_centre_line.m if court.has_arc else stand_in_ring_m(court, steps)
    return min(line + steps.behind_arc_m, court.half_width_m - _SIDELINE_M)


def _top_y_m(court: Court, steps: Steps) -> float:
    return min(_ring_m(court, steps), court.mid_court_y_m)


def _perimeter(court: Court, steps: Steps, *, with_slots: bool) -> dict[Spot, Point]:
    corner = (_corner_x_m(court, steps), max(-steps.corner_below_basket_m, court.baseline_y_m))
    slot_x = _slot_x_m(court, steps)
    slot = (slot_x, min(math.sqrt(_ring_m(court, steps) ** 2 - slot_x**2), court.mid_court_y_m))
    if with_slots:
        wing = _midway(court, steps, slot, corner)
    elif court.free_throw_y_m <= _ring_m(court, steps) * math.sin(math.radians(_HIGHEST_WING_DEG)):
        wing = _behind_line(court, steps, court.free_throw_y_m)
    else:
        wing = _midway(court, steps, (0.0, _top_y_m(court, steps)), corner)
    return {Spot.RC: corner, Spot.RW: wing, Spot.RS: slot}


def _slot_x_m(court: Court, steps: Steps) -> float:
    if court.has_arc:
        return min(steps.slot_off_axis_m, _ring_m(court, steps) * _WIDEST_SLOT)
    return steps.slot_off_axis_no_arc_m * stand_in_ring_m(court, steps) / STAND_IN_RING_M


def _behind_line(court: Court, steps: Steps, y_m: float) -> Point:
    """The place behind the line at this height: behind the arc, or behind the straight part where that is nearer."""
    x = math.sqrt(max(_ring_m(court, steps) ** 2 - y_m**2, 0.0))
    return min(x, _corner_x_m(court, steps)), y_m


def _midway(court: Court, steps: Steps, upper: Point, lower: Point) -> Point:
    """The place behind the line that is as far from one neighbour as from the other, found by halving."""
    low, high = lower[1], upper[1]
    for _ in range(60):
        place = _behind_line(court, steps, (low + high) / 2)
        if math.dist(place, upper) > math.dist(place, lower):
            low = place[1]
        else:
            high = place[1]
    return place


def _inside(court: Court, steps: Steps) -> dict[Spot, Point]:
    beside_lane = court.lane_width.m / 2 + steps.outside_lane_m
    block, mid = _post_y_m(court, steps)
    return {
        Spot.RB: (beside_lane, block),
        Spot.RM: (beside_lane, mid),
        Spot.RE: court.elbows_m[1],
        Spot.RSC: (court.half_width_m / 2, court.baseline_y_m + steps.short_corner_from_baseline_m),
    }


def _post_y_m(court: Court, steps: Steps) -> Point:
    """Heights of low and mid post: feet above the block, and midway from there to the elbow."""
    if court.lane_marks:
        block = court.lane_marks.block_m - court.basket_from_baseline.m + steps.above_block_m
    else:
        block = court.free_throw_y_m / 3  # about where rule books paint the block: estimate
    return block, (block + court.free_throw_y_m) / 2
