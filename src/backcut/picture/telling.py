"""Steps in time become moments of decision: what everybody answers, which sentence said so, and why."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from backcut.court.record import Court
from backcut.engine.gym import Gym
from backcut.engine.possession import Step
from backcut.engine.reads import FOOT_M, past_mark_m
from backcut.engine.words import action_words, claim_words, event_words, why_beaten
from backcut.language import far, language, say, say_many
from backcut.motion.timeline import Pose, Run, Timeline, pose
from backcut.offence.action import Action, Kind, letter
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.offence.situation import Guard, Situation
from backcut.picture import show as shown
from backcut.picture.action_lines import Going, ball_lines, open_spots, run_lines
from backcut.picture.show import Stance

#: Moves of one sentence that start within this are one moment: estimate of what an eye takes in at once.
TOGETHER_S = 0.9
#: Answers of one beat that start within this are one moment whatever their sentence: estimate.
AT_ONCE_S = 0.3
#: How long after the last run a hole is told: estimate, long enough to see that nobody moves.
LOST_S = 0.4
#: Farther than this from the spot a player counts at, the player is said to be elsewhere: estimate.
ELSEWHERE_M = 1.2
#: Within this of the basket a player waits at the rim: the cutter stops 1.2 m before it (estimate).
RIM_M = 2.6

_STANCES = {Guard.DENIES: Stance.DENIES, Guard.SAGS: Stance.SAGS, Guard.JUMPED: Stance.JUMPED}


@dataclass(frozen=True, slots=True)
class _Round:
    """What begins together in one step: when, whose runs (beat and player), and whether the event is shown with it.

    `open_beat` is the beat in which the book left something open, when the round tells that.
    """

    step: int
    runs: tuple[tuple[int, int], ...]
    t_s: float
    first: bool
    open_beat: int | None = None

    def lit(self) -> set[tuple[int, int, int]]:
        """The runs that begin now: step, beat, player."""
        return {(self.step, beat, player) for beat, player in self.runs}


def moments(book: Book, steps: Sequence[Step], timeline: Timeline, here: Gym) -> list[shown.Moment]:
    """The moments of decision, in order of time: one for each round of answers, one for each event nobody moves for."""
    runs = {(run.step, run.beat, run.player): run for run in timeline.runs}
    found: list[shown.Moment] = []
    for number, step in enumerate(steps):
        for round_ in (*_rounds(step, number, timeline), *_open_rounds(step, number, timeline)):
            found.append(_moment(book, steps, timeline, runs, round_, here))
    # The ball moves on before everybody stands, so the answers of two steps may overlap in time.
    return sorted(found, key=lambda moment: moment.t_s)


def moment_at(
    book: Book, steps: Sequence[Step], timeline: Timeline, here: Gym, at: tuple[int, int], caption: str
) -> shown.Moment:
    """The moment at which the situation of a step's beat can be seen: `at` is the place of the step and of the beat.

    Where the book leaves something open there, it is the moment `moments` tells; else those told before have got there
    and those told now set out. After the last beat all stand.
    """
    runs = {(run.step, run.beat, run.player): run for run in timeline.runs}
    (number, beat), step, cue_s = at, steps[at[0]], timeline.cues_s[at[0]]
    asked = min(beat, len(step.beats) - 1)
    if asked < 0:  # the possession ended with the event
        round_ = _Round(number, (), cue_s, True)
    elif beat == asked and step.beats[beat].decision.troubles:
        round_ = _open_round(step, number, timeline, beat)
    else:
        mine = [run for run in timeline.runs if run.step == number]
        t_s = max([cue_s, *(run.end_s for run in mine if run.beat < beat)])
        now = [run for run in mine if run.beat == beat]
        if now:
            t_s = min(max(t_s, min(run.start_s for run in now)), min(run.end_s for run in now))
        elif all(run.beat < beat for run in mine) and t_s > cue_s:  # long enough to see that nobody moves
            t_s = min(t_s + LOST_S, timeline.duration_s)
        round_ = _Round(number, tuple((run.beat, run.player) for run in now), t_s, False, open_beat=asked)
    return replace(_moment(book, steps, timeline, runs, round_, here), caption=caption)


def _rounds(step: Step, number: int, timeline: Timeline) -> list[_Round]:
    cue_s = timeline.cues_s[number]
    rounds: list[_Round] = []
    habit: int | None = None
    for run in sorted((run for run in timeline.runs if run.step == number), key=lambda run: run.start_s):
        last = rounds[-1] if rounds else None
        if (last is not None and run.habit == habit and run.start_s - last.t_s < TOGETHER_S) or (
            last is not None and run.beat == last.runs[0][0] and run.start_s - last.t_s < AT_ONCE_S
        ):
            rounds[-1] = replace(last, runs=(*last.runs, (run.beat, run.player)))
        else:
            # The answers to an event are shown with it, so that cause and effect are one picture.
            together = last is None and run.start_s - cue_s < TOGETHER_S
            rounds.append(_Round(number, ((run.beat, run.player),), cue_s if together else run.start_s, last is None))
        habit = run.habit
    if not rounds or rounds[0].t_s - cue_s >= TOGETHER_S:
        rounds = [_Round(number, (), cue_s, True), *(replace(round_, first=False) for round_ in rounds)]
    return rounds


def _open_rounds(step: Step, number: int, timeline: Timeline) -> list[_Round]:
    """A moment of its own for what the book leaves open."""
    found = next((beat for beat, told in enumerate(step.beats) if told.decision.troubles), None)
    return [] if found is None else [_open_round(step, number, timeline, found)]


def _open_round(step: Step, number: int, timeline: Timeline, beat: int) -> _Round:
    """What a beat leaves open, when those it leaves without an answer have got there, and the ball too."""
    lost = {trouble.player for trouble in step.beats[beat].decision.troubles}
    ends = [run.end_s for run in timeline.runs if run.step <= number and run.player in lost]
    ends += [run.end_s for run in timeline.runs if run.step == number]
    ends += [flight.end_s for flight in timeline.flights if flight.step == number]
    t_s = min(max([timeline.cues_s[number], *ends]) + LOST_S, timeline.duration_s)
    return _Round(number, (), t_s, False, open_beat=beat)


def _moment(
    book: Book,
    steps: Sequence[Step],
    timeline: Timeline,
    runs: dict[tuple[int, int, int], Run],
    round_: _Round,
    here: Gym,
) -> shown.Moment:
    step, t_s, lit = steps[round_.step], round_.t_s, round_.lit()
    lit_players = {player for _, _, player in lit}
    going: dict[int, Going] = {}
    for key, run in runs.items():
        if key in lit or (run.start_s < t_s < run.end_s - 0.05 and run.player not in lit_players):
            beat = steps[run.step].beats[run.beat]
            action = next(a for a in beat.decision.actions if a.player == run.player)
            going[run.player] = action, run, beat.before
    before, still = _standing(steps, timeline, round_)
    now = pose(timeline, t_s)
    why = _why(book, timeline, t_s, here.court)
    answers = tuple(
        _run_answer(book, *going[number], lit, why)
        if number in going
        else _still_answer(book, still[number], before, now, here)
        for number in sorted(still)
    )
    return shown.Moment(
        t_s=t_s,
        event=event_words(step) if round_.first else None,
        caption=_caption(step, round_, answers),
        answers=answers,
        arrows=(
            *(ball_lines(timeline, step, round_.step, t_s, before) if round_.first else ()),
            *run_lines(timeline, going, lit, t_s),
        ),
        guards={
            p.number: Stance.ON_BALL if p.number == before.ball else _STANCES.get(p.guard, Stance.PLAIN)
            for p in before.players
        },
        open_spots=open_spots(book, before),
    )


def _standing(steps: Sequence[Step], timeline: Timeline, round_: _Round) -> tuple[Situation, dict[int, Action]]:
    """The situation that counts at this moment and what those do who do not run: a later step may have begun by now."""
    begun = max(number for number, cue_s in enumerate(timeline.cues_s) if cue_s <= round_.t_s + 1e-6)
    if round_.open_beat is not None:
        beat = steps[round_.step].beats[round_.open_beat]
        return beat.before, {action.player: action for action in beat.decision.actions}
    step = steps[max(begun, round_.step)]
    if not step.beats:
        players = step.after.players
        ball = step.after.ball
        return step.after, {
            p.number: Action(p.number, Kind.BALL if p.number == ball else Kind.HOLD, p.at, p.at) for p in players
        }
    beat = step.beats[round_.runs[0][0] if begun <= round_.step and round_.runs else 0]
    return beat.before, {action.player: action for action in beat.decision.actions}


def _run_answer(
    book: Book,
    action: Action,
    run: Run,
    asked: Situation,
    lit: set[tuple[int, int, int]],
    why: Callable[[Action, Situation], str],
) -> shown.Answer:
    is_lit = (run.step, run.beat, run.player) in lit
    text = action_words(action)
    note = f"{action.player} {text}. {why(action, asked)}".strip() if is_lit else ""
    return shown.Answer(
        action.player, str(action.kind), letter(action.habit), text, is_lit, _beaten(book, action), note, moves=True
    )


def _still_answer(book: Book, action: Action, before: Situation, now: Pose, here: Gym) -> shown.Answer:
    number, kind = action.player, action.kind
    if kind in (Kind.FORGET, Kind.NO_ANSWER):
        text = action_words(action, before)
        return shown.Answer(
            number, str(kind), letter(action.habit), text, True, _beaten(book, action), f"{number} {text}.", moves=False
        )
    # Told by now, but still on the spot: the ball is in the air, or the one in front has not left yet.
    waits = action.moves
    if number == now.holder and kind is not Kind.LOOK_TO_DRIBBLE:
        kind, text = Kind.BALL, say("has the ball, {spot}", spot=action.origin.title)
    elif kind is Kind.BALL:
        text = say("gets the ball, {spot}", spot=action.origin.title)
    elif math.dist(now.players[number], here.placing.spots[action.origin]) > ELSEWHERE_M:
        # The rules count a player at the spot he is going to; who has not set out yet is said to be where he is.
        kind, waits = Kind.HOLD, True
        text = say("waits at the rim") if math.hypot(*now.players[number]) < RIM_M else say("is on the way")
    else:
        kind = Kind.HOLD if waits else kind
        text = say("holds, {spot}", spot=action.origin.title) if waits else action_words(action, before)
    beaten = () if waits else _beaten(book, action)
    return shown.Answer(number, str(kind), None if waits else letter(action.habit), text, beat=beaten, moves=False)


def _beaten(book: Book, action: Action) -> tuple[shown.Beaten, ...]:
    return tuple(
        shown.Beaten(
            str(letter(claim.habit)),
            book.cue(claim.habit),
            say("which {wanted}", wanted=claim_words(claim, action.player)),
            why_beaten(book, action.habit, claim.habit) if action.habit is not None else "",
        )
        for claim in action.beat
    )


def _why(book: Book, timeline: Timeline, t_s: float, ground: Court) -> Callable[[Action, Situation], str]:
    """What was read off the moment, in one sentence: the reason behind a lit answer."""

    def why(action: Action, before: Situation) -> str:
        match action.kind:
            case Kind.BACK_CUT if before.player(action.player).guard is Guard.DENIES:
                past_m = FOOT_M + float(past_mark_m(timeline.defenders[action.player].at(t_s)[:2], ground, book.mark_m))
                seen = book.values["denial"] != "hand" and past_m >= 0.05
                how = say("has a hand in the lane")
                if seen:
                    how = say("has a foot {far} past the mark", far=far(past_m))
                return say(
                    "The {spot} is one pass from {ball}, and X{player} {how}.",
                    spot=action.origin.title,
                    ball=before.ball,
                    player=action.player,
                    how=how,
                )
            case Kind.CUT:
                return say("The pass from the {spot} went to the next spot.", spot=action.origin.title)
            case Kind.FILL:
                return say("The {spot} is the next spot toward the ball, and it is empty.", spot=action.target.title)
            case Kind.EXIT:
                index = book.rules.index
                if before.holder.at not in index:
                    return say("It is empty, and the ball is inside.")
                steps = abs(index[action.target] - index[before.holder.at])
                return say_many("It is empty, {n} pass from the ball.", "It is empty, {n} passes from the ball.", steps)
            case _:
                return ""

    return why


def _caption(step: Step, round_: _Round, answers: Sequence[shown.Answer]) -> str:
    same: dict[str, list[str]] = {}
    for answer in answers:
        if answer.lit:
            # Only English is known well enough to say one thing of several.
            key = answer.text if language() == "en" else f"{answer.player} {answer.text}"
            same.setdefault(key, []).append(str(answer.player))
    each = [f"{_list(who)} {text if len(who) == 1 else _plural(text)}" for text, who in same.items()]
    told = _list(each if language() == "en" else list(same))
    if round_.open_beat is not None:
        return " ".join(trouble.text for trouble in step.beats[round_.open_beat].decision.troubles)
    if not round_.first:
        words = f"{told}."
    elif not told:
        words = f"{event_words(step)}."
        if not step.beats and not step.after.ended:
            words = f"{words} {say('Nobody has answered yet.')}"
    elif _is_answer(step, answers):
        words = say("{event}, so {told}.", event=event_words(step), told=told)
    else:
        words = f"{event_words(step)}. {told}."
    return words


def _is_answer(step: Step, answers: Sequence[shown.Answer]) -> bool:
    """Whether what is lit answers the event itself: "so" is said only of those it is about."""
    about, lit = set(step.event.players), [answer for answer in answers if answer.lit]
    kinds = {EventKind.DENY: {Kind.BACK_CUT, Kind.COME_TO_BALL, Kind.FLASH}, EventKind.FORGET: {Kind.FORGET}}
    kinds[EventKind.JAM] = {Kind.CUT, Kind.REPLACE, Kind.SCREEN, Kind.USE_SCREEN}
    kinds[EventKind.JUMP] = {Kind.CUT}
    wanted = kinds.get(step.event.kind, set())
    return any(answer.player in about for answer in lit) and all(answer.kind in wanted for answer in lit)


def _plural(text: str) -> str:
    """The same words said of several: "goes for the rebound" becomes "go for the rebound"."""
    if text.startswith("back cuts"):
        return text.replace("cuts", "cut", 1)
    verb, _, rest = text.partition(" ")
    return f"{ {'goes': 'go', 'has': 'have', 'is': 'are'}.get(verb, verb.removesuffix('s')) } {rest}".strip()


def _list(parts: Sequence[str]) -> str:
    if len(parts) < 2:
        return "".join(parts)
    return say(" and ").join((", ".join(parts[:-1]), parts[-1]))
