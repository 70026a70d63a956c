"""A situation in one line: short ids for tests, names for coaches, and one clear error for what cannot be."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from backcut.court.spots import Spot
from backcut.errors import NotationError, SituationError
from backcut.offence.event import EventKind
from backcut.offence.situation import Cause, Doing, Guard, Last, Player, Situation
from backcut.offence.situation_text import situation_from_text, situation_text

from .invented import CALMLY, situations


@CALMLY
@given(situations(), st.booleans())
def test_both_ways_of_writing_are_read_back(situation: Situation, names: bool) -> None:
    assert situation_from_text(situation_text(situation, names)) == situation


@CALMLY
@given(situations(), st.booleans())
def test_case_and_spaces_do_not_matter(situation: Situation, names: bool) -> None:
    text = situation_text(situation, names)
    assert situation_from_text(text.upper()) == situation
    assert situation_from_text(text.lower().replace(" ", "  ")) == situation


@CALMLY
@given(situations())
def test_the_mirror_image_is_written_and_read_like_any_other(situation: Situation) -> None:
    assert situation_from_text(situation_text(situation.mirrored())).mirrored() == situation


def test_the_two_ways_as_the_book_shows_them() -> None:
    situation = Situation(
        (Player(1, Spot.T), Player(2, Spot.RW, guard=Guard.DENIES), Player(3, Spot.LW, Doing.FILLING, origin=Spot.LC)),
        ball=1,
        last=Last(EventKind.PASS, 2, Spot.RW, fresh=True),
        count=1,
    )
    assert situation_text(situation) == "1:T* 2:RW! 3:LW(filling from LC) | pass by 2 from RW just now | count 1"
    assert situation_text(situation, names=True) == (
        "1 top, ball; 2 right wing, denied; 3 left wing, filling from left corner"
        " | pass by 2 from right wing just now | count 1"
    )


@pytest.mark.parametrize(
    "text",
    ["1:T* 2:RW", "1 T* 2 RW", "1: T * 2: RW", "2:RW; 1:T*", "1 the top, ball; 2 the right wing", "1 top (ball) 2 RW"],
)
def test_a_coach_may_write_it_in_many_ways(text: str) -> None:
    assert situation_from_text(text) == Situation((Player(1, Spot.T), Player(2, Spot.RW)), ball=1)


@pytest.mark.parametrize(("flag", "word", "guard"), [("!", "denied", "denies"), ("_", "sagged", "sags")])
def test_what_a_defender_does_has_a_mark_and_a_word(flag: str, word: str, guard: str) -> None:
    assert situation_from_text(f"1:T* 2:RW{flag}") == situation_from_text(f"1 top, ball; 2 right wing, {word}")
    assert situation_from_text(f"1:T* 2:RW{flag}").player(2).guard == guard


@pytest.mark.parametrize("cause", Cause)
def test_a_player_in_the_lane_says_why(cause: Cause) -> None:
    text = f"1:T* 2:R(in the lane from RW, right of the ball, because {cause})"
    assert situation_from_text(text).player(2).cause is cause


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("1:T* 2:T", "Two players stand at the top: a spot takes one."),
        ("1 top, ball; 2 right wing; 3 right wing", "Two players stand at the right wing"),
        ("1:T 2:RW", "One player must have the ball, here 0 have"),
        ("1:T* 2:RW*", "One player must have the ball, here 2 have"),
        ("1:T* 1:RW", "1 stands in two places: name each number once."),
    ],
)
def test_a_situation_that_cannot_be_is_told_why(text: str, error: str) -> None:
    with pytest.raises(SituationError) as told:
        situation_from_text(text)
    assert str(told.value).startswith(error)


@pytest.mark.parametrize(
    ("text", "column", "here"),
    [
        ("1:T* 2:XX", 8, '"XX"'),
        ("1:T* 2", 7, "it ends too early"),
        ("", 1, "it ends too early"),
        ("1 top, ball; 2 right hook", 16, '"right hook"'),
        ("1:T* 2:RW?", 10, '"?"'),
        ("1:T* | count many", 14, '"many"'),
        ("1:T* | ended pass", 14, '"pass"'),
        ("1:T*(cutting)", 13, '")"'),
        ("9999:T*", 1, '"9999:T*"'),
    ],
)
def test_what_cannot_be_read_is_shown_with_its_column(text: str, column: int, here: str) -> None:
    with pytest.raises(NotationError) as told:
        situation_from_text(text)
    assert str(told.value).startswith(f"The situation cannot be read at column {column}: {here}. Write ")


@CALMLY
@given(st.text(alphabet="123:TRWL*!_^|;, ()balcuntforme²", max_size=40) | st.text(max_size=40))
@example("1:T*" + "9" * 5000)
def test_no_text_is_too_odd_for_one_clear_error(text: str) -> None:
    told = ""
    try:
        assert situation_from_text(text).holder
    except (NotationError, SituationError) as error:
        told = str(error)
    assert not told or told.endswith(".")
