"""Count the settled situations of a book: who stands where and who has the ball, inside players left out."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from backcut.engine.play import one_step
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Guard, Situation

#: A settled situation as counted: (number, spot) of everybody on the ring, and the holder.
Key = tuple[tuple[tuple[int, str], ...], int]

KINDS = (EventKind.PASS, EventKind.SKIP, EventKind.DENY, EventKind.DRIBBLE)


@dataclass(frozen=True, slots=True)
class Count:
    """`situations` reached, `moves` tried (pairs of situation and move), `depth` the longest shortest way."""

    situations: int
    moves: int
    depth: int


def key(book: Book, situation: Situation) -> Key:
    """What is told apart when settled situations are counted."""
    ring = book.rules.index
    standing = tuple((p.number, str(p.at)) for p in situation.players if p.at in ring)
    return standing, situation.ball


def at_ease(situation: Situation) -> Situation:
    """The same situation with every defender plain: a denial that was counted is over."""
    return situation.with_players(*(replace(player, guard=Guard.PLAIN) for player in situation.players))


def moves(book: Book, situation: Situation, kinds: frozenset[EventKind]) -> Iterator[Event]:
    """The events of these kinds that can come in a settled situation; denials one at a time, one pass away only."""
    index = book.rules.index
    holder = situation.holder
    if holder.at not in index:
        return
    for player in situation.players:
        if player.number == holder.number or player.at not in index:
            continue
        next_to = abs(index[player.at] - index[holder.at]) == 1
        kind = EventKind.PASS if next_to else EventKind.SKIP
        if kind in kinds:
            yield Event(kind, holder.number, player.number)
        if next_to and EventKind.DENY in kinds:
            yield Event(EventKind.DENY, player.number)
    if EventKind.DRIBBLE in kinds:
        for place in (index[holder.at] - 1, index[holder.at] + 1):
            if 0 <= place < len(book.rules.ring):
                yield Event(EventKind.DRIBBLE, holder.number, spot=book.rules.ring[place])


def explore(
    book: Book, kinds: frozenset[EventKind], progress: Callable[[int], None] | None = None
) -> tuple[Count, dict[Key, int]]:
    """Every settled situation that can be reached from the book's start by these events, breadth first.

    Returns the count and, per situation, the length of the shortest way to it. `progress` is told how many were found.
    """
    start = book.start()
    depth = {key(book, start): 0}
    waiting = deque([start])
    tried = 0
    while waiting:
        situation = waiting.popleft()
        far = depth[key(book, situation)]
        for event in moves(book, situation, kinds):
            tried += 1
            after = at_ease(one_step(book, situation, event).after)
            if (found := key(book, after)) not in depth:
                depth[found] = far + 1
                waiting.append(after)
                if progress is not None:
                    progress(len(depth))
    return Count(len(depth), tried, max(depth.values())), depth
