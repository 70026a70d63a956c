"""Chains of denials: possessions drawn at random, with none to three denials, to read and not to run by heart."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, replace

from backcut.court.spots import Spot
from backcut.engine.play import one_step, play
from backcut.engine.possession import Step
from backcut.errors import BackcutError
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.moves import move_text, moves_from_text
from backcut.offence.situation import IN_LANE, Guard, Situation

#: Denials in a chain at most, and passes beside them (own design: as long as five players can be watched).
MOST_DENIALS = 3
MOST_PASSES = 3
#: How often a drawn chain may fail to be one before it is given up.
TRIES = 200


@dataclass(frozen=True, slots=True)
class Chain:
    """A possession to run: its moves and steps, how many denials are in it, on which side it ends, and how it ends."""

    moves: str
    steps: tuple[Step, ...]
    denials: int
    side: int
    ending: EventKind

    @property
    def has_a_false_cue(self) -> bool:
        """Whether a defender only sags somewhere: nobody may cut for it."""
        return any(step.event.kind is EventKind.SAG for step in self.steps)


def chains(book: Book, count: int, seed: int = 1) -> tuple[Chain, ...]:
    """So many chains, drawn by seed: no denial up to three, both sides, false cues and every ending in turn.

    Raises: BackcutError for a book in which nobody answers a denial.
    """
    if "back cut" not in book.rules.names:
        raise BackcutError("No sentence of this book answers a denial, so there is no chain of them to drill.")
    draw = random.Random(seed)
    endings = (EventKind.LAY_UP, EventKind.SHOT, EventKind.PASS)
    made: list[Chain] = []
    for number in range(count * TRIES):
        if len(made) == count:
            break
        denials, ending = len(made) % (MOST_DENIALS + 1), endings[len(made) % len(endings)]
        side = (-1, 1)[len(made) // 2 % 2]
        chain = _drawn(book, draw, denials, ending, false=number % 2 == 0)
        if chain is not None and chain.side in (side, 0) and chain.moves not in {one.moves for one in made}:
            made.append(chain)
    return tuple(made)


def _drawn(book: Book, draw: random.Random, denials: int, ending: EventKind, *, false: bool) -> Chain | None:
    kinds = [EventKind.DENY] * denials + [EventKind.PASS] * draw.randint(1, MOST_PASSES) + [EventKind.SAG] * false
    draw.shuffle(kinds)
    if EventKind.PASS not in kinds[:2]:
        kinds.insert(0, EventKind.PASS)
    here, texts = book.start(), list[str]()
    for kind in kinds:
        event = _any(book, here, kind, draw)
        if event is None:
            return None
        texts.append(move_text(event))
        try:
            here = _at_ease(one_step(book, here, event).after)
        except BackcutError:
            return None
    last = _last(book, here, ending, draw)
    return _played(book, ", ".join([*texts, last]), ending) if last else None


def _any(book: Book, here: Situation, kind: EventKind, draw: random.Random) -> Event | None:
    index, holder = book.rules.index, here.holder
    near = [
        p.number
        for p in here.players
        if p.number != holder.number
        and p.at in index
        and holder.at in index
        and abs(index[p.at] - index[holder.at]) == 1
    ]
    if not near:
        return None
    who = draw.choice(near)
    return Event(kind, holder.number, who) if kind is EventKind.PASS else Event(kind, who)


def _at_ease(here: Situation) -> Situation:
    return here.with_players(*(replace(player, guard=Guard.PLAIN) for player in here.players))


def _last(book: Book, here: Situation, ending: EventKind, draw: random.Random) -> str:
    """The moves it ends with: a shot, one pass more, or a pass and the ball to whoever cuts for it."""
    holder = here.holder
    if ending is EventKind.SHOT:
        return f"shot {holder.number}"
    event = _any(book, here, EventKind.PASS, draw)
    if event is None or event.receiver is None:
        return ""
    if ending is EventKind.PASS or holder.doing in IN_LANE:
        return move_text(event)
    return f"{move_text(event)}, early {event.receiver}>{holder.number}, lay-up {holder.number}"


def _played(book: Book, moves: str, ending: EventKind) -> Chain | None:
    try:
        steps = tuple(play(book, book.start(), moves_from_text(moves)))
    except BackcutError:
        return None
    if any(beat.decision.troubles for step in steps for beat in step.beats):
        return None
    denied = sum(step.event.kind is EventKind.DENY for step in steps)
    return Chain(moves, steps, denied, _side(steps), ending)


def _side(steps: tuple[Step, ...]) -> int:
    """The side on which the ball is before the end: -1 left, 1 right, 0 in the middle."""
    spots: Iterator[Spot] = (step.before.holder.origin or step.before.holder.at for step in reversed(steps))
    return next((spot.side for spot in spots if spot.side), 0)
