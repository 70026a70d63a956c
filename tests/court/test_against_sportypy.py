"""The courts against an independent drawing of the rule books: sportypy (test-only, GPL-3, nothing copied).

Its feet are rounded to four decimals, so lengths may differ by 0.00005 ft; where they differ by more, the reason stands
in `DIFFERENCES`, and a difference without a reason fails.
"""

import json
from importlib.resources import files
from typing import Any, cast

import pytest
from sportypy._feature_classes.basketball import RestrictedArc, ThreePointLine

from backcut.court.courts import COURTS, court
from backcut.court.lines import Arc, LineKind, lines

DIMENSIONS: dict[str, dict[str, Any]] = json.loads((files("sportypy") / "data/surface_dimensions.json").read_text())[
    "basketball"
]
LEAGUES = ("fiba", "nba", "wnba", "ncaa", "nfhs")
METRES = {"m": 1.0, "ft": 0.3048}

#: our measure, theirs, and what their number times this gives ours
SAME = {
    "length": ("court_length", 1.0),
    "width": ("court_width", 1.0),
    "line_width": ("line_thickness", 1.0),
    "basket_from_baseline": ("basket_center_to_baseline", 1.0),
    "board_from_baseline": ("backboard_face_to_baseline", 1.0),
    "arc_radius": ("basket_center_to_three_point_arc", 1.0),
    "corner_three_from_centre_line": ("basket_center_to_corner_three", 1.0),
    "free_throw_line_from_baseline": ("lane_length", 1.0),
    "free_throw_line_to_board": ("free_throw_line_to_backboard", 1.0),
    "free_throw_circle_radius": ("free_throw_circle_radius", 1.0),
    "lane_width": ("lane_width", 1.0),
    "no_charge_radius": ("restricted_arc_radius", 1.0),
    "centre_circle_radius": ("center_circle_radius", 1.0),
    "centre_line_overrun": ("division_line_extension", 1.0),
    "board_width": ("backboard_width", 1.0),
    "ring_inner_diameter": ("basket_ring_inner_radius", 2.0),
    "throw_in_from_baseline": ("inbounding_line_to_baseline", 1.0),
}

#: (court, their key): (the values they carry that ours does not, in their unit; why)
DIFFERENCES: dict[tuple[str, str], tuple[list[float], str]] = {
    ("ncaa", "basket_center_to_three_point_arc"): (
        [20.75],
        "the women's arc of before 2021-22, drawn as a second line",
    ),
    ("ncaa", "basket_center_to_corner_three"): ([20.75], "the same old women's arc, which had no straight part"),
    ("ncaa", "lane_width"): ([16.0], "the professional lane, drawn as a second one on shared floors"),
    ("nba", "lane_width"): ([12.0], "the college lane, drawn as a second one on shared floors"),
    ("wnba", "lane_width"): ([12.0], "the college lane, drawn as a second one on shared floors"),
    ("nfhs", "lane_width"): ([0.0], "an empty second lane"),
    ("nfhs", "lane_length"): ([0.0], "an empty second lane"),
    ("nba", "center_circle_radius"): (
        [2.1667],
        "the inner circle: 2 ft inside plus the line, theirs is to the outside",
    ),
    ("wnba", "center_circle_radius"): ([2.1667], "an inner circle that the WNBA book does not confirm"),
    ("fiba", "inbounding_line_to_baseline"): ([8.275], "the near edge; ours is the far one, a line of 5 cm farther"),
}


def theirs(name: str, key: str) -> list[float]:
    value = DIMENSIONS[name].get(key)
    values = value if isinstance(value, list) else [] if value is None else [value]
    return list(dict.fromkeys(cast(list[float], values)))


@pytest.mark.parametrize("name", LEAGUES)
def test_every_difference_to_another_drawing_of_the_rule_books_is_explained(name: str) -> None:
    unit_m = METRES[DIMENSIONS[name]["court_units"]]
    measures = court(name).measures
    compared = 0
    for ours, (key, times) in SAME.items():
        measure = measures.get(ours)
        value_m = measure.value_m if measure else None
        others, _ = DIFFERENCES.get((name, key), ([], ""))
        rest = [value for value in theirs(name, key) if value not in others]
        assert set(others) <= set(theirs(name, key)), f"{key}: the explanation is out of date"
        if value_m is None or (name, key) == ("fiba", "inbounding_line_to_baseline"):
            assert rest == [], key
            continue
        assert [value * times * unit_m for value in rest] == pytest.approx(
            [value_m], abs=times * 0.00005 * unit_m + 1e-9
        ), key
        compared += 1
    assert compared >= 14


def test_the_fiba_throw_in_mark_is_the_same_line_told_by_its_other_edge() -> None:
    (near_m,) = theirs("fiba", "inbounding_line_to_baseline")
    assert near_m + court("fiba").line_width.m == pytest.approx(court("fiba").measures["throw_in_from_baseline"].m)


def test_the_inner_centre_circle_is_told_by_its_other_edge() -> None:
    _, outer_ft = theirs("nba", "center_circle_radius")
    nba = court("nba")
    assert outer_ft * METRES["ft"] == pytest.approx(nba.centre_circle_inner_radius.m + nba.line_width.m, abs=0.0001)


@pytest.mark.parametrize("name", LEAGUES)
def test_the_painted_arc_covers_the_same_strip_of_floor(name: str) -> None:
    """Their outline of the three-point line, in our frame, against the two edges of ours."""
    dimensions = DIMENSIONS[name]
    unit_m = METRES[dimensions["court_units"]]
    feature = ThreePointLine(
        basket_center_to_baseline=dimensions["basket_center_to_baseline"],
        basket_center_to_corner_three=theirs(name, "basket_center_to_corner_three")[0],
        feature_radius=theirs(name, "basket_center_to_three_point_arc")[0],
        feature_thickness=dimensions["line_thickness"],
    )
    outline = feature._get_centered_feature()
    (line,) = [line for line in lines(court(name)) if line.kind is LineKind.THREE_POINT]
    first, arc, _ = line.pieces
    assert isinstance(arc, Arc)
    half = line.width_m / 2
    # their x runs along the floor away from mid-court, their y across it
    across_m, along_m = outline["y"].abs() * unit_m, -outline["x"] * unit_m
    on_arc = along_m > arc.start_m[1] + half
    distance_m = (across_m[on_arc] ** 2 + along_m[on_arc] ** 2) ** 0.5
    assert on_arc.sum() > 100
    assert ((distance_m - arc.radius_m).abs() - half).abs().max() < 0.0001
    straight = along_m <= court(name).baseline_y_m + 0.001
    assert straight.sum() >= 4
    assert ((across_m[straight] - first.start_m[0]).abs() - half).abs().max() < 0.0001


@pytest.mark.parametrize("name", ["fiba", "nba", "wnba", "ncaa"])
def test_the_no_charge_area_covers_the_same_strip_of_floor(name: str) -> None:
    """Their outline of the no-charge area, in our frame, against the two edges of ours."""
    dimensions = DIMENSIONS[name]
    unit_m = METRES[dimensions["court_units"]]
    feature = RestrictedArc(
        feature_radius=dimensions["restricted_arc_radius"],
        feature_thickness=dimensions["line_thickness"],
        backboard_to_center_of_basket=dimensions["basket_center_to_baseline"]
        - dimensions["backboard_face_to_baseline"],
    )
    outline = feature._get_centered_feature()
    (line,) = [line for line in lines(court(name)) if line.kind is LineKind.NO_CHARGE]
    straight, arc, _ = line.pieces
    assert isinstance(arc, Arc)
    # their origin is the face of the board
    across_m, along_m = outline["y"].abs() * unit_m, -outline["x"] * unit_m + court(name).board_y_m
    on_arc = along_m > 0.001
    distance_m = (across_m[on_arc] ** 2 + along_m[on_arc] ** 2) ** 0.5
    assert ((distance_m - arc.radius_m).abs() - line.width_m / 2).abs().max() < 0.0001
    assert along_m.min() == pytest.approx(straight.start_m[1], abs=0.0001)


def test_mini_is_the_only_court_they_do_not_draw() -> None:
    assert set(COURTS) - set(DIMENSIONS) == {"mini"}
