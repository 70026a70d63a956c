"""Tonight's practice from the book's own drills: what, when, in which groups, what to say, and three questions."""

from __future__ import annotations

from dataclasses import dataclass

from backcut.engine.gym import USUAL_SQUAD
from backcut.errors import BackcutError
from backcut.language import say, say_many
from backcut.offence.action import Kind, letter
from backcut.offence.book import Book
from backcut.teaching.care import age_of, care
from backcut.teaching.drills.card import words
from backcut.teaching.drills.cues import Cue
from backcut.teaching.drills.drill import Drill, Hall, ShortError, drills
from backcut.teaching.drills.reps import MOST_WAIT_S
from backcut.teaching.drills.stages import Stage
from backcut.teaching.drills.team import Teams, teams
from backcut.teaching.examples import Example, NoExampleError, examples
from backcut.teaching.tonight.activities import Activity, Making, activity
from backcut.teaching.tonight.order import order

#: Questions at the water break.
QUESTIONS = 3


@dataclass(frozen=True, slots=True)
class Question:
    """A question for the water break, and its answer with the sentence behind it."""

    asks: str
    answer: str


@dataclass(frozen=True, slots=True)
class Evening:
    """Tonight's page: the running order, the cards in it, the questions, and what could not be met."""

    title: str
    about: str
    activities: tuple[Activity, ...]
    cards: tuple[Drill, ...]
    questions: tuple[Question, ...]
    bring: str
    not_met: tuple[str, ...]
    care: str


def evening(book: Book, hall: Hall, minutes: int, *, habit: int | None = None, begins: str = "18:00") -> Evening:
    """The running order for those who are there.

    `habit` is the rank of the day's sentence; without it, the one that moves most players. `begins` is the clock time.

    Raises: BackcutError for an evening too short or too long, or a time that is none; NoExampleError for a sentence
    that never speaks.
    """
    at, slots = _minute(begins), order(minutes)
    shown = examples(book)
    day, review = _habits(book, hall, shown, habit)
    making = Making(book, hall, shown, day, review, _teams(book, hall))
    made = tuple(activity(making, slot, _clock(at + slot.begins_min)) for slot in slots)
    if making.whole is None:
        making.not_met.append(say("Too few for a team: what needs one is walked through with cones."))
    waits = [one for one in making.cards if one.lines.wait_s > MOST_WAIT_S]
    making.not_met += [
        say("Card {card}: {what}", card=making.cards.index(one) + 1, what=words(one).instead) for one in waits
    ]
    return Evening(
        title=say("Tonight: {cue}", cue=book.cue(day)),
        about=_about(book, hall, minutes, begins),
        activities=made,
        cards=tuple(making.cards),
        questions=_questions(making),
        bring=_bring(making),
        not_met=tuple(dict.fromkeys(making.not_met)),
        care=care(age_of(book.squad or USUAL_SQUAD)),
    )


def _minute(begins: str) -> int:
    hours, _, minutes = begins.partition(":")
    if not (hours.isdecimal() and minutes.isdecimal() and int(hours) < 24 and int(minutes) < 60):
        raise BackcutError(f'--begins "{begins}": give a time such as 18:00.')
    return int(hours) * 60 + int(minutes)


def _clock(minute: int) -> str:
    return f"{minute // 60 % 24}:{minute % 60:02}"


def _teams(book: Book, hall: Hall) -> Teams | None:
    try:
        return teams(book, hall)
    except ShortError:
        return None


def _habits(book: Book, hall: Hall, shown: dict[int, Example], habit: int | None) -> tuple[int, int]:
    """The day's sentence and one to review: those that move most players, of those that can be drilled tonight."""
    if habit is not None and habit not in shown:
        raise NoExampleError(
            f"{letter(habit)} {book.cue(habit)} never tells anybody what to do, so it cannot be taught."
        )
    moving = [rank for rank in shown if shown[rank].action.moves] or list(shown)
    whole = _teams(book, hall)
    often = sorted(moving, key=lambda rank: -whole.ball.answers[rank] if whole else rank)
    day = often[0] if habit is None else habit
    return day, next((rank for rank in often if rank != day), day)


def _about(book: Book, hall: Hall, minutes: int, begins: str) -> str:
    ends = _clock(_minute(begins) + minutes)
    return ", ".join(
        (
            book.title,
            say("{begins} to {ends}", begins=begins, ends=ends),
            say_many("{n} player", "{n} players", hall.players),
            say_many("{n} basket", "{n} baskets", hall.baskets),
            say_many("{n} ball", "{n} balls", hall.balls),
        )
    )


def _bring(making: Making) -> str:
    cones = max((one.piece.size for one in making.cards), default=len(making.book.formation.ring))
    bibs = making.hall.players // 2
    return say(
        "Bring: {balls}, {cones}, {bibs}, the cards, water.",
        balls=say_many("{n} ball", "{n} balls", making.hall.balls),
        cones=say_many("{n} cone", "{n} cones", max(cones, len(making.book.formation.ring))),
        bibs=say_many("{n} bib", "{n} bibs", bibs),
    )


def _questions(making: Making) -> tuple[Question, ...]:
    """Of the day's drill its true cue and a false one, and one of another drill or sentence."""
    asked: list[Question] = []
    for one in making.cards:
        asked += _asked(making.book, one)
    for shown in making.shown.values():
        if len(asked) >= 3 * QUESTIONS:
            break
        made = drills(shown, Hall(players=5, baskets=1, balls=1), stages=[Stage.ALONE])[0]
        asked += _asked(making.book, made)
    return tuple({question.asks: question for question in asked}.values())[:QUESTIONS]


def _asked(book: Book, one: Drill) -> list[Question]:
    """Its cues as questions; who has the ball then is none."""
    return [_question(book, cue) for cue in (one.cue, *one.false) if cue.action.kind is not Kind.BALL]


def _question(book: Book, cue: Cue) -> Question:
    player, rank = cue.action.player, cue.action.habit
    asks = say("{cue}. What does {player} do?", cue=cue.words, player=player)
    if rank is None:
        return Question(asks, say("{player} {answer}.", player=player, answer=cue.answer))
    because = f"{letter(rank)} {book.cue(rank)}"
    return Question(asks, say("{player} {answer} ({because}).", player=player, answer=cue.answer, because=because))
