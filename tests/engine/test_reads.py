"""From places to reads: when a defender denies, sags or has jumped to the ball."""

from __future__ import annotations

import numpy as np
import pytest

from backcut.court.courts import COURTS, court
from backcut.court.placing import place_spots
from backcut.court.spots import Spot
from backcut.court.written import court_from_text
from backcut.engine.reads import HAND_IN_LANE_M, denied, guard, jumped, lane, past_mark_m
from backcut.offence.situation import Guard

FIBA = court("fiba")
SPOTS = {spot: np.array(place) for spot, place in place_spots(FIBA).items()}
TOP, WING, CORNER = SPOTS[Spot.T], SPOTS[Spot.RW], SPOTS[Spot.RC]


def test_the_passing_lane_from_top_to_wing_lies_up_to_40_cm_inside_the_fiba_arc() -> None:
    # Common practice, computed: why a hand in the lane and a foot past the arc are two different denials.
    middle = (TOP + WING) / 2
    assert past_mark_m(middle, FIBA) == pytest.approx(-0.4, abs=0.05)


def test_a_foot_past_the_arc_denies_where_a_hand_does_not() -> None:
    # Between man and mid-court: past the mark, but nowhere near the lane to the ball.
    behind = WING + np.array([0.6, 0.3])
    assert denied(TOP, WING, behind, FIBA, "foot")
    assert not denied(TOP, WING, behind + np.array([0.4, -0.5]), FIBA, "hand")


def test_a_hand_in_the_lane_denies_where_a_foot_does_not() -> None:
    in_lane = TOP + 0.75 * (WING - TOP)
    inside = in_lane * (6.2 / np.hypot(*in_lane))
    assert past_mark_m(inside, FIBA) < -0.3
    assert denied(TOP, WING, inside, FIBA, "hand")
    assert not denied(TOP, WING, inside, FIBA, "foot")
    assert denied(TOP, WING, inside, FIBA, "either")


def test_a_defender_who_sags_to_the_lane_denies_in_no_way() -> None:
    sagging = WING * 0.5
    assert not denied(TOP, WING, sagging, FIBA, "either")
    assert guard(TOP, WING, sagging, FIBA) is Guard.SAGS


def test_a_defender_between_man_and_basket_is_plain() -> None:
    assert guard(TOP, WING, WING * (1 - 1.2 / np.hypot(*WING)), FIBA) is Guard.PLAIN


def test_the_mark_can_be_moved_in_and_out() -> None:
    defender = WING * (6.3 / np.hypot(*WING))
    assert not denied(TOP, WING, defender, FIBA, "foot")
    assert denied(TOP, WING, defender, FIBA, "foot", mark_m=-0.5)


def test_in_the_corner_the_mark_is_the_straight_line() -> None:
    assert past_mark_m(np.array([6.6, -0.3]), FIBA) == pytest.approx(0.0)  # FIBA Art. 2: 6.60 m from the axis
    assert past_mark_m(np.array([0.0, 6.75]), FIBA) == pytest.approx(0.0)  # FIBA Art. 2.4.4: radius 6.75 m


@pytest.mark.parametrize("name", sorted(COURTS))
def test_every_court_has_a_mark_and_its_spots_lie_outside_it(name: str) -> None:
    ground = court(name)
    for spot in (Spot.T, Spot.LW, Spot.RW, Spot.LC, Spot.RC):
        assert past_mark_m(np.array(place_spots(ground)[spot]), ground) >= -1e-9


def test_without_an_arc_the_mark_is_the_stand_in_ring() -> None:
    gym = court_from_text("fiba, no arc")
    assert past_mark_m(np.array([0.0, 15 * 0.3048]), gym) == pytest.approx(0.0)  # 15 ft: common practice, no source


def test_one_moment_reads_like_a_row_of_many() -> None:
    rng = np.random.default_rng(7)
    ball, man, defender = (rng.uniform(-7, 7, size=(50, 5, 2)) for _ in range(3))
    for how in ("foot", "hand", "either"):
        batch = denied(ball, man, defender, FIBA, how)
        assert batch.shape == (50, 5)
        for i, j in ((0, 0), (17, 3), (49, 4)):
            assert batch[i, j] == denied(ball[i, j], man[i, j], defender[i, j], FIBA, how)


def test_reads_are_the_same_in_the_mirror() -> None:
    rng = np.random.default_rng(11)
    flip = np.array([-1.0, 1.0])
    ball, man, defender = (rng.uniform(-7, 7, size=(200, 2)) for _ in range(3))
    for how in ("foot", "hand", "either"):
        seen = denied(ball, man, defender, FIBA, how)
        assert (seen == denied(ball * flip, man * flip, defender * flip, FIBA, how)).all()


def test_the_lane_is_measured_off_and_along() -> None:
    off, share = lane(np.array([0.0, 0.0]), np.array([4.0, 0.0]), np.array([3.0, HAND_IN_LANE_M]))
    assert (float(off), float(share)) == pytest.approx((HAND_IN_LANE_M, 0.75))


def test_a_step_toward_the_ball_is_a_jump_and_standing_is_not() -> None:
    before = np.array([1.0, 5.0])
    assert jumped(before, before + (WING - before) / np.hypot(*(WING - before)) * 0.8, WING)
    assert not jumped(before, before, WING)


def test_an_unknown_way_to_see_a_denial_is_refused() -> None:
    with pytest.raises(ValueError, match="foot, hand or either"):
        denied(TOP, WING, WING, FIBA, "nose")
