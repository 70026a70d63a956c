"""What the sentences for inside players share: where inside is, how high a spot lies, and a cutter's path."""

from __future__ import annotations

from backcut.court.spots import INSIDE, Spot
from backcut.offence.moment import Moment
from backcut.offence.situation import Doing, Player

INSIDE_PLACES = frozenset(INSIDE)

#: The block and the elbow of each side; in the middle the high post.
LOW = {-1: Spot.LB, 1: Spot.RB}
HIGH = {-1: Spot.LE, 0: Spot.N, 1: Spot.RE}

#: The block from which a player has stepped out to the short corner.
STEPPED_OUT = {Spot.LSC: Spot.LB, Spot.RSC: Spot.RB}

#: Spots from the baseline up: a rough height, enough to say who is highest (common practice, no source).
_HEIGHT = {
    "C": 0, "sc": 0, "b": 1, "m": 2, "e": 3, "W": 3, "S": 4,
}  # fmt: skip

#: From these spots a straight cut passes these inside spots; the second spot is where one steps out of the way.
_PATHS = {
    Spot.LW: {Spot.LM: Spot.LSC},
    Spot.RW: {Spot.RM: Spot.RSC},
    Spot.LC: {Spot.LB: Spot.LSC},
    Spot.RC: {Spot.RB: Spot.RSC},
}


def height(spot: Spot) -> int:
    """How far up the floor a spot lies, 0 at the baseline, 5 at the top."""
    if spot is Spot.T:
        return 5
    if spot in (Spot.N, Spot.R):
        return 3 if spot is Spot.N else 0
    return _HEIGHT[spot.value[1:]]


def out_of_the_way(moment: Moment, me: Player) -> Spot | None:
    """Where an inside player steps when a cutter's path leads through the player's spot; None when it does not."""
    for cutter in moment.situation.players:
        if cutter.doing is not Doing.CUTTING or cutter.origin is None:
            continue
        if cutter.origin is Spot.T and me.at is Spot.N:
            # Away from the ball, so that the lane to the cutter stays open.
            away = -moment.rules.ring[moment.ball].side if moment.ball >= 0 else 0
            return {-1: Spot.LE, 1: Spot.RE}.get(away)
        if (aside := _PATHS.get(cutter.origin, {}).get(me.at)) is not None:
            return aside
    return None
