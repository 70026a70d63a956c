"""Play a possession: each event, then the beats of answers until all have settled or the next event comes early."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from enum import StrEnum

from backcut.engine.advance import MOST_COUNTS, arrived, follow, happen, kind_of_pass, still_on, stopped_on_the_way
from backcut.engine.decide import decide
from backcut.engine.possession import Beat, Decision, Step
from backcut.errors import MoveError
from backcut.offence.book import Book
from backcut.offence.event import MOST_BEATS, PASSES, WITH_THE_PASS, Event, EventKind
from backcut.offence.moment import Moment
from backcut.offence.moves import Move, move_text
from backcut.offence.situation import Doing, Situation


class Stage(StrEnum):
    """How far the answers to an event have come when the next event happens before all have settled."""

    BEFORE = "nobody has answered"
    CUTTING = "a cutter is on the way"
    LANE = "a cutter is in the lane"


def settled(book: Book, situation: Situation, decision: Decision) -> bool:
    """Whether no sentence asks anybody to move, nobody is on the way, and nobody waits for a count."""
    if decision.moves or any(player.doing is Doing.CUTTING for player in situation.players):
        return False
    if situation.last is not None and situation.last.fresh:
        return False
    moment = Moment(book.rules, situation)
    return not (moment.pending and not moment.time_to_fill() and situation.count < MOST_COUNTS)


def settle(book: Book, situation: Situation, until: Stage | int | None = None) -> tuple[tuple[Beat, ...], Situation]:
    """The beats from here until all have settled, and the situation then; or until this stage, or this many beats.

    With a number of beats the situation is exactly what so many times decide and follow give, somebody still on the
    way perhaps; if all have settled in fewer, it is the settled situation.
    """
    beats: list[Beat] = []
    if until is Stage.BEFORE or until == 0:
        return (), situation
    wanted = Doing.CUTTING if until is Stage.CUTTING else Doing.LANE
    for _ in range(MOST_BEATS):
        decision = decide(book, situation)
        beats.append(Beat(situation, decision))
        if settled(book, situation, decision):
            return tuple(beats), stand(situation)
        situation = follow(book, situation, decision)
        if situation.ended is not None:
            return tuple(beats), stand(situation)
        if isinstance(until, Stage):
            reached = any(p.doing is wanted and p.number != situation.ball for p in situation.players)
        else:
            reached = until == len(beats)
        if reached:
            return tuple(beats), situation
    raise MoveError("The players never settle under this book: two sentences send one player back and forth.")


def stand(situation: Situation) -> Situation:
    """The same situation with everybody on the ring arrived."""
    return replace(
        situation,
        players=tuple(
            arrived(player) if player.doing in (Doing.FILLING, Doing.OUT) and not stopped_on_the_way(player) else player
            for player in situation.players
        ),
    )


def comes_early(event: Event | None) -> Stage | int | None:
    """At which stage of the step before it, or after how many of its beats, an event comes; None once all settled."""
    if event is None:
        return None
    if event.after is not None:
        return event.after
    if event.kind in WITH_THE_PASS and not event.early:
        return Stage.BEFORE
    if event.kind is EventKind.JAM:
        return Stage.CUTTING
    return Stage.LANE if event.early or event.kind is EventKind.TO_CUTTER else None


def play(book: Book, start: Situation, moves: Sequence[Move]) -> list[Step]:
    """Play a move list from `start`; every step holds everybody's answers and the sentences behind them.

    Raises: NotationError or MoveError if a move cannot be made where it stands, naming its place in the list.
    """
    steps: list[Step] = []
    situation = start
    for move, following in zip(moves, (*moves[1:], None), strict=True):
        try:
            still_on(situation)
            event = move.event(situation)
            step = one_step(book, situation, event, comes_early(following.to_come() if following else None))
        except MoveError as error:
            raise MoveError(str(move.error(error))) from None
        steps.append(replace(step, text=move.text))
        situation = step.after
    return steps


def one_step(book: Book, situation: Situation, event: Event, until: Stage | int | None = None) -> Step:
    """One event and its beats. Raises: MoveError if the event cannot happen here."""
    if event.kind in PASSES and event.receiver is not None and event.player == situation.ball:
        event = replace(event, kind=kind_of_pass(book, situation, event.receiver))
    after_event = happen(book, situation, event)
    beats, after = settle(book, after_event, until)
    return Step(event, move_text(event), situation, beats, after)
