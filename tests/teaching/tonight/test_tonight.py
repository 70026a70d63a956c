"""Tonight's page fills the minutes, keeps the limits of practice, and has everybody in it; what cannot be is said."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.teaching.books import BOOKS, book

from backcut.errors import BackcutError
from backcut.teaching.drills.drill import Hall
from backcut.teaching.drills.reps import MOST_WAIT_S
from backcut.teaching.tonight.order import LEAST_MIN, LONGEST_MIN, OF_THE_DAY, SHORTEST_MIN, Part, order
from backcut.teaching.tonight.plan import QUESTIONS, Evening, evening


@pytest.mark.parametrize("minutes", range(SHORTEST_MIN, LONGEST_MIN + 1))
def test_the_running_order_fills_the_evening_and_no_activity_is_longer_than_ten_minutes(minutes: int) -> None:
    """Ten minutes: a federation manual for coaches (an activity lasts 7 to 10 minutes before a change or a break)."""
    slots = order(minutes)
    assert sum(slot.minutes for slot in slots) == minutes
    assert max(slot.minutes for slot in slots) <= 10
    assert min(slot.minutes for slot in slots if slot.part is not Part.BREAK) >= LEAST_MIN
    ends = 0
    for slot in slots:
        assert slot.begins_min == ends
        ends += slot.minutes
    assert slots[0].part is Part.WARM_UP
    assert slots[-1].part is Part.END
    assert Part.GUIDED in {slot.part for slot in slots}
    for edge in (slots[0], slots[-1]):
        assert edge.part not in OF_THE_DAY


@pytest.mark.parametrize("minutes", [30, 45, 60, 90, 120])
def test_nobody_goes_longer_than_forty_minutes_without_water(minutes: int) -> None:
    """Three breaks of three minutes an hour in the lowest band of published heat guidance; here two at the least."""
    since = 0
    for slot in order(minutes):
        since = 0 if slot.part is Part.BREAK else since + slot.minutes
        assert since <= 40
    breaks = [slot for slot in order(minutes) if slot.part is Part.BREAK]
    assert len(breaks) >= max(1, minutes // 60)


def test_a_warm_up_is_ten_minutes_where_there_is_time() -> None:
    """Emery et al. 2022: a neuromuscular warm-up of about ten minutes, fewer ankle and knee injuries."""
    assert order(60)[0].minutes == 10
    assert order(20)[0].minutes == 4


def numbers(groups: str) -> list[int]:
    """Everybody named in a line of groups."""
    found: list[int] = []
    for group in groups.split(" | "):
        ends = [int(number) for number in re.findall(r"\d+", group)]
        found += range(ends[0], ends[-1] + 1)
    return found


def check(made: Evening, players: int, minutes: int) -> None:
    assert sum(one.minutes for one in made.activities) == minutes
    for one in made.activities:
        if one.groups and re.search(r"\d", one.groups):
            assert numbers(one.groups) == list(range(1, players + 1))
        if one.card is not None:
            assert made.cards[one.card - 1].minutes == one.minutes
    waits = [one for one in made.cards if one.lines.wait_s > MOST_WAIT_S]
    assert bool(waits) <= bool(made.not_met)
    assert len(made.questions) == QUESTIONS
    assert all(question.answer for question in made.questions)


@pytest.mark.parametrize("name", BOOKS)
@pytest.mark.parametrize(("players", "baskets", "balls", "minutes"), [(8, 1, 4, 45), (9, 1, 4, 60), (14, 2, 8, 90)])
def test_everybody_is_in_every_activity(name: str, players: int, baskets: int, balls: int, minutes: int) -> None:
    check(evening(book(name), Hall(players, baskets, balls), minutes), players, minutes)


@settings(max_examples=25, deadline=None)
@given(st.integers(1, 30), st.integers(0, 4), st.integers(0, 10), st.integers(20, 120))
def test_whoever_comes_and_whatever_there_is_there_is_a_page(
    players: int, baskets: int, balls: int, minutes: int
) -> None:
    check(evening(book("first-month"), Hall(players, baskets, balls), minutes), players, minutes)


def test_eight_children_at_one_basket_never_stand_long() -> None:
    made = evening(book("first-month"), Hall(8, 1, 4), 45)
    assert made.not_met == ()
    assert all(one.lines.wait_s <= MOST_WAIT_S for one in made.cards)
    assert [one.begins for one in made.activities][:3] == ["18:00", "18:09", "18:16"]
    assert "to a doctor" in made.care
    assert "a child need not ask" not in made.care
    assert "answers to Fill" in " ".join(made.activities[1].what)


def test_the_day_s_sentence_can_be_named_and_is_on_the_cards() -> None:
    made = evening(book("school-team"), Hall(9, 1, 4), 60, habit=2)
    assert made.title == "Tonight: Back"
    of_the_day = [one for one in made.activities if one.part in OF_THE_DAY]
    assert of_the_day
    assert all(made.cards[(one.card or 0) - 1].piece.rank == 2 for one in of_the_day)


@pytest.mark.parametrize(
    ("hall", "said"),
    [
        (Hall(1, 1, 1), "takes 2 players, and there is 1"),
        (Hall(2, 1, 2), "Too few for a team"),
        (Hall(8, 0, 2), "there is no basket. Lay a hoop or a cone"),
        (Hall(8, 1, 0), "takes a ball, and there is none"),
        (Hall(30, 1, 2), "Take another ball and a second place"),
    ],
)
def test_what_cannot_be_met_is_said(hall: Hall, said: str) -> None:
    made = evening(book("first-month"), hall, 45)
    assert any(said in line for line in made.not_met)


@pytest.mark.parametrize(
    ("minutes", "begins"), [(19, "18:00"), (151, "18:00"), (45, "25:00"), (45, "noon"), (45, "18")]
)
def test_an_evening_that_cannot_be_is_said(minutes: int, begins: str) -> None:
    with pytest.raises(BackcutError, match=r"^--(minutes|begins) "):
        evening(book("first-month"), Hall(8), minutes, begins=begins)


def test_past_midnight_the_clock_goes_on() -> None:
    made = evening(book("first-month"), Hall(8), 45, begins="23:40")
    assert [one.begins for one in made.activities][-1] == "0:20"
