"""How a possession ends. Common practice, no source, where nothing stands beside the check."""

from __future__ import annotations

import pytest

from backcut.errors import MoveError
from backcut.offence.action import Kind

from .floor import FIVE, THREE, answer, book, played, ran, stands, troubles

TEAM = book("school-team")


def test_the_cutter_lays_it_up() -> None:
    step = played(TEAM, "T>RW, RW>cutter, lay-up", FIVE)[-1]
    assert (step.event.kind, step.event.player, step.after.ended) == ("lay-up", 1, "lay-up")


def test_at_a_shot_the_highest_stays_back_and_the_rest_rebound() -> None:
    step = played(TEAM, "T>RW, shot", FIVE)[-1]
    assert [answer(step, n).kind for n in (3, 1, 4, 5)] == [Kind.GET_BACK, Kind.REBOUND, Kind.REBOUND, Kind.REBOUND]


def test_at_a_lay_up_with_nobody_at_the_top_the_two_wings_get_back_to_the_slots() -> None:
    step = played(TEAM, "T>RW, RW>cutter, lay-up", FIVE)[-1]
    assert {player: runs for player, runs in ran(step).items() if not runs[0].startswith("rebound")} == {
        2: ["get back RS"],
        3: ["get back LS"],
    }


@pytest.mark.parametrize("moves", ["shot", "T>RW, shot", "T>RW, RW>RC, shot", "T>RC, shot", "T>RW, RW>cutter, lay-up"])
def test_at_every_shot_somebody_is_back(moves: str) -> None:
    step = played(TEAM, moves, FIVE)[-1]
    back = {a.player for a in step.beats[0].decision.actions if a.kind is Kind.GET_BACK}
    assert back
    assert {stands(step)[player] for player in back} <= {"T", "LS", "RS"}


@pytest.mark.parametrize("ending", ["shot", "lay-up", "turnover"])
def test_nothing_comes_after_the_end(ending: str) -> None:
    with pytest.raises(MoveError, match=f"ended with a {ending}"):
        played(TEAM, f"T>RW, {ending}, RW>T", FIVE)


@pytest.mark.parametrize("ending", ["shot", "lay-up", "turnover"])
def test_only_the_player_with_the_ball_ends_a_possession(ending: str) -> None:
    with pytest.raises(MoveError, match=r"4 cannot end.*1 has the ball"):
        played(TEAM, f"{ending} 4", FIVE)


def test_a_book_without_an_answer_to_the_shot_holds() -> None:
    step = played(book(), "T>RW, turnover", FIVE)[-1]
    assert (ran(step), troubles(step)) == ({}, set())


def test_at_a_turnover_nobody_rebounds() -> None:
    step = played(TEAM, "T>RW, turnover", FIVE)[-1]
    assert Kind.REBOUND not in {action.kind for action in step.beats[0].decision.actions}


def test_once_the_shot_is_up_nobody_fills_or_comes_out() -> None:
    # A shot stands first of all that asks for a player (common practice, no source).
    step = played(TEAM, "T>RW, early shot", FIVE)[-1]
    assert all(run.startswith(("get back", "rebound")) for runs in ran(step).values() for run in runs)


def test_with_two_inside_nobody_is_sent_back_to_the_spot_of_another() -> None:
    step = played(book("two-bigs"), "T>RW, RW>cutter, lay-up", THREE)[-1]
    assert troubles(step) == set()


def test_who_is_back_is_back_and_nobody_follows_him() -> None:
    step = played(TEAM, "T>RW, RW>cutter, lay-up", FIVE)[-1]
    assert troubles(step) == set()


def test_after_a_shot_all_settle() -> None:
    step = played(book("two-bigs"), "shot", "1:N 2:LW 3:LC* 4:Re 5:Lb")[-1]
    assert answer(step, 2).kind is Kind.GET_BACK
