"""Sentences are read as they are written, and what is no sentence is told where it goes wrong."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.offence.phrase import Phrase, phrases
from backcut.offence.sentences import MOST_LETTERS, UnknownSentence, every_sentence, sentence_from_text

from .invented import CALMLY, CUES, sentences, values


@pytest.mark.parametrize("sentence", tuple(every_sentence()))
def test_every_sentence_that_can_be_written_is_read_back(sentence: str) -> None:
    read = sentence_from_text(sentence)
    assert read.phrase.sentence(read.values) == sentence
    assert read.cue is None


@CALMLY
@given(st.sampled_from(tuple(phrases().values())).flatmap(lambda phrase: st.tuples(st.just(phrase), values(phrase))))
def test_a_sentence_says_the_choices_that_were_put_in_it(written: tuple[Phrase, dict[str, str]]) -> None:
    phrase, said = written
    read = sentence_from_text(phrase.sentence(said))
    assert read.phrase is phrase
    must = {name: value for name, value in read.values.items() if name not in said}
    assert {name: read.values[name] for name in said} == said
    # A choice that has to stand in the sentence stands there with its default.
    assert phrase.sentence(said | must) == phrase.sentence(said)


@CALMLY
@given(st.sampled_from(tuple(phrases().values())).flatmap(lambda phrase: st.tuples(st.just(phrase), sentences(phrase))))
def test_case_and_line_breaks_do_not_matter(written: tuple[Phrase, str]) -> None:
    phrase, text = written
    assert sentence_from_text(text).phrase is phrase


@CALMLY
@given(CUES)
def test_the_cue_in_front_is_the_coachs_own(cue: str) -> None:
    assert sentence_from_text(f"{cue}. Otherwise I hold, wide, feet set.").cue == cue


@pytest.mark.parametrize("stops", ["", " ", ",", ";", " , "])
def test_punctuation_does_not_matter(stops: str) -> None:
    assert sentence_from_text(f"Otherwise I hold{stops} wide{stops} feet set{stops}").phrase.name == "hold"


@pytest.mark.parametrize(
    ("text", "rest"),
    [
        ("When I pas to the next spot, I cut to the rim.", "pas to the next spot, I cut to the rim."),
        ("Cut. When I pass to the next spot, I cut to the rym.", "rym."),
        ("Fill. When the next spot toward the ball\n  is empty, I fill it at wonce.", "wonce."),
        ("When I pass to the next spot, I cut to the rim, and stay there.", "and stay there."),
        ("Whenever I pass, I cut.", "Whenever I pass, I cut."),
        ("When I pass to the next spot, I cut to", ""),
    ],
)
def test_the_place_is_where_the_words_stop_making_sense(text: str, rest: str) -> None:
    with pytest.raises(UnknownSentence) as unknown:
        sentence_from_text(text)
    assert text[unknown.value.at :] == rest


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("When I pass to the next spot, I run to the rim.", "When I pass to the next spot, I cut to the rim."),
        ("Otherwise I stand, wide, feet set.", "Otherwise I hold, wide, feet set."),
        ("When I am denied in the corner, I wait.", "When I am denied in the corner, I hold."),
        (
            "When my cut is over, I go to the end of the line.",
            "When my cut is over, I come out to the end of the line.",
        ),
    ],
)
def test_the_nearest_of_three_sentences_is_the_one_that_was_meant(text: str, meant: str) -> None:
    with pytest.raises(UnknownSentence) as unknown:
        sentence_from_text(text)
    assert unknown.value.nearest[0] == meant
    assert len(set(unknown.value.nearest)) == 3
    for sentence in unknown.value.nearest:
        assert sentence_from_text(sentence)


def test_a_text_without_end_is_no_sentence_and_is_not_looked_at_for_minutes() -> None:
    with pytest.raises(UnknownSentence):
        sentence_from_text("When I pass" + "," * MOST_LETTERS + " to the next spot, I cut to the rim.")
    assert max(map(len, every_sentence())) < MOST_LETTERS / 2
