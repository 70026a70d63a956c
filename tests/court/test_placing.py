"""Where spots lie, how far apart they are, and what the coach may move."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.court.courts import COURTS, court
from backcut.court.placing import place, place_spots
from backcut.court.record import Court
from backcut.court.spacing import LEAST_M, MOST_M, Fit, even_ring_m, gaps_m
from backcut.court.spots import PERIMETER, Spot
from backcut.court.tape import from_tape
from backcut.court.usual import Steps
from backcut.errors import CourtError

FT = 0.3048
FIVE_OUT = (Spot.LC, Spot.LW, Spot.T, Spot.RW, Spot.RC)
FOUR_OUT = (Spot.LC, Spot.LW, Spot.LS, Spot.RS, Spot.RW, Spot.RC)


def youth() -> Court:
    """No arc, a ring of 15 ft; its free-throw line, 11 ft from the basket, is what makes the table's row consistent."""
    return from_tape("youth", length_m=84 * FT, width_m=50 * FT, free_throw_line_m=16.25 * FT, like="nfhs")


COURT_OF = {"fiba": lambda: court("fiba"), "nfhs": lambda: court("nfhs"), "youth": youth}

# computed from common-practice geometry (a step of 0.35 m behind the line, wing on the free-throw line extended, slot
# 2.4 m off the axis and 1.9 m on the youth ring, corner 0.3 m below the basket's level): feet, metres as a hand
# computation printed them; "*" marks the wing on a ring with slots, midway to the corner
TABLE: dict[str, dict[tuple[str, str], tuple[float, float | None]]] = {
    "fiba": {
        ("T", "RW"): (21.0, 6.39),
        ("RW", "RC"): (15.4, 4.69),
        ("LS", "RS"): (15.7, 4.80),
        ("RS", "RW"): (13.5, 4.12),
        ("RS", "RW*"): (14.5, None),  # the hand computation prints 4.40 m, found on a grid of 0.1 degrees; exact: 4.409
        ("RS", "RC"): (27.3, 8.33),
        ("T", "RC"): (33.3, 10.15),
        ("LW", "RW"): (37.4, 11.41),
    },
    "nfhs": {
        ("T", "RW"): (17.3, 5.27),
        ("RW", "RC"): (15.6, 4.76),
        ("LS", "RS"): (15.7, 4.80),
        ("RS", "RW"): (9.7, 2.94),
        ("RS", "RW*"): (12.7, 3.86),
        ("RS", "RC"): (24.2, 7.36),
        ("T", "RC"): (30.3, 9.22),
        ("LW", "RW"): (31.5, 9.59),
    },
    "youth": {
        ("T", "RW"): (12.9, 3.93),
        ("RW", "RC"): (12.7, 3.88),
        ("LS", "RS"): (12.5, 3.80),
        ("RS", "RW"): (6.8, 2.08),
        ("RS", "RW*"): (9.8, 2.99),
        ("RS", "RC"): (18.7, 5.71),
        ("T", "RC"): (23.5, 7.18),
        ("LW", "RW"): (23.6, 7.21),
    },
}
ROWS = [(name, pair, *printed) for name, rows in TABLE.items() for pair, printed in rows.items()]


@pytest.mark.parametrize(("name", "pair", "printed_ft", "printed_m"), ROWS)
def test_neighbours_stand_as_far_apart_as_geometry_says(
    name: str, pair: tuple[str, str], printed_ft: float, printed_m: float | None
) -> None:
    record = COURT_OF[name]()
    on_line, midway = place_spots(record, FIVE_OUT), place_spots(record, FOUR_OUT)
    a, b = (midway[Spot("RW")] if end == "RW*" else on_line[Spot(end)] for end in pair)
    distance_m = math.dist(a, b)
    assert distance_m / FT == pytest.approx(printed_ft, abs=0.0501)  # half of the last printed digit
    if printed_m is not None:
        assert distance_m == pytest.approx(printed_m, abs=0.00501)


def test_the_wing_below_a_slot_is_as_far_from_it_as_from_the_corner() -> None:
    spots = place_spots(court("fiba"), FOUR_OUT)
    up, down = math.dist(spots[Spot.RS], spots[Spot.RW]), math.dist(spots[Spot.RW], spots[Spot.RC])
    assert up == pytest.approx(down, abs=1e-6)
    assert up == pytest.approx(4.40, abs=0.01)  # the hand computation's grid of 0.1 degrees is worth 1 cm here


def test_every_perimeter_spot_is_about_a_step_behind_the_line() -> None:
    # computed from common-practice geometry: about 7.0-7.1 m on the FIBA court, 6.4 m on the NFHS court
    for spot in PERIMETER:
        assert 6.95 <= math.hypot(*place_spots(court("fiba"))[spot]) <= 7.1 + 1e-9
        assert math.hypot(*place_spots(court("nfhs"))[spot]) == pytest.approx(6.37, abs=0.01)


# five places every 45 degrees on the arc's outer edge, from the printed radii; the 15-18 ft rule:
# hoopthoughts.blogspot.com, "Thoughts on offensive spacing", 2011
@pytest.mark.parametrize(
    ("name", "follow_corner", "corner_wing_m", "wing_top_m"),
    [("fiba", False, 5.166, 5.166), ("nfhs", True, 4.607, 4.607), ("nba", True, 5.36, 5.54)],
)
def test_five_places_every_45_degrees_are_15_to_18_feet_apart(
    name: str, follow_corner: bool, corner_wing_m: float, wing_top_m: float
) -> None:
    gaps = gaps_m(even_ring_m(court(name), follow_corner=follow_corner))
    assert gaps == pytest.approx((corner_wing_m, wing_top_m, wing_top_m, corner_wing_m), abs=0.01)
    assert all(4.57 <= gap <= 5.55 for gap in gaps)


def test_places_on_the_arc_need_an_arc() -> None:
    with pytest.raises(CourtError, match='"mini" has no arc'):
        even_ring_m(court("mini"))


@pytest.mark.parametrize("record", COURTS.values(), ids=COURTS)
@pytest.mark.parametrize("ring", [FIVE_OUT, FOUR_OUT, (Spot.LW, Spot.T, Spot.RW)], ids=["five", "six", "three"])
def test_spots_are_mirror_images_inside_the_lines(record: Court, ring: tuple[Spot, ...]) -> None:
    spots = place_spots(record, ring)
    assert list(spots) == list(Spot)
    for spot, (x, y) in spots.items():
        assert spots[spot.mirror] == pytest.approx((-x, y))
        assert record.on_floor((x, y))
        assert math.copysign(1, x) == spot.side or x == 0 == spot.side


def test_inside_spots_follow_the_lane() -> None:
    for record in COURTS.values():
        spots = place_spots(record)
        assert (spots[Spot.LE], spots[Spot.RE]) == record.elbows_m
        assert spots[Spot.N] == (0.0, record.free_throw_y_m)
        half_lane = record.lane_width.m / 2
        for post in (Spot.RB, Spot.RM):
            assert spots[post][0] > half_lane  # outside the lane, or three seconds are called
        assert spots[Spot.RB][1] < spots[Spot.RM][1] < spots[Spot.RE][1]
        assert spots[Spot.RSC][0] == record.half_width_m / 2
        assert 0 < math.hypot(*spots[Spot.R]) <= 1.5  # cutters finish within 5 ft of the basket: common practice


def test_the_short_corner_is_inside_the_arc() -> None:
    for record in COURTS.values():
        if record.has_arc:
            assert math.hypot(*place_spots(record)[Spot.RSC]) < record.arc_radius.m


def test_a_coach_may_move_a_spot_and_the_pair_says_what_that_does() -> None:
    placing = place(court("fiba"), moved={Spot.RW: (2.0, 6.0)})
    assert placing.spots[Spot.RW] == (2.0, 6.0)
    pairs = {(pair.a, pair.b): pair for pair in placing.pairs}
    assert pairs[Spot.T, Spot.RW].fit is Fit.TOO_NEAR
    assert pairs[Spot.RW, Spot.RC].fit is Fit.TOO_FAR
    assert "Top to right wing" in str(placing.said)
    assert pairs[Spot.LC, Spot.LW].fit is Fit.FITS


@pytest.mark.parametrize("place_m", [(7.6, 0.0), (0.0, 12.5), (0.0, -1.6), (math.nan, 1.0), (math.inf, 0.0)])
def test_a_spot_cannot_be_moved_off_the_floor(place_m: tuple[float, float]) -> None:
    with pytest.raises(CourtError, match=r"The right wing cannot be at .* must lie on the floor"):
        place(court("fiba"), moved={Spot.RW: place_m})


def test_a_spot_cannot_be_moved_onto_another_of_the_ring() -> None:
    with pytest.raises(CourtError, match=r"The right wing cannot be at .* from the top"):
        place(court("fiba"), moved={Spot.RW: (0.5, 7.0)})


def test_a_ring_too_long_for_the_passes_is_shrunk_and_says_so() -> None:
    placing = place(court("fiba"), longest_pass_m=4.5)
    assert max(pair.distance_m for pair in placing.pairs) == pytest.approx(4.5)
    assert placing.scale == pytest.approx(4.5 / 6.389, abs=0.001)
    assert "shrunk to 70%" in str(placing.said)
    assert placing.spots[Spot.RE] == court("fiba").elbows_m[1]


def test_a_ring_within_the_passes_is_left_alone() -> None:
    placing = place(court("fiba"), longest_pass_m=6.5)
    assert (placing.scale, placing.said) == (1.0, None)


@pytest.mark.parametrize("longest_pass_m", [1.0, 0.0, -4.0, math.nan])
def test_a_pass_too_short_for_any_ring_is_refused(longest_pass_m: float) -> None:
    with pytest.raises(CourtError, match="ongest pass"):
        place(court("fiba"), longest_pass_m=longest_pass_m)


@pytest.mark.parametrize("ring", [(), (Spot.T, Spot.T), (Spot.RW, Spot.T), (Spot.T, Spot.RE)])
def test_a_ring_is_perimeter_spots_from_left_to_right(ring: tuple[Spot, ...]) -> None:
    with pytest.raises(CourtError, match="cannot be: a ring names perimeter spots"):
        place(court("fiba"), ring)


def test_a_court_without_an_arc_names_its_stand_in_ring() -> None:
    assert "stand-in ring of 4.572 m (15 ft)" in str(place(court("mini")).said)


def test_top_to_wing_fits_the_fiba_court_though_it_is_longer_than_common_practice_asks() -> None:
    pair = place(court("fiba")).pairs[1]
    assert (pair.fit, pair.common) == (Fit.FITS, Fit.TOO_FAR)


def test_a_wing_on_the_line_under_a_slot_is_too_near_on_a_school_floor() -> None:
    # slot to wing on the free-throw line extended, NFHS: 9.7 ft, computed from common-practice geometry
    on_line = place_spots(court("nfhs"), FIVE_OUT)[Spot.RW]
    pairs = place(court("nfhs"), FOUR_OUT, moved={Spot.RW: on_line}).pairs
    assert pairs[3].fit is Fit.TOO_NEAR
    assert place(court("nfhs"), FOUR_OUT).pairs[3].fit is Fit.FITS


@given(
    arc_m=st.none() | st.floats(4.8, 7.0),
    longest_pass_m=st.none() | st.floats(3.0, 8.0),
    ring=st.sampled_from([FIVE_OUT, FOUR_OUT]),
)
def test_bands_are_bands_on_every_court(arc_m: float, longest_pass_m: float, ring: tuple[Spot, ...]) -> None:
    placing = place(from_tape("gym", arc_m=arc_m), ring, longest_pass_m=longest_pass_m)
    for pair in placing.pairs:
        assert LEAST_M * placing.scale - 1e-9 <= pair.low_m or pair.low_m == pair.high_m
        assert pair.low_m <= pair.high_m <= MOST_M + 1e-9
        if longest_pass_m is not None:
            assert pair.distance_m <= longest_pass_m + 1e-9


def test_steps_can_be_other_than_the_usual() -> None:
    spots = place_spots(court("fiba"), steps=Steps(behind_arc_m=0.0))
    assert spots[Spot.T] == (0.0, 6.75)
