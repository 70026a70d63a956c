"""Gyms as a coach measures them, and courts on other floors."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.court.courts import COURTS, court
from backcut.court.measure import Status
from backcut.court.placing import place
from backcut.court.tape import from_tape, scaled
from backcut.errors import CourtError


def test_a_gym_keeps_what_was_measured_and_takes_the_rest_from_the_court_it_is_like() -> None:
    gym = from_tape("old gym", length_m=24.0, width_m=13.0, arc_m=5.9, basket_height_m=2.9, like="nfhs")
    assert (gym.length.m, gym.width.m, gym.arc_radius.m, gym.basket_height.m) == (24.0, 13.0, 5.9, 2.9)
    assert gym.arc_radius.source.status is Status.TAPE
    assert gym.lane_width == court("nfhs").lane_width


def test_a_gym_without_an_arc_has_none_and_no_corner() -> None:
    gym = from_tape("hall", length_m=26.0, width_m=14.0, arc_m=None)
    told = gym.to_dict()
    assert told["arc_radius"] is told["corner_three_from_centre_line"] is told["straight_part_from_baseline"] is None


def test_an_arc_too_wide_for_straight_parts_of_its_own_gets_them_as_far_from_the_sideline_as_elsewhere() -> None:
    gym = from_tape("gym", length_m=28.0, width_m=15.0, arc_m=7.2, like="fiba")
    assert gym.corner_three_from_centre_line.m == pytest.approx(6.60)  # 0.90 m inside: FIBA 2024, Art. 2.4.4
    assert gym.straight_part_from_baseline.m == pytest.approx(1.575 + math.sqrt(7.2**2 - 6.6**2))


CONTRADICTIONS = {
    "an arc wider than the floor": ({"width_m": 14.0, "arc_m": 8.0}, ["arc 8.00 m", "width 14.00 m"]),
    "a corner farther than the arc": ({"arc_m": 6.0, "corner_m": 6.4}, ["corner distance 6.40 m", "arc 6.00 m"]),
    "a corner outside the floor": (
        {"width_m": 14.0, "arc_m": 7.2, "corner_m": 7.1},
        ["corner distance 7.10 m", "width 14.00 m"],
    ),
    "a lane wider than the floor": (
        {"width_m": 9.0, "arc_m": None, "lane_width_m": 9.5},
        ["lane width 9.50 m", "width 9.00 m"],
    ),
    "a free-throw line beyond mid-court": (
        {"length_m": 14.0, "width_m": 13.9, "arc_m": None, "free_throw_line_m": 7.5},
        ["free-throw line from the baseline 7.50 m", "length 14.00 m"],
    ),
    "a free-throw line behind the basket": (
        {"arc_m": None, "free_throw_line_m": 1.5},
        ["free-throw line from the baseline 1.50 m", "basket from baseline 1.575 m"],
    ),
    "a basket behind the board": (
        {"arc_m": None, "basket_from_baseline_m": 1.1},
        ["basket from baseline 1.10 m", "board from baseline 1.20 m"],
    ),
    "an arc beyond mid-court": (
        {"length_m": 15.0, "width_m": 14.9, "arc_m": 6.75},
        ["arc 6.75 m", "length 15.00 m"],
    ),
    "a floor wider than long": (
        {"length_m": 14.0, "width_m": 15.0, "arc_m": None},
        ["width 15.00 m", "length 14.00 m"],
    ),
    "a free-throw line beyond the arc": (
        {"arc_m": 4.0, "free_throw_line_m": 6.0},
        ["free-throw line from the baseline 6.00 m", "arc 4.00 m"],
    ),
    "feet taken for metres": ({"length_m": 84.0, "arc_m": None}, ["length is 84 m", "84 ft is 25.603 m"]),
    "a ring ten metres up": ({"arc_m": None, "basket_height_m": 10.0}, ["basket height is 10 m", "10 ft is 3.048 m"]),
    "a corner without an arc": ({"arc_m": None, "corner_m": 6.0}, ["corner distance 6.00 m", "no arc"]),
    "no length at all": ({"length_m": 0.0, "arc_m": None}, ["length is 0 m"]),
    "a length that is no number": ({"length_m": math.nan, "arc_m": None}, ["length is nan m"]),
}


@pytest.mark.parametrize(("taped", "named"), CONTRADICTIONS.values(), ids=CONTRADICTIONS)
def test_a_tape_that_contradicts_itself_is_told_so_with_both_measures(taped: dict[str, Any], named: list[str]) -> None:
    with pytest.raises(CourtError) as caught:
        from_tape("gym", **taped)
    for words in named:
        assert words in str(caught.value)


def test_all_contradictions_are_told_at_once() -> None:
    with pytest.raises(CourtError) as caught:
        from_tape("gym", arc_m=5.0, corner_m=6.0, lane_width_m=16.0, free_throw_line_m=15.0)
    told = str(caught.value)
    for words in ("corner distance 6.00 m", "lane width 16.00 m", "free-throw line from the baseline 15.00 m"):
        assert words in told
    assert told.count("; ") >= 3


SANE = {
    "length_m": st.floats(20.0, 30.0),
    "width_m": st.floats(14.0, 16.0),
    "arc_m": st.none() | st.floats(4.8, 6.9),
    "basket_height_m": st.floats(1.8, 3.1),
    "like": st.sampled_from(sorted(COURTS)),
}


@given(**SANE)
def test_a_sane_gym_is_a_court_and_has_room_for_every_spot(**taped: Any) -> None:
    gym = from_tape("gym", **taped)
    assert gym.has_arc == (taped["arc_m"] is not None)
    for spot, point in place(gym).spots.items():
        assert gym.on_floor(point), spot


@given(
    width_m=st.floats(9.0, 16.0),
    over_m=st.floats(0.01, 3.0),
    like=st.sampled_from(sorted(COURTS)),
)
def test_an_arc_wider_than_the_floor_never_passes(width_m: float, over_m: float, like: str) -> None:
    with pytest.raises(CourtError, match="is wider than the floor"):
        from_tape("gym", length_m=30.0, width_m=width_m, arc_m=width_m / 2 + over_m, like=like)


@given(arc_m=st.floats(4.9, 6.5), over_m=st.floats(0.01, 1.0))
def test_a_corner_farther_than_the_arc_never_passes(arc_m: float, over_m: float) -> None:
    with pytest.raises(CourtError, match=r"corner distance .* is more than arc"):
        from_tape("gym", arc_m=arc_m, corner_m=arc_m + over_m)


def test_a_smaller_floor_shrinks_the_paint_and_leaves_the_basket() -> None:
    small = scaled(court("fiba"), 26.0, 14.0)
    factor = 26 / 28
    assert small.arc_radius.m == pytest.approx(6.75 * factor)
    assert small.lane_width.m == pytest.approx(4.90 * factor)
    assert small.free_throw_line_from_baseline.m == pytest.approx(1.20 + 4.60 * factor)
    assert (small.basket_from_baseline, small.basket_height) == (
        court("fiba").basket_from_baseline,
        court("fiba").basket_height,
    )
    assert small.lane_width.source.status is Status.SCALED


def test_a_larger_floor_leaves_the_paint_alone() -> None:
    assert scaled(court("nfhs"), 30.0, 17.0).arc_radius == court("nfhs").arc_radius


# FIBA Mini-Basketball Rules 2005, Art. 2: 28 x 15 m, scaled from 26 x 14 m down to 12 x 7 m, free throw always 4.00 m
@pytest.mark.parametrize("floor", [(26.0, 14.0), (20.0, 11.0), (12.0, 7.0)])
def test_mini_keeps_its_free_throw_line_on_every_floor(floor: tuple[float, float]) -> None:
    small = scaled(court("mini"), *floor)
    assert (small.length.m, small.width.m) == floor
    assert small.free_throw_line_to_board.m == 4.00
    placing = place(small)
    for spot, point in placing.spots.items():
        assert small.on_floor(point), spot


@pytest.mark.parametrize("floor", [(11.0, 7.0), (12.0, 6.5), (30.0, 15.0)])
def test_mini_is_no_smaller_or_larger_than_its_rules_allow(floor: tuple[float, float]) -> None:
    with pytest.raises(CourtError, match="allows 28 x 15 m down to 12 x 7 m"):
        scaled(court("mini"), *floor)
