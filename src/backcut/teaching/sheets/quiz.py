"""A quiz on paper: eight stills, boxes to tick, and the key on a page of its own."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from backcut.errors import BackcutError
from backcut.language import say
from backcut.offence.book import Book
from backcut.teaching.quizzes.paper import paper_quiz
from backcut.teaching.sheets.paper import Paper, Stamp
from backcut.teaching.sheets.picture import SMALL, paper_still, picture_data
from backcut.teaching.sheets.press import printed

#: Questions on a page (own design: eight stills, five minutes).
ON_A_PAGE: Final = 8

#: A question on paper: the still as SVG, what is asked, and what can be ticked.
Asked = tuple[str, str, Sequence[str]]


def quiz_pdf(questions: Sequence[Asked], key: Sequence[str], stamp: Stamp, paper: Paper) -> bytes:
    """The quiz and its key. Raises: BackcutError where there is no question, or not one line of key for each."""
    if not questions or len(questions) != len(key):
        raise BackcutError(f"{len(questions)} questions and {len(key)} answers: a quiz needs one answer a question.")
    data = {
        "head": say("Quiz: {title}", title=stamp.short_title),
        "number": say("My number"),
        "questions": [
            {"picture": picture_data(svg), "asks": asks, "options": list(options)} for svg, asks, options in questions
        ],
        "key-head": say("Key: {title}", title=stamp.short_title),
        "key": list(key),
    }
    return printed("quiz", paper, stamp, data)


def quiz_sheet(
    book: Book, stamp: Stamp, paper: Paper, *, count: int = ON_A_PAGE, seed: int = 1, rank: int | None = None
) -> bytes:
    """A quiz from the book's own questions, drawn by `seed`, about one sentence where `rank` says so.

    Raises: QuizError where there is nothing to ask.
    """
    asked: list[Asked] = []
    key: list[str] = []
    for one in paper_quiz(book, count, seed, rank=rank):
        drawn = paper_still(one.show, one.moment, size=SMALL, names=False, about=one.about)
        asked.append((drawn.svg, f"{one.told} {one.words}".strip(), one.choices))
        key.append(f"{one.answer} {one.because}")
    return quiz_pdf(asked, key, stamp, paper)
