"""The painted lines of a half court, computed from the record: paths of straight pieces and arcs in the house frame.

Whoever draws needs nothing else: each `Line` is one connected path along the middle of the paint with its true width,
so a stroke of `width_m` covers exactly what is painted. Angles are degrees from +x toward +y.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from backcut.court.record import Court, LaneMark, Point

_RIM_M = 0.02  # thickness of the ring's iron: sportypy 53575a1, FIBA
_BOARD_M = 0.05  # thickness of a board seen from above: sportypy 53575a1, rounded
_NECK_M = 0.18  # width of the plate between board and ring: sportypy 53575a1, rounded
_DASH_M = (0.394, 0.394)  # dash and gap of the broken half circle, 15 1/2 in each: sportypy 53575a1, NBA


class LineKind(StrEnum):
    """What a line is; the value is what JSON and classes in a drawing say."""

    BOUNDARY = "boundary"
    CENTRE_LINE = "centre line"
    CENTRE_CIRCLE = "centre circle"
    THREE_POINT = "three-point line"
    LANE = "lane"
    FREE_THROW_CIRCLE = "free-throw circle"
    NO_CHARGE = "no-charge area"
    LANE_MARK = "lane mark"
    THROW_IN = "throw-in mark"
    BOARD = "board"
    RING = "ring"


@dataclass(frozen=True, slots=True)
class Straight:
    """A straight piece from `start_m` to `end_m`."""

    start_m: Point
    end_m: Point


@dataclass(frozen=True, slots=True)
class Arc:
    """A piece of a circle from `start_deg` to `end_deg`; rising angles run from +x toward +y."""

    centre_m: Point
    radius_m: float
    start_deg: float
    end_deg: float

    def point_m(self, angle_deg: float) -> Point:
        """The point of the circle at this angle."""
        angle = math.radians(angle_deg)
        return (
            self.centre_m[0] + self.radius_m * math.cos(angle),
            self.centre_m[1] + self.radius_m * math.sin(angle),
        )

    @property
    def start_m(self) -> Point:
        """Where the arc begins."""
        return self.point_m(self.start_deg)

    @property
    def end_m(self) -> Point:
        """Where the arc ends."""
        return self.point_m(self.end_deg)


Piece = Straight | Arc


@dataclass(frozen=True, slots=True)
class Line:
    """One painted line: connected pieces along the middle of the paint, its width, and dash and gap if it is broken."""

    kind: LineKind
    pieces: tuple[Piece, ...]
    width_m: float
    dash_m: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class Area:
    """A plain area to fill, "floor" or "lane", as a polygon between inner edges."""

    kind: str
    corners_m: tuple[Point, ...]


def lines(court: Court) -> tuple[Line, ...]:
    """Every line of the attacked half, from baseline to mid-court, in the order they are best drawn."""
    return (
        *_boundary(court),
        *_middle(court),
        *_lane(court),
        *_no_charge(court),
        *_three_point(court),
        *_lane_marks(court),
        *_throw_in(court),
        *_basket(court),
    )


def areas(court: Court) -> tuple[Area, ...]:
    """The floor of the half and the inside of the lane."""
    half, low, high = court.half_width_m, court.baseline_y_m, court.mid_court_y_m
    lane, top = court.lane_width.m / 2 - court.line_width.m, court.free_throw_y_m - court.line_width.m
    return (
        Area("floor", ((-half, low), (half, low), (half, high), (-half, high))),
        Area("lane", ((-lane, low), (lane, low), (lane, top), (-lane, top))),
    )


def polyline(line: Line, step_deg: float = 3.0) -> tuple[Point, ...]:
    """The line as points, arcs cut into steps of at most `step_deg` degrees; joints are not repeated."""
    points: list[Point] = []
    for piece in line.pieces:
        for point in _points(piece, step_deg):
            if not points or math.dist(points[-1], point) > 1e-9:
                points.append(point)
    return tuple(points)


def _points(piece: Piece, step_deg: float) -> tuple[Point, ...]:
    if isinstance(piece, Straight):
        return piece.start_m, piece.end_m
    turn = piece.end_deg - piece.start_deg
    steps = max(1, math.ceil(abs(turn) / step_deg))
    return tuple(piece.point_m(piece.start_deg + turn * step / steps) for step in range(steps + 1))


def _joined(*points: Point) -> tuple[Straight, ...]:
    return tuple(Straight(a, b) for a, b in pairwise(points))


def _boundary(court: Court) -> Iterator[Line]:
    width = court.line_width.m
    # boundary lines are no part of the floor, so their inner edge is the floor's edge
    x, y, mid = court.half_width_m + width / 2, court.baseline_y_m - width / 2, court.mid_court_y_m
    yield Line(LineKind.BOUNDARY, _joined((-x, mid), (-x, y), (x, y), (x, mid)), width)


def _middle(court: Court) -> Iterator[Line]:
    width, mid = court.line_width.m, court.mid_court_y_m
    overrun = court.centre_line_overrun.value_m or 0.0
    reach = court.half_width_m + (width + overrun if overrun else 0.0)
    for y in _division_y_m(court):
        yield Line(LineKind.CENTRE_LINE, (Straight((-reach, y), (reach, y)),), width)
    outer = court.centre_circle_radius.m - width / 2
    yield Line(LineKind.CENTRE_CIRCLE, (Arc((0.0, mid), outer, 180.0, 360.0),), width)
    if court.centre_circle_inner_radius.value_m is not None:
        inner = court.centre_circle_inner_radius.m + width / 2
        yield Line(LineKind.CENTRE_CIRCLE, (Arc((0.0, mid), inner, 180.0, 360.0),), width)


def _division_y_m(court: Court) -> tuple[float, ...]:
    if court.short_floor_division_m and court.length.m < court.short_floor_division_m[0]:
        # both division lines of a short floor; the other one lies beyond mid-court, in the half that is not drawn
        return (court.length.m - court.short_floor_division_m[1] - court.basket_from_baseline.m,)
    return (court.mid_court_y_m,)


def _lane(court: Court) -> Iterator[Line]:
    width = court.line_width.m
    x, top = court.lane_width.m / 2 - width / 2, court.free_throw_y_m - width / 2
    low = court.baseline_y_m
    yield Line(LineKind.LANE, _joined((-x, low), (-x, top), (x, top), (x, low)), width)
    radius = court.free_throw_circle_radius.m - width / 2
    yield Line(LineKind.FREE_THROW_CIRCLE, (Arc((0.0, top), radius, 0.0, 180.0),), width)
    if court.free_throw_circle_dashed:
        yield Line(LineKind.FREE_THROW_CIRCLE, (Arc((0.0, top), radius, 180.0, 360.0),), width, _DASH_M)


def _no_charge(court: Court) -> Iterator[Line]:
    if court.no_charge_radius.value_m is None:
        return
    radius = court.no_charge_radius.m + court.line_width.m / 2  # the number is to the inner edge
    end = court.board_y_m
    yield Line(
        LineKind.NO_CHARGE,
        (
            Straight((radius, end), (radius, 0.0)),
            Arc((0.0, 0.0), radius, 0.0, 180.0),
            Straight((-radius, 0.0), (-radius, end)),
        ),
        court.line_width.m,
    )


def _three_point(court: Court) -> Iterator[Line]:
    if not court.has_arc:
        return
    half = court.line_width.m / 2
    radius, x = court.arc_radius.m - half, court.corner_three_from_centre_line.m - half
    y, low = math.sqrt(max(radius**2 - x**2, 0.0)), court.baseline_y_m
    angle = math.degrees(math.atan2(y, x))
    yield Line(
        LineKind.THREE_POINT,
        (Straight((x, low), (x, y)), Arc((0.0, 0.0), radius, angle, 180.0 - angle), Straight((-x, y), (-x, low))),
        court.line_width.m,
    )


def _lane_marks(court: Court) -> Iterator[Line]:
    for mark in court.lane_marks.marks if court.lane_marks else ():
        yield from _lane_mark(court, mark)


def _lane_mark(court: Court, mark: LaneMark) -> Iterator[Line]:
    y = (mark.near_m + mark.far_m) / 2 - court.basket_from_baseline.m
    edge = court.lane_width.m / 2
    for side in (-1.0, 1.0):
        piece = Straight((side * edge, y), (side * (edge + mark.depth_m), y))
        yield Line(LineKind.LANE_MARK, (piece,), mark.far_m - mark.near_m)


def _throw_in(court: Court) -> Iterator[Line]:
    mark = court.throw_in
    if mark is None:
        return
    width = court.line_width.m
    # numbers are to the far edge, so the middle of the paint is half a line nearer the baseline
    y = mark.from_baseline.m - width / 2 - court.basket_from_baseline.m
    if y > court.mid_court_y_m:
        return
    outer = court.half_width_m + (width + mark.outward_m if mark.outward_m else 0.0)
    inner = court.half_width_m - mark.inward_m
    for side in (-1.0, 1.0) if mark.both_sides else (-1.0,):  # we take the scorer's table to stand at +x
        yield Line(LineKind.THROW_IN, (Straight((side * inner, y), (side * outer, y)),), width)


def _basket(court: Court) -> Iterator[Line]:
    half, y = court.board_width.m / 2, court.board_y_m - _BOARD_M / 2  # the number is to the face of the board
    yield Line(LineKind.BOARD, (Straight((-half, y), (half, y)),), _BOARD_M)
    outer = court.ring_inner_diameter.m / 2 + _RIM_M
    yield Line(LineKind.RING, (Straight((0.0, court.board_y_m), (0.0, -outer)),), _NECK_M)
    yield Line(LineKind.RING, (Arc((0.0, 0.0), outer - _RIM_M / 2, 0.0, 360.0),), _RIM_M)
