"""Denied: the back cut, two passes away, both neighbours, and chains of denials. Common practice, no source."""

from __future__ import annotations

import pytest

from backcut.errors import MoveError
from backcut.offence.action import Kind, Route
from backcut.offence.situation import Doing, Guard

from .floor import FIVE, FOUR, answer, book, played, ran, stands, troubles

PRESSED = book("school-team")  # back cuts, flashes, holds for one


def test_denied_one_pass_away_i_back_cut() -> None:
    [step] = played(book(), "deny 2", FIVE)
    cut = answer(step, 2)
    assert (cut.kind, cut.route) == (Kind.BACK_CUT, Route.BEHIND_DEFENDER)


def test_the_player_behind_the_back_cutter_fills_and_the_cutter_takes_what_he_left() -> None:
    [step] = played(book(), "deny 2", FIVE)
    assert ran(step) == {2: ["back cut R", "come out RC"], 4: ["fill RW"]}


def test_with_nobody_behind_him_the_back_cutter_comes_back_to_his_own_spot() -> None:
    [step] = played(book(), "deny 4", "1:T 2:RW* 3:LW 4:RC 5:LC")
    assert ran(step) == {4: ["back cut R", "come out RC"]}


@pytest.mark.parametrize("far", [4, 5])
def test_denied_two_passes_away_i_hold(far: int) -> None:
    [step] = played(book(), f"deny {far}", FIVE)
    assert (answer(step, far).kind, ran(step)) == (Kind.HOLD, {})


def test_over_an_empty_spot_it_is_two_passes_away_and_i_hold() -> None:
    [step] = played(book("four-out"), "deny 2", "1:LS* 2:RW 3:LW 4:LC 5:Rb")
    assert answer(step, 2).kind is not Kind.BACK_CUT


def test_denied_in_the_corner_i_back_cut_along_the_baseline() -> None:
    [step] = played(book(), "deny 4", "1:T 2:RW* 3:LW 4:RC 5:LC")
    assert answer(step, 4).route is Route.BASELINE


def test_no_pass_goes_to_a_player_who_is_denied() -> None:
    with pytest.raises(MoveError, match=r"3 is denied.*free 3"):
        played(book(without=["back cut"]), "deny 3, T>LW", FIVE)


def test_a_player_let_free_can_be_passed_to() -> None:
    steps = played(book(without=["back cut"]), "deny 3, free 3, T>LW", FIVE)
    assert steps[-1].after.ball == 3


def test_the_player_with_the_ball_cannot_be_denied_it() -> None:
    with pytest.raises(MoveError, match="1 has the ball and cannot be denied"):
        played(book(), "deny 1", FIVE)


def test_a_pass_ends_every_denial() -> None:
    steps = played(book(), "deny 4+5, T>RW", FIVE)
    assert {player.guard for player in steps[-1].after.players} == {Guard.PLAIN}


# Both neighbours denied: the ball has an answer.


def test_both_neighbours_denied_the_farthest_flashes_to_the_high_post_and_both_back_cut() -> None:
    [step] = played(PRESSED, "deny 1+4", "1:T 2:RW* 3:LW 4:RC 5:LC")
    assert [(answer(step, n).kind, answer(step, n).target) for n in (1, 4, 5)] == [
        (Kind.BACK_CUT, "R"),
        (Kind.BACK_CUT, "R"),
        (Kind.FLASH, "N"),
    ]
    assert answer(step, 3).kind is Kind.HOLD


def test_two_who_are_equally_far_flash_to_the_elbow_on_their_own_side() -> None:
    [step] = played(PRESSED, "deny 2+3", FIVE)
    assert (answer(step, 4).target, answer(step, 5).target) == ("Re", "Le")
    assert troubles(step) == set()


def test_the_flash_can_be_passed_to() -> None:
    steps = played(PRESSED, "T>RW, deny 3+4, RW>N", FIVE)
    assert (steps[-1].event.kind, stands(steps[-1])[steps[-1].after.ball]) == ("pass inside", "N")


def test_who_flashed_and_was_not_found_comes_out_like_a_cutter() -> None:
    steps = played(PRESSED, "T>RW, deny 3+4, RW>T", FIVE)
    assert ran(steps[-1])[1][-1].startswith("come out")
    assert steps[-1].after.player(1).doing is Doing.STANDING


def test_without_a_flash_the_player_with_the_ball_dribbles_out() -> None:
    this = book("five-out", "dribble out")
    [step] = played(this, "deny 2+3", FIVE)
    told = answer(step, 1)
    assert told.kind is Kind.LOOK_TO_DRIBBLE
    assert this.sentences[told.habit or 0].phrase.name == "dribble out"
    # One neighbour open: no reason to dribble.
    told = answer(played(this, "deny 2", FIVE)[0], 1)
    assert this.sentences[told.habit or 0].phrase.name == "hold"


def test_one_denied_neighbour_is_not_both() -> None:
    [step] = played(PRESSED, "deny 2", "1:T 2:RW 3:LW 4:RC* 5:LC")
    assert answer(step, 5).kind is not Kind.FLASH


def test_who_flashed_caught_and_passed_out_comes_out_again() -> None:
    steps = played(PRESSED, "T>RW, deny 3+4, RW>N, 1>T", FIVE)
    assert steps[-1].after.player(1).at in PRESSED.formation.ring


def test_who_flashed_does_not_become_a_second_inside_player() -> None:
    steps = played(book("four-out-school-team"), "deny 2+3, LS>N, 4>1", FOUR)
    assert troubles(steps[-1]) == set()


def test_where_somebody_holds_the_high_post_nobody_is_sent_there() -> None:
    [step] = played(PRESSED, "deny 1+3", "1:T 2:RW* 3:RC 4:LW 5:N")
    assert troubles(step) == set()


# Chains: the filler is denied, and his filler too.


def test_a_denied_filler_back_cuts_and_the_next_behind_goes_on() -> None:
    steps = played(book(when_to_fill="at once"), "T>RW, early deny 3", FIVE)
    assert ran(steps[-1])[3][0] == "back cut R"
    assert ran(steps[-1])[5] == ["fill LW", "fill T"]
    assert stands(steps[-1]) == {1: "LW", 2: "RW", 3: "LC", 4: "RC", 5: "T"}


@pytest.mark.parametrize("when", ["at once", "looked", "count of two"])
def test_two_fillers_denied_one_after_the_other_and_the_chain_still_closes(when: str) -> None:
    steps = played(book(when_to_fill=when), "T>RW, early deny 3, early deny 5", FIVE)
    back_cuts = {n for step in steps for n, runs in ran(step).items() if "back cut R" in runs}
    assert back_cuts == {3, 5}
    assert sorted(stands(steps[-1]).values()) == ["LC", "LW", "RC", "RW", "T"]
    assert {player.doing for player in steps[-1].after.players} == {Doing.STANDING}
    assert [troubles(step) for step in steps] == [set(), set(), set()]


def test_two_denied_in_a_row_on_one_side_cut_one_after_the_other() -> None:
    steps = played(book(), "T>RW, deny 3+5", FIVE)
    assert ran(steps[-1])[3][0] == ran(steps[-1])[5][1] == "back cut R"
    assert ran(steps[-1])[5][0] == "fill T"
    assert ran(steps[-1])[1] == ["fill LW", "fill T"]


def test_the_first_cutter_out_takes_the_hole_nearer_the_ball() -> None:
    steps = played(book(when_to_fill="at once"), "T>RW, early deny 3", FIVE)
    assert (stands(steps[-1])[1], stands(steps[-1])[3]) == ("LW", "LC")


def test_a_denied_filler_who_comes_to_the_ball_is_open_again() -> None:
    this = book("five-out", "denied filler", when_to_fill="at once", denied_filler="come to the ball")
    steps = played(this, "T>RW, early deny 3, RW>T")
    assert steps[-1].after.ball == 3
