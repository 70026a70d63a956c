"""The engine and the second reading of the rules, written from the text alone, agree player by player."""

from __future__ import annotations

import itertools
import random
from dataclasses import replace
from functools import cache

import pytest
from tests.oracle.reading import Outcome, Where, beside_the_ball, reach

from backcut.court.spots import Spot
from backcut.engine.play import one_step
from backcut.offence.action import Kind
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Player, Situation

from .count_again import names
from .floor import book
from .second import Asked, asked_of, choices_of, pairs_of, ring_of, ruled, start_of

#: The choices both readings know.
SHARED = ("exit", "who fills", "corner passer", "skip passer", "denied corner", "dribble at")
FORMATIONS = ("five-out", "four-out", "three-out")
COMBINATIONS = 60


def engine(book: Book, where: Where, ball: int, asked: Asked) -> Outcome:
    """What the engine makes of the same move, in the words of the second reading."""
    inside = [player for player in book.start().players if player.at not in book.formation.ring]
    players = sorted([*(Player(n, Spot(at)) for n, at in where.items()), *inside], key=lambda p: p.number)
    if isinstance(asked.whom, str):
        event = Event(EventKind.DRIBBLE, ball, spot=Spot(asked.whom))
    elif asked.move == "deny":
        event = Event(EventKind.DENY, asked.whom)
    elif asked.move == "deny pair":
        one, other = beside_the_ball(ring_of(book), where, ball)
        event = Event(EventKind.DENY, one, also=(other,))
    else:
        event = Event(EventKind.PASS, ball, asked.whom)
    step = one_step(book, Situation(tuple(players), ball), event)
    did: dict[int, list[tuple[str, str, str]]] = {number: [] for number in where}
    open_ = set()
    for beat in step.beats:
        for action in beat.decision.actions:
            if action.player in where and action.moves and action.kind is not Kind.DRIBBLE:
                did[action.player].append((str(action.kind), str(action.origin), str(action.target)))
        open_ |= {trouble.player for trouble in beat.decision.troubles}
    spots = {number: str(spot) for number, spot in step.after.spots().items() if number in where}
    for number, runs in did.items():
        if not runs and number != step.after.ball:
            runs.append(("hold", spots[number], spots[number]))
    lost = {number for number, spot in spots.items() if spot not in ring_of(book)}
    assert lost == open_, "who is left without an answer is in trouble, and nobody else"
    return Outcome(spots, step.after.ball, did, lost)


def situations(book: Book) -> list[tuple[Where, int]]:
    """Every settled situation that passes, skips and denials reach, by the second reading."""
    kinds = ("pass", "skip", "deny") if "back cut" in book.rules.names else ("pass", "skip")
    return reach(ring_of(book), *start_of(book), kinds, choices_of(book))[0]


def pictures(book: Book) -> list[tuple[Where, int]]:
    """One situation for every settled picture: which number stands where changes nothing, as is proved elsewhere."""
    found = {(frozenset(where.values()), where[ball]): (where, ball) for where, ball in situations(book)}
    return list(found.values())


def compare(book: Book, where_and_ball: list[tuple[Where, int]]) -> int:
    """Compare every move from every situation; the number of moves compared."""
    compared = 0
    for where, ball in where_and_ball:
        for asked in asked_of(book, where, ball):
            ours, theirs = engine(book, where, ball, asked), ruled(book, where, ball, asked)
            assert ours == theirs, f"{book.title}, {dict(choices_of(book))}: {where}, ball {ball}, {asked}"
            compared += 1
    return compared


# (situation, move) pairs compared, as measured: a comparison that quietly compares nothing would show here.
COMPARED = {
    "five-out": 4320,
    "four-out": 1824,
    "three-out": 216,
    "first-month": 2400,
    "school-team": 4080,
    "four-out-school-team": 1680,
    "two-bigs": 96,
}


@pytest.mark.parametrize("name", names())
def test_both_readings_agree_on_every_situation_of_every_book(name: str) -> None:
    this = book(name)
    assert compare(this, situations(this)) == COMPARED[name]


@pytest.mark.parametrize("choice", SHARED)
@pytest.mark.parametrize("name", FORMATIONS)
def test_both_readings_agree_under_every_value_of_a_choice(name: str, choice: str) -> None:
    for value in CHOICES[choice].values:
        this = book(name, **{choice: value.name})
        assert compare(this, pictures(this)) > 0


# Pairs of denials compared, as measured, over every exit, either way to fill, and the settled pictures they reach.
PAIRS = {"five-out": 36, "four-out": 66, "three-out": 16}


@pytest.mark.parametrize("name", FORMATIONS)
def test_both_readings_agree_when_both_beside_the_ball_are_denied_at_once(name: str) -> None:
    compared = 0
    for exit_, who_fills in itertools.product(CHOICES["exit"].values, CHOICES["who fills"].values):
        this = book(name, exit=exit_.name, who_fills=who_fills.name)
        for where, ball in pictures(this):
            for pair in pairs_of(this, where, ball):
                assert engine(this, where, ball, pair) == ruled(this, where, ball, pair), (this.choices, where, ball)
                compared += 1
    assert compared == PAIRS[name]


def read_alike(values: dict[str, str]) -> bool:
    """Whether the text leaves no room for two readings under these choices; what is left out has a test of its own."""
    through = values["corner passer"] == "cut through" or values["denied corner"] == "go through"
    return not (through and values["exit"] in ("opposite corner", "opposite own"))


@cache
def combinations() -> tuple[dict[str, str], ...]:
    """A sample of all ways to combine the choices, the same in every run."""
    every = itertools.product(*([value.name for value in CHOICES[choice].values] for choice in SHARED))
    alike = [values for one in every if read_alike(values := dict(zip(SHARED, one, strict=True)))]
    return tuple(random.Random(4).sample(alike, COMBINATIONS))


@pytest.mark.parametrize("name", FORMATIONS)
def test_both_readings_agree_where_several_choices_are_made_at_once(name: str) -> None:
    for values in combinations():
        this = book(name, **values)
        assert compare(this, pictures(this)) > 0


def test_both_readings_agree_whatever_the_time_of_the_fill() -> None:
    for name, when in itertools.product(FORMATIONS, ("at once", "count of two")):
        this = book(name, when_to_fill=when)
        assert compare(this, pictures(this)) > 0


def test_the_two_readings_can_disagree() -> None:
    """The comparison is no tautology: put against another choice, the second reading says something else."""
    this, other = book("four-out"), book("four-out", exit="end of the line")
    differing = sum(
        engine(this, where, ball, asked) != ruled(other, where, ball, asked)
        for where, ball in pictures(this)
        for asked in asked_of(this, where, ball)
    )
    assert differing > 0


def test_two_sentences_for_the_way_out_say_the_same_as_one() -> None:
    plain = book("four-out")
    own = replace(book("four-out", "come out"), title="Four-out with a sentence for the way out")
    for this in (plain, own):
        assert compare(this, pictures(this)) > 0


@pytest.mark.parametrize("corner_passer", ["hold", "cut through", "come back"])
def test_a_skip_out_of_the_corner_is_a_pass_out_of_the_corner_whatever_the_book_chose(corner_passer: str) -> None:
    this = book("three-out", skip_passer="cut", corner_passer=corner_passer)
    where, ball = {1: "T", 2: "RW", 3: "RC"}, 3
    assert engine(this, where, ball, Asked("skip", 1)) == ruled(this, where, ball, Asked("skip", 1))


def test_where_the_far_side_is_full_who_goes_through_comes_back_whatever_the_exit() -> None:
    """The second reading asks the book's exit here; the choice says that the cutter comes back, and the engine does."""
    where, ball = {1: "T", 2: "RW", 3: "LW", 4: "RC", 5: "LC"}, 2
    for exit_ in [value.name for value in CHOICES["exit"].values]:
        this = book("five-out", exit=exit_, denied_corner="go through", corner_passer="cut through")
        assert engine(this, where, ball, Asked("deny", 4)).where == where
