"""A played possession as data: the JSON of `backcut play`, and one line per answer for a table."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from backcut.engine.possession import Step, Trouble
from backcut.offence.action import Action, Kind, letter
from backcut.offence.book import Book
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_text


def answers(step: Step) -> list[Action]:
    """Everybody's answers in one step: all moves in order of time, and one still answer for who never moved."""
    told = [action for beat in step.beats for action in beat.decision.actions if action.moves]
    moved = {action.player for action in told}
    if step.beats:
        # Of one who never moved, the strongest sentence that spoke; who forgets or has no answer says so.
        still: dict[int, Action] = {}
        for action in (action for beat in step.beats for action in beat.decision.actions):
            if action.player not in still or _rank(action) < _rank(still[action.player]):
                still[action.player] = action
        open_ = [a for beat in step.beats for a in beat.decision.actions if a.kind in (Kind.FORGET, Kind.NO_ANSWER)]
        still |= {action.player: action for action in open_}
        told += [a for number, a in still.items() if number not in moved or a.kind is Kind.NO_ANSWER]
    return told


def _rank(action: Action) -> float:
    return math.inf if action.habit is None else action.habit


def troubles(step: Step) -> list[Trouble]:
    """What the book left open in one step, each once."""
    found: dict[tuple[str, int], Trouble] = {}
    for beat in step.beats:
        for trouble in beat.decision.troubles:
            found.setdefault((trouble.kind, trouble.player), trouble)
    return list(found.values())


def to_dict(book: Book, court: str, start: Situation, steps: Sequence[Step]) -> dict[str, Any]:
    """The possession as JSON.

    `spots` are where everybody stands once all have settled or, where the next move comes early, when it comes.
    """
    return {
        "book": book.title,
        "court": court,
        "sentences": [
            {"letter": letter(rank), "cue": book.cue(rank), "text": sentence.text}
            for rank, sentence in enumerate(book.sentences)
        ],
        "start": {"spots": _spots(start), "ball": start.ball, "situation": situation_text(start)},
        "steps": [
            {
                "event": step.text,
                "kind": str(step.event.kind),
                "actions": [_action(action) for action in answers(step)],
                "spots": _spots(step.after),
                "ball": step.after.ball,
                "open": [_trouble(trouble) for trouble in troubles(step)],
                "situation": situation_text(step.after),
            }
            for step in steps
        ],
    }


def _trouble(trouble: Trouble) -> dict[str, Any]:
    spot = None if trouble.spot is None else str(trouble.spot)
    return {
        "kind": trouble.kind,
        "player": trouble.player,
        "habit": letter(trouble.habit),
        "spot": spot,
        "text": trouble.text,
    }


def _spots(situation: Situation) -> dict[str, str]:
    return {str(number): str(spot) for number, spot in situation.spots().items()}


def _action(action: Action) -> dict[str, Any]:
    return {
        "player": action.player,
        "kind": str(action.kind),
        "from": str(action.origin),
        "to": str(action.target),
        "habit": letter(action.habit),
        "beat": [str(letter(claim.habit)) for claim in action.beat],
        "route": str(action.route),
    }
