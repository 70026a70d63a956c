"""How a possession of a proof is laid on the floor: a start, moves that can be written, and the beat that shows it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from backcut.court.spots import Spot
from backcut.engine.advance import happen
from backcut.engine.play import comes_early, one_step, settle
from backcut.engine.possession import Step
from backcut.errors import BackcutError
from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.moves import move_text
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_text
from backcut.prove.possession import Possession

_Where = Mapping[int, Spot]


@dataclass(frozen=True, slots=True)
class OnTheFloor:
    """The start as text (empty: the book's own), the moves as one list, and the step and beat in which it shows.

    `exact` unless the possession lives by the second: then the moves come to the same places as nearly as can be said.
    """

    start: str
    moves: str
    step: int
    beat: int
    exact: bool = True


def on_the_floor(book: Book, possession: Possession) -> OnTheFloor:
    """A possession of a proof as the floor plays it."""
    start = "" if possession.start == book.start() else situation_text(possession.start)
    last = max(len(possession.steps) - 1, 0)
    if not possession.timed:
        return OnTheFloor(start, possession.moves, last, possession.beat)
    events, exact = _written(book, possession)
    moves = ", ".join(map(move_text, events))
    beat = _beat(book, possession, events)
    return OnTheFloor(start, moves, last, 0 if beat is None else beat, exact and beat is not None)


def _written(book: Book, possession: Possession) -> tuple[list[Event], bool]:
    """The events, each after so many beats that everybody counts where he does in time; and whether all could be."""
    first, *others = possession.steps
    events, here, exact = [_plain(first.event)], possession.start, True
    for step in others:
        here = happen(book, here, replace(events[-1], after=None))
        event, here = _after(book, here, step)
        events.append(event)
        exact &= here.spots() == step.before.spots()
    return events, exact


def _after(book: Book, here: Situation, step: Step) -> tuple[Event, Situation]:
    """The event of a step, after the beats that lead to where everybody counts by then, and what it comes in."""
    beats, rest = settle(book, here)
    if step.wait_s is not None:
        for count, beat in enumerate(beats):
            if count and beat.before.spots() == step.before.spots():
                return replace(_plain(step.event), after=count), beat.before
    return _plain(step.event), rest


def _plain(event: Event) -> Event:
    return replace(event, after=None, early=False)


def _beat(book: Book, possession: Possession, events: list[Event]) -> int | None:
    """The beat of the last step in which everybody counts where the finding has him; None where there is none."""
    here = possession.start
    try:
        for event, following in zip(events, [*events[1:], None], strict=True):
            step = one_step(book, here, event, comes_early(following))
            here = step.after
    except BackcutError:
        return None
    wanted: _Where = possession.seen.spots()
    return next((place for place, beat in enumerate(step.beats) if beat.before.spots() == wanted), None)
