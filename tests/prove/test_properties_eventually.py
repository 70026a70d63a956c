"""Holes are filled, three on one side spread again, the cutter leaves."""

from __future__ import annotations

import pytest
from tests.engine.floor import opened
from tests.prove.judged import CUT, FILL, HOLD, OUT, SKIP, began, causes, is_over, shown, written

from backcut.court.spots import Spot
from backcut.prove.depth import Depth
from backcut.prove.properties.holes_are_filled import hole
from backcut.prove.properties.three_on_one_side import crowded

PLAIN = written(CUT, OUT, FILL, HOLD)
FOUR = written(SKIP, CUT, OUT, FILL, HOLD, formation="four-out")


@pytest.mark.parametrize(
    ("situation", "where"),
    [
        ("1:T* 2:RW 3:LW 4:RC 5:LC", None),
        ("1:T* 2:RC 3:LW 4:LC", Spot.RW),
        ("1:RW* 2:RC 3:LW 4:LC", Spot.T),
        ("1:RW* 2:T(filling from LW) 3:LC", None),
        ("1:LC* 2:LW 3:T", None),
    ],
)
def test_a_hole_is_beside_the_ball_and_somebody_is_behind_it(situation: str, where: Spot | None) -> None:
    seen = shown(PLAIN, situation)
    assert hole(seen) is where
    assert is_over("holes are filled", seen) is (where is None)
    assert began("holes are filled", seen) == ([None] if where else [])


def test_there_is_no_hole_while_the_ball_is_inside_or_after_the_end() -> None:
    assert hole(shown(FOUR, "1:LS 2:RW 3:LW 5:Rb*")) is None
    assert hole(shown(PLAIN, "1:T* 2:RC 3:LW 4:LC | ended shot")) is None


def test_a_hole_that_is_left_because_somebody_forgets_is_no_mistake_of_the_book() -> None:
    seen = shown(PLAIN, "1:T* 2:RC(forgets) 3:LW 4:LC")
    assert hole(seen) is Spot.RW
    assert began("holes are filled", seen) == []


def test_a_hole_stays_where_two_hold_and_the_ball_cannot_move() -> None:
    book = written(HOLD, lines=["Players: 2", "Start: 1 left corner, ball; 2 top"])
    said = "The hole beside the ball stays, and the player two passes away is behind it."
    assert said in causes("holes are filled", book)


def test_the_school_team_fills_every_hole() -> None:
    assert causes("holes are filled", opened("school-team"), Depth.SETTLED, Depth.DENIED) == set()


@pytest.mark.parametrize(
    ("situation", "side"),
    [
        ("1:LW* 2:LC 3:LS 4:RS 5:Rb", -1),
        ("1:LS* 2:RS 3:LW 4:RW 5:Rb", 0),
        ("1:RW* 2:RC 3:RS(filling from LS) 4:LS 5:Lb", 1),
        ("1:LW* 2:LC 3:LS 4:RS 5:RW", 0),
        ("1:LW* 2:LC 3:T 4:R(cutting from LS, left of the ball, because passed) 5:Rb", 0),
    ],
)
def test_three_on_one_side_are_a_crowd_where_the_other_has_two_fewer(situation: str, side: int) -> None:
    seen = shown(FOUR, situation)
    assert crowded(seen) == side
    assert began("three on one side", seen) == ([None] if side else [])
    assert is_over("three on one side", seen) is (side == 0)


def test_in_four_out_a_pass_across_spreads_three_on_one_side_again() -> None:
    assert causes("three on one side", FOUR) == set()


def test_in_four_out_three_stay_on_one_side_as_long_as_the_ball_is_skipped_across_and_back() -> None:
    assert causes("three on one side", FOUR, whatever=1) >= {"Three stay on one side, with the ball on that side."}


def test_three_who_hold_on_one_side_stay_there() -> None:
    start = "Start: 1 left wing, ball; 2 left corner; 3 left slot; 4 right block"
    book = written(HOLD, formation="four-out", lines=["Players: 3", start])
    assert "Three stay on one side, with the ball on that side." in causes("three on one side", book)


def test_a_cutter_is_out_of_the_lane_on_the_ring_or_with_the_ball() -> None:
    lane = "1:R(in the lane from T, left of the ball, because passed) 2:RW{} 3:LW 4:RC 5:LC{}"
    seen = shown(PLAIN, lane.format("*", ""))
    assert began("the cutter leaves", seen) == [1]
    assert not is_over("the cutter leaves", seen, 1)
    assert is_over("the cutter leaves", shown(PLAIN, "1:T(coming out from R) 2:RW* 3:LW 4:RC 5:LC"), 1)
    caught = shown(PLAIN, "1:R*(in the lane from T, left of the ball, because passed) 2:RW 3:LW 4:RC 5:LC")
    assert began("the cutter leaves", caught) == []
    assert is_over("the cutter leaves", caught, 1)


def test_cutters_always_leave_the_lane_under_the_shipped_books() -> None:
    for name in ("first-month", "school-team", "two-bigs"):
        assert causes("the cutter leaves", opened(name)) == set()


def test_a_driver_who_forgets_after_every_pass_stays_in_the_lane_as_long_as_that_goes_on() -> None:
    assert causes("the cutter leaves", PLAIN, whatever=1) == set()
    assert causes("the cutter leaves", PLAIN, Depth.DISTURBED) == set()
    forgetful = causes("the cutter leaves", PLAIN, Depth.DISTURBED, whatever=1)
    assert forgetful == {"The player who kicked out never leaves the lane."}
