"""Courts that no rule book has: a rule book's court on another floor, and a gym as the coach's tape measures it."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from backcut.court.check import checked
from backcut.court.courts import court as named_court
from backcut.court.measure import Edge, Measure, Source, Status
from backcut.court.record import Court, LaneMark, LaneMarks
from backcut.court.units import in_metres
from backcut.errors import CourtError

_TAPE = "the coach's tape"
#: what is painted shrinks with the floor; basket, board and line width are things and stay as they are
_PAINTED = (
    "arc_radius",
    "corner_three_from_centre_line",
    "free_throw_line_to_board",
    "free_throw_circle_radius",
    "lane_width",
    "no_charge_radius",
    "centre_circle_radius",
    "centre_circle_inner_radius",
)


def scaled(court: Court, length_m: float, width_m: float) -> Court:
    """A court on a floor of another size, inner edges, metres.

    What is painted shrinks by the smaller of the two ratios and never grows: a lane on a larger floor is the same lane.
    Board, basket, ring and line width stay, and so does what the rule book keeps for every size (the free-throw line of
    mini). Raises: CourtError if the rule book forbids the size, or if the measures contradict each other.
    """
    if court.floors_m and not _allowed(court.floors_m, length_m, width_m):
        (most_l, most_w), (least_l, least_w) = court.floors_m
        raise CourtError(
            f'The court "{court.name}" cannot be {length_m:g} x {width_m:g} m: {court.edition} allows '
            f"{most_l:g} x {most_w:g} m down to {least_l:g} x {least_w:g} m."
        )
    floor = replace(
        court,
        title=f"{court.title}, scaled to {length_m:g} x {width_m:g} m",
        length=_taped(length_m, court.length, "the floor asked for"),
        width=_taped(width_m, court.width, "the floor asked for"),
    )
    factor = min(length_m / court.length.m, width_m / court.width.m)
    return checked(_shrunk(floor, factor) if 0.0 < factor < 1.0 else floor)


def from_tape(
    name: str,
    *,
    length_m: float | None = None,
    width_m: float | None = None,
    arc_m: float | Literal["like"] | None = None,
    corner_m: float | None = None,
    basket_height_m: float | None = None,
    free_throw_line_m: float | None = None,
    lane_width_m: float | None = None,
    board_from_baseline_m: float | None = None,
    basket_from_baseline_m: float | None = None,
    like: str | Court = "fiba",
) -> Court:
    """A gym as the coach measured it; what was not measured is taken as on the court it is like.

    Parameters, all metres: length and width between inner edges; `arc_m` from under the basket to the outer edge, None
    where no arc is painted, "like" to take it over; `corner_m` from the axis to the outer edge of the straight part, by
    default as far from the sideline as on the other court, and never more than the arc; the free-throw line's far edge,
    the board's face and the basket's centre from the inner edge of the baseline; the lane between outer edges.
    Raises: CourtError naming every contradiction and both measures of each.
    """
    base = named_court(like) if isinstance(like, str) else like
    court = replace(
        base,
        name=name,
        title=f"{name}, measured; the rest as {base.title}",
        edition=f"tape; the rest {base.edition}",
        length=_taped(length_m, base.length),
        width=_taped(width_m, base.width),
        basket_height=_taped(basket_height_m, base.basket_height),
        lane_width=_taped(lane_width_m, base.lane_width),
        board_from_baseline=_taped(board_from_baseline_m, base.board_from_baseline),
        basket_from_baseline=_taped(basket_from_baseline_m, base.basket_from_baseline),
        free_throw_line_from_baseline=_taped(free_throw_line_m, base.free_throw_line_from_baseline),
    )
    court = _with_free_throw_line(court, base, moved=free_throw_line_m is not None)
    return checked(_with_arc(court, base, arc_m, corner_m))


def _allowed(floors_m: tuple[tuple[float, float], tuple[float, float]], length_m: float, width_m: float) -> bool:
    (most_l, most_w), (least_l, least_w) = floors_m
    return least_l <= length_m <= most_l and least_w <= width_m <= most_w


def _taped(value_m: float | None, like: Measure, clause: str = _TAPE) -> Measure:
    if value_m is None:
        return like
    edge = Edge.OUTER if like.value_m is None else like.edge
    return Measure(float(value_m), edge, Source("", clause, Status.TAPE), "")


def _shrunk(court: Court, factor: float) -> Court:
    why = f"times {factor:.4f}"
    painted = {name: getattr(court, name).times(factor, why) for name in _PAINTED if name not in court.kept_when_scaled}
    board_m = court.board_from_baseline.m

    def inward(from_baseline_m: float) -> float:
        return board_m + (from_baseline_m - board_m) * factor

    smaller = replace(court, **painted)
    line = court.free_throw_line_from_baseline
    if "free_throw_line_from_baseline" not in court.kept_when_scaled:
        line = replace(line.times(1.0, why), value_m=board_m + smaller.free_throw_line_to_board.m)
    marks = court.lane_marks and LaneMarks(
        tuple(LaneMark(inward(m.near_m), inward(m.far_m), m.depth_m) for m in court.lane_marks.marks),
        inward(court.lane_marks.block_m),
        replace(court.lane_marks.source, status=Status.SCALED, via=why),
    )
    throw_in = court.throw_in and replace(court.throw_in, from_baseline=court.throw_in.from_baseline.times(factor, why))
    return replace(smaller, free_throw_line_from_baseline=line, lane_marks=marks, throw_in=throw_in)


def _with_free_throw_line(court: Court, base: Court, *, moved: bool) -> Court:
    to_board = court.free_throw_line_to_board
    if moved or court.board_from_baseline is not base.board_from_baseline:
        distance_m = court.free_throw_line_from_baseline.m - court.board_from_baseline.m
        to_board = Measure(
            distance_m, to_board.edge, Source("", "free-throw line less board", Status.COMPUTED), to_board.note
        )
    marks = court.lane_marks
    if marks:
        kept = tuple(mark for mark in marks.marks if mark.far_m < court.free_throw_line_from_baseline.m)
        marks = replace(marks, marks=kept) if kept else None
    return replace(court, free_throw_line_to_board=to_board, lane_marks=marks)


def _with_arc(court: Court, base: Court, arc_m: float | Literal["like"] | None, corner_m: float | None) -> Court:
    no_arc = arc_m is None or (arc_m == "like" and not base.has_arc)
    if no_arc and corner_m is not None:
        raise CourtError(
            f'The court "{court.name}" cannot be: corner distance {in_metres(corner_m)} but no arc. '
            "Give the arc, or leave the corner out."
        )
    if arc_m == "like":
        return replace(court, corner_three_from_centre_line=_taped(corner_m, base.corner_three_from_centre_line))
    if arc_m is None:
        gone = Measure(None, Edge.NO_LINE, Source("", _TAPE, Status.TAPE), "no arc is painted")
        return replace(court, arc_radius=gone, corner_three_from_centre_line=gone)
    arc = _taped(float(arc_m), base.arc_radius)
    if corner_m is not None:
        return replace(court, arc_radius=arc, corner_three_from_centre_line=_taped(corner_m, base.arc_radius))
    return replace(court, arc_radius=arc, corner_three_from_centre_line=_usual_corner(court, base, arc))


def _usual_corner(court: Court, base: Court, arc: Measure) -> Measure:
    """Straight lines as far from the sideline as on the other court; an arc that fits without them has none."""
    shortened = base.has_arc and base.corner_three_from_centre_line.m < base.arc_radius.m
    beside_line_m = base.half_width_m - base.corner_three_from_centre_line.m if shortened else 0.0
    corner_m = arc.m
    if arc.m <= court.half_width_m:  # a wider arc is a contradiction, and the check must see it
        corner_m = min(arc.m, court.half_width_m - beside_line_m)
    why = f"{in_metres(beside_line_m)} inside the sideline as on {base.title}" if corner_m < arc.m else "the arc itself"
    return Measure(corner_m, Edge.OUTER, Source("", why, Status.COMPUTED))
