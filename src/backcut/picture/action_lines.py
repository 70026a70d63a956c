"""The lines of action of a moment: passes, shut lanes and runs, and the spots that stand empty."""

from __future__ import annotations

import numpy as np

from backcut.engine.possession import Step
from backcut.engine.words import label
from backcut.motion.timeline import Run, Timeline
from backcut.offence.action import Action, Kind, letter
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.offence.situation import IN_LANE, Situation
from backcut.picture import show as shown
from backcut.picture.show import ArrowKind

_ARROWS = {
    Kind.CUT: ArrowKind.CUT,
    Kind.BACK_CUT: ArrowKind.CUT,
    Kind.SHALLOW_CUT: ArrowKind.CUT,
    Kind.FLASH: ArrowKind.CUT,
    Kind.SCREEN: ArrowKind.SCREEN,
    Kind.HAND_OFF: ArrowKind.HAND_OFF,
    Kind.DRIBBLE: ArrowKind.DRIBBLE,
}

#: What a player is running: the answer, the run, and the situation in which it was asked.
Going = tuple[Action, Run, Situation]


def ball_lines(timeline: Timeline, step: Step, number: int, t_s: float, before: Situation) -> list[shown.Arrow]:
    """The passes of a step as lines; after a denial the pass that is shut."""
    arrows = [
        shown.Arrow(ArrowKind.PASS, flight.from_player, _ends(flight.path_m), to_player=flight.to_player)
        for flight in timeline.flights
        if flight.step == number and flight.to_player is not None and flight.kind != Kind.HAND_OFF
    ]
    if step.event.kind is EventKind.DENY:
        arrows += [
            shown.Arrow(ArrowKind.SHUT, before.ball, (_at(timeline, before.ball, t_s), there), to_player=player)
            for player in step.event.players
            if (there := _at(timeline, player, t_s))
        ]
    return arrows


def _ends(path_m: np.ndarray) -> tuple[shown.Place, ...]:
    return ((float(path_m[0][0]), float(path_m[0][1])), (float(path_m[-1][0]), float(path_m[-1][1])))


def _at(timeline: Timeline, number: int, t_s: float) -> shown.Place:
    x, y = timeline.players[number].place_at(t_s)[:2]
    return x, y


def run_lines(
    timeline: Timeline, going: dict[int, Going], lit: set[tuple[int, int, int]], t_s: float
) -> list[shown.Arrow]:
    """The runs that go on now: the lit ones whole, the others from where the runner is."""
    arrows = []
    for number, (action, run, _) in sorted(going.items()):
        is_lit = (run.step, run.beat, number) in lit
        path = [(x, y) for x, y in run.path_m[:, :2].tolist()]
        if not is_lit:
            here = _at(timeline, number, t_s)
            nearest = min(range(len(path)), key=lambda i: (path[i][0] - here[0]) ** 2 + (path[i][1] - here[1]) ** 2)
            path = [here, *path[nearest + 1 :]]
        if len(path) > 1:
            arrows.append(
                shown.Arrow(
                    _ARROWS.get(action.kind, ArrowKind.FILL),
                    number,
                    tuple(path),
                    letter=letter(action.habit),
                    label=label(action.kind),
                    lit=is_lit and action.habit is not None,
                )
            )
    return arrows


def open_spots(book: Book, before: Situation) -> tuple[shown.OpenSpot, ...]:
    """The spots of the ring on which nobody stands and to which nobody runs."""
    ring = book.formation.ring
    taken = {p.at for p in before.players if p.doing not in IN_LANE}
    ball = ring.index(before.holder.at) if before.holder.at in ring else None
    return tuple(
        shown.OpenSpot(spot, near=ball is not None and abs(place - ball) == 1)
        for place, spot in enumerate(ring)
        if spot not in taken
    )
