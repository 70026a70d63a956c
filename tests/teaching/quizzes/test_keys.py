"""Every key of every question of every shipped book is the second reading's answer, and no other answer is right."""

from __future__ import annotations

import random
from functools import cache

import pytest
from tests.engine.floor import book

from backcut.court.spots import Spot
from backcut.offence.event import EventKind
from backcut.offence.library import presets
from backcut.teaching.quizzes import Ask, Choice, Question, questions
from backcut.teaching.quizzes.asked import dress
from backcut.teaching.quizzes.question import Deed, Slip

from .naive import Facts, facts

# Questions of each kind, as measured: a comparison that quietly compares nothing would show here.
ASKED = {
    "first-month": (25, 8, 43, 25),
    "four-out-school-team": (185, 39, 251, 234),
    "school-team": (112, 26, 187, 137),
    "two-bigs": (365, 39, 269, 451),
}


@cache
def asked(name: str) -> tuple[Question, ...]:
    return tuple(questions(book(name)))


def is_right(choice: Choice, question: Question, told: Facts) -> bool:
    """Whether an answer is right, as the second reading has it."""
    match question.ask:
        case Ask.WHERE:
            return str(choice.spot) == told.next()[2]
        case Ask.WHO if told.kind is EventKind.SHOT:
            return choice.player in told.highest()
        case Ask.WHO:
            hole = str(question.occasion.action.target)
            return choice.player is not None and hole in told.ends.get(choice.player, [])
        case Ask.SENTENCE:
            assert choice.rank is not None
            phrase = question.occasion.book.sentences[choice.rank].phrase.name
            if question.occasion.action.kind.value == "have the ball":
                return phrase == "catch"
            if question.occasion.action.kind.value == "clear the path":
                return phrase in ("inside", "two inside")
            return phrase in told.phrases
        case Ask.MISTAKE:
            assert choice.slip is not None
            assert question.deed is not None
            return can_be_said(choice.slip, question.deed, told)


def can_be_said(slip: Slip, deed: Deed, told: Facts) -> bool:
    """Whether the words for a mistake are true of what is played, read from the second reading."""
    to, stays = str(deed.to), deed.to is None
    kind, _, right = told.next()
    whole = deed.to not in (None, Spot.R) and deed.part == 1.0
    match slip:
        case Slip.STANDS:
            return stays and told.by == told.player and told.kind in (EventKind.PASS, EventKind.SKIP)
        case Slip.FIGHTS:
            return stays and told.player in told.denied and told.now[told.player] != "R"
        case Slip.WATCHES:
            return kind == "fill" and right != to
        case Slip.CAMPS:
            return stays and told.now[told.player] == "R"
        case Slip.CUTS:
            return deed.to is Spot.R
        case Slip.AWAY:
            return whole and told.farther(to)
        case Slip.TAKEN:
            return whole and told.others_at(to)
        case Slip.DRIFTS:
            return not stays and deed.part < 1.0
        case Slip.EARLY:
            return whole and kind == "fill" and right == to and told.filling_waits


def check(question: Question) -> None:
    told = facts(question)
    where = f"{question.occasion.happened} {question.words}"
    assert question.right, where
    for choice in question.choices:
        assert choice.right == is_right(choice, question, told), f"{where}: {choice}, {told.next()}"
    if question.deed is not None:
        kind, _, right = told.next()
        stays = question.deed.to is None
        early = question.deed.slip is Slip.EARLY
        same = kind == "hold" if stays else str(question.deed.to) == right and question.deed.part == 1.0
        assert same is early, f"{where}: what is played is what the book says"


@pytest.mark.parametrize("name", presets())
def test_every_key_is_the_second_readings_answer_and_no_distractor_is_right(name: str) -> None:
    found = asked(name)
    for question in found:
        check(question)
    counted = tuple(sum(question.ask is ask for question in found) for ask in Ask)
    assert counted == ASKED[name]


@pytest.mark.parametrize("name", presets())
def test_the_keys_hold_whoever_wears_which_number_and_on_either_side(name: str) -> None:
    draw, this = random.Random(5), book(name)
    for question in asked(name):
        for _ in range(2):
            dressed = dress(this, question, draw)
            assert dressed is not None, question
            check(dressed)
