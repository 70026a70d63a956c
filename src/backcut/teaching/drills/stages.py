"""The four stages of a drill: from a walk to live, with more and more false cues, so that players read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from backcut.language import noted, say


class Stage(StrEnum):
    """How much defence there is."""

    ALONE = "alone"
    GUIDED = "guided"
    ADVANTAGE = "advantage"
    LIVE = "live"


@dataclass(frozen=True, slots=True)
class _Plan:
    """The title, what defenders do, how rare the false cue is, and how many defend against so many attackers."""

    title: str
    defence: str
    one_in: int
    defenders: Callable[[int], int]


#: How rare the false cue is at first, and half of the time in the end: own design. One defender fewer than attackers is
#: easier to read for novices than as many (3 v 2 against 3 v 3, published trials with young players).
_PLANS = {
    Stage.ALONE: _Plan(
        noted("without defence"),
        noted("No defender; who gives the cue is named before, and gives it by hand."),
        10,
        lambda size: 0,
    ),
    Stage.GUIDED: _Plan(
        noted("guided defence"),
        noted("One defender, on whoever reads the cue; the coach shows behind that player's back what to do."),
        4,
        lambda size: 1,
    ),
    Stage.ADVANTAGE: _Plan(
        noted("one more than the defence"),
        noted("One defender fewer than attackers; they choose what they do."),
        3,
        lambda size: size - 1,
    ),
    Stage.LIVE: _Plan(
        noted("live"),
        noted("Everybody has a defender; they choose what they do. Play on to a shot."),
        2,
        lambda size: size,
    ),
}


def title(stage: Stage) -> str:
    """What a coach calls it."""
    return say(_PLANS[stage].title)


def defence(stage: Stage) -> str:
    """What the defenders do, in a sentence."""
    return say(_PLANS[stage].defence)


def one_in(stage: Stage) -> int:
    """How often the cue is false: once in so many times."""
    return _PLANS[stage].one_in


def defenders(stage: Stage, size: int) -> int:
    """How many defenders so many attackers have."""
    return _PLANS[stage].defenders(size)
