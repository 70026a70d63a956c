"""A question as pictures: the still it is asked from, the picture of the answer, and the moves in time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from backcut.court.spots import Spot
from backcut.engine.gym import Gym
from backcut.engine.possession import Step
from backcut.motion.timeline import Timeline, pose
from backcut.picture.action_lines import ball_lines
from backcut.picture.show import Arrow, ArrowKind, Moment, Place, Show
from backcut.picture.story import show
from backcut.picture.telling import moment_at
from backcut.teaching.quizzes.question import Ask, Question

#: How far the ball has come on its way in the still of a pass, so that it is seen who threw it (own choice).
ON_ITS_WAY = 0.6
#: Seconds shown before anything happens and after the run that is asked for (own choice).
LEAD_S = 0.5
TAIL_S = 0.9
#: How fast a mistake is run: a jog, in m/s (estimate).
JOG_M_S = 3.0


@dataclass(frozen=True, slots=True)
class Pictured:
    """A question with its show, the moment it is asked at, the moment that answers it, and when both begin and end.

    The arrows of `asked` give nothing away: what the ball does, the mistake that is played, or the run whose sentence
    is asked for, without its letter.
    """

    question: Question
    show: Show
    asked: Moment
    answered: Moment
    from_s: float
    to_s: float

    @property
    def steps(self) -> tuple[Step, ...]:
        """The step that is played."""
        return (self.question.occasion.step,)


def pictured(question: Question, here: Gym, court: str | None = None, squad: str | None = None) -> Pictured:
    """The pictures of a question in this gym. Raises: MotionError where its step cannot be timed."""
    at = question.occasion
    steps = [at.step]
    shown = show(at.book, steps, court_name=court, squad_name=squad)
    moment = moment_at(at.book, steps, shown.timeline, here, (0, at.beat), at.happened)
    t_s = _still_s(question, shown.timeline, moment.t_s)
    ball = [
        *ball_lines(shown.timeline, at.step, 0, t_s, at.step.before),
        *(arrow for arrow in moment.arrows if arrow.kind is ArrowKind.DRIBBLE and arrow.player != at.player),
    ]
    runs = [arrow for arrow in moment.arrows if arrow.player == at.player and arrow.kind is not ArrowKind.DRIBBLE]
    answers = tuple(replace(answer, lit=answer.player == at.player) for answer in moment.answers)
    ends = [run.end_s for run in shown.timeline.runs if run.player == at.player and run.start_s >= t_s - 0.5]
    end_s = min(min(ends) + TAIL_S, shown.timeline.duration_s) if ends else shown.timeline.duration_s
    base = replace(moment, t_s=t_s, answers=())
    lit = [replace(arrow, lit=True) for arrow in runs]
    return Pictured(
        question,
        shown,
        asked=replace(base, arrows=(*ball, *_asked_arrows(question, shown, runs, t_s))),
        answered=replace(base, arrows=(*ball, *lit), answers=answers, caption=question.answer),
        from_s=max(shown.timeline.cues_s[0] - LEAD_S, 0.0),
        to_s=max(end_s, t_s + LEAD_S),
    )


def _still_s(question: Question, timeline: Timeline, t_s: float) -> float:
    """When the still is: before the one who is asked sets out; of a pass just thrown, while the ball is in the air."""
    at = question.occasion
    if at.dribbled:  # before the two come together
        return timeline.cues_s[0]
    flight = next((flight for flight in timeline.flights if flight.to_player is not None), None)
    if at.beat or flight is None:
        own = [run.start_s for run in timeline.runs if run.beat == at.beat and run.player == at.player]
        return max(min([t_s, *own]), timeline.cues_s[0])
    return min(max(t_s, flight.start_s + ON_ITS_WAY * (flight.end_s - flight.start_s)), flight.end_s)


def _asked_arrows(question: Question, shown: Show, runs: Sequence[Arrow], t_s: float) -> list[Arrow]:
    at = question.occasion
    if question.ask is Ask.SENTENCE:
        return [replace(arrow, lit=False, letter=None, label="") for arrow in runs]
    if question.deed is None or question.deed.to is None:
        return []
    kind = ArrowKind.CUT if question.deed.to is Spot.R else ArrowKind.FILL
    return [Arrow(kind, at.player, (_here(shown.timeline, at.player, t_s), deed_end(question, shown, t_s)))]


def _here(timeline: Timeline, number: int, t_s: float) -> Place:
    return pose(timeline, t_s).players[number]


def deed_end(question: Question, shown: Show, t_s: float) -> Place:
    """Where the mistake ends, in metres: the spot, or part of the way to it; just there where the player stays."""
    begin = _here(shown.timeline, question.occasion.player, t_s)
    if question.deed is None or question.deed.to is None:
        return begin
    x, y = shown.spots[question.deed.to]
    if question.deed.to is Spot.R:  # nobody runs into the post
        y += 1.2
    part = question.deed.part
    return begin[0] + (x - begin[0]) * part, begin[1] + (y - begin[1]) * part
