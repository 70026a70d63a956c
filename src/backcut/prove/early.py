"""Who is on the way when the ball moves on before all have settled: the cases a coach can name."""

from __future__ import annotations

from collections import Counter

from backcut.offence.event import PASSES
from backcut.offence.situation import Doing, Situation
from backcut.prove.walk import Walk

_FILLING = (Doing.FILLING, Doing.OUT)


def case(situation: Situation) -> str:
    """The case in words: "with the cutter at the rim and a filler on the way"; empty where all stand."""
    others = [player.doing for player in situation.players if player.number != situation.ball]
    filling = "a filler on the way" if any(doing in _FILLING for doing in others) else ""
    if Doing.CUTTING in others:
        return "with a cutter on the way to the rim"
    at_rim = "the cutter at the rim" if Doing.LANE in others else ""
    both = " and ".join(part for part in (at_rim, filling) if part)
    return f"with {both}" if both else ""


def cases(walk: Walk) -> Counter[str]:
    """How many passes of a walk came early, by case."""
    return Counter(
        said
        for situation, edges in zip(walk.situations, walk.edges, strict=True)
        for edge in edges
        if edge.event is not None and edge.event.kind in PASSES and (said := case(situation))
    )
