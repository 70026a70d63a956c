"""The ball moves before all have settled. Common practice, no source."""

from __future__ import annotations

import pytest

from backcut.errors import NotationError
from backcut.offence.action import Kind
from backcut.offence.situation import Doing

from .floor import FIVE, answer, book, played, ran, stands, troubles

AT_ONCE = book(when_to_fill="at once")
CUTTING = "1:R(cutting from T, left of the ball, because passed) 2:RW* 3:LW 4:RC 5:LC | pass by 1 from T | count 1"


def test_a_cutter_first_finishes_his_run_to_the_rim() -> None:
    [step] = played(book(), "RW>RC", CUTTING)
    assert answer(step, 1).kind is Kind.HOLD
    assert [beat.before.player(1).doing for beat in step.beats[:2]] == [Doing.CUTTING, Doing.LANE]


def test_the_first_cutter_out_exits_first_and_takes_the_hole_nearer_the_ball() -> None:
    step = played(book(), "T>RW, early RW>RC", FIVE)[-1]
    assert (stands(step)[1], stands(step)[2]) == ("LW", "LC")


def test_two_cutters_fill_two_holes() -> None:
    step = played(AT_ONCE, "T>RW, early RW>T", FIVE)[-1]
    assert (stands(step)[1], stands(step)[2]) == ("LC", "RC")
    assert troubles(step) == set()


def test_the_first_in_the_lane_counts_before_the_second() -> None:
    step = played(book(), "T>RW, early RW>RC", FIVE)[-1]
    orders = [(beat.before.player(1).order, beat.before.player(2).order) for beat in step.beats[1:4]]
    assert orders == [(0, 1)] * 3


def test_a_filler_aims_anew_at_each_pass() -> None:
    # 3 is on his way from the left wing to the top; the ball goes back to the left, and his hole is on the other side.
    steps = played(AT_ONCE, "T>RW, early RW>5", FIVE)
    assert ran(steps[0])[3] == ["fill T"]
    assert ran(steps[1])[3] == ["fill LW"]
    assert ran(steps[1])[2] == ["fill T"]


def test_a_filler_on_the_way_counts_at_the_spot_he_is_going_to() -> None:
    before = played(AT_ONCE, "T>RW, early RW>T", FIVE)[-1].before
    assert (before.player(3).at, before.player(3).doing) == ("T", Doing.FILLING)


def test_a_player_on_the_way_can_be_passed_to() -> None:
    step = played(AT_ONCE, "T>RW, early RW>T", FIVE)[-1]
    assert (step.event.kind, step.after.ball) == ("pass", 3)
    assert ran(step)[2] == ["cut R", "come out RC"]


def test_the_cutter_can_be_passed_to_before_he_is_out() -> None:
    step = played(book(), "T>RW, RW>cutter", FIVE)[-1]
    assert (step.event.kind, step.after.ball, stands(step)[1]) == ("pass to the cutter", 1, "R")


def test_of_two_cutters_the_first_is_the_one_meant() -> None:
    step = played(book(), "T>RW, early RW>RC, RC>cutter", FIVE)[-1]
    assert step.after.ball == 1


def test_where_nobody_cuts_there_is_no_cutter_to_pass_to() -> None:
    with pytest.raises(NotationError, match="Nobody is cutting"):
        played(book(), "RW>cutter", "1:T 2:RW* 3:LW 4:RC 5:LC")


def test_the_cutter_who_kicks_out_comes_out_like_any_cutter() -> None:
    step = played(book(), "T>RW, RW>cutter, 1>LW", FIVE)[-1]
    assert step.event.kind == "kick out"
    assert ran(step) == {1: ["come out RC"], 2: ["fill T"], 4: ["fill RW"]}


def test_after_a_skip_before_all_have_settled_the_line_closes_toward_the_ball() -> None:
    step = played(book(), "T>RW, early RW>LW", FIVE)[-1]
    assert ran(step) == {1: ["come out RC"], 2: ["fill T"], 4: ["fill RW"]}


def test_three_quick_passes_leave_every_spot_taken_once() -> None:
    steps = played(AT_ONCE, "T>RW, early RW>T, early T>LW, early LW>RW", FIVE)
    assert sorted(stands(steps[-1]).values()) == ["LC", "LW", "RC", "RW", "T"]
    assert all(troubles(step) == set() for step in steps)


def test_a_count_goes_no_higher_than_the_largest_a_book_can_ask_for() -> None:
    step = played(book(when_to_fill="count of two"), "T>RW", FIVE)[-1]
    assert max(beat.before.count for beat in step.beats) == 2


def test_who_catches_on_the_way_has_arrived() -> None:
    step = played(AT_ONCE, "T>RW, early RW>T", FIVE)[-1]
    catcher = step.beats[0].before.player(3)
    assert (catcher.doing, catcher.origin) == (Doing.STANDING, None)
