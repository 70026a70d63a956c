"""How far a proof looks: four depths a coach can name, and what may happen in each."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum
from itertools import combinations

from backcut.engine.advance import kind_of_pass
from backcut.engine.possession import Decision
from backcut.offence.action import CUTS
from backcut.offence.book import Book
from backcut.offence.event import PASSES, Event, EventKind
from backcut.offence.situation import IN_LANE, Doing, Guard, Player, Situation


class Depth(StrEnum):
    """How far a proof looks; each depth looks at all that *settled* looks at, and at one thing more."""

    SETTLED = "settled"
    DENIED = "denied"
    OVERLAPPED = "overlapped"
    DISTURBED = "disturbed"

    @property
    def says(self) -> str:
        """What may happen at this depth, in a coach's words."""
        return _SAYS[self]


_SAYS = {
    Depth.SETTLED: "the ball waits until all stand",
    Depth.DENIED: "defenders one pass away deny, one or two at a time, and deny the fillers on their way",
    Depth.OVERLAPPED: "the ball moves on while cutters and fillers are on the way, and finds the cutter",
    Depth.DISTURBED: "a cut is taken away, or one player forgets",
}

#: The phrase a book must have before an event is tried that only this phrase answers.
NEEDS = {EventKind.SKIP: "skip pass", EventKind.DRIBBLE: "dribble at"}


def not_tried(book: Book) -> list[EventKind]:
    """The events left out because no sentence of the book is about them."""
    return [kind for kind, phrase in NEEDS.items() if phrase not in book.rules.names]


def may_happen(book: Book, situation: Situation, decision: Decision, settled: bool, depth: Depth) -> Iterator[Event]:
    """Every event that may happen in this situation at this depth."""
    if situation.ended is not None:
        return
    last = situation.last
    if last is not None and last.fresh:
        # Nobody has answered yet: only what belongs to the pass itself.
        yield from _with_the_pass(situation, decision, depth)
        return
    holder = situation.holder
    on_ring = holder.doing not in IN_LANE and holder.at in book.rules.index
    early = depth is Depth.OVERLAPPED and on_ring
    if settled or early:
        yield from _passes(book, situation, early)
    if settled:
        yield Event(EventKind.SHOT if holder.doing not in IN_LANE else EventKind.LAY_UP, holder.number)
        if on_ring and "dribble at" in book.rules.names:
            yield from _dribbles(book, situation)
    if on_ring and depth is Depth.DENIED:
        yield from _denials(book, situation, settled)
    if depth is Depth.DISTURBED and not any(player.jammed or player.forgets for player in situation.players):
        yield from (Event(EventKind.JAM, p.number) for p in situation.players if p.doing is Doing.CUTTING)


def _passes(book: Book, situation: Situation, to_cutter: bool) -> Iterator[Event]:
    for player in situation.players:
        if player.number == situation.ball or player.guard is Guard.DENIES or player.doing is Doing.CUTTING:
            continue
        kind = kind_of_pass(book, situation, player.number)
        if kind is EventKind.TO_CUTTER and not to_cutter:
            continue
        if NEEDS.get(kind, "") in ("", *book.rules.names):
            yield Event(kind, situation.ball, player.number)


def _dribbles(book: Book, situation: Situation) -> Iterator[Event]:
    place = book.rules.index[situation.holder.at]
    for next_ in (place - 1, place + 1):
        if 0 <= next_ < len(book.rules.ring):
            yield Event(EventKind.DRIBBLE, situation.ball, spot=book.rules.ring[next_])


def _denials(book: Book, situation: Situation, settled: bool) -> Iterator[Event]:
    index, ball = book.rules.index, book.rules.index[situation.holder.at]

    def can_be_denied(player: Player) -> bool:
        return (
            player.guard is Guard.PLAIN
            and player.doing not in IN_LANE
            and abs(index.get(player.at, -9) - ball) == 1
            and (settled or player.doing is Doing.FILLING)
        )

    near = [player.number for player in situation.players if can_be_denied(player)]
    yield from (Event(EventKind.DENY, number) for number in near)
    yield from (Event(EventKind.DENY, one, also=(other,)) for one, other in combinations(near, 2))


def _with_the_pass(situation: Situation, decision: Decision, depth: Depth) -> Iterator[Event]:
    last = situation.last
    assert last is not None
    if last.kind not in PASSES:
        return
    if depth is Depth.DENIED and situation.player(last.player).guard is Guard.PLAIN:
        cuts = any(action.player == last.player and action.kind in CUTS for action in decision.actions)
        if cuts:
            yield Event(EventKind.JUMP, last.player)
    if depth is Depth.DISTURBED and not any(player.forgets for player in situation.players):
        yield from (Event(EventKind.FORGET, p.number) for p in situation.players if p.number != situation.ball)
