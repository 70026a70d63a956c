"""The contract of every phrase: its example holds on both sides of the floor, and a coach is told all about it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from backcut.court.spots import Spot
from backcut.engine.play import play
from backcut.engine.possession import Step
from backcut.offence.book import Book, Sentence, plain_book
from backcut.offence.choices import CHOICES, Choice
from backcut.offence.formation import formation
from backcut.offence.moves import moves_from_text
from backcut.offence.phrase import Phrase, phrases
from backcut.offence.reference import phrases_page
from backcut.offence.sentences import every_sentence, sentence_from_text

PHRASES = pytest.mark.parametrize("phrase", phrases().values(), ids=phrases())


def example_book(phrase: Phrase) -> Book:
    """The plain book of the example's formation, the phrase asked first where the plain book lacks it."""
    book = plain_book(formation(phrase.example.formation))
    own = () if any(sentence.phrase is phrase for sentence in book.sentences) else (Sentence(phrase),)
    return replace(book, sentences=(*own, *book.sentences), choices=dict(phrase.example.choices or {}))


def played(phrase: Phrase, mirrored: bool) -> list[Step]:
    book, moves = example_book(phrase), phrase.example.moves
    start = book.start()
    if mirrored:
        ids = "|".join(sorted(Spot, key=len, reverse=True))
        moves = re.sub(rf"\b({ids})\b", lambda match: Spot(match[1]).mirror, moves)
        start = start.mirrored()
    return play(book, start, moves_from_text(moves))


EXAMPLES = [pytest.param(phrase, id=name) for name, phrase in phrases().items()]


@pytest.mark.parametrize("mirrored", [False, True], ids=["as written", "mirrored"])
@pytest.mark.parametrize("phrase", EXAMPLES)
def test_the_worked_example_holds(phrase: Phrase, mirrored: bool) -> None:
    example = phrase.example
    step = played(phrase, mirrored)[-1]
    rank = next(i for i, sentence in enumerate(example_book(phrase).sentences) if sentence.phrase is phrase)
    told = [action for beat in step.beats for action in beat.decision.actions if action.player == example.player]
    assert (example.kind, rank) in [(action.kind, action.habit) for action in told]
    assert step.after.player(example.player).at is (example.spot.mirror if mirrored else example.spot)


@PHRASES
def test_a_coach_is_told_cue_why_and_common_mistake(phrase: Phrase) -> None:
    assert re.fullmatch(r"[A-Z][a-z]+( [a-z]+)?", phrase.cue)
    for words in (phrase.why, phrase.mistake):
        assert re.fullmatch(r"[A-Z].{10,110}\.", words)


@PHRASES
def test_what_it_says_is_read_as_this_phrase(phrase: Phrase) -> None:
    read = sentence_from_text(f"{phrase.cue}. {phrase.sentence({})}")
    assert (read.phrase, read.cue) == (phrase, phrase.cue)


@PHRASES
def test_it_is_in_the_reference_with_all_it_teaches(phrase: Phrase) -> None:
    page = phrases_page()
    start = page.index(f"\n## {phrase.name.capitalize()}\n")
    section = page[start : page.index("\n## ", start + 1)]
    for words in (phrase.cue, phrase.why, phrase.mistake, phrase.example.moves, phrase.example.spot.title):
        assert words in section
    for name in phrase.uses:
        assert f"[{name}](#choice-{name.replace(' ', '-')})" in section


@PHRASES
def test_it_says_no_he_where_the_number_can_be_said(phrase: Phrase) -> None:
    words = " ".join((phrase.says, phrase.why, phrase.mistake))
    assert not re.search(r"\b(he|him|his|himself)\b", words, re.IGNORECASE)


@PHRASES
def test_every_choice_that_stands_in_it_is_one_it_asks_for(phrase: Phrase) -> None:
    assert set(phrase.slots) <= set(phrase.uses) <= set(CHOICES)


@pytest.mark.parametrize("choice", CHOICES.values(), ids=CHOICES)
def test_every_choice_is_asked_for_and_has_values_that_read_differently(choice: Choice) -> None:
    assert any(choice.name in phrase.uses for phrase in phrases().values())
    assert choice.asks.endswith("?")
    for part in ("name", "words", "who"):
        said = [getattr(value, part).lower() for value in choice.values]
        assert len(set(said)) == len(said) >= 2
    assert choice.default == choice.values[0].name
    assert all(value.who.endswith(".") for value in choice.values)


def test_no_two_sentences_that_can_be_written_are_the_same() -> None:
    written = [sentence.lower() for sentence in every_sentence()]
    assert len(written) == len(set(written))
