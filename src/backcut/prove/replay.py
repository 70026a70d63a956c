"""A way through a walk in ticks as a possession on the floor, the ticks in which nobody is told anything left out."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from backcut.engine.advance import follow, happen
from backcut.engine.decide import decide
from backcut.engine.possession import Beat, Step
from backcut.offence.event import Event
from backcut.offence.moves import move_text
from backcut.offence.situation import Situation
from backcut.prove.fold import Turn
from backcut.prove.possession import Possession
from backcut.prove.table import cuts_first
from backcut.prove.ticks import TickWalk
from backcut.prove.walk import Edge

#: Ticks in which the longest answer to an event is over: estimate, half a minute in ticks of a quarter second.
_SETTLES = 120
#: How far a possession is shown beyond what is to be seen, in ticks, where the players never settle.
_BEYOND = 8


@dataclass(slots=True)
class _Played:
    """One event in the making: the situation before it, and what everybody is told in every tick after it.

    It came so many `waited` ticks after the event before it, `early` where not all stood.
    """

    event: Event
    before: Situation
    waited: int
    early: bool
    ticks: list[Beat] = field(default_factory=list)


def replay(walk: TickWalk, index: int) -> tuple[Possession, Turn]:
    """The shortest possession to a timed situation, and how that lies in it.

    The last step is played on until all have settled; where they never do, a little beyond what is to be seen.
    """
    book, numbers = walk.book, walk.numbers
    first, way = walk.way_to(index)
    start, turn = walk.begun[first][0]
    here, at = start.situation, first
    played: list[_Played] = []
    ticks: list[Beat] = []
    seen, seen_turn, shown_at = here, turn, 0
    for place, edge in enumerate([*way, *_on(walk, index)], 1):
        if edge.event is None:
            beat, here = _tick(walk, at, here, turn)
            ticks.append(beat)
        else:
            event = turn.event(edge.event, numbers)
            # The possession is told from its first event on: nothing is early before that.
            played.append(_Played(event, here, len(ticks), bool(played) and not walk.stands(at)))
            ticks, here = played[-1].ticks, happen(book, here, event)
        turn, at = turn.then(edge.turn, numbers), edge.target
        if place == len(way):
            seen, seen_turn, shown_at = here, turn, len(ticks)
    if not played:
        return Possession(seen, (), seen), seen_turn
    ticks.append(Beat(here, decide(book, here)))
    told = [_told(one.ticks) for one in played[:-1]] + [_told(ticks, shown_at, len(ticks) - 1)]
    ends = [*(following.before for following in played[1:]), here]
    steps = [
        Step(
            one.event,
            _text(one, walk.tick_s),
            one.before,
            tuple(one.ticks[i] for i in shown),
            end,
            one.waited * walk.tick_s if one.early else None,
        )
        for one, shown, end in zip(played, told, ends, strict=True)
    ]
    timed = any(one.early for one in played)
    return Possession(played[0].before, tuple(steps), seen, told[-1].index(shown_at), timed), seen_turn


def _on(walk: TickWalk, index: int) -> list[Edge]:
    """The ticks after a timed situation until nothing changes any more."""
    on = walk.wait_from(index, _SETTLES)
    return on if len(on) < _SETTLES else on[:_BEYOND]


def _tick(walk: TickWalk, at: int, here: Situation, turn: Turn) -> tuple[Beat, Situation]:
    """What everybody is told in the next tick of a timed situation as it lies on the floor, and what comes of it."""
    running, counted = walk.table.running(walk.rows(np.array([at])))
    runs = frozenset(turn.worn[place] for place in np.flatnonzero(running[0]).tolist())
    decision = cuts_first(here, decide(walk.book, here), runs)
    return Beat(here, decision), follow(walk.book, here, decision, running=runs, counts=bool(counted[0]))


def _text(played: _Played, tick_s: float) -> str:
    after = f" (after {played.waited * tick_s:g} s)" if played.early else ""
    return move_text(played.event) + after


def _told(ticks: list[Beat], *also: int) -> list[int]:
    """The places of the ticks to show: the first, those in which somebody is told to go, and some more."""
    return [place for place, beat in enumerate(ticks) if place in {0, *also} or beat.decision.moves]
