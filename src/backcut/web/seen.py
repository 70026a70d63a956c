"""What has been walked through this evening, against everything the book can come to.

Walked through are kinds of pass, denial and dribble (from which spot to which, left and right told apart), and
line-ups: who stands where when all have settled, and who has the ball. An edit of the book keeps what was seen.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.engine.explore import Key, at_ease, key, moves
from backcut.engine.play import one_step, settled
from backcut.engine.possession import Step
from backcut.errors import MoveError, SituationError
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Situation
from backcut.prove.fold import Turn, fold, plain, roles
from backcut.web.envelope import SeenData

#: Line-ups counted before it is said that there are more (own design): a second of work.
MOST_LINE_UPS = 5_000

#: One kind of event: what it is, where it begins, where it goes.
Way = tuple[EventKind, Spot, Spot]

_SAID = {
    EventKind.PASS: ("neighbour pass", "neighbour passes"),
    EventKind.SKIP: ("skip", "skips"),
    EventKind.DENY: ("denial", "denials"),
    EventKind.DRIBBLE: ("dribble", "dribbles"),
}
#: Which sentence an event asks for; without it the event is none of the book's.
_ASKED = {EventKind.SKIP: "skip pass", EventKind.DRIBBLE: "dribble at"}


@dataclass(frozen=True, slots=True)
class Reachable:
    """Everything a book comes to from its start, whoever has the ball: kinds of event, ring order, settled line-ups.

    `more` where there are more line-ups than were counted.
    """

    ways: tuple[Way, ...]
    line_ups: frozenset[Key]
    more: bool = False


def reachable(book: Book) -> Reachable:
    """What this book comes to; found out once for the rules of a book. Holes are not walked past.

    Raises: SituationError where the book has no start.
    """
    return _reachable(_Rules(book))


class _Rules:
    """A book as far as it decides what can be reached: equal where that is equal."""

    def __init__(self, book: Book) -> None:
        self.book = book
        rules = book.rules
        self.known = (
            rules.ring,
            tuple(sorted(rules.values.items())),
            tuple((rank, phrase.name) for rank, phrase in rules.habits),
            rules.never_corner,
            rules.never_cuts,
            book.start(),
        )

    def __hash__(self) -> int:
        return hash(self.known)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Rules) and self.known == other.known


@lru_cache(maxsize=32)
def _reachable(rules: _Rules) -> Reachable:
    book = rules.book
    role, kinds, start = roles(book), _kinds(book), book.start()
    asked: dict[Situation, list[tuple[Situation, Turn]]] = {}
    ways: set[Way] = set()

    def onward(folded: Situation) -> list[tuple[Situation, Turn]]:
        # The rules are asked once a picture; who wears which number is composition of turns.
        if folded not in asked:
            asked[folded] = []
            for event in moves(book, folded, kinds):
                ways.add(_way(folded, event))
                if (after := _answered(book, folded, event)) is not None:
                    asked[folded].append(fold(plain(book, after), role, False))
        return asked[folded]

    numbers = tuple(role)
    # Like a proof, it begins with the ball with anybody, so that a hole after one pass hides no other.
    begins = [replace(start, ball=player.number) for player in start.players if player.at in book.rules.index]
    first = [fold(plain(book, at_ease(begin)), role, False) for begin in begins]
    seen, line_ups, waiting = set(first), {key(book, begin) for begin in begins}, deque(first)
    while waiting and len(line_ups) < MOST_LINE_UPS:
        folded, turn = waiting.popleft()
        for target, lies in onward(folded):
            there = target, turn.then(lies, numbers)
            if there not in seen:
                seen.add(there)
                waiting.append(there)
                line_ups.add(key(book, there[1].situation(target)))
    index = book.rules.index
    order = sorted(ways, key=lambda way: (list(_SAID).index(way[0]), index[way[1]], index[way[2]]))
    return Reachable(tuple(order), frozenset(line_ups), bool(waiting))


def _kinds(book: Book) -> frozenset[EventKind]:
    """The events this book has sentences for."""
    kinds = {EventKind.PASS, *(kind for kind, phrase in _ASKED.items() if phrase in book.rules.names)}
    if any("denial" in phrase.uses for _, phrase in book.rules.habits):
        kinds.add(EventKind.DENY)
    return frozenset(kinds)


def _answered(book: Book, situation: Situation, event: Event) -> Situation | None:
    """The settled situation after an event; None where it ends in a hole, or never settles."""
    try:
        step = one_step(book, situation, event)
    except MoveError:
        return None
    return None if any(beat.decision.troubles for beat in step.beats) else at_ease(step.after)


def _way(situation: Situation, event: Event) -> Way:
    """What kind of event it is: from the ball's spot to that of the receiver, the denied, or where a dribble ends."""
    if event.kind is EventKind.DRIBBLE and event.spot is not None:
        target = event.spot
    else:
        target = situation.player(event.player if event.receiver is None else event.receiver).at
    return event.kind, situation.holder.at, target


@dataclass(frozen=True, slots=True)
class Seen:
    """What has been walked through: an immutable value, each possession adds to it."""

    ways: frozenset[Way] = frozenset()
    line_ups: frozenset[Key] = frozenset()

    def with_steps(self, book: Book, steps: Sequence[Step]) -> Seen:
        """With a possession that was walked through; nothing changes where all of it was seen before."""
        ways, line_ups = set(self.ways), set(self.line_ups)
        for step in steps:
            ways.update(_walked(step))
            for situation in (step.before, step.after):
                if situation.ended is None and settled(book, situation, decide(book, situation)):
                    line_ups.add(key(book, situation))
        if len(ways) == len(self.ways) and len(line_ups) == len(self.line_ups):
            return self
        return Seen(frozenset(ways), frozenset(line_ups))

    def rows(self, book: Book) -> list[dict[str, Any]]:
        """One row a kind of event that the book knows: its name, how many were seen of how many, and each of them."""
        all_ = reachable(book).ways
        rows = []
        for kind, names in _SAID.items():
            mine = [way for way in all_ if way[0] is kind]
            boxes = [{"label": f"{way[1].title} to {way[2].title}", "seen": way in self.ways} for way in mine]
            done = sum(way in self.ways for way in mine)
            if mine:
                said = f"{done} of {len(mine)} {names[len(mine) != 1]}"
                rows.append({"kind": str(kind), "words": said, "seen": done, "all": len(mine), "boxes": boxes})
        return rows

    def words(self, book: Book) -> str:
        """The count in words: "6 of 8 neighbour passes, 3 of 12 skips. 12 of 600 line-ups."."""
        rows = ", ".join(row["words"] for row in self.rows(book))
        everything = reachable(book)
        seen, many = len(self.line_ups & everything.line_ups), f"{len(everything.line_ups):,}"
        line_ups = f"{seen:,} of {'more than ' if everything.more else ''}{many} line-ups."
        return f"{rows}. {line_ups}" if rows else line_ups

    def to_dict(self, book: Book) -> dict[str, Any]:
        """The words and a row of boxes, the neighbour passes; `rows` holds every kind, each box with its label.

        A book that cannot be started has nothing to walk through.
        """
        try:
            rows = self.rows(book)
        except SituationError:
            return {"words": "", "boxes": [], "rows": []}
        boxes = [box["seen"] for row in rows if row["kind"] == EventKind.PASS for box in row["boxes"]]
        return {"words": self.words(book), "boxes": boxes, "rows": rows}

    def data(self, book: Book) -> SeenData:
        """What the page shows."""
        told = self.to_dict(book)
        return SeenData(words=told["words"], boxes=told["boxes"])


def _walked(step: Step) -> Iterator[Way]:
    """The kinds of event in a step that was walked through."""
    event, before = step.event, step.before
    if event.kind is EventKind.DENY:
        yield from (_way(before, Event(EventKind.DENY, player)) for player in event.players)
    elif event.kind in _SAID:
        yield _way(before, event)
