"""What stands on the sheets: the coach's own words whole, ours from the catalogue, and as large as they must be."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from io import BytesIO
from itertools import pairwise
from typing import Any

import pypdfium2
import pytest
import typst
from pypdf import PdfReader
from tests.pseudo import PSEUDO, hard_wired
from tests.teaching.books import BOOKS, book, every, shown
from tests.teaching.sheets.printed import DAY, SCALE, cards, handout, made, mark, pages, text
from tests.teaching.test_words import own

from backcut.errors import BackcutError
from backcut.language import speaking
from backcut.offence.choices import CHOICES
from backcut.teaching.sheets import (
    PAPERS,
    Block,
    Plan,
    Sheet,
    bench_pdf,
    booklet_pdf,
    handout_pdf,
    page_pdf,
    poster_pdf,
    quiz_pdf,
    sheets,
    stamp,
)
from backcut.teaching.sheets.bench import short
from backcut.teaching.sheets.booklet import choices_of
from backcut.teaching.sheets.card import Card, cards_pdf
from backcut.teaching.sheets.sheets import file_name


@pytest.mark.parametrize(("name", "rank"), every())
def test_a_handout_is_one_page_with_the_sentence_why_and_the_mistake(name: str, rank: int) -> None:
    one = book(name)
    sentence = one.sentences[rank]
    for paper in ("a4", "letter"):
        pdf = handout(name, rank, paper)
        assert len(PdfReader(BytesIO(pdf)).pages) == 1
        said = text(pdf)
        assert f"{one.cue(rank)}." in said
        for words in (sentence.text, sentence.why or sentence.phrase.why, sentence.mistake or sentence.phrase.mistake):
            assert " ".join(words.split()) in said
        assert "See." in said
        assert "Go." in said


@pytest.mark.parametrize("name", BOOKS)
def test_poster_and_booklet_hold_every_sentence(name: str) -> None:
    one = book(name)
    for kind in (Sheet.POSTER, Sheet.BOOKLET):
        said = text(made(name, kind)[0].pdf)
        for rank, sentence in enumerate(one.sentences):
            assert f"{one.cue(rank)}." in said
            assert " ".join(sentence.text.split()) in said


@pytest.mark.parametrize("name", BOOKS)
def test_the_booklet_holds_every_choice_with_who_makes_it(name: str) -> None:
    one = book(name)
    said = text(made(name, Sheet.BOOKLET)[0].pdf)
    for choice in CHOICES.values():
        assert choice.asks in said
        assert choice.value(one.values[choice.name]).who in said
    rest = said.index("Choices that no sentence of this book reads") if "Choices that no" in said else len(said)
    read = {name for rank in range(len(one.sentences)) for name in choices_of(one, rank)}
    for choice in CHOICES.values():
        assert (said.index(choice.asks) < rest) == (choice.name in read)
    count = len(PdfReader(BytesIO(made(name, Sheet.BOOKLET)[0].pdf)).pages)
    for number in range(1, count + 1):
        assert f"Page {number} of {count}" in text(made(name, Sheet.BOOKLET)[0].pdf, number - 1)


def _letters(pdf: bytes) -> Iterator[tuple[str, float]]:
    """Every letter outside pictures with its size in points."""
    for page in pypdfium2.PdfDocument(pdf):
        words = page.get_textpage()
        for at in range(words.count_chars()):
            size = pypdfium2.raw.FPDFText_GetFontSize(words.raw, at)
            yield words.get_text_range(at, 1), size


def _smallest(pdf: bytes, words: str) -> float:
    """The smallest size in points in which the letters of these words stand where they follow each other."""
    letters = [(one, size) for one, size in _letters(pdf) if not one.isspace()]
    run = "".join(one for one, _ in letters)
    at = run.index("".join(words.split()))
    return min(size for _, size in letters[at : at + len("".join(words.split()))])


@pytest.mark.parametrize("name", BOOKS)
def test_the_bench_sheet_is_read_from_the_bench(name: str) -> None:
    """14 pt, large print 24 pt (the look)."""
    one = book(name)
    small, large = made(name, Sheet.BENCH)[0].pdf, made(name, Sheet.BENCH, "a4", True)[0].pdf
    for rank, sentence in enumerate(one.sentences):
        words = f"{one.cue(rank)}. {short(sentence.text)}"
        assert _smallest(small, words) >= 14.0 - 0.01
        assert _smallest(large, words) >= 24.0 - 0.01
    assert len(PdfReader(BytesIO(small)).pages) == 1
    assert len(PdfReader(BytesIO(large)).pages) <= 2


def test_the_boxes_to_tick_are_eight_millimetres_wide() -> None:
    page = next(pages(made("first-month", Sheet.BENCH)[0].pdf))
    column = page[:, int((210 - 15 - 4) * SCALE), 0] < 128  # through the middle of the last box
    edges = [row for row in range(1, len(column)) if column[row] and not column[row - 1]]
    high = [(b - a) / SCALE for a, b in pairwise(edges)]
    assert sum(abs(mm - 8.0) < 0.6 for mm in high) >= 4


@pytest.mark.parametrize("name", BOOKS)
def test_the_poster_is_read_from_across_the_hall(name: str) -> None:
    """Cue words of 64 pt are read from 5 m, sentences of 26 pt from 2 m (the look, a rule of thumb).

    They are an eighth smaller at most, and only where that saves a sheet.
    """
    one = book(name)
    for paper in ("a4", "letter"):
        pdf = made(name, Sheet.POSTER, paper)[0].pdf
        for rank, sentence in enumerate(one.sentences):
            assert _smallest(pdf, f"{one.cue(rank)}.") >= 64.0 * 0.875
            assert _smallest(pdf, sentence.text) >= 26.0 * 0.875


def test_a_short_sentence_says_the_same() -> None:
    assert short("When I pass to the next spot, I cut to the rim.") == "Pass to the next spot: cut to the rim."
    assert short("Otherwise I hold, wide, feet set.") == "Hold, wide, feet set."
    assert short("When a shot goes up, the highest of us gets back and the rest rebound.") == (
        "A shot goes up: the highest of us gets back and the rest rebound."
    )
    assert short("Run.") == "Run."


@pytest.mark.parametrize("name", BOOKS)
def test_the_key_of_a_quiz_is_on_a_page_of_its_own(name: str) -> None:
    pdf = made(name, Sheet.QUIZ)[0].pdf
    count = len(PdfReader(BytesIO(pdf)).pages)
    assert count == 2
    assert text(pdf, count - 1).startswith("Key:")
    assert "Key:" not in text(pdf, 0)
    assert "My number" in text(pdf, 0)


#: The letters of sentences, as they follow each other in a picture.
LETTERS = re.compile("[A-M]+")

PLAN = Plan(
    title="Tonight: Fill",
    lines=("School team, 18:00 to 18:45, 9 players",),
    blocks=tuple(
        Block(f"18:{5 * n:02}", 5, f"Block {n}", ("Pass, and everybody answers by the book.",) * 2, "1 to 5", "Fill", n)
        for n in range(8)
    ),
    questions=(("1 passes to 3. What does 2 do?", "2 fills the top."),),
    not_met=("A team waits 45 s.",),
    care="Warm up first.",
)


def test_tonight_is_one_page_with_clock_cards_and_room_to_write() -> None:
    for paper in ("a4", "letter"):
        pdf = page_pdf(PLAN, mark("school-team"), PAPERS[paper])
        assert len(PdfReader(BytesIO(pdf)).pages) == 1
        said = text(pdf)
        for block in PLAN.blocks:
            assert block.clock in said
            assert f"Card {block.card}" in said
        for words in ("Notes", "2 fills the top.", "A team waits 45 s.", "Warm up first."):
            assert words in said
        assert _smallest(pdf, "Block 3") >= 12.0  # read at arm's length


def test_cards_hold_all_their_words() -> None:
    for paper in ("a4", "letter"):
        said = text(cards("school-team", 1, paper))
        for words in ("Once.", "Twice.", "Thrice.", "1 passes to 3: 2 fills the top.", "X2 denies 2: 2 back cuts."):
            assert words in said
        assert said.count("and then begin again from the top.") == 6
        assert "Card 1 of 1" in said


def test_markup_of_a_coach_is_printed_as_it_is_typed() -> None:
    odd = '#pagebreak() *star* $x$ _under_ "quoted" \\ <b> `code` // no'
    one = shown("school-team")[2]
    own_book = replace(one.book, title=odd)
    pdf = handout_pdf(replace(one, book=own_book), stamp(own_book, DAY), PAPERS["a4"])
    assert odd in text(pdf)
    assert len(PdfReader(BytesIO(pdf)).pages) == 1


@pytest.mark.parametrize("words", ["x" * 400, "When the ball is at the top " * 10, "Équipe Привет", "\x00\x07", "."])
def test_any_words_leave_a_handout_one_page(words: str) -> None:
    one = shown("school-team")[2]
    sentences = tuple(replace(s, cue=words, why=words, mistake=words) for s in one.book.sentences)
    own_book = replace(one.book, title=words, sentences=sentences)
    pdf = handout_pdf(replace(one, book=own_book), stamp(own_book, DAY), PAPERS["a4"])
    assert len(PdfReader(BytesIO(pdf)).pages) == 1
    assert (next(pages(pdf))[: int(15 * SCALE)] == 255).all()


def _strings(data: Any) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for key, value in data.items():
            if key not in ("svg", "dir", "lang"):
                yield from _strings(value)
    elif isinstance(data, list):
        for value in data:
            yield from _strings(value)


@pytest.fixture
def handed_over(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """All words handed to the press, as they come."""
    words: list[str] = []
    compile_: Callable[..., bytes] = typst.compile

    def kept(*args: Any, **named: Any) -> bytes:
        data = json.loads(named["sys_inputs"]["data"])
        words.extend(_strings(data))
        return compile_(*args, **named)

    monkeypatch.setattr(typst, "compile", kept)
    return words


@pytest.mark.parametrize("name", BOOKS)
def test_no_word_of_ours_is_hard_wired(name: str, handed_over: list[str]) -> None:
    one, on = book(name), PAPERS["a4"]
    with speaking("xx", PSEUDO):
        printed = [
            *(handout_pdf(example, stamp(one, DAY), on) for example in shown(name).values()),
            poster_pdf(one, stamp(one, DAY), on),
            bench_pdf(one, stamp(one, DAY), on),
            booklet_pdf(one, stamp(one, DAY), on),
        ]
    coach = [*own(name), *(short(s.text) for s in one.sentences), stamp(one, DAY).version, one.formation.title]
    assert handed_over
    for words in handed_over:
        assert hard_wired(words, *coach) == [], words
    for pdf in printed:  # and the templates add none
        left = hard_wired(text(pdf), *(" ".join(words.split()) for words in coach))
        assert [word for word in left if not LETTERS.fullmatch(word)] == []


def test_the_sheets_that_others_fill_add_no_word_of_their_own() -> None:
    svg = '<svg xmlns="http://www.w3.org/2000/svg" width="2" height="1" viewBox="0 0 2 1"><title>1</title></svg>'
    card = Card("A", "1", "2", "3", svg, ("4", "5", "6"), "7", "8", "9", "10", "11", "12", "13")
    with speaking("xx", PSEUDO):
        at = mark("school-team")
        made_now = [
            cards_pdf([card], at, PAPERS["a4"]),
            page_pdf(Plan("1", (), (Block("18:00", 5, "2", card=1),), (("1", "2"),), ("3",)), at, PAPERS["a4"]),
            quiz_pdf([(svg, "1", ("2", "3"))], ["4"], at, PAPERS["a4"]),
        ]
    for pdf in made_now:
        assert hard_wired(text(pdf), *own("school-team"), at.version) == []


def test_a_language_from_the_right_turns_the_sheet_round() -> None:
    """The bar that says "this one" stands where reading begins."""

    def bar_mm(pdf: bytes) -> float:
        dark = next(pages(pdf))[int(25 * SCALE) : int(45 * SCALE), :, 0] < 128
        columns = [x for x in range(dark.shape[1]) if dark[:, x].all()]
        return min(columns) / SCALE

    with speaking("he"):
        turned = handout_pdf(shown("school-team")[2], mark("school-team"), PAPERS["a4"])
    assert bar_mm(handout("school-team", 2)) < 20
    assert bar_mm(turned) > 190


@pytest.mark.parametrize(
    ("kind", "paper", "rank", "large", "words"),
    [
        (Sheet.HANDOUT, "a3", None, False, 'A handout|--paper "a3" is for posters. For a handout take a4, letter'),
        (Sheet.POSTER, "a4", 2, False, "A poster is of the whole book: leave C Back out"),
        (Sheet.BOOKLET, "a4", None, True, "--large is for the bench sheet, not for a booklet"),
    ],
)
def test_what_does_not_go_together_is_said(kind: Sheet, paper: str, rank: int | None, large: bool, words: str) -> None:
    with pytest.raises(BackcutError, match=words):
        list(sheets(book("school-team"), kind, mark("school-team"), PAPERS[paper], rank=rank, large=large))


def test_no_cards_no_questions_or_a_key_too_short_is_said() -> None:
    with pytest.raises(BackcutError, match="There is no card to print"):
        cards_pdf([], mark("school-team"), PAPERS["a4"])
    with pytest.raises(BackcutError, match="1 questions and 0 answers: a quiz needs one answer a question"):
        quiz_pdf([("<svg/>", "Where?", ())], [], mark("school-team"), PAPERS["a4"])


def test_files_are_named_so_that_every_system_takes_them() -> None:
    assert file_name("Équipe: 1re / U13 <est>") == "equipe-1re-u13-est"
    assert file_name("שלום") == "book"
    names = [one.name for one in made("school-team", Sheet.HANDOUT)]
    assert len(set(names)) == len(names)
    assert names[2] == "school-team-handout-c-back-a4.pdf"
