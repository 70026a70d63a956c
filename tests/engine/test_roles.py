"""Exceptions by number, and numbers that mean nothing where none is named. Common practice, no source."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

import pytest

from backcut.engine.decide import decide
from backcut.engine.explore import KINDS, moves
from backcut.engine.play import one_step
from backcut.errors import SituationError
from backcut.offence.action import Kind
from backcut.offence.reading import book_from_text

from .everywhere import pictures
from .floor import FIVE, FOUR, answer, book, excepting, played, ran, stands, troubles
from .likeness import decision_likeness, renumbered


def test_a_book_says_who_stays_inside_never_fills_a_corner_never_cuts() -> None:
    text = "Title: A\nFormation: four-out\n5 stays inside.\n4 never fills a corner.\n1 never cuts.\n"
    roles = book_from_text(
        text + "When I pass to the next spot, I cut to the rim.\nOtherwise I hold, wide, feet set.\n"
    )[0]
    assert roles.exceptions.stays_inside == {5}
    assert roles.exceptions.never_corner == {4}
    assert roles.exceptions.never_cuts == {1}


def test_who_stays_inside_starts_inside_and_the_other_takes_his_spot() -> None:
    start = excepting(book("four-out"), stays_inside=2).start()
    assert (start.player(2).at, start.player(5).at) == ("Rb", "RS")
    assert start.holder.at == "LS"


def test_who_stays_inside_never_leaves_the_inside() -> None:
    this = excepting(book("four-out"), stays_inside=1)
    for step in played(this, "LS>RS, RS>RW, deny RS, RW>RS"):
        assert stands(step)[1] not in this.formation.ring


def test_more_cannot_stay_inside_than_the_formation_has() -> None:
    with pytest.raises(SituationError, match="5 should stay inside, but Five-out has 0 inside"):
        excepting(book(), stays_inside=5).start()


def test_who_never_cuts_passes_and_holds() -> None:
    [step] = played(excepting(book(), never_cuts=1), "T>RW", FIVE)
    assert (ran(step), answer(step, 1).kind) == ({}, Kind.HOLD)


def test_who_never_cuts_holds_when_denied() -> None:
    [step] = played(excepting(book(), never_cuts=2), "deny 2", FIVE)
    assert (ran(step), answer(step, 2).kind) == ({}, Kind.HOLD)


def test_the_others_still_cut() -> None:
    [step] = played(excepting(book(), never_cuts=2), "T>RW", FIVE)
    assert ran(step)[1] == ["cut R", "come out LC"]


def test_who_never_cuts_still_fills() -> None:
    [step] = played(excepting(book(), never_cuts=3), "T>RW", FIVE)
    assert ran(step)[3] == ["fill T"]


def test_who_never_fills_a_corner_takes_another_spot_and_the_player_in_the_corner_stays() -> None:
    [step] = played(excepting(book(), never_corner=1), "T>RW", FIVE)
    assert ran(step) == {1: ["cut R", "come out LW"], 3: ["fill T"]}


def test_who_never_fills_a_corner_passes_the_open_corner_by() -> None:
    [step] = played(excepting(book("four-out"), never_corner=1), "LS>LW", FOUR)
    assert ran(step)[1] == ["cut R", "come out RW"]


def test_the_others_still_fill_the_corner() -> None:
    [step] = played(excepting(book(), never_corner=4), "T>RW", FIVE)
    assert ran(step)[1] == ["cut R", "come out LC"]


def test_no_exit_sends_who_never_fills_a_corner_into_one() -> None:
    [step] = played(excepting(book("four-out", exit="opposite corner"), never_corner=1), "LS>LW", FOUR)
    assert "come out RC" not in ran(step)[1]


def test_the_corner_stays_for_him_too_when_the_others_fill_at_once() -> None:
    [step] = played(excepting(book(when_to_fill="at once"), never_corner=2), "deny 2", FIVE)
    assert (troubles(step), stands(step)[2]) == (set(), "RW")


def test_who_never_fills_a_corner_does_not_screen_his_way_into_one() -> None:
    step = played(excepting(book(cut_taken_away="screen away"), never_corner=2), "deny 2, jam 2", FIVE)[-1]
    assert stands(step)[2] != "RC"


@pytest.mark.parametrize(
    "name", ["five-out", "four-out", "three-out", "school-team", "four-out-school-team", "two-bigs"]
)
def test_which_number_a_player_wears_changes_nothing(name: str) -> None:
    this = book(name)
    for situation in pictures(this):
        for event in moves(this, situation, frozenset(KINDS)):
            for beat in one_step(this, situation, event).beats:
                for numbers in ((2, 3, 4, 5, 1), (5, 4, 3, 2, 1)):
                    other = dict(zip((1, 2, 3, 4, 5), numbers, strict=True))
                    answers = decide(this, renumbered(beat.before, other))
                    assert decision_likeness(answers) == decision_likeness(beat.decision, numbers=other)


def test_every_way_to_number_five_players_cuts_and_fills_alike() -> None:
    [step] = played(book(), "T>RW", FIVE)
    for numbers in permutations((1, 2, 3, 4, 5)):
        other = dict(zip((1, 2, 3, 4, 5), numbers, strict=True))
        [again] = played(book(), "T>RW", renumbered(step.before, other))
        assert ran(again) == {other[number]: runs for number, runs in ran(step).items()}


def test_a_named_role_follows_the_number() -> None:
    this = replace(book(), exceptions=excepting(book(), never_cuts=2).exceptions)
    [step] = played(this, "T>RW", "2:T* 1:RW 3:LW 4:RC 5:LC")
    assert ran(step) == {}


def test_of_two_who_went_in_together_the_number_does_not_decide_who_is_out_first() -> None:
    # 1 flashed from the left corner while 3 back cut from the top; the ball goes to the left wing before 3 is out.
    ends = []
    for first, second in ((1, 3), (3, 1)):
        start = f"{first}:LC 2:RW* {second}:T 4:RC 5:LW"
        step = played(book("school-team"), f"deny {second}+4, early 2>5", start)[-1]
        ends.append((stands(step)[first], stands(step)[second]))
    assert ends[0] == ends[1]
