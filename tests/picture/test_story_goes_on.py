"""The story of a possession that goes on: decisions that were drawn before are taken over, and are the same."""

from __future__ import annotations

import json
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.engine.choose import possession
from backcut.engine.play import play
from backcut.engine.possession import Step
from backcut.motion.thin import STRETCH_S
from backcut.offence.book import Book
from backcut.offence.library import open_book, presets
from backcut.offence.moves import moves_from_text
from backcut.page import data
from backcut.picture.floor import floor
from backcut.picture.story import show

OPPOSITE = {"exit": "opposite corner"}


def story_of(book: Book, steps: list[Step]) -> str:
    told = show(book, steps)
    return data.story(told, floor(told.court, told.denial_word).room)


@settings(max_examples=12, deadline=None)
@given(st.sampled_from(presets()), st.integers(0, 10_000))
def test_a_story_told_step_by_step_is_the_one_told_at_once(name: str, seed: int) -> None:
    book, _ = open_book(name)
    steps = possession(book, book.start(), seed, most=4)
    for count in range(1, len(steps) + 1):
        growing = story_of(book, steps[:count])
    data._told.cache_clear()
    assert story_of(book, steps) == growing


def test_the_decisions_told_before_are_told_again_to_the_letter() -> None:
    book, _ = open_book("school-team")
    moves = "T>RW, RW>T, T>LW, LW>T, T>RW, RW>T"
    steps = play(book, book.start(), moves_from_text(moves))
    cue_s = show(book, steps[:-1]).timeline.cues_s[-1]
    before, after = (json.loads(story_of(book, steps[: len(steps) - less]))["moments"] for less in (1, 0))
    shown = [moment for moment in before if moment["t"] < cue_s // STRETCH_S * STRETCH_S * 100]
    assert len(shown) > 5
    assert after[: len(shown)] == shown


def test_the_same_moves_under_another_choice_are_told_as_that_choice_has_them() -> None:
    book, _ = open_book("school-team")
    other = replace(book, sentences=tuple(replace(one, values={}) for one in book.sentences), choices=OPPOSITE)
    moves = moves_from_text("T>RW, RW>T, T>LW")
    mine, theirs = (story_of(one, play(one, one.start(), moves)) for one in (book, other))
    assert mine != theirs
    data._told.cache_clear()
    assert story_of(other, play(other, other.start(), moves)) == theirs
