"""The usual mistake with each kind of sentence: its name, the sign to see it by, and the word to say.

Common practice, no source; the numbers are where coaches draw the line, and a team may draw its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from backcut.language import noted, say


@dataclass(frozen=True, slots=True)
class Mistake:
    """What goes wrong, how it is seen from the side, and what to say."""

    name: str
    sign: str
    cue: str


_STANDS = (
    noted("Pass and stand"),
    noted("moves less than 1.8 m toward the rim within 2 s of the pass"),
    noted("Pass, cut"),
)
_SHALLOW = (noted("Shallow cut"), noted("turns away more than 2.4 m before the rim"), noted("To the rim"))
_CAMPS = (noted("Waits in the lane"), noted("stands in the lane for more than 2 s"), noted("Out"))
_EARLY = (noted("Fills too early"), noted("is there while the cutter is still looked at"), noted("Count two"))
_FIGHTS = (noted("Fights the denial"), noted("is denied for more than 2 s and does not cut"), noted("Back"))
_DRIFTS = (noted("Drifts"), noted("creeps more than 1.2 m inside the arc though nothing happened"), noted("Wide"))
_TO_NOWHERE = (noted("Dribbles to nowhere"), noted("dribbles more than twice and frees nobody"), noted("Why"))
_WATCHES = (noted("Watches the ball"), noted("does not move for 4 s while others are asked to"), noted("Move"))
_HOLDS = (
    noted("Holds too long"),
    noted("has the ball for more than 2.5 s and nothing comes of it"),
    noted("Look, then pass"),
)
_NOBODY_BACK = (noted("Nobody back"), noted("leaves nobody above the free-throw line at the shot"), noted("One back"))
_BOTH = (noted("Both go to one place"), noted("stays within 1.5 m of another for more than 1 s"), noted("Mine"))

_OF: Mapping[str, tuple[str, str, str]] = {
    "cut": _STANDS,
    "corner pass": _STANDS,
    "skip pass": _DRIFTS,
    "cut taken away": _SHALLOW,
    "come out": _CAMPS,
    "fill": _EARLY,
    "back cut": _FIGHTS,
    "denied corner": _FIGHTS,
    "denied filler": _FIGHTS,
    "flash": _WATCHES,
    "dribble at": _WATCHES,
    "dribble out": _TO_NOWHERE,
    "catch": _HOLDS,
    "shot": _NOBODY_BACK,
    "hold": _DRIFTS,
    "inside": _BOTH,
    "two inside": _BOTH,
}


def usual_mistake(phrase: str) -> Mistake:
    """The usual mistake with sentences of this phrase; where none is named, that somebody watches the ball."""
    name, sign, cue = _OF.get(phrase, _WATCHES)
    return Mistake(say(name), say(sign), say(cue))
