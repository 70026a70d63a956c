"""Lengths in and out of text."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.court.units import feet, floor_from_text, in_feet, in_metres, metres_from_text
from backcut.errors import CourtError


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("25.6 m", 25.6),
        ("25,6 m", 25.6),
        ("28", 28.0),
        ("305 cm", 3.05),
        ("3050mm", 3.05),
        ("84 ft", 25.6032),
        ("84 feet", 25.6032),
        ("19 ft 9 in", 6.0198),
        ("19' 9\"", 6.0198),
        ("19'9\"", 6.0198),
        ("22 ft 1 3/4 in", 6.75005),
        ("21 ft 7 7/8 in", 6.600825),
        ("40 1/8 in", 1.019175),
        ("0.5 ft", 0.1524),
    ],
)
def test_a_coach_writes_a_length_as_he_likes(text: str, metres: float | None) -> None:
    assert metres_from_text(text) == pytest.approx(metres, abs=1e-12)


@pytest.mark.parametrize(
    "text", ["", "wide", "ft", "12 ft 3 4 in", "-3 m", "nan", "inf", "3/0 in", "5 yd", "1e3", "in"]
)
def test_what_is_no_length_is_said_to_be_none(text: str) -> None:
    with pytest.raises(CourtError, match=r"is no length. Write metres or feet"):
        metres_from_text(text)


def test_feet_are_exact() -> None:
    # 1 ft = 0.3048 m, 1 in = 25.4 mm, exact (international yard and pound agreement, 1959)
    assert feet(1) == 0.3048
    assert feet(0, 1) == 0.0254
    assert feet(23, 9) == 7.239


def test_a_floor_is_two_lengths() -> None:
    assert floor_from_text("26x14") == (26.0, 14.0)
    assert floor_from_text("84 ft x 50 ft") == pytest.approx((25.6032, 15.24))
    with pytest.raises(CourtError, match="is no floor"):
        floor_from_text("26")


@given(st.integers(min_value=1, max_value=9000))
def test_feet_written_out_read_back_to_the_eighth_of_an_inch(eighths: int) -> None:
    length_m = eighths * 0.0254 / 8
    assert metres_from_text(in_feet(length_m)) == pytest.approx(length_m, abs=1e-9)


@given(st.integers(min_value=1, max_value=40_000))
def test_metres_written_out_read_back_to_the_millimetre(millimetres: int) -> None:
    assert metres_from_text(in_metres(millimetres / 1000)) == pytest.approx(millimetres / 1000, abs=1e-9)
