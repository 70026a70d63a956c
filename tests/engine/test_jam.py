"""A cut that is taken away. Common practice, no source."""

from __future__ import annotations

import pytest

from backcut.errors import MoveError
from backcut.offence.action import Kind, Route
from backcut.offence.book import Book

from .floor import FIVE, answer, book, played, ran, stands, troubles

GO_BEHIND = book()
SCREEN = book(cut_taken_away="screen away")
REPLACE = book(cut_taken_away="replace")


def test_a_jammed_cutter_goes_behind_and_still_reaches_the_rim() -> None:
    step = played(GO_BEHIND, "T>RW, jam 1", FIVE)[-1]
    assert (answer(step, 1).kind, answer(step, 1).route) == (Kind.CUT, Route.REAR)
    assert ran(step) == {1: ["cut R", "come out LC"], 3: ["fill T"], 5: ["fill LW"]}


def test_a_jammed_cutter_screens_for_the_player_behind_and_takes_his_spot() -> None:
    step = played(SCREEN, "T>RW, jam 1", FIVE)[-1]
    assert ran(step) == {1: ["screen LW"], 3: ["use the screen T"]}


def test_with_nobody_behind_there_is_nobody_to_screen_for_and_he_goes_behind() -> None:
    step = played(SCREEN, "4>2, jam 4", "1:T 2:RW 3:LW 4:RC* 5:LC")[-1]
    assert answer(step, 4).kind is Kind.CUT
    assert stands(step)[4] == "RC"


def test_a_jammed_cutter_takes_his_spot_back_and_the_others_stay() -> None:
    step = played(REPLACE, "T>RW, jam 1", FIVE)[-1]
    assert ran(step) == {1: ["take back T"]}


@pytest.mark.parametrize(
    ("base", "told"), [(SCREEN, {2: ["screen RC"], 4: ["use the screen RW"]}), (REPLACE, {2: ["take back RW"]})]
)
def test_a_back_cut_can_be_taken_away_too(base: Book, told: dict[int, list[str]]) -> None:
    step = played(base, "deny 2, jam 2", FIVE)[-1]
    assert ran(step) == told


def test_only_a_cutter_can_be_jammed() -> None:
    with pytest.raises(MoveError, match="3 is not cutting"):
        played(GO_BEHIND, "T>RW, jam 3", FIVE)


@pytest.mark.parametrize("base", [GO_BEHIND, SCREEN, REPLACE], ids=["go behind", "screen away", "replace"])
def test_after_a_jam_every_spot_has_exactly_one_player_and_play_goes_on(base: Book) -> None:
    steps = played(base, "T>RW, jam 1, RW>T", FIVE)
    for step in steps[1:]:
        assert sorted(stands(step).values()) == ["LC", "LW", "RC", "RW", "T"]
        assert troubles(step) == set()


def test_two_cuts_can_be_taken_away_at_once() -> None:
    step = played(REPLACE, "deny 2+3, jam 2+3", FIVE)[-1]
    assert ran(step) == {2: ["take back RW"], 3: ["take back LW"]}


def test_a_cut_that_has_reached_the_rim_cannot_be_taken_away() -> None:
    with pytest.raises(MoveError):
        played(REPLACE, "T>RW, early RW>RC, jam 1", FIVE)


def test_who_takes_his_spot_back_meets_a_filler_who_goes_at_once_and_the_book_is_told() -> None:
    # Two players sent to one spot are a finding, never silent; and neither is let there.
    step = played(book(cut_taken_away="replace", when_to_fill="at once"), "T>RW, jam 1", FIVE)[-1]
    assert troubles(step) == {("clash", 1), ("clash", 3)}
    assert sorted(stands(step).values()) == ["LC", "LW", "RC", "RW", "T"]
