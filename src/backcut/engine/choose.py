"""Let the book choose: what may happen next in a situation, and a possession drawn from it with a seed."""

from __future__ import annotations

import random
from dataclasses import replace

from backcut.engine.explore import moves
from backcut.engine.play import Stage, one_step
from backcut.engine.possession import Step
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.moves import move_text
from backcut.offence.situation import IN_LANE, Doing, Guard, Situation

#: How often each move is drawn, against each other: estimates that show the book at work, not a measured game.
_WEIGHTS = {
    EventKind.PASS: 6.0,
    EventKind.SKIP: 1.0,
    EventKind.DENY: 3.0,
    EventKind.DRIBBLE: 1.0,
    EventKind.TO_CUTTER: 2.0,
}
#: The phrase a book must have before a move is drawn that only this phrase answers.
_NEEDS = {EventKind.SKIP: "skip pass", EventKind.DENY: "back cut", EventKind.DRIBBLE: "dribble at"}

#: After this many moves the possession looks for its end.
LONG_ENOUGH = 6


def allowed(book: Book, situation: Situation) -> list[Event]:
    """The moves that may come next: passes that are open, denials, dribbles that the book has an answer to."""
    kinds = frozenset(kind for kind in _WEIGHTS if _NEEDS.get(kind, "hold") in book.rules.names | {"hold"})
    found = [
        event
        for event in moves(book, situation, kinds)
        if event.receiver is None or situation.player(event.receiver).guard is not Guard.DENIES
    ]
    if situation.holder.doing not in IN_LANE:
        found += [
            Event(EventKind.TO_CUTTER, situation.ball, player.number)
            for player in situation.players
            if player.doing is Doing.LANE
        ]
    return found


def possession(book: Book, start: Situation, seed: int, most: int = LONG_ENOUGH) -> list[Step]:
    """A possession that the book plays against moves drawn with `seed`; it ends with a lay-up or a shot.

    The same book, start and seed give the same possession.
    """
    draw = random.Random(seed)
    steps: list[Step] = []
    situation = start
    for number in range(most):
        options = [event for event in allowed(book, situation) if event.kind is not EventKind.TO_CUTTER]
        if not options:
            break
        event = draw.choices(options, [_WEIGHTS[option.kind] for option in options])[0]
        last = number == most - 1
        until = Stage.LANE if last or draw.random() < 0.1 else None
        steps.append(_stepped(book, situation, event, until))
        situation = steps[-1].after
        cutters = [e for e in allowed(book, situation) if e.kind is EventKind.TO_CUTTER] if until else []
        if cutters:
            steps.append(_stepped(book, situation, cutters[0], None))
            situation = steps[-1].after
            return [*steps, _stepped(book, situation, Event(EventKind.LAY_UP, situation.ball), None)]
    return [*steps, _stepped(book, situation, Event(EventKind.SHOT, situation.ball), None)]


def _stepped(book: Book, situation: Situation, event: Event, until: Stage | None) -> Step:
    step = one_step(book, situation, event, until)
    return replace(step, text=move_text(step.event))
