"""Somebody is wrong or falls: what the others do. Common practice, no source."""

from __future__ import annotations

import pytest

from backcut.offence.action import Kind
from backcut.offence.situation import Doing

from .floor import FIVE, answer, book, excepting, played, ran, stands, troubles


def test_a_player_falls_and_four_go_on() -> None:
    # 3 lies at the left wing: nobody is sent to his spot, and the cutter fills the hole beside the ball.
    step = played(book(), "T>RW, forget 3", FIVE)[-1]
    assert ran(step) == {1: ["cut R", "come out T"]}
    assert stands(step)[3] == "LW"


def test_four_players_keep_the_whole_rule() -> None:
    [step] = played(book("four-out"), "LS>RS", "1:LS* 2:RS 3:LW 4:RW")
    assert ran(step) == {1: ["cut R", "come out LW"], 3: ["fill LS"]}


def test_of_two_cutters_at_the_rim_nobody_clashes_and_both_come_out() -> None:
    [step] = played(book(), "deny 2+3", FIVE)
    assert troubles(step) == set()
    assert (stands(step)[2], stands(step)[3]) == ("RC", "LC")


def test_the_passer_did_not_cut_so_nobody_fills() -> None:
    step = played(book(), "T>RW, forget 1", FIVE)[-1]
    assert ran(step) == {}
    assert answer(step, 1).kind is Kind.FORGET


def test_the_next_pass_starts_the_chain_again() -> None:
    step = played(book(), "T>RW, forget 1, RW>RC", FIVE)[-1]
    assert ran(step)[1] == ["fill RW"]
    assert ran(step)[2] == ["cut R", "come out LC"]
    assert not any(player.forgets for player in step.after.players)


def test_a_cut_without_a_pass_goes_through_and_the_chain_fills_the_spot() -> None:
    # Played as the cut of a denied player: the rule for his spot and for the others is the same.
    [step] = played(book(), "deny 3", FIVE)
    assert ran(step) == {3: ["back cut R", "come out LC"], 5: ["fill LW"]}


IN_THE_LANE = "1:R(in the lane from T, left of the ball, because passed) 2:RW* 3:LW 4:RC 5:LC | pass by 1 from T"


def test_a_cutter_who_stops_in_the_lane_leaves_his_spot_to_the_others() -> None:
    [step] = played(book(), "forget 1", IN_THE_LANE)
    assert ran(step) == {3: ["fill T"], 5: ["fill LW"]}
    assert step.after.player(1).doing is Doing.LANE


def test_a_cutter_may_forget_to_come_out() -> None:
    step = played(book(), "T>RW, early forget 1", FIVE)[-1]
    assert step.before.player(1).doing is Doing.LANE


def test_he_comes_out_after_the_next_pass() -> None:
    step = played(book(), "forget 1, RW>RC", IN_THE_LANE)[-1]
    assert ran(step)[1] == ["come out LW"]
    assert ran(step)[2] == ["cut R", "come out LC"]


def test_a_filler_forgets_and_the_cutter_closes_the_line() -> None:
    step = played(book(), "T>RW, forget 5", FIVE)[-1]
    assert ran(step) == {1: ["cut R", "come out LW"], 3: ["fill T"]}


def test_the_player_behind_a_back_cutter_forgets_and_the_cutter_comes_back() -> None:
    step = played(book(), "deny 2, forget 4", FIVE)[-1]
    assert ran(step) == {2: ["back cut R", "come out RW"]}


@pytest.mark.parametrize("forgets", [1, 3, 4, 5])
def test_whoever_forgets_nobody_is_told_to_share_a_spot(forgets: int) -> None:
    step = played(book(), f"T>RW, forget {forgets}", FIVE)[-1]
    assert len(set(stands(step).values())) == 5
    assert troubles(step) == set()


def test_of_a_filler_who_forgets_it_is_said_that_he_forgets() -> None:
    step = played(book(), "T>RW, forget 3", FIVE)[-1]
    said = {answer(step, 3, beat).kind for beat in range(len(step.beats))}
    assert Kind.FORGET in said


def test_four_players_of_five_lose_none_when_one_number_never_cuts() -> None:
    [step] = played(excepting(book(), never_cuts=1), "T>RW", FIVE)
    assert (ran(step), troubles(step)) == ({}, set())
