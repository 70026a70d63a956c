"""What may happen next: every move that can be made at a moment, as a move text and in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from backcut.engine.advance import happen, kind_of_pass
from backcut.engine.play import Stage, one_step
from backcut.engine.possession import Step
from backcut.engine.words import event_words
from backcut.errors import BackcutError
from backcut.offence.book import Book
from backcut.offence.event import PASSES, Event, EventKind
from backcut.offence.moves import move_text
from backcut.offence.situation import IN_LANE, Doing, Guard, Situation
from backcut.web.envelope import CanData

#: The key that makes a move for the player in hand (own design): the first letter of what is done, where it is free.
KEYS = {
    EventKind.DENY: "d",
    EventKind.FREE: "b",
    EventKind.SAG: "s",
    EventKind.JUMP: "j",
    EventKind.JAM: "c",
    EventKind.FORGET: "f",
    EventKind.DRIBBLE: "g",
}


#: In which order they are said (own design): the ball first, then what the defence does, then what goes wrong.
_ORDER = (
    EventKind.TO_CUTTER,
    EventKind.PASS,
    EventKind.INSIDE,
    EventKind.KICK_OUT,
    EventKind.SKIP,
    EventKind.DENY,
    EventKind.FREE,
    EventKind.JAM,
    EventKind.DRIBBLE,
    EventKind.JUMP,
    EventKind.FORGET,
    EventKind.SAG,
    EventKind.LAY_UP,
    EventKind.SHOT,
    EventKind.TURNOVER,
)


def at_the_start(book: Book, begins: Situation) -> list[CanData]:
    """What can be done before anything has happened."""
    return in_order(_cans(book, begins, 0, _settled(book, begins)))


def in_step(book: Book, step: Step, keep: int, beats: int) -> list[CanData]:
    """What can be done while the answers of a step are seen, of which `beats` beats have begun.

    What belongs to the event itself, what comes when all stand, and the same while they are on the way.
    """
    here = step.beats[beats].before if beats < len(step.beats) else step.after
    found = list(
        _cans(book, step.beats[0].before if step.beats else step.after, keep, _with_it(book, step, here, beats))
    )
    found += _to_cutters(book, step, here, keep)
    found += when_all_stand(book, step, keep)
    if 0 < beats < len(step.beats):
        found += _cans(book, here, keep, _early(book, here, beats), early=True)
    return in_order(found)


def when_all_stand(book: Book, step: Step, keep: int) -> list[CanData]:
    """What can be done once all stand after a step."""
    stands = _stands(book, step)
    return in_order(_cans(book, stands, keep, _settled(book, stands)))


def in_order(cans: Iterable[CanData]) -> list[CanData]:
    """The moves as they are said: the ball first."""
    order = {str(kind): place for place, kind in enumerate(_ORDER)}
    return sorted(cans, key=lambda can: order[can.kind])


def _stands(book: Book, step: Step) -> Situation:
    """The situation when all stand, also where the next move came before that."""
    try:
        return one_step(book, step.before, step.event).after
    except BackcutError:
        return step.after


def _to_cutters(book: Book, step: Step, here: Situation, keep: int) -> Iterator[CanData]:
    """Passes to a cutter, as long as there is one in the lane."""
    if not any(p.doing in (Doing.CUTTING, Doing.LANE) and p.number != here.ball for p in here.players):
        return
    lane = one_step(book, step.before, step.event, Stage.LANE).after
    yield from _cans(book, lane, keep, (e for e in _passes(book, lane) if e.kind is EventKind.TO_CUTTER))


def _passes(book: Book, situation: Situation) -> Iterator[Event]:
    for player in situation.players:
        if player.number != situation.ball:
            yield Event(kind_of_pass(book, situation, player.number), situation.ball, player.number)


def _settled(book: Book, situation: Situation) -> Iterator[Event]:
    """What comes when all stand: passes, dribbles, what the defenders do, the end."""
    yield from (event for event in _passes(book, situation) if event.kind is not EventKind.TO_CUTTER)
    index, holder = book.rules.index, situation.holder
    if holder.at in index:
        beside = (book.rules.ring[i] for i in (index[holder.at] - 1, index[holder.at] + 1) if i in index.values())
        yield from (Event(EventKind.DRIBBLE, holder.number, spot=spot) for spot in beside)
    for player in situation.players:
        if player.guard is not Guard.PLAIN:
            yield Event(EventKind.FREE, player.number)
        elif player.number != situation.ball and player.doing not in IN_LANE:
            yield Event(EventKind.DENY, player.number)
            yield Event(EventKind.SAG, player.number)
    yield Event(EventKind.LAY_UP if holder.doing in IN_LANE else EventKind.SHOT, holder.number)
    yield Event(EventKind.TURNOVER, holder.number)


def _early(book: Book, situation: Situation, beats: int) -> Iterator[Event]:
    """What may come while players are on the way: the ball moves on, or a filler is denied."""
    yield from (replace(event, after=beats) for event in _passes(book, situation) if event.kind in PASSES)
    for player in situation.players:
        if player.number != situation.ball and player.doing is Doing.FILLING and player.guard is Guard.PLAIN:
            yield Event(EventKind.DENY, player.number, after=beats)


def _with_it(book: Book, step: Step, here: Situation, beats: int) -> Iterator[Event]:
    """What belongs to the step's own event: its passer's defender jumps, somebody forgets, a cut is taken away."""
    if step.event.kind in PASSES and beats <= 1:
        yield Event(EventKind.JUMP, step.event.player)
        yield from (Event(EventKind.FORGET, p.number) for p in step.before.players if p.number != step.after.ball)
    if any(p.doing is Doing.CUTTING for p in here.players):
        # A cut is taken away as soon as one is on the way: who sets out later cannot be met yet.
        on_the_way = one_step(book, step.before, step.event, Stage.CUTTING).after
        yield from (Event(EventKind.JAM, p.number) for p in on_the_way.players if p.doing is Doing.CUTTING)


def _cans(
    book: Book, situation: Situation, keep: int, events: Iterable[Event], *, early: bool = False
) -> Iterator[CanData]:
    for event in events:
        here = situation
        if event.kind is EventKind.JAM:
            here = situation.with_players(replace(situation.player(event.player), doing=Doing.CUTTING))
        try:
            happen(book, here, event)
        except BackcutError:
            continue
        passed = event.kind in PASSES
        spot = event.spot if event.spot is not None else situation.player(event.receiver or event.player).at
        yield CanData(
            move=move_text(event),
            words=event_words(Step(event, "", situation, (), situation)),
            kind=str(event.kind),
            player=event.player,
            keep=keep,
            to=event.receiver,
            spot=str(spot) if passed or event.spot is not None else None,
            early=early,
            key="Enter" if passed else KEYS.get(event.kind, ""),
        )
