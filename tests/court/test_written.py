"""A court written in one line of a book."""

import pytest

from backcut.court.courts import court
from backcut.court.written import court_from_text
from backcut.errors import CourtError


def test_a_name_alone_is_the_rule_book() -> None:
    assert court_from_text("FIBA") == court("fiba")


def test_a_floor_alone_scales_the_paint() -> None:
    gym = court_from_text("fiba, 24 m x 13 m")
    assert (gym.length.m, gym.width.m) == (24.0, 13.0)
    assert gym.arc_radius.m == pytest.approx(6.75 * 24 / 28)


def test_a_gym_by_the_tape_keeps_what_was_not_measured() -> None:
    gym = court_from_text("FIBA, 84 ft x 50 ft, no arc, ring 9 ft")
    assert not gym.has_arc
    assert gym.basket_height.m == pytest.approx(9 * 0.3048)
    assert gym.lane_width == court("fiba").lane_width


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("moon", "fiba"),
        ("fiba, tiny", '"tiny" is no measure'),
        ("fiba, arc 9 m", "width"),
        ("fiba, ring abc", "no length"),
    ],
)
def test_what_cannot_be_a_court_is_said(text: str, says: str) -> None:
    with pytest.raises(CourtError, match=says):
        court_from_text(text)
