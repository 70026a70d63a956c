"""The lines "Prove:" and "Do not prove:" of a book: kept as they are, with their place, and made even."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.offence.book import ProofLine
from backcut.offence.book_text import canonical, entries_from_text
from backcut.offence.problems import Code
from backcut.offence.reading import book_from_text
from backcut.offence.settings import PROOFS

from .invented import CALMLY, SOUND, WORDS
from .test_book_page import PAGE


def proofs(text: str) -> tuple[ProofLine, ...]:
    book, problems = book_from_text(text)
    assert problems == ()
    return book.proofs


def test_a_book_without_them_has_none() -> None:
    assert proofs(SOUND) == ()


def test_they_are_kept_in_order_with_the_place_where_their_text_begins() -> None:
    assert proofs("Do not prove:  every line-up\n" + SOUND + "  prove: Never does 5 cut.\n") == (
        ProofLine("every line-up", 1, 16, off=True),
        ProofLine("Never does 5 cut.", 10, 10),
    )


def test_a_long_one_goes_on_set_in_and_knows_the_place_of_each_word() -> None:
    (line,) = proofs(SOUND + "Prove: Always, when all have settled,\n    somebody stands at the top.\n")
    assert line.text == "Always, when all have settled,\n    somebody stands at the top."
    assert line.place(0) == (9, 8)
    assert line.place(line.text.index("when")) == (9, 16)
    assert line.place(line.text.index("somebody")) == (10, 5)


@pytest.mark.parametrize(
    "next_", ["# A note.", "  # A note.", "Court: fiba", "  Squad: boys-u16", "  Do not prove: x", "4 never cuts."]
)
def test_it_ends_before_the_next_line_of_the_book(next_: str) -> None:
    assert proofs(f"{SOUND}Prove: Never does 5 cut.\n{next_}\n")[0].text == "Never does 5 cut."


def test_set_in_below_a_note_it_is_no_part_of_the_note() -> None:
    (line,) = proofs(SOUND + "  Why: So.\n  Prove: Never does 5 cut.\n")
    assert (line.text, line.line, line.column) == ("Never does 5 cut.", 10, 10)


def test_a_note_that_speaks_of_it_stays_a_note() -> None:
    text = f"{SOUND}  Why: {'So that all of us see it. ' * 3}It shall prove: {'we need the room. ' * 4}\n"
    assert proofs(canonical(text)) == ()
    assert book_from_text(canonical(text))[0].sentences == book_from_text(text)[0].sentences


def test_a_note_below_it_belongs_to_no_sentence() -> None:
    (problem,) = book_from_text(SOUND + "Prove: Never does 5 cut.\n  Why: He is slow.\n")[1]
    assert problem.code is Code.NOTE_ALONE


def test_a_word_that_is_nearly_theirs_is_told() -> None:
    (problem,) = book_from_text(SOUND + "Proof: Never does 5 cut.\n")[1]
    assert "prove" in problem.right


@pytest.mark.parametrize(
    ("messy", "even"),
    [
        ("  do NOT  prove :  every   line-up", "Do not prove: every line-up"),
        ("PROVE:never does 5\n   cut", "Prove: never does 5 cut"),
        ("Prove:", "Prove:"),
        (
            "Prove: Always, when all have settled and the ball is at the top, two of us stand in a corner.",
            "Prove: Always, when all have settled and the ball is at the top, two of us stand in a corner.",
        ),
        (
            "Prove: Always, when all have settled and the ball is at the top, two of us stand in a corner or 5 cuts.",
            "Prove: Always, when all have settled and the ball is at the top, two of us stand in a corner or\n"
            "  5 cuts.",
        ),
    ],
)
def test_spacing_is_made_even_and_words_are_left_as_they_are(messy: str, even: str) -> None:
    assert canonical(messy).rstrip() == even
    assert canonical(canonical(messy)) == canonical(messy)


@CALMLY
@given(st.lists(st.tuples(st.sampled_from(("Prove", "do not  prove", "PROVE ")), WORDS), max_size=3))
def test_an_even_book_asks_for_the_same_in_the_same_order_and_keeps_its_notes(lines: list[tuple[str, str]]) -> None:
    text = SOUND + "".join(f"# Note {i}.\n{key}: {words}\n" for i, (key, words) in enumerate(lines))
    even = canonical(text)
    assert canonical(even) == even

    def said(text: str) -> list[tuple[bool, str]]:
        return [(line.off, " ".join(line.text.split())) for line in proofs(text)]

    assert said(even) == said(text) == [("not" in key, " ".join(words.split())) for key, words in lines]
    assert [e.raw for e in entries_from_text(even) if e.kind == "comment"] == [
        f"# Note {i}." for i in range(len(lines))
    ]


def test_both_lines_are_explained_on_the_page_of_a_book() -> None:
    for key in PROOFS:
        assert f"`{key.capitalize()}:`" in PAGE
