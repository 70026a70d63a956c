"""A sentence changed by its place in the text, on or off, read or not; all else stays letter by letter."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from backcut.errors import NotationError
from backcut.motion.squads import SQUADS
from backcut.offence.book_text import canonical, entries_from_text
from backcut.offence.edit import (
    move_to,
    note,
    put_in_text,
    rewrite,
    switch_off,
    switch_on,
    take_out_at,
)
from backcut.offence.library import preset_text, presets
from backcut.offence.phrase import phrases
from backcut.offence.pieces import Written, written
from backcut.offence.problems import Code
from backcut.offence.reading import book_from_text

from .invented import CALMLY
from .scribbles import EDITS, SCRIBBLES, edited
from .test_edit import NOTED

NAMES = presets()
WRITTEN = [pytest.param(preset_text(name), id=name) for name in NAMES] + [pytest.param(NOTED, id="noted")]
JUMP = "Jump. When the ball is in the air, I jump."


def lines(text: str) -> list[str]:
    """Every line that is not blank, as it is written, in order."""
    return [line for line in text.split("\n") if line.strip()]


def says(text: str) -> list[tuple[Any, ...]]:
    """What every sentence of a text says, in order."""
    return [_says(one) for one in written(text)]


def _says(one: Written) -> tuple[Any, ...]:
    return one.off, one.cue, one.text, one.why, one.mistake


def comments(text: str, set_in: bool) -> Counter[str]:
    found = (entry.raw for entry in entries_from_text(text) if entry.kind == "comment")
    return Counter(raw for raw in found if raw[0].isspace() is set_in)


# ── off and on ──────────────────────────────────────────────────────────


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_switched_off_and_on_again_leaves_the_text_as_it_was(text: str) -> None:
    for place in range(len(written(text))):
        off = switch_off(text, place)
        assert off != text
        assert [one.off for one in written(off)] == [at == place for at in range(len(written(text)))]
        assert switch_off(off, place) == off
        assert switch_on(off, place) == text
        assert switch_on(text, place) == text


@pytest.mark.parametrize("name", NAMES)
def test_a_book_with_a_sentence_off_plays_as_the_book_without_it(name: str) -> None:
    text = preset_text(name)
    for place in range(len(written(text))):
        off, out = (book_from_text(made, SQUADS) for made in (switch_off(text, place), take_out_at(text, place)))
        assert off[0].sentences == out[0].sentences
        assert off[0].values == out[0].values
        assert [(p.code, p.wrong, p.right) for p in off[1]] == [(p.code, p.wrong, p.right) for p in out[1]]


@pytest.mark.parametrize("name", NAMES)
def test_a_sentence_that_is_off_keeps_its_place_and_its_notes_and_has_no_rank(name: str) -> None:
    text = preset_text(name)
    before = written(text)
    for place, one in enumerate(before):
        after = written(switch_off(text, place))
        assert after[place] == replace(one, off=True, rank=None)
        others = [one for one in after if not one.off]
        assert [one.rank for one in others] == list(range(len(before) - 1))
        assert [_says(one) for one in others] == [_says(one) for one in before if one.place != place]


@pytest.mark.parametrize("text", WRITTEN)
def test_the_even_text_keeps_what_is_off(text: str) -> None:
    for place in range(len(written(text))):
        off = switch_off(text, place)
        assert says(canonical(off)) == says(off)
        assert canonical(canonical(off)) == canonical(off)


def test_an_off_sentence_is_written_anyhow_and_made_even() -> None:
    assert canonical("oFF :  otherwise i hold wide\n   feet set\n why: so\n") == (
        "Off: Wide. Otherwise I hold, wide, feet set.\n  Why: so\n"
    )


def test_an_off_sentence_that_cannot_be_read_is_a_problem_at_its_faulty_word() -> None:
    text = preset_text("school-team") + "\nOff: Jump. When I pass to the next spot, I jump.\n"
    (problem,) = book_from_text(text, SQUADS)[1]
    assert problem.code is Code.UNKNOWN_SENTENCE
    assert text.split("\n")[problem.line - 1][problem.column - 1 :] == "jump."
    assert canonical(text) == text


def test_an_off_sentence_that_cannot_be_read_hides_no_other_problem() -> None:
    text = "Title: x\nFormation: five-out\nWhen I skip the ball, I hold for a count.\nOff: Otherwise I dance.\n"
    assert [problem.code for problem in book_from_text(text)[1]] == [Code.NOT_COVERED, Code.UNKNOWN_SENTENCE]


def test_notes_of_an_off_sentence_are_its_own_and_not_those_of_the_sentence_above() -> None:
    text = NOTED.replace("Fill. When", "Off: Fill. When").replace("I fill it.\n", "I fill it.\n  Why: Holes.\n")
    assert written(text)[1].why == "Holes."
    book, problems = book_from_text(text)
    assert [sentence.why for sentence in book.sentences] == [
        "the pass makes the defender look away, for a moment",
        None,
    ]
    assert problems == ()


def test_what_is_no_sentence_is_not_switched_on() -> None:
    for words in ("Title: ours", "# a thought", "4 never cuts.", "Why: so", ""):
        with pytest.raises(NotationError):
            switch_on(f"Off: {words}\n", 0)


@CALMLY
@given(SCRIBBLES)
def test_any_text_made_even_says_the_same_on_and_off(text: str) -> None:
    even = canonical(text)
    assert canonical(even) == even
    assert says(even) == says(text)
    before, after = (Counter(problem.code for problem in book_from_text(made)[1]) for made in (text, even))
    assert after == before


# ── out, in, elsewhere ──────────────────────────────────────────────────


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_taken_out_by_place_goes_with_its_notes_and_nothing_else(text: str) -> None:
    before = says(text)
    for place in range(len(before)):
        out = take_out_at(text, place)
        assert says(out) == before[:place] + before[place + 1 :]
        kept = iter(lines(text))
        assert all(line in kept for line in lines(out))  # the same lines in the same order
        assert comments(out, set_in=False) == comments(text, set_in=False)
        assert "\n\n\n" not in out


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_put_in_by_place_stands_there_and_comes_out_again(text: str) -> None:
    before = says(text)
    for place in range(len(before) + 1):
        for words in ("When I skip the ball, I hold for a count.", JUMP):
            with_it = put_in_text(text, place, words)
            after = says(with_it)
            assert after[:place] + after[place + 1 :] == before
            assert after[place][2] == words.removeprefix("Jump. ")
            assert lines(take_out_at(with_it, place)) == lines(text)


@pytest.mark.parametrize("name", NAMES)
def test_a_sentence_put_into_a_shipped_book_and_taken_out_leaves_it_letter_by_letter(name: str) -> None:
    text = preset_text(name)
    for place in range(len(written(text)) + 1):
        assert take_out_at(put_in_text(text, place, JUMP), place) == text


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_moved_there_and_back_leaves_the_text_as_it_was(text: str) -> None:
    before = says(text)
    for place in range(len(before)):
        for to in range(len(before)):
            moved = move_to(text, place, to)
            order = list(before)
            order.insert(to, order.pop(place))
            assert says(moved) == order
            assert sorted(lines(moved)) == sorted(lines(text))
            assert move_to(moved, to, place) == text
        assert move_to(text, place, len(before)) == move_to(text, place, len(before) - 1)


def test_a_comment_directly_above_a_sentence_goes_where_the_sentence_goes() -> None:
    moved = move_to(NOTED, 1, 0)
    assert "# moving up\nFill. When the next spot toward the ball is empty, I fill it.\n# the first" in moved.replace(
        "\n\n", "\n"
    )
    assert "\n# moving up\nFill." in put_in_text(NOTED, 1, JUMP)


def test_the_first_sentence_of_a_book_without_any_comes_below_its_lines() -> None:
    assert put_in_text("Title: x\n", 0, JUMP) == f"Title: x\n\n{JUMP}\n"
    assert put_in_text("", 0, JUMP) == f"{JUMP}\n"


# ── words and notes ─────────────────────────────────────────────────────


@pytest.mark.parametrize("text", WRITTEN)
def test_a_rewritten_sentence_is_written_even_and_every_other_line_stays(text: str) -> None:
    for place, one in enumerate(written(text)):
        new = rewrite(text, place, "Stay. otherwise i hold wide\n feet set")
        line = "Stay. Otherwise I hold, wide, feet set."
        assert (written(new)[place].why, written(new)[place].mistake) == (one.why, one.mistake)
        gone = Counter(lines(text)) - Counter(lines(new))
        assert " ".join(" ".join(gone).split()) == f"{one.cue}. {one.text}"
        assert Counter(lines(new)) - Counter(lines(text)) == Counter([line])
        assert written(new)[place].line == one.line


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_rewritten_with_its_own_words_stays_letter_by_letter(text: str) -> None:
    for place, one in enumerate(written(text)):
        assert rewrite(text, place, f"  {one.cue}.  {one.text}\n") == text
        off = switch_off(text, place)
        assert rewrite(off, place, f"{one.cue}. {one.text}") == off


@pytest.mark.parametrize("name", NAMES)
def test_a_draft_that_cannot_be_read_is_written_all_the_same_and_becomes_a_problem(name: str) -> None:
    text = preset_text(name)
    for place in range(len(written(text))):
        draft = rewrite(text, place, JUMP)
        assert (written(draft)[place].cue, written(draft)[place].text) == tuple(JUMP.split(". ", 1))
        assert written(draft)[place].rank is None
        assert Code.UNKNOWN_SENTENCE in [problem.code for problem in book_from_text(draft, SQUADS)[1]]
        one = written(text)[place]
        assert rewrite(draft, place, f"{one.cue}. {one.text}") == text


def test_a_sentence_that_is_off_stays_off_when_it_is_rewritten() -> None:
    off = rewrite(switch_off(NOTED, 0), 0, JUMP)
    assert f"\nOff: {JUMP}\n" in off
    assert f"\nOff: {JUMP}\n" in rewrite(NOTED, 0, f"Off: {JUMP}")


@pytest.mark.parametrize(
    "words", ["", " \n ", "# a thought", "Title: ours", "4 never cuts.", "Why: so", "!", "Prove: x"]
)
def test_what_would_be_another_line_is_no_sentence(words: str) -> None:
    with pytest.raises(NotationError):
        rewrite(NOTED, 0, words)
    with pytest.raises(NotationError):
        put_in_text(NOTED, 0, words)


@pytest.mark.parametrize("text", WRITTEN)
@pytest.mark.parametrize("which", ["why", "mistake"])
def test_a_note_is_written_changed_and_taken_out_under_its_own_sentence(text: str, which: str) -> None:
    for place, one in enumerate(written(text)):
        words = "Because why: not " + ("so, " * 40).strip()
        new = note(text, place, which, words.replace(" why", "\nwhy"))
        why, mistake = (words, one.mistake) if which == "why" else (one.why, words)
        expected = says(text)
        expected[place] = (one.off, one.cue, one.text, why, mistake)
        assert says(new) == expected
        assert comments(new, set_in=True) == comments(text, set_in=True)
        without = note(new, place, which, "")
        assert getattr(written(without)[place], which) == ""
        assert note(text, place, which, getattr(one, which)) == text
        if not getattr(one, which):
            assert without == text


def test_the_mistake_stands_below_the_why() -> None:
    text = note(note("Otherwise I hold, wide, feet set.\n", 0, "mistake", "Creeps."), 0, "why", "Room.")
    assert text == "Otherwise I hold, wide, feet set.\n  Why: Room.\n  Mistake: Creeps.\n"


def test_a_note_that_is_none_is_refused() -> None:
    with pytest.raises(NotationError, match="why and mistake"):
        note(NOTED, 0, "because", "so")


def test_a_place_that_is_not_there_is_one_clear_sentence() -> None:
    changes: tuple[Callable[[str, int], str], ...] = (
        switch_off,
        switch_on,
        take_out_at,
        lambda text, place: move_to(text, place, 0),
        lambda text, place: rewrite(text, place, JUMP),
        lambda text, place: note(text, place, "why", "so"),
    )
    for change in changes:
        for place in (-1, 3, 400):
            with pytest.raises(NotationError, match="it has 3"):
                change(NOTED, place)
    for to in (-1, 4):
        with pytest.raises(NotationError):
            move_to(NOTED, 0, to)
    for place in (-1, 4):
        with pytest.raises(NotationError):
            put_in_text(NOTED, place, JUMP)


# ── whatever a coach does ───────────────────────────────────────────────


@CALMLY
@given(SCRIBBLES, st.lists(EDITS, max_size=6))
def test_after_any_edits_the_text_still_reads_and_no_comment_is_lost(
    text: str, edits: list[tuple[object, ...]]
) -> None:
    for change in edits:
        before = text
        try:
            text = edited(text, change)
        except NotationError:
            continue
        book, _ = book_from_text(text)
        assert book.title
        assert text.endswith("\n")
        assert comments(text, set_in=False) == comments(before, set_in=False)
        if change[0] == "take_out_at":  # what is set in below a sentence is its own
            assert comments(text, set_in=True) <= comments(before, set_in=True)
        else:
            assert comments(text, set_in=True) == comments(before, set_in=True)


@CALMLY
@given(SCRIBBLES, EDITS)
@example("Otherwise I dance\n  Off: (later)\n", ("switch_on", 1))
@example("Otherwise I dance\nOff: (later)\n# c\n  4 never cuts.\n", ("move_to", 1, 0))
def test_an_edit_changes_its_own_sentence_and_no_other(text: str, change: tuple[object, ...]) -> None:
    before = says(text)
    try:
        after = says(edited(text, change))
    except NotationError:
        return
    name, *given_ = change
    place = given_[0]
    match name:
        case "choose":
            assert [one[3:] for one in after] == [one[3:] for one in before]
        case "move_to":
            before.insert(min(int(str(given_[1])), len(before) - 1), before.pop(int(str(place))))
            assert after == before
        case "take_out_at":
            assert after == [one for at, one in enumerate(before) if at != place]
        case "put_in_text":
            assert [one for at, one in enumerate(after) if at != place] == before
        case "set_line" | "set_spot" | "set_role":
            assert [one[:3] for one in after] == [one[:3] for one in before]
        case _:
            assert len(after) == len(before)
            assert [one for at, one in enumerate(after) if at != place] == [
                one for at, one in enumerate(before) if at != place
            ]


@CALMLY
@given(SCRIBBLES, st.integers(0, 4))
def test_off_and_on_and_there_and_back_leave_any_text_as_it_was_said(text: str, place: int) -> None:
    count = len(written(text))
    if place >= count:
        return
    if not written(text)[place].off:
        assert switch_on(switch_off(text, place), place) == text
    for to in range(count):
        assert says(move_to(move_to(text, place, to), to, place)) == says(text)


def test_every_phrase_can_be_put_in_by_its_own_words() -> None:
    for phrase in phrases().values():
        text = put_in_text("Title: x\n", 0, f"{phrase.cue}. {phrase.sentence({})}")
        assert (written(text)[0].cue, written(text)[0].text) == (phrase.cue, phrase.sentence({}))
