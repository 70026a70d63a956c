"""The usual mistake with each kind of sentence: its name, the sign to see it by, and the word to say.

Common practice, no source; the numbers are where coaches draw the line, and a team may draw its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from backcut.language import far, noted, say


@dataclass(frozen=True, slots=True)
class Mistake:
    """What goes wrong, how it is seen from the side ("a player ..."), and what to say; `far_m` is the length in it."""

    name: str
    sign: str
    cue: str
    far_m: float = 0.0


_STANDS = Mistake(
    noted("Pass and stand"),
    noted("moves less than {far} toward the rim within 2 s of the pass"),
    noted("Pass, cut"),
    1.8,
)
_SHALLOW = Mistake(noted("Shallow cut"), noted("turns away more than {far} before the rim"), noted("To the rim"), 2.4)
_CAMPS = Mistake(noted("Waits in the lane"), noted("stands in the lane for more than 2 s"), noted("Out"))
_EARLY = Mistake(noted("Fills too early"), noted("is there while the cutter is still looked at"), noted("Count two"))
_FIGHTS = Mistake(noted("Fights the denial"), noted("is denied for more than 2 s and does not cut"), noted("Back"))
_DRIFTS = Mistake(
    noted("Drifts"), noted("creeps more than {far} inside the arc though nothing happened"), noted("Wide"), 1.2
)
_TO_NOWHERE = Mistake(noted("Dribbles to nowhere"), noted("dribbles more than twice and frees nobody"), noted("Why"))
_WATCHES = Mistake(noted("Watches the ball"), noted("does not move for 4 s while others are asked to"), noted("Move"))
_HOLDS = Mistake(
    noted("Holds too long"), noted("has the ball for more than 2.5 s and looks at nobody"), noted("Look, pass")
)
_NOBODY_BACK = Mistake(
    noted("Nobody back"), noted("leaves nobody above the free-throw line at the shot"), noted("One back")
)
_BOTH = Mistake(
    noted("Both go to one place"), noted("stays within {far} of another for more than 1 s"), noted("Mine"), 1.5
)

_OF: Mapping[str, Mistake] = {
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
    one = _OF.get(phrase, _WATCHES)
    return Mistake(say(one.name), say(one.sign, far=far(one.far_m)), say(one.cue), one.far_m)
