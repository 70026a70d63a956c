"""A way through a walk as a possession on the floor: a start, steps that can be played, and the move list."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from backcut.engine.advance import follow, happen
from backcut.engine.decide import decide
from backcut.engine.play import Stage, comes_early, one_step, settle, settled, stand
from backcut.engine.possession import Step
from backcut.errors import MoveError
from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.moves import move_text
from backcut.offence.situation import Situation
from backcut.prove.walk import Edge, Walk


@dataclass(frozen=True, slots=True)
class Possession:
    """From `start`, the `steps` to what is to be seen; `seen` is the situation in which it shows, as it lies there.

    `beat` is the place of `seen` among the beats of the last step. There are no steps where the start itself shows it.
    `timed` where a pass comes some seconds after another, before all stand: no move list can say that.
    """

    start: Situation
    steps: tuple[Step, ...]
    seen: Situation
    beat: int = 0
    timed: bool = False

    @property
    def moves(self) -> str:
        """The move list that plays it."""
        return ", ".join(step.text for step in self.steps)


def possession(walk: Walk, node: int, onward: Sequence[Edge] = ()) -> Possession:
    """The shortest possession to a situation of the walk, and on by `onward` where that is given."""
    book, numbers = walk.book, walk.numbers
    first, way = walk.way_to(node)
    start, turn = walk.begun[first][0]
    here = start.situation
    events: list[tuple[Situation, Event, int]] = []  # the situation before it, the event, the beats before it
    begins, beats = here, 0
    for edge in (*way, *onward):
        if edge.event is None:
            here = _beat(book, here)
            beats += 1
        else:
            event = turn.event(edge.event, numbers)
            if not events:
                begins = here
            events.append((here, event, beats))
            here, beats = happen(book, here, event), 0
        turn = turn.then(edge.turn, numbers)
    if not events:
        return Possession(here, (), here)
    return Possession(begins, _steps(book, events, beats), here, beats)


def _beat(book: Book, situation: Situation) -> Situation:
    decision = decide(book, situation)
    return stand(situation) if settled(book, situation, decision) else follow(book, situation, decision)


def _steps(book: Book, events: Sequence[tuple[Situation, Event, int]], beats: int) -> tuple[Step, ...]:
    steps: list[Step] = []
    told = [event for _, event, _ in events]
    for i, (before, event, _) in enumerate(events):
        if i + 1 == len(events):
            steps.append(_last(book, before, told[i], beats))
            break
        then, following, waited = events[i + 1]
        told[i + 1] = _as_written(book, happen(book, before, event), following, then, waited)
        steps.append(_step(book, before, told[i], comes_early(told[i + 1])))
    return tuple(steps)


def _as_written(book: Book, after: Situation, event: Event, then: Situation, beats: int) -> Event:
    """The event with what a move list must say so that it comes in the situation `then`, and no more than that."""
    for written in (event, replace(event, early=True)):
        try:
            if settle(book, after, comes_early(written))[1] == then:
                return written
        except MoveError:  # the players never settle
            continue
    return replace(event, after=beats)


def _last(book: Book, before: Situation, event: Event, beats: int) -> Step:
    """The last step, played on until all have settled; where they never do, a little beyond what is to be seen."""
    try:
        return _step(book, before, event, None)
    except MoveError:
        return _step(book, before, event, beats + 2)


def _step(book: Book, before: Situation, event: Event, until: Stage | int | None) -> Step:
    step = one_step(book, before, event, until)
    return replace(step, text=move_text(event))
