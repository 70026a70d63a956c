"""The ball is dribbled at a player. Common practice, no source."""

from __future__ import annotations

import pytest

from backcut.errors import MoveError
from backcut.offence.action import Kind

from .floor import FIVE, FOUR, answer, book, excepting, played, ran, stands, troubles

HAND_OFF = book(dribble_at="hand-off")
SLIDE = book(dribble_at="slide on")


def test_dribbled_at_i_back_cut_and_the_line_behind_the_ball_moves_up() -> None:
    [step] = played(book(), "dribble 1>RW", FIVE)
    assert ran(step) == {
        1: ["dribble at RW"],
        2: ["back cut R", "come out LC"],
        3: ["fill T"],
        5: ["fill LW"],
    }
    assert step.after.ball == 1


def test_the_player_on_the_other_side_of_the_ball_is_not_asked() -> None:
    [step] = played(book(), "dribble 1>RW", FIVE)
    assert answer(step, 3).kind is Kind.HOLD


def test_dribbled_at_in_the_corner_i_go_too() -> None:
    [step] = played(book(), "dribble 2>RC", "1:T 2:RW* 3:LW 4:RC 5:LC")
    assert ran(step)[4] == ["back cut R", "come out LC"]


def test_with_room_behind_him_who_was_dribbled_at_comes_out_on_the_far_side_of_the_dribble() -> None:
    [step] = played(book("four-out"), "dribble 1>LW", FOUR)
    assert ran(step)[3] == ["back cut R", "come out LC"]


def test_after_a_hand_off_the_giver_answers_like_a_passer() -> None:
    [step] = played(HAND_OFF, "dribble 1>RW", FIVE)
    assert (step.after.ball, stands(step)[2]) == (2, "T")
    assert ran(step)[1] == ["dribble at RW", "cut R", "come out RC"]
    assert ran(step)[4] == ["fill RW"]


def test_who_gave_the_ball_by_hand_in_the_corner_answers_like_a_corner_passer() -> None:
    hold = book(dribble_at="hand-off", corner_passer="hold")
    [step] = played(hold, "dribble 2>RC", "1:T 2:RW* 3:LW 4:RC 5:LC")
    assert (step.after.ball, stands(step)[2], stands(step)[4]) == (4, "RC", "RW")


def test_sliding_on_pushes_the_next_one_too_and_who_has_no_room_goes_through_the_lane() -> None:
    [step] = played(SLIDE, "dribble 1>RW", FIVE)
    assert ran(step)[2] == ["slide on RC"]
    assert ran(step)[4] == ["back cut R", "come out LC"]


def test_sliding_on_where_there_is_room_sends_nobody_to_the_rim() -> None:
    [step] = played(book("four-out", dribble_at="slide on"), "dribble 2>RW", "1:LS 2:RS* 3:LW 4:RW 5:Lb")
    assert "R" not in {run.split()[-1] for runs in ran(step).values() for run in runs}
    assert stands(step) | {5: ""} == {1: "RS", 2: "RW", 3: "LS", 4: "RC", 5: ""}


def test_a_dribble_to_an_empty_spot_only_draws_the_line_behind_it() -> None:
    [step] = played(book("three-out"), "dribble 2>RC", "1:T 2:RW* 3:LW 4:Rb 5:Le")
    assert (stands(step)[2], stands(step)[1], stands(step)[3]) == ("RC", "RW", "T")


def test_a_dribble_goes_to_the_next_spot_only() -> None:
    with pytest.raises(MoveError, match="the next spots are LW and RW"):
        played(book(), "dribble 1>RC", FIVE)


def test_only_the_player_with_the_ball_dribbles() -> None:
    with pytest.raises(MoveError, match="2 cannot dribble: 1 has the ball"):
        played(book(), "dribble 2>RC", FIVE)


def test_a_dribble_ends_every_denial() -> None:
    [_, step] = played(book(), "deny 5, dribble 1>RW", FIVE)
    assert {str(player.guard) for player in step.after.players} == {"plain"}


def test_who_forgets_to_leave_keeps_the_ball_where_it_was_and_it_is_said() -> None:
    step = played(book(), "dribble 1>RW, forget 2", FIVE)[-1]
    assert stands(step) == {1: "T", 2: "RW", 3: "LW", 4: "RC", 5: "LC"}
    assert troubles(step) == {("clash", 1)}


def test_a_book_without_an_answer_to_the_dribble_says_so() -> None:
    [step] = played(book("first-month"), "dribble 1>RW", FIVE)
    assert troubles(step) == {("clash", 1)}


def test_a_dribble_before_the_hole_is_filled_takes_the_hole_and_the_filler_stays() -> None:
    # A player on the way counts at the spot he is going to: so does the one with the ball.
    step = played(book(), "T>RW, early dribble 2>T", FIVE)[-1]
    assert troubles(step) == set()
    assert stands(step)[2] == "T"


def test_who_never_fills_a_corner_does_not_slide_into_one() -> None:
    this = excepting(book("four-out", dribble_at="slide on"), never_corner=4)
    [step] = played(this, "dribble 2>RW", "1:LS 2:RS* 3:LW 4:RW 5:Lb")
    assert stands(step)[4] != "RC"
