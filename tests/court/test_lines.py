"""The painted lines follow from the record, to the edge."""

import math
from itertools import pairwise

import pytest

from backcut.court.courts import COURTS, court
from backcut.court.lines import Arc, Line, LineKind, Straight, areas, lines, polyline
from backcut.court.record import Court
from backcut.court.tape import from_tape

FT = 0.3048


def of_kind(record: Court, kind: LineKind) -> list[Line]:
    return [line for line in lines(record) if line.kind is kind]


@pytest.mark.parametrize("record", COURTS.values(), ids=COURTS)
def test_every_line_is_one_connected_path(record: Court) -> None:
    for line in lines(record):
        for before, after in zip(line.pieces, line.pieces[1:], strict=False):
            assert math.dist(before.end_m, after.start_m) < 1e-9, line.kind


@pytest.mark.parametrize("record", COURTS.values(), ids=COURTS)
def test_the_outer_edge_of_the_painted_arc_is_the_number_in_the_book(record: Court) -> None:
    drawn = of_kind(record, LineKind.THREE_POINT)
    assert len(drawn) == record.has_arc
    for line in drawn:
        first, arc, last = line.pieces
        assert isinstance(arc, Arc)
        assert arc.radius_m + line.width_m / 2 == pytest.approx(record.arc_radius.m)
        corner = record.corner_three_from_centre_line.m
        assert first.start_m[0] + line.width_m / 2 == pytest.approx(corner)
        assert last.end_m[0] - line.width_m / 2 == pytest.approx(-corner)
        assert first.start_m[1] == pytest.approx(record.baseline_y_m)


@pytest.mark.parametrize("record", COURTS.values(), ids=COURTS)
def test_the_lane_ends_where_the_free_throw_line_ends(record: Court) -> None:
    (lane,) = of_kind(record, LineKind.LANE)
    points = polyline(lane)
    half = lane.width_m / 2
    assert max(x for x, _ in points) + half == pytest.approx(record.lane_width.m / 2)
    assert max(y for _, y in points) + half == pytest.approx(record.free_throw_y_m)
    corners = ((points[1][0] - half, points[1][1] + half), (points[2][0] + half, points[2][1] + half))
    assert corners[0] == pytest.approx(record.elbows_m[0])
    assert corners[1] == pytest.approx(record.elbows_m[1])


def test_the_boundary_lies_outside_the_floor() -> None:
    (boundary,) = of_kind(court("fiba"), LineKind.BOUNDARY)
    points = polyline(boundary)
    assert points[1] == pytest.approx((-7.525, -1.6))  # 15 m and 1.575 m to inner edges, line 5 cm: FIBA 2024, Art. 2
    assert points[-1] == pytest.approx((7.525, 14.0 - 1.575))


def test_the_no_charge_area_ends_at_the_face_of_the_board() -> None:
    # FIBA 2024, Art. 2.4.7: 1.25 m to the inner edge, then parallel lines of 0.375 m ending 1.20 m from the baseline
    (area,) = of_kind(court("fiba"), LineKind.NO_CHARGE)
    first, arc, _ = area.pieces
    assert isinstance(arc, Arc)
    assert isinstance(first, Straight)
    assert arc.radius_m - area.width_m / 2 == pytest.approx(1.25)
    assert math.dist(first.start_m, first.end_m) == pytest.approx(0.375)
    assert first.start_m[1] - court("fiba").baseline_y_m == pytest.approx(1.20)
    assert not of_kind(court("nfhs"), LineKind.NO_CHARGE)


def test_a_throw_in_mark_is_measured_to_its_far_edge() -> None:
    # FIBA 2024, Art. 2.4.6: outer edge 8.325 m from the baseline, so the near edge is at 8.275 m
    (mark,) = of_kind(court("fiba"), LineKind.THROW_IN)
    y = mark.pieces[0].start_m[1] + 1.575
    assert (y + mark.width_m / 2, y - mark.width_m / 2) == pytest.approx((8.325, 8.275))
    assert len(of_kind(court("nba"), LineKind.THROW_IN)) == 2


def test_lane_marks_stand_outside_the_lane_and_before_the_free_throw_line() -> None:
    for record in COURTS.values():
        for mark in of_kind(record, LineKind.LANE_MARK):
            (inner, y), (outer, _) = mark.pieces[0].start_m, mark.pieces[0].end_m
            assert abs(inner) == pytest.approx(record.lane_width.m / 2)
            assert abs(outer) > abs(inner)
            assert y + mark.width_m / 2 < record.free_throw_y_m


def test_a_short_school_floor_has_its_division_line_forty_feet_from_the_far_end() -> None:
    # NFHS 2018, Figure 1-1: under 74 ft, two division lines, each 40 ft from the farther baseline
    short = from_tape("short", length_m=70 * FT, width_m=50 * FT, arc_m="like", like="nfhs")
    (line,) = of_kind(short, LineKind.CENTRE_LINE)
    assert line.pieces[0].start_m[1] + 5.25 * FT == pytest.approx(30 * FT)
    (line,) = of_kind(court("nfhs"), LineKind.CENTRE_LINE)
    assert line.pieces[0].start_m[1] + 5.25 * FT == pytest.approx(42 * FT)


def test_the_ring_is_as_wide_inside_as_the_book_says() -> None:
    ring = of_kind(court("fiba"), LineKind.RING)[-1]
    (circle,) = ring.pieces
    assert isinstance(circle, Arc)
    assert 2 * (circle.radius_m - ring.width_m / 2) == pytest.approx(0.45)  # FIBA 2024, Art. 3


@pytest.mark.parametrize("record", COURTS.values(), ids=COURTS)
def test_the_drawing_is_the_same_in_the_mirror_but_for_a_throw_in_mark_on_one_side(record: Court) -> None:
    def corners(*, mirrored: bool) -> set[tuple[LineKind, float, float]]:
        return {
            (line.kind, round(-x if mirrored else x, 6) + 0.0, round(y, 6))
            for line in lines(record)
            if line.kind is not LineKind.THROW_IN
            for x, y in polyline(line)
        }

    assert corners(mirrored=True) == corners(mirrored=False)


def test_arcs_are_cut_finely_enough_for_the_eye() -> None:
    (line,) = of_kind(court("nba"), LineKind.THREE_POINT)
    _, arc, _ = line.pieces
    assert isinstance(arc, Arc)
    for a, b in pairwise(polyline(line, step_deg=3.0)[1:-1]):
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        assert arc.radius_m - math.hypot(*middle) < 0.005


def test_the_lane_can_be_filled_between_its_lines() -> None:
    floor, lane = areas(court("fiba"))
    assert floor.corners_m[0] == pytest.approx((-7.5, -1.575))
    assert lane.corners_m[2] == pytest.approx(
        (2.40, 4.175)
    )  # 4.90 m and 5.80 m less the 5 cm lines: FIBA 2024, Art. 2.4.3
