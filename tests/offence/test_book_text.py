"""A book's text made even: nothing that was said is lost, and what is even stays as it is."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from backcut.motion.squads import SQUADS
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.book_text import canonical, entries_from_text, place
from backcut.offence.library import preset_text, presets
from backcut.offence.reading import book_from_text

from .invented import CALMLY, SOUND, WORDS, books


def says(book: Book) -> dict[str, Any]:
    """Everything a book says; a sentence without its own cue has the phrase's."""
    return {
        "title": book.title,
        "formation": book.formation,
        "choices": dict(book.choices),
        "values": dict(book.values),
        "exceptions": book.exceptions,
        "sentences": [
            (sentence.phrase.name, dict(sentence.values), book.cue(rank), sentence.why, sentence.mistake)
            for rank, sentence in enumerate(book.sentences)
        ],
    }


def comments(text: str) -> list[str]:
    return [line.strip() for line in text.splitlines() if line.strip().startswith("#")]


@CALMLY
@given(books())
def test_what_is_even_stays_as_it_is(text: str) -> None:
    once = canonical(text)
    assert canonical(once) == once


@CALMLY
@given(books())
def test_an_even_text_says_the_same_in_the_same_order(text: str) -> None:
    assert says(book_from_text(canonical(text))[0]) == says(book_from_text(text)[0])


@CALMLY
@given(books())
def test_no_comment_is_lost_and_none_is_made(text: str) -> None:
    assert comments(canonical(text)) == comments(text)


@CALMLY
@given(books())
def test_an_even_text_has_the_same_problems(text: str) -> None:
    before, after = (book_from_text(written)[1] for written in (text, canonical(text)))
    assert [(problem.code, problem.wrong) for problem in before] == [(p.code, p.wrong) for p in after]


@CALMLY
@given(WORDS, WORDS)
@example("one-hand or two-hand " * 8, "#1 guards #2, why: nobody knows, " * 5)
def test_a_long_note_is_wrapped_and_not_changed(why: str, mistake: str) -> None:
    text = f"{SOUND}  Why: {why}\n  Mistake: {mistake}\n"
    sentence = book_from_text(canonical(text))[0].sentences[-1]
    assert (sentence.why, sentence.mistake) == (" ".join(why.split()), " ".join(mistake.split()))


@CALMLY
@given(st.text(max_size=300))
@example("Title: x\n\xa0\nOtherwise I hold, wide, feet set.\n")
@example("Players: ²\n5" + "5" * 5000 + " stays inside\n")
@example("Start: 1:T*" + "9" * 5000)
def test_no_text_is_too_odd_to_be_read(text: str) -> None:
    book, problems = book_from_text(text)
    assert problems
    assert book.title
    assert canonical(canonical(text)) == canonical(text)


@CALMLY
@given(st.text(alphabet=" \t\n#:abcAB.5\xa0\u2003\x0b", max_size=80))
def test_the_pieces_of_a_text_are_all_of_it(text: str) -> None:
    text += "\n"
    pieces = entries_from_text(text)
    assert [entry.at for entry in pieces] == sorted({entry.at for entry in pieces})
    held = "".join(entry.raw for entry in pieces)
    assert re.sub(r"\s", "", held) == re.sub(r"\s", "", text)


@pytest.mark.parametrize("name", presets())
def test_a_shipped_book_is_even_and_has_no_problems(name: str) -> None:
    text = preset_text(name)
    book, problems = book_from_text(text, SQUADS)
    assert problems == ()
    assert canonical(text) == text
    assert book.squad in SQUADS
    assert all(len(line) <= 100 for line in text.splitlines())


@pytest.mark.parametrize("name", presets())
def test_the_sentences_of_a_shipped_book_carry_letters_by_rank(name: str) -> None:
    book, _ = book_from_text(preset_text(name), SQUADS)
    letters = book.letters()
    assert len(letters) == len(book.sentences)
    assert list(letters.values()) == list("ABCDEFGHIJKLMNOPQRSTUVWXYZ"[: len(letters)])
    assert [letters[sentence.phrase.name] for sentence in book.sentences] == [letter(r) for r in range(len(letters))]


@pytest.mark.parametrize("name", presets())
def test_no_two_sentences_of_a_shipped_book_share_a_cue(name: str) -> None:
    book, _ = book_from_text(preset_text(name), SQUADS)
    cues = [book.cue(rank).lower() for rank in range(len(book.sentences))]
    assert sorted(cues) == sorted(set(cues))


def test_the_first_month_starts_with_few_sentences() -> None:
    # Young players learn pass and cut, fill and hold first: common practice, no source.
    book, _ = book_from_text(preset_text("first-month"))
    assert [sentence.phrase.name for sentence in book.sentences] == ["cut", "come out", "fill", "hold"]
    assert book.values["when to fill"] == "at once"


@pytest.mark.parametrize(
    ("messy", "even"),
    [
        ("title:   Ours  now", "Title: Ours now"),
        ("  formation :four-out", "Formation: four-out"),
        ("5   never  cuts", "5 never cuts."),
        ("OTHERWISE I HOLD WIDE FEET SET", "Wide. Otherwise I hold, wide, feet set."),
        ("Stay. otherwise i hold,\n\twide,\n   feet set", "Stay. Otherwise I hold, wide, feet set."),
        ("# a  comment  stays   as it is", "# a  comment  stays   as it is"),
        ("Otherwise I dance.", "Otherwise I dance."),
        ("\n\n\nTitle: x\n\n\n\nCourt: fiba\n\n", "Title: x\n\nCourt: fiba"),
        ("Otherwise I hold, wide, feet set.\nwhy:  so", "Wide. Otherwise I hold, wide, feet set.\n  Why: so"),
    ],
)
def test_spacing_case_and_wording_are_made_even(messy: str, even: str) -> None:
    assert canonical(messy) == even + "\n"


def test_a_place_counts_lines_and_columns_from_one() -> None:
    text = "ab\n\ncde\n"
    assert [place(text, offset) for offset in (0, 1, 3, 4, 6)] == [(1, 1), (1, 2), (2, 1), (3, 1), (3, 3)]
