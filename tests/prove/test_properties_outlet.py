"""An outlet for the ball, and somebody back."""

from __future__ import annotations

from tests.engine.floor import opened
from tests.prove.judged import BACK, CUT, FILL, HOLD, OUT, SHOT, causes, here, shown, written

from backcut.prove.depth import Depth

NOBODY_FILLS = written(CUT, "When my cut is over, I come out to the end of the line.", HOLD, formation="four-out")
DENIED_BOTH = "With both players one pass away denied, the ball has no other way on."


def test_where_nobody_fills_the_spot_beside_the_ball_stays_empty() -> None:
    found = causes("an outlet for the ball", NOBODY_FILLS)
    assert "The spot next to the ball stays empty, and the player two passes away stays behind it." in found


def test_a_coach_who_counts_skip_passes_sees_no_hole_there() -> None:
    assert causes("an outlet for the ball", NOBODY_FILLS, skips=1) == set()


def test_where_everybody_fills_the_ball_has_a_pass_on_each_side() -> None:
    assert causes("an outlet for the ball", opened("school-team"), Depth.SETTLED, Depth.DENIED) == set()


def test_a_book_without_a_back_cut_has_no_way_on_when_both_are_denied() -> None:
    found = causes("an outlet for the ball", written(CUT, OUT, FILL, HOLD), Depth.DENIED)
    assert found == {DENIED_BOTH, "With the only player one pass away denied, the ball has no other way on."}


def test_a_back_cut_is_a_way_on() -> None:
    assert causes("an outlet for the ball", written(BACK, CUT, OUT, FILL, HOLD), Depth.DENIED) == set()


def test_one_who_dribbles_at_the_denied_has_a_way_on() -> None:
    dribbles = "When I have the ball and both players beside me are denied, I dribble at one of them."
    denied = "1:T* 2:RW! 3:LW! 4:RC 5:LC"
    assert [told.cause for told in here("an outlet for the ball", shown(written(CUT, HOLD), denied))] == [DENIED_BOTH]
    assert here("an outlet for the ball", shown(written(dribbles, CUT, HOLD), denied)) == []


def test_one_inside_is_a_way_on() -> None:
    inside = "1:LS* 2:RS! 3:LW! 4:RW 5:Rb"
    assert here("an outlet for the ball", shown(written(CUT, HOLD, formation="four-out"), inside)) == []


def test_one_who_forgets_to_move_up_is_no_hole_of_the_book() -> None:
    book, hole = written(CUT, OUT, FILL, HOLD), "1:T* 2:RC{} 3:LW 4:LC"
    seen = shown(book, hole.format("(forgets)"))
    assert seen.settled
    assert here("an outlet for the ball", seen) == []
    assert here("an outlet for the ball", shown(written(CUT, OUT, HOLD), hole.format(""))) != []


def test_the_first_month_has_nobody_back_when_the_top_shoots() -> None:
    assert "Nobody gets back when a shot goes up." in causes("somebody back", opened("first-month"))


def test_the_school_team_always_has_somebody_back() -> None:
    assert causes("somebody back", opened("school-team"), Depth.SETTLED, Depth.DENIED) == set()


def test_after_a_kick_out_nobody_is_back_while_two_are_counted() -> None:
    counted = "When the next spot toward the ball is empty, I fill it after a count of two."
    kicked = "1:R(in the lane from T, left of the ball, because kicked out) 2:RW* 3:LW | kick out by 1 from R just now"
    (told,) = here("somebody back", shown(written(CUT, OUT, counted, HOLD), kicked))
    assert told.cause == "Nobody is back at a kick-out, and nobody is told to go."
    assert here("somebody back", shown(written(CUT, OUT, FILL, HOLD), kicked)) == []


def test_with_all_in_wings_and_corners_nobody_is_back() -> None:
    low = "1:RW* 2:LW 3:LC 4:RC"
    assert [told.cause for told in here("somebody back", shown(written(HOLD), low))] == [
        "Nobody is back when all stand."
    ]
    assert here("somebody back", shown(written(HOLD), "1:RW* 2:T 3:LC 4:RC")) == []


def test_the_shooter_alone_at_the_top_is_nobody_back() -> None:
    shot = "1:T* 2:RW 3:LW 4:RC 5:LC | ended shot"
    assert len(here("somebody back", shown(written(HOLD), shot))) == 1
    assert here("somebody back", shown(written(SHOT, HOLD), shot)) == []
