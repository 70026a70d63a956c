"""One thing changed in a book's text: it is changed, and all else stays as it was written."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given

from backcut.offence.book import Book, plain_book
from backcut.offence.book_text import canonical, entries_from_text
from backcut.offence.choices import CHOICES
from backcut.offence.edit import choose, move, put_in, take_out, text_of
from backcut.offence.formation import formations
from backcut.offence.library import preset_text, presets
from backcut.offence.phrase import phrases
from backcut.offence.reading import book_from_text

from .invented import CALMLY, books

NAMES = presets()

#: A book as a coach writes one: comments above, beside and under sentences, notes, no blank line here and there.
NOTED = """# ours
Title: Noted
Formation: five-out
# the exit stands here, not in a sentence
Exit: the end of the line

# the first thing we teach
Cut. When I pass to the next spot, I cut to the rim.
  Why: the pass makes the defender look away,
    for a moment
  # said in every time-out
  Mistake: Stands.
# moving up
Fill. When the next spot toward the ball is empty, I fill it.

  # last of all
Wide. Otherwise I hold, wide, feet set.
  Mistake: Creeps.
4 never cuts.
# the end
"""


def read(text: str) -> Book:
    return book_from_text(text)[0]


def sentences(book: Book) -> list[tuple[object, ...]]:
    """Every sentence with all that belongs to it."""
    return [
        (s.phrase.name, tuple(sorted(s.values.items())), book.cue(rank), s.why, s.mistake)
        for rank, s in enumerate(book.sentences)
    ]


def lines(text: str) -> Counter[str]:
    """Every line that is not blank, as it is written, once for each time it stands there."""
    return Counter(line for line in text.splitlines() if line.strip())


def remarks(text: str) -> Counter[str]:
    """Every comment and every note, once for each time it stands there."""
    kept = ("comment", "note")
    return Counter(" ".join(entry.raw.split()) for entry in entries_from_text(text) if entry.kind in kept)


def read_by(book: Book) -> list[str]:
    """The choices that a sentence of the book reads."""
    read = {use for sentence in book.sentences for use in sentence.phrase.uses}
    exits = {"exit"} if any(sentence.phrase.ways_out for sentence in book.sentences) else set()
    return [name for name in CHOICES if name in read | exits]


def is_said(book: Book, name: str) -> bool:
    return name in book.choices or any(name in sentence.values for sentence in book.sentences)


# ── choices ─────────────────────────────────────────────────────────────


@pytest.mark.parametrize("name", NAMES)
def test_a_choice_that_is_made_reads_as_it_was_made_and_nothing_else_is_changed(name: str) -> None:
    text = preset_text(name)
    before = read(text)
    for choice in read_by(before):
        for value in CHOICES[choice].values:
            chosen = choose(text, choice, value.name)
            after = read(chosen)
            assert dict(after.values) == dict(before.values) | {choice: value.name}
            assert _without(after, choice) == _without(before, choice)
            assert sum((lines(chosen) - lines(text)).values()) <= 2  # one sentence, in two lines at the most
            assert not [line for line in lines(text) - lines(chosen) if line.lstrip().startswith(("#", "Why", "Mis"))]


def _without(book: Book, choice: str) -> Book:
    """The book as if nobody had said this choice."""
    said = [replace(s, values={k: v for k, v in s.values.items() if k != choice}) for s in book.sentences]
    return replace(book, sentences=tuple(said), choices={k: v for k, v in book.choices.items() if k != choice})


@pytest.mark.parametrize("name", NAMES)
def test_a_choice_that_was_said_is_said_as_before_when_it_is_made_back(name: str) -> None:
    text = preset_text(name)
    book = read(text)
    said = [choice for choice in read_by(book) if is_said(book, choice)]
    assert said
    for choice in said:
        own = CHOICES[choice].value(book.values[choice])
        for value in CHOICES[choice].values:
            back = choose(choose(text, choice, value.name), choice, own.name)
            # A line may say a value by its name; it comes back in the words that a sentence would use.
            by_name = f"{choice.capitalize()}: {own.name}\n"
            assert back == canonical(text).replace(by_name, f"{choice.capitalize()}: {own.words}\n")


@pytest.mark.parametrize("name", NAMES)
def test_a_choice_that_was_not_said_is_said_once_however_often_it_is_made(name: str) -> None:
    text = preset_text(name)
    book = read(text)
    unsaid = [choice for choice in read_by(book) if not is_said(book, choice)]
    assert unsaid
    for choice in unsaid:
        default, other = (value.name for value in CHOICES[choice].values[:2])
        once = choose(text, choice, other)
        assert choose(choose(once, choice, default), choice, other) == once
        back = read(choose(once, choice, default))
        assert dict(back.values) == dict(book.values)
        assert _without(back, choice) == book


def test_a_choice_said_on_a_line_and_in_no_sentence_stays_on_its_line() -> None:
    assert choose(NOTED, "exit", "first open") == NOTED.replace("the end of the line", "the first open spot")


def test_a_choice_said_nowhere_comes_into_the_first_sentence_that_can_say_it_else_on_a_line_below_the_others() -> None:
    filled = choose(NOTED, "when to fill", "at once")
    assert filled == NOTED.replace("I fill it.", "I fill it at once.")
    corner = choose(NOTED, "corner passer", "hold")
    assert corner == NOTED.replace("of the line\n", "of the line\nCorner passer: hold\n", 1)


def test_a_choice_said_in_two_sentences_is_changed_in_both() -> None:
    twice = NOTED.replace("I fill it.", "I fill it at once.\n\nWhen the next spot toward the ball is empty, I fill it "
                          "after a count of two.")  # fmt: skip
    changed = read(choose(twice, "when to fill", "looked"))
    assert [s.values["when to fill"] for s in changed.sentences if s.phrase.name == "fill"] == ["looked"] * 2


def test_an_unknown_choice_or_value_is_an_error() -> None:
    for name, value in (("exits", "first open"), ("exit", "the first open spot")):
        with pytest.raises(KeyError):
            choose(NOTED, name, value)


# ── sentences ───────────────────────────────────────────────────────────


def some(count: int) -> list[int]:
    """A few ranks of so many sentences: the first two, one in the middle, the last."""
    return sorted({0, 1, count // 2, count - 1})


WRITTEN = [pytest.param(preset_text(name), id=name) for name in NAMES] + [pytest.param(NOTED, id="noted")]


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_is_taken_out_with_its_own_notes_and_nothing_else(text: str) -> None:
    before = sentences(read(text))
    for rank, (*_, why, mistake) in enumerate(before):
        without = take_out(text, rank)
        assert sentences(read(without)) == before[:rank] + before[rank + 1 :]
        assert lines(without) <= lines(text)
        gone = " ".join(" ".join((lines(text) - lines(without)).elements()).split())
        assert gone.count("Why:") == (why is not None)
        assert gone.count("Mistake:") == (mistake is not None)
        assert "\n\n\n" not in without


def test_a_comment_among_the_notes_of_a_sentence_goes_with_it_and_those_before_it_stay() -> None:
    without = take_out(NOTED, 0)
    assert {line.strip() for line in lines(NOTED) - lines(without) if "#" in line} == {"# said in every time-out"}
    assert "# the first thing we teach\n# moving up\nFill." in without


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_put_in_stands_at_its_rank_and_all_else_stays(text: str) -> None:
    before = read(text)
    names = [sentence.phrase.name for sentence in before.sentences]
    for name, phrase in ((name, phrase) for name, phrase in phrases().items() if name not in names):
        for rank in {0, len(names) // 2, len(names)}:
            with_it = put_in(text, name, rank)
            after = read(with_it)
            assert [s.phrase.name for s in after.sentences] == [*names[:rank], name, *names[rank:]]
            assert sentences(after)[:rank] + sentences(after)[rank + 1 :] == sentences(before)
            assert {choice for choice, value in after.values.items() if value != before.values[choice]} <= {
                *phrase.slots
            }
            assert lines(text) <= lines(with_it)
            assert lines(take_out(with_it, rank)) == lines(text)
            assert "\n\n\n" not in with_it


@pytest.mark.parametrize("text", WRITTEN)
def test_a_sentence_that_is_moved_takes_its_notes_along_and_all_else_stays(text: str) -> None:
    before = read(text)
    for rank in some(len(before.sentences)):
        for to in some(len(before.sentences)):
            moved = move(text, rank, to)
            after = read(moved)
            order = sentences(before)
            order.insert(to, order.pop(rank))
            assert sentences(after) == order
            assert (after.choices, after.exceptions) == (before.choices, before.exceptions)
            assert lines(moved) == lines(text)
            assert "\n\n\n" not in moved


def test_a_sentence_moved_there_and_back_leaves_a_shipped_book_as_it_is() -> None:
    for name in NAMES:
        text = preset_text(name)
        assert move(move(text, 0, 2), 2, 0) == text


def test_there_is_no_sentence_beyond_the_last() -> None:
    with pytest.raises(IndexError):
        take_out(NOTED, 3)
    with pytest.raises(IndexError):
        move(NOTED, 3, 0)
    with pytest.raises(KeyError):
        put_in(NOTED, "dance", 0)


@CALMLY
@given(books())
def test_whatever_a_coach_wrote_a_choice_is_made_without_losing_a_remark(text: str) -> None:
    after = choose(text, "exit", "fewest")
    assert remarks(after) == remarks(text)
    assert [s.phrase.name for s in read(after).sentences] == [s.phrase.name for s in read(text).sentences]
    assert read(after).values["exit"] == "fewest"


# ── books that were never written ───────────────────────────────────────


@pytest.mark.parametrize("name", formations())
def test_a_plain_book_that_is_written_out_reads_back_to_the_same_sentences(name: str) -> None:
    plain = plain_book(formations()[name])
    written = text_of(plain)
    found, problems = book_from_text(written)
    assert problems == ()
    assert canonical(written) == written
    assert (found.title, found.formation) == (plain.title, plain.formation)
    assert [s.phrase.name for s in found.sentences] == [s.phrase.name for s in plain.sentences]
    assert dict(found.values) == dict(plain.values)
