"""A book's sentences in their pieces: what is written, which words are choices, and which words are wrong."""

from __future__ import annotations

import pytest
from hypothesis import given

from backcut.motion.squads import SQUADS
from backcut.offence.choices import CHOICES
from backcut.offence.edit import choose, put_in_text, switch_off
from backcut.offence.library import preset_text, presets
from backcut.offence.phrase import phrases
from backcut.offence.pieces import Written, parts, phrase_list, written
from backcut.offence.reading import book_from_text
from backcut.offence.sentences import every_sentence, sentence_from_text

from .invented import CALMLY, SOUND
from .scribbles import SCRIBBLES

NAMES = presets()


def waved(one: Written) -> list[str]:
    """The words under each wave."""
    line = f"{one.cue}. {one.text}" if one.cue else one.text
    return [line[wave.start : wave.end] for wave in one.waves]


@pytest.mark.parametrize("sentence", tuple(every_sentence()))
def test_the_parts_of_every_sentence_are_its_words_and_its_choices(sentence: str) -> None:
    read = sentence_from_text(sentence)
    runs = list(parts(read.phrase, read.values))
    assert "".join(words for words, _ in runs) == sentence
    assert [(name, words) for words, name in runs if name] == [
        (name, CHOICES[name].value(read.values[name]).words) for name in read.phrase.slots if name in read.values
    ]


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_book_is_written_as_it_is_read(name: str) -> None:
    text = preset_text(name)
    book, _ = book_from_text(text, SQUADS)
    found = written(text)
    assert [(one.cue, one.text, one.why, one.mistake) for one in found] == [
        (book.cue(rank), s.text, s.why or "", s.mistake or "") for rank, s in enumerate(book.sentences)
    ]
    assert [one.place for one in found] == [one.rank for one in found] == list(range(len(found)))
    for one in found:
        assert text.split("\n")[one.line - 1].startswith(f"{one.cue}. ")
        assert one.waves == ()


@CALMLY
@given(SCRIBBLES)
def test_whatever_is_written_ranks_are_those_of_the_book_and_waves_lie_on_the_words(text: str) -> None:
    book, problems = book_from_text(text)
    found = written(text)
    asked = [one for one in found if one.rank is not None]
    assert [(one.cue, one.text) for one in asked] == [(book.cue(r), s.text) for r, s in enumerate(book.sentences)]
    assert [one.rank for one in asked] == list(range(len(asked)))
    for one in found:
        assert "".join(words for words, _ in one.parts) == one.text
        for wave, words in zip(one.waves, waved(one), strict=True):
            assert words.strip() or not one.text
            assert (wave.wrong, wave.right) in [(p.wrong, p.right) for p in problems]
        if one.rank is None and not one.off:
            assert one.waves


@pytest.mark.parametrize(
    ("sentence", "words"),
    [
        ("Cut. When I pass to the next spot, I cut to the rym.", "rym"),
        ("Cut. When I pas to  the next spot,\n   I cut to the rim.", "pas"),
        ("Off: Cut. When I pass to the next spot, I run to the rim.", "run"),
        ("When I pass to the next spot, I cut to the rim, and stay there.", "and stay there."),
        ("Skip. When I skip the ball, I", "I"),
        ("Otherwise I dance all night.", "dance all night."),
    ],
)
def test_the_wave_is_under_the_faulty_word_or_under_all_the_rest(sentence: str, words: str) -> None:
    assert waved(written(f"{SOUND}{sentence}\n")[-1]) == [words]


def test_a_sentence_that_can_never_speak_is_waved_whole_without_its_cue() -> None:
    last = written(SOUND + "\nSkip. When I skip the ball, I hold for a count.\n")[-1]
    assert waved(last) == ["When I skip the ball, I hold for a count."]
    assert "can never speak" in last.waves[0].wrong


def test_what_is_missing_in_the_book_is_no_fault_of_a_sentence() -> None:
    assert [one.waves for one in written("When I skip the ball, I hold for a count.\n")] == [()]


def test_a_sentence_without_a_cue_has_that_of_its_phrase_and_a_draft_has_none() -> None:
    assert written("otherwise I hold, wide, feet set\n")[0].cue == "Wide"
    draft = written("When I wait, I wait.\n")[0]
    assert (draft.cue, draft.text, draft.rank) == ("", "When I wait, I wait.", None)


@pytest.mark.parametrize("name", NAMES)
def test_the_list_of_phrases_says_which_the_book_says_and_changes_no_choice_of_it(name: str) -> None:
    text = choose(preset_text(name), "exit", "fewest")
    book, _ = book_from_text(text)
    listed = phrase_list(book)
    assert [one.name for one in listed] == list(phrases())
    assert {one.name for one in listed if one.said} == {s.phrase.name for s in book.sentences}
    for one in listed:
        if not one.said:
            added = book_from_text(put_in_text(text, 0, f"{one.cue}. {one.text}"))[0]
            assert added.sentences[0].phrase.name == one.name
            assert {k: added.values[k] for k in CHOICES} == {k: book.values[k] for k in CHOICES}


def test_a_phrase_is_listed_with_the_choice_the_book_has_made() -> None:
    (out,) = (one for one in phrase_list(book_from_text(SOUND + "Exit: fewest\n")[0]) if one.name == "come out")
    assert (out.text, out.said) == ("When my cut is over, I come out to the side with the fewest of us.", False)


def test_a_phrase_that_is_off_is_not_said() -> None:
    book, _ = book_from_text(switch_off(SOUND, 1))
    assert [one.said for one in phrase_list(book) if one.name == "fill"] == [False]
