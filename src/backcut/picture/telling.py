"""Steps in time become moments of decision: what everybody answers, which sentence said so, and why."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from backcut.court.record import Court
from backcut.engine.possession import Step
from backcut.engine.reads import FOOT_M, past_mark_m
from backcut.engine.report import troubles
from backcut.engine.words import action_words, claim_words, event_words, why_beaten
from backcut.motion.timeline import Run, Timeline, pose
from backcut.offence.action import Action, Kind, letter
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.offence.situation import Guard, Situation
from backcut.picture import show as shown
from backcut.picture.action_lines import Going, ball_lines, open_spots, run_lines
from backcut.picture.show import Stance

#: Moves of one sentence that start within this are one moment: estimate of what an eye takes in at once.
TOGETHER_S = 0.9

_STANCES = {Guard.DENIES: Stance.DENIES, Guard.SAGS: Stance.SAGS, Guard.JUMPED: Stance.JUMPED}


@dataclass(frozen=True, slots=True)
class _Round:
    """The answers of one step that begin together: when, the beats they come from, and the situation before them."""

    step: int
    beats: tuple[int, ...]
    t_s: float
    first: bool


def moments(book: Book, steps: Sequence[Step], timeline: Timeline, ground: Court) -> list[shown.Moment]:
    """The moments of decision, in order of time: one for each round of answers, one for each event nobody moves for."""
    runs = {(run.step, run.beat, run.player): run for run in timeline.runs}
    found: list[shown.Moment] = []
    for number, step in enumerate(steps):
        for round_ in _rounds(step, number, timeline):
            found.append(_moment(book, steps, timeline, runs, round_, ground))
    # The ball moves on before everybody stands, so the answers of two steps may overlap in time.
    return sorted(found, key=lambda moment: moment.t_s)


def _rounds(step: Step, number: int, timeline: Timeline) -> list[_Round]:
    starts: dict[int, float] = {}
    for run in timeline.runs:
        if run.step == number:
            starts[run.beat] = min(starts.get(run.beat, run.start_s), run.start_s)
    cue_s = timeline.cues_s[number]
    rounds: list[_Round] = []
    for beat, t_s in sorted(starts.items()):
        habits = _habits(step, beat)
        before = rounds[-1] if rounds else None
        if before is not None and t_s - before.t_s < TOGETHER_S and habits == _habits(step, before.beats[0]):
            rounds[-1] = _Round(number, (*before.beats, beat), before.t_s, before.first)
        else:
            # The answers to an event are shown with it, so that cause and effect are one picture.
            together = before is None and t_s - cue_s < TOGETHER_S
            rounds.append(_Round(number, (beat,), cue_s if together else t_s, before is None))
    if not rounds or rounds[0].t_s - cue_s >= TOGETHER_S:
        rounds = [_Round(number, (), cue_s, True), *(_Round(r.step, r.beats, r.t_s, False) for r in rounds)]
    return rounds


def _habits(step: Step, beat: int) -> frozenset[int | None]:
    return frozenset(action.habit for action in step.beats[beat].decision.actions if action.moves)


def _moment(
    book: Book,
    steps: Sequence[Step],
    timeline: Timeline,
    runs: dict[tuple[int, int, int], Run],
    round_: _Round,
    ground: Court,
) -> shown.Moment:
    step, t_s = steps[round_.step], round_.t_s
    lit = {(round_.step, beat, action.player) for beat in round_.beats for action in _moving(step, beat)}
    lit_players = {player for _, _, player in lit}
    going: dict[int, Going] = {}
    for key, run in runs.items():
        if key in lit or (run.start_s < t_s < run.end_s - 0.05 and run.player not in lit_players):
            beat = steps[run.step].beats[run.beat]
            action = next(a for a in beat.decision.actions if a.player == run.player)
            going[run.player] = action, run, beat.before
    before, still = _standing(steps, timeline, round_)
    why, holder = _why(book, timeline, t_s, ground), pose(timeline, t_s).holder
    answers = tuple(
        _answer(book, still[number], before, going.get(number), number == holder, lit, why)
        for number in (player.number for player in before.players)
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
    step = steps[max(begun, round_.step)]
    if not step.beats:
        players = step.after.players
        ball = step.after.ball
        return step.after, {
            p.number: Action(p.number, Kind.BALL if p.number == ball else Kind.HOLD, p.at, p.at) for p in players
        }
    beat = step.beats[round_.beats[0] if begun <= round_.step and round_.beats else 0]
    return beat.before, {action.player: action for action in beat.decision.actions}


def _moving(step: Step, beat: int) -> list[Action]:
    return [action for action in step.beats[beat].decision.actions if action.moves]


def _answer(
    book: Book,
    still: Action,
    before: Situation,
    going: Going | None,
    has_ball: bool,
    lit: set[tuple[int, int, int]],
    why: Callable[[Action, Situation], str],
) -> shown.Answer:
    if going is not None:
        action, run, asked = going
        is_lit = (run.step, run.beat, run.player) in lit
        text = action_words(action)
    else:
        action, asked = still, before
        if action.moves:
            # Told by now, but still on the spot: the ball is in the air, or the one in front has not left yet.
            action = Action(action.player, Kind.BALL if has_ball else Kind.HOLD, action.origin, action.origin)
        is_lit = action.kind in (Kind.FORGET, Kind.NO_ANSWER)
        text = action_words(action, before)
    beaten = tuple(
        shown.Beaten(
            str(letter(claim.habit)),
            book.cue(claim.habit),
            f"which {claim_words(claim, action.player)}",
            why_beaten(book, action.habit, claim.habit) if action.habit is not None else "",
        )
        for claim in action.beat
    )
    note = f"{action.player} {text}. {why(action, asked)}".strip() if is_lit else ""
    return shown.Answer(
        action.player, str(action.kind), letter(action.habit), text, is_lit, beaten, note, moves=action.moves
    )


def _why(book: Book, timeline: Timeline, t_s: float, ground: Court) -> Callable[[Action, Situation], str]:
    """What was read off the moment, in one sentence: the reason behind a lit answer."""

    def why(action: Action, before: Situation) -> str:
        match action.kind:
            case Kind.BACK_CUT if before.player(action.player).guard is Guard.DENIES:
                past_m = FOOT_M + float(past_mark_m(timeline.defenders[action.player].at(t_s)[:2], ground, book.mark_m))
                seen = book.values["denial"] != "hand" and past_m >= 0.05
                how = f"has a foot {past_m:.1f} m past the mark" if seen else "has a hand in the lane"
                return f"The {action.origin.title} is one pass from {before.ball}, and X{action.player} {how}."
            case Kind.CUT:
                return f"The pass from the {action.origin.title} went to the next spot."
            case Kind.FILL:
                return f"The {action.target.title} is the next spot toward the ball, and it is empty."
            case Kind.EXIT:
                index = book.rules.index
                if before.holder.at not in index:
                    return "It is empty, and the ball is inside."
                steps = abs(index[action.target] - index[before.holder.at])
                return f"It is empty, {steps} {'pass' if steps == 1 else 'passes'} from the ball."
            case _:
                return ""

    return why


def _caption(step: Step, round_: _Round, answers: Sequence[shown.Answer]) -> str:
    done = [f"{answer.player} {answer.text}" for answer in answers if answer.lit]
    told = _list(done)
    if not round_.first:
        words = f"{told}."
    elif not told:
        words = f"{event_words(step)}." + ("" if step.beats or step.after.ended else " Nobody has answered yet.")
    elif step.event.kind in (EventKind.DENY, EventKind.JAM, EventKind.JUMP, EventKind.FORGET):
        words = f"{event_words(step)}, so {told}."
    else:
        words = f"{event_words(step)}. {told}."
    last = not round_.beats or round_.beats[-1] >= len(step.beats) - 2
    open_ = [trouble.text for trouble in troubles(step)] if last else []
    return " ".join([words, *open_])


def _list(parts: Sequence[str]) -> str:
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} and {parts[-1]}"
