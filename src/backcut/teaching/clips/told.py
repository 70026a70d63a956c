"""The decision a clip is about: who is told what by which sentence, and the moment at which it can be seen."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from backcut.engine.possession import Step
from backcut.engine.words import action_words
from backcut.errors import BackcutError
from backcut.language import say
from backcut.motion.timeline import pose
from backcut.offence.action import Action, letter
from backcut.offence.book import Book
from backcut.picture.show import Answer, Arrow, ArrowKind, Moment, Show
from backcut.picture.story import show as story
from backcut.teaching.examples import Example

#: Lines of action in one picture at most (the look).
MOST_ARROWS: Final = 4
#: A passer farther than this from where the ball was thrown has left (own design: the disc no longer covers it).
LEFT_M: Final = 0.5
#: A run that begins this little before the moment it is told is told there (rounding of times).
SAME_S: Final = 0.01

_BALL = frozenset({ArrowKind.PASS, ArrowKind.SHUT, ArrowKind.DRIBBLE})


@dataclass(frozen=True, slots=True)
class About:
    """One answer: of a beat of a step (their places), of a player, told by the sentence of this rank."""

    step: int
    beat: int
    player: int
    rank: int


@dataclass(frozen=True, slots=True)
class Told:
    """A show with the place among its moments of the decision it is about.

    `all_of_it` where a whole possession was asked for, not a sentence.
    """

    show: Show
    decision: int
    about: About
    all_of_it: bool = False


def told_example(example: Example) -> Told:
    """A sentence by its example. Raises: CourtError or MotionError where it cannot be put in time."""
    about = About(*example.beat, example.player, example.rank)
    return _told(example.book, example.possession.steps, about, all_of_it=False)


def told_moves(book: Book, steps: Sequence[Step], rank: int | None = None) -> Told:
    """Moves that were given: the first answer of the sentence of this rank, or the first one to the last move.

    Who moves is shown before who stays. Raises: BackcutError where nobody is told anything, CourtError or MotionError
    where the moves cannot be put in time.
    """
    said = [
        (About(number, place, action.player, action.habit), action.moves)
        for number, step in enumerate(steps)
        for place, beat in enumerate(step.beats)
        for action in beat.decision.actions
        if action.habit is not None and rank in (None, action.habit)
    ]
    if not said and rank is not None:
        raise BackcutError(
            f"In these moves {letter(rank)} {book.cue(rank)} tells nobody what to do. "
            "Give other moves, or none: then an example is found."
        )
    if not said:
        raise BackcutError("In these moves no sentence tells anybody what to do, so there is no decision to show.")
    last = max(about.step for about, _ in said) if rank is None else None
    mine = [(about, moves) for about, moves in said if last in (None, about.step)]
    about = min(mine, key=lambda one: not one[1])[0]
    return _told(book, steps, about, all_of_it=rank is None)


def _told(book: Book, steps: Sequence[Step], about: About, *, all_of_it: bool) -> Told:
    show = story(book, steps)
    own = str(letter(about.rank))
    key = (about.step, about.beat, about.player)
    starts = [run.start_s for run in show.timeline.runs if (run.step, run.beat, run.player) == key]
    asked = [
        place
        for place, moment in enumerate(show.moments)
        if starts
        and moment.t_s <= starts[0] + SAME_S
        and any(a.lit and a.player == about.player and a.letter == own for a in moment.answers)
    ]
    moments = list(show.moments)
    if asked:
        decision = asked[-1]
        moments[decision] = _only(moments[decision], own)
    else:
        made = _held(show, about, steps[about.step].beats[about.beat].decision.actions, own)
        decision = sum(moment.t_s <= made.t_s for moment in moments)
        moments.insert(decision, made)
    return Told(replace(show, moments=tuple(moments)), decision, about, all_of_it)


def _only(moment: Moment, own: str) -> Moment:
    """The moment with nothing lit but what this sentence says, and no more lines than can be read."""
    ball = [arrow for arrow in moment.arrows if arrow.kind in _BALL]
    runs = [replace(arrow, lit=arrow.letter == own) for arrow in moment.arrows if arrow.kind not in _BALL]
    runs = sorted(runs, key=lambda arrow: not arrow.lit)[: max(MOST_ARROWS - len(ball), 1)]
    answers = (replace(answer, lit=answer.lit and answer.letter == own) for answer in moment.answers)
    return replace(moment, arrows=(*ball, *runs), answers=tuple(answers))


def _held(show: Show, about: About, actions: Sequence[Action], own: str) -> Moment:
    """The moment of somebody who is told to stay: when the ball has got there."""
    cue_s = show.timeline.cues_s[about.step]
    moment = [m for m in show.moments if m.t_s <= cue_s + SAME_S][-1]
    t_s = max([moment.t_s, *(f.end_s for f in show.timeline.flights if f.step == about.step and f.to_player)])
    there = pose(show.timeline, t_s).players

    def stands(arrow: Arrow) -> bool:
        return arrow.kind in _BALL and math.dist(arrow.path_m[0], there[arrow.player]) < LEFT_M

    action = next(action for action in actions if action.player == about.player)
    text = action_words(action)
    answers = [replace(one, lit=False) for one in moment.answers if one.player != about.player]
    answers.append(Answer(about.player, str(action.kind), own, text, lit=True, moves=False))
    does = f"{about.player} {text}"
    return replace(
        moment,
        t_s=t_s,
        caption=say("{event}. {does}.", event=moment.event, does=does) if moment.event else say("{does}.", does=does),
        answers=tuple(sorted(answers, key=lambda answer: answer.player)),
        arrows=tuple(arrow for arrow in moment.arrows if stands(arrow)),
    )
