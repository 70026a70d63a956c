"""A sentence that has been begun: every way on leads to a sentence that can be read, and every sentence is led to."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.offence.choices import CHOICES
from backcut.offence.completion import MOST, completions
from backcut.offence.phrase import phrases
from backcut.offence.sentences import MOST_LETTERS, every_sentence, sentence_from_text

from .invented import CALMLY, CUES

EVERY = tuple(every_sentence())


def wholes(text: str) -> list[str]:
    return [one.whole for one in completions(text)]


def led_to(begun: str, sentence: str) -> bool:
    """Whether a way on from here is on the way to this sentence."""
    return any(sentence.startswith(one.whole) and len(one.whole) > len(begun.rstrip()) for one in completions(begun))


@pytest.mark.parametrize("sentence", EVERY)
def test_from_every_letter_of_every_sentence_a_way_on_leads_to_it(sentence: str) -> None:
    for letters in range(len(sentence)):
        assert led_to(sentence[:letters], sentence), sentence[:letters]


@pytest.mark.parametrize("sentence", EVERY)
def test_taking_the_right_way_on_writes_every_sentence_from_nothing(sentence: str) -> None:
    text = ""
    for _ in range(8):
        on = max((whole for whole in wholes(text) if sentence.startswith(whole)), key=len, default="")
        if len(on) <= len(text):
            break
        text = on
    assert text == sentence
    assert completions(sentence) == ()


@CALMLY
@given(st.sampled_from(EVERY), st.integers(0, 120), CUES, st.sampled_from((str.upper, str.lower, str)))
def test_with_a_cue_and_in_any_case_the_ways_are_the_same(sentence: str, letters: int, cue: str, case: type) -> None:
    begun = sentence[:letters]
    plain = [one for one in completions(begun) if not re.match(r"[\w ]+\. ", one.whole)]
    assert [one.whole for one in completions(f"{cue}. {case(begun)}")] == [f"{cue}. {one.whole}" for one in plain]


@CALMLY
@given(st.sampled_from(EVERY), st.integers(0, 120))
def test_a_way_on_is_what_is_written_with_what_is_inserted(sentence: str, letters: int) -> None:
    begun = sentence[:letters]
    for one in completions(begun):
        assert one.insert
        assert re.findall(r"[\w'-]", one.whole) == re.findall(r"[\w'-]", begun + one.insert)
        if re.fullmatch(r"(.*\w)?", begun):
            assert one.whole == begun + one.insert


def test_a_way_on_stops_where_the_next_choice_begins() -> None:
    assert wholes("When my cut is o") == ["When my cut is over, I come out to"]
    assert wholes("Out. when my cut is over, i come out to the c") == [
        "Out. When my cut is over, I come out to the corner opposite the ball.",
        "Out. When my cut is over, I come out to the corner opposite where I came from.",
    ]
    assert wholes("When the next spot toward the ball is empty") == [
        "When the next spot toward the ball is empty, I fill it",
        "When the next spot toward the ball is empty wherever I stand, I fill it",
        "When the next spot toward the ball is empty right beside the ball, I fill it",
    ]


@pytest.mark.parametrize("name", [name for name, phrase in phrases().items() if phrase.slots])
def test_a_way_on_that_says_a_choice_tells_who_chooses_so_and_the_default_comes_first(name: str) -> None:
    phrase = phrases()[name]
    slot = phrase.slots[0]
    begun = re.split(r"\[? ?\{", phrase.says)[0]
    said = [one for one in completions(begun) if one.choice == slot]
    assert [one.who for one in said] == [value.who for value in CHOICES[slot].values]
    assert [one.phrase for one in said] == [name] * len(said)


def test_a_way_on_that_says_no_choice_tells_why_the_sentence_is_said() -> None:
    (one,) = completions("When my cut is over")
    assert (one.insert, one.phrase, one.choice) == (", I come out to", "come out", None)
    assert one.who == phrases()["come out"].why


def test_what_is_typed_already_is_not_inserted_again() -> None:
    assert [one.insert for one in completions("When my cut is over, ")] == ["I come out to"]
    assert [one.insert for one in completions("When my cut is over,")] == [" I come out to"]
    assert [one.insert for one in completions("When I am one pass away and my defender denies me, I back cut ")][
        :2
    ] == [
        ".",
        "at once.",
    ]


def test_nothing_typed_gives_the_beginnings_of_all_phrases() -> None:
    begun = wholes("")
    assert len(begun) == MOST
    assert all(any(sentence.startswith(one) for one in begun) for sentence in EVERY)
    assert "Otherwise I hold, wide, feet set." in begun
    merged = next(one for one in completions("") if one.whole == "When I")
    assert (merged.phrase, merged.choice) == ("", None)
    assert merged.who.endswith("more.")


def test_a_cue_that_is_begun_gives_its_sentence() -> None:
    (cut,) = completions("cu")
    assert (cut.whole, cut.insert) == (
        "Cut. When I pass to the next spot, I cut to the rim",
        "t. When I pass to the next spot, I cut to the rim",
    )
    for phrase in phrases().values():
        assert any(one.whole.startswith(f"{phrase.cue}. ") for one in completions(phrase.cue))


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("When I pas to the", "When I pass to the next spot, I cut to the rim."),
        ("Go. When I skipp the", "Go. When I skip the ball, I hold for a count."),
        ("Otherwice I h", "Otherwise I hold, wide, feet set."),
        ("When a shoot goes up", "When a shot goes up, the highest of us gets back and the rest rebound."),
    ],
)
def test_where_nothing_goes_on_the_nearest_sentence_is_told_whole(text: str, meant: str) -> None:
    near = completions(text)
    assert near[0].whole == meant
    assert {one.insert for one in near} == {""}
    assert len({one.phrase for one in near}) == len(near) == 3


@CALMLY
@given(st.one_of(st.text(max_size=80), st.sampled_from(EVERY).map(lambda text: text[3:])))
def test_whatever_is_typed_every_way_on_is_the_beginning_of_a_sentence(text: str) -> None:
    found = completions(text)
    assert len(found) <= MOST
    for one in found:
        cue = re.match(r"[A-Z][\w' -]*\. ", one.whole)
        words = one.whole[cue.end() :] if cue else one.whole
        assert any(sentence.startswith(words) for sentence in EVERY)
        assert one.who
        if one.whole.endswith("."):
            assert sentence_from_text(one.whole)


def test_a_text_without_end_is_not_looked_at_for_minutes() -> None:
    assert len(completions("When I pass" * MOST_LETTERS)) == 3
