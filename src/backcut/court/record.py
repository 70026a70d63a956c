"""A court: one record of measures, from which everything drawn and every spot is computed.

House frame: metres, origin on the floor under the centre of the attacked basket, +y toward mid-court, +x to the right
of the drawing.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, fields

from backcut.court.measure import Edge, Measure, Source, Status

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class LaneMark:
    """One rebound mark on both lane lines: near and far edge from the baseline, and its length out of the lane."""

    near_m: float
    far_m: float
    depth_m: float


@dataclass(frozen=True, slots=True)
class LaneMarks:
    """All rebound marks, nearest the baseline first; `block` is the far edge of the block, from the baseline."""

    marks: tuple[LaneMark, ...]
    block_m: float
    source: Source


@dataclass(frozen=True, slots=True)
class ThrowIn:
    """The throw-in marks at the sideline: how far they reach into the floor and out of it.

    `both_sides` is False where the rule book paints them opposite the scorer's table only.
    """

    from_baseline: Measure
    inward_m: float
    outward_m: float
    both_sides: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Court:
    """One court. Each measure carries its value in metres, its edge, its edition and its clause."""

    name: str
    title: str
    edition: str
    length: Measure
    width: Measure
    line_width: Measure
    board_from_baseline: Measure
    basket_from_baseline: Measure
    basket_height: Measure
    ring_inner_diameter: Measure
    board_width: Measure
    arc_radius: Measure
    corner_three_from_centre_line: Measure
    free_throw_line_from_baseline: Measure
    free_throw_line_to_board: Measure
    free_throw_circle_radius: Measure
    lane_width: Measure
    no_charge_radius: Measure
    centre_circle_radius: Measure
    centre_circle_inner_radius: Measure
    centre_line_overrun: Measure
    lane_marks: LaneMarks | None = None
    throw_in: ThrowIn | None = None
    free_throw_circle_dashed: bool = False
    #: a floor shorter than the first has a division line at the second, from the far baseline (both metres)
    short_floor_division_m: tuple[float, float] | None = None
    #: the largest and the smallest floor this court may be scaled to, (length, width) in metres
    floors_m: tuple[Point, Point] | None = None
    #: names of measures that the rule book keeps when the floor shrinks
    kept_when_scaled: tuple[str, ...] = ()

    @property
    def measures(self) -> dict[str, Measure]:
        """Every measure by name, the computed straight part of the three-point line included."""
        found = {field.name: getattr(self, field.name) for field in fields(self)}
        named = {name: value for name, value in found.items() if isinstance(value, Measure)}
        if self.throw_in:
            named["throw_in_from_baseline"] = self.throw_in.from_baseline
        return named | {"straight_part_from_baseline": self.straight_part_from_baseline}

    @property
    def has_arc(self) -> bool:
        """Whether a three-point line is painted."""
        return self.arc_radius.value_m is not None

    @property
    def junction_m(self) -> Point | None:
        """Where arc and straight line meet on the right, outer edges, house frame; None without an arc."""
        if self.arc_radius.value_m is None:
            return None
        radius, corner = self.arc_radius.m, self.corner_three_from_centre_line.m
        return corner, math.sqrt(max(radius**2 - corner**2, 0.0))

    @property
    def straight_part_from_baseline(self) -> Measure:
        """The straight part of the three-point line, from the inner edge of the baseline to the junction."""
        source = Source(self.edition, "from arc, corner and basket", Status.COMPUTED)
        if self.junction_m is None:
            return Measure(None, Edge.NO_LINE, source)
        return Measure(self.basket_from_baseline.m + self.junction_m[1], Edge.OUTER, source)

    @property
    def half_width_m(self) -> float:
        """From the axis to the inner edge of a sideline."""
        return self.width.m / 2

    @property
    def baseline_y_m(self) -> float:
        """The y of the inner edge of the baseline (negative)."""
        return -self.basket_from_baseline.m

    @property
    def mid_court_y_m(self) -> float:
        """The y of the middle of the floor."""
        return self.length.m / 2 - self.basket_from_baseline.m

    @property
    def board_y_m(self) -> float:
        """The y of the face of the board (negative)."""
        return self.board_from_baseline.m - self.basket_from_baseline.m

    @property
    def free_throw_y_m(self) -> float:
        """The y of the far edge of the free-throw line."""
        return self.free_throw_line_from_baseline.m - self.basket_from_baseline.m

    @property
    def elbows_m(self) -> tuple[Point, Point]:
        """The outer corners of the lane at the free-throw line, left and right."""
        half = self.lane_width.m / 2
        return (-half, self.free_throw_y_m), (half, self.free_throw_y_m)

    def on_floor(self, point_m: Point) -> bool:
        """Whether a point (metres, house frame) lies on this half of the floor, lines not included."""
        x, y = point_m
        return abs(x) <= self.half_width_m and self.baseline_y_m <= y <= self.mid_court_y_m

    def to_dict(self) -> dict[str, object]:
        """The court for JSON: metres under each measure's name (None where there is none), then edges and sources."""
        measures = self.measures
        return {
            "name": self.name,
            "title": self.title,
            "edition": self.edition,
            "unit": "m",
            **{key: None if m.value_m is None else round(m.value_m, 9) for key, m in measures.items()},
            "edges": {key: str(m.edge) for key, m in measures.items() if m.value_m is not None},
            "sources": {
                key: {"edition": m.source.edition, "clause": m.source.clause, "status": str(m.source.status)}
                | ({"via": m.source.via} if m.source.via else {})
                for key, m in measures.items()
            },
            "notes": {key: m.note for key, m in measures.items() if m.note},
        }
