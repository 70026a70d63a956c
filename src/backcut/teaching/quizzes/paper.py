"""The quiz on paper, as data: still pictures to set, the answers to choose from, and the key for a page of its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backcut.engine.gym import gym
from backcut.engine.possession import Step
from backcut.language import say
from backcut.offence.book import Book
from backcut.picture.show import Moment, Show
from backcut.picture.still import About
from backcut.teaching.quizzes.asked import quiz
from backcut.teaching.quizzes.picture import Pictured, pictured
from backcut.teaching.quizzes.question import Ask, Question


@dataclass(frozen=True, slots=True)
class PaperQuestion:
    """One question for paper: draw `still(show, moment, steps, about)`, print `told` and `words`, then the `choices`.

    `moment` gives nothing away; `answer_moment` has the run that is right. A question that is tapped on a phone has no
    choices: it is drawn or written on the picture. `answer` and `because` belong on the page of the key.
    """

    question: Question
    show: Show
    moment: Moment
    answer_moment: Moment
    steps: tuple[Step, ...]
    about: About
    told: str
    words: str
    choices: tuple[str, ...]
    answer: str
    because: str


def paper_quiz(
    book: Book, count: int, seed: int, *, rank: int | None = None, court: str | None = None, squad: str | None = None
) -> list[PaperQuestion]:
    """So many questions for paper, the same ones that the page with this seed asks. Raises: QuizError."""
    here = gym(book, court, squad)
    return [_set(pictured(question, here, court, squad)) for question in quiz(book, count, seed, rank=rank)]


def _set(drawn: Pictured) -> PaperQuestion:
    question, at = drawn.question, drawn.question.occasion
    hole = at.action.target if question.ask is Ask.WHO else None
    players = () if question.ask is Ask.WHO else (at.player,)
    sign, cue, text = question.sentence
    return PaperQuestion(
        question=question,
        show=drawn.show,
        moment=drawn.asked,
        answer_moment=drawn.answered,
        steps=drawn.steps,
        about=About((0, at.beat), players, hole),
        told=at.happened,
        words=question.words,
        choices=_choices(question),
        answer=_answer(question),
        because=say("{letter} {cue}: {sentence}", letter=sign, cue=cue, sentence=text),
    )


def _choices(question: Question) -> tuple[str, ...]:
    if question.ask in (Ask.WHERE, Ask.WHO):
        return ()
    sentences = question.occasion.book.sentences
    return tuple(
        choice.text if choice.rank is None else f"{choice.text}. {sentences[choice.rank].text}"
        for choice in question.choices
    )


def _answer(question: Question) -> str:
    """The right answer in words, with the number of its line where there are lines to choose from."""
    lines: Sequence[str] = [str(i) for i, choice in enumerate(question.choices, start=1) if choice.right]
    match question.ask:
        case Ask.WHERE:
            return question.answer
        case Ask.WHO:
            return say("{players}.", players=say(" and ").join(choice.text for choice in question.right))
        case _:
            return say("Line {line}. {right}", line=lines[0], right=question.right[0].text)
