"""Every settled picture of a book, for tests that ask something of each."""

from __future__ import annotations

from collections.abc import Iterable

from backcut.engine.explore import KINDS, moves
from backcut.engine.play import one_step
from backcut.engine.possession import Step
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.offence.situation import Situation

#: Spots on the ring with somebody, spots inside with somebody, spot of the ball. Numbers change nothing: see the
#: properties, where they are proved to.
Picture = tuple[tuple[str, ...], tuple[str, ...], str]


def picture(book: Book, situation: Situation) -> Picture:
    """What is told apart: the spots taken and the spot of the ball."""
    spots = sorted(str(player.at) for player in situation.players)
    ring = tuple(spot for spot in spots if spot in book.formation.ring)
    return ring, tuple(spot for spot in spots if spot not in ring), str(situation.holder.at)


def pictures(book: Book, kinds: Iterable[EventKind] = KINDS) -> list[Situation]:
    """One situation for each settled picture that these events reach from the book's start."""
    wanted = frozenset(kinds)
    found = {picture(book, book.start()): book.start()}
    waiting = [book.start()]
    while waiting:
        situation = waiting.pop()
        for event in moves(book, situation, wanted):
            after = one_step(book, situation, event).after
            if picture(book, after) not in found:
                found[picture(book, after)] = after
                waiting.append(after)
    return list(found.values())


def every_step(book: Book, kinds: Iterable[EventKind] = KINDS) -> list[Step]:
    """Every pass, skip, denial and dribble from every settled picture."""
    return [
        one_step(book, situation, event)
        for situation in pictures(book)
        for event in moves(book, situation, frozenset(kinds))
    ]
