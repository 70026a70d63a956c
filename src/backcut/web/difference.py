"""Before and after a change of the book: the first moment in which the same possession goes otherwise."""

from __future__ import annotations

from itertools import zip_longest

from backcut.engine.gym import gym
from backcut.engine.possession import Step
from backcut.engine.words import action_words
from backcut.errors import BackcutError
from backcut.offence.action import Action, Kind, letter
from backcut.page.still_svg import still_svg
from backcut.page.words import sentence_case
from backcut.picture.floor import floor
from backcut.picture.still import About, still
from backcut.picture.telling import moment_at
from backcut.web.envelope import DifferenceData, SideData
from backcut.web.floor import Played
from backcut.web.stops import Told

At = tuple[int, int]


def difference(was: Told, now: Told) -> DifferenceData | None:
    """Where the possession first goes otherwise than it did; None where it goes as before."""
    found = first_difference(was.played, now.played)
    if found is None:
        return None
    step, beat = found
    who = _who(was.played.steps, now.played.steps, found)
    try:
        before, after = _side("Before", was, now, found, who), _side("Now", now, was, found, who)
    except BackcutError:
        return None  # what cannot be placed or timed is said elsewhere
    cues = now.show.timeline.cues_s
    runs = [r.start_s for r in now.show.timeline.runs if r.step == step and r.beat == beat]
    t_s = min(runs, default=cues[step] if step < len(cues) else 0.0)
    # In time the next move may come before the last runs of this one: the stop is one of this move.
    here = [i for i, one in enumerate(now.stops) if one.step == step + 1]
    stop = max((i for i in here if now.show.moments[i].t_s <= t_s + 0.05), default=here[0] if here else 0)
    first = f"Move {step + 1}: {sentence_case(before.said)} Now: {sentence_case(after.said)}"
    return DifferenceData(said=first, stop=stop, before=before, after=after)


def first_difference(was: Played, now: Played) -> At | None:
    """Step and beat in which somebody is first told otherwise; None where nobody is, or the possession is another."""
    for number, (old, new) in enumerate(zip_longest(was.steps, now.steps)):
        if old is None or new is None or old.event != new.event or old.before != new.before:
            return None
        for beat, (a, b) in enumerate(zip_longest(old.beats, new.beats)):
            if a is None or b is None or _told(old, beat) != _told(new, beat):
                last = min(beat, len(old.beats) - 1, len(new.beats) - 1)
                return (number, last) if last >= 0 else None
    return None


def _told(step: Step, beat: int) -> list[tuple[object, ...]]:
    actions = step.beats[beat].decision.actions
    return [(a.player, a.kind, a.target, a.route) for a in actions]


def _who(old: tuple[Step, ...], new: tuple[Step, ...], at: At) -> list[int]:
    """The players who are told otherwise there."""
    step, beat = at
    both = zip(old[step].beats[beat].decision.actions, new[step].beats[beat].decision.actions, strict=True)
    return [a.player for a, b in both if (a.kind, a.target, a.route) != (b.kind, b.target, b.route)]


def _side(head: str, told: Told, other: Told, at: At, who: list[int]) -> SideData:
    steps, actions, others = told.played.steps, _actions(told, at), _actions(other, at)
    said = "; ".join(f"{n} {_words(actions[n], others[n])}" for n in who) or "the beats come at other times"
    letters = dict.fromkeys(letter(actions[n].habit) for n in who if actions[n].habit is not None)
    named = f"{said} ({', '.join(str(mark) for mark in letters)})" if letters else said
    show = told.show
    moment = moment_at(told.played.book, steps, show.timeline, gym(told.played.book), at, sentence_case(named))
    drawn = still(show, moment, steps, About(at, tuple(who)))
    return SideData(head=head, still=still_svg(drawn, floor(show.court).room, drawn.reach_cm), said=named)


def _actions(told: Told, at: At) -> dict[int, Action]:
    step, beat = at
    return {action.player: action for action in told.played.steps[step].beats[beat].decision.actions}


def _words(action: Action, other: Action) -> str:
    """What somebody is told, with the way of a fill where nothing else tells it from the other."""
    words = action_words(action)
    return f"{words} {action.route}" if words == action_words(other) and action.kind is Kind.FILL else words
