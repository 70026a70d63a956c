"""What a player is told to do, which sentence told him, and which sentences that one beat."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from backcut.court.spots import Spot


class Kind(StrEnum):
    """Every kind of action; the value is what JSON and the tables say."""

    CUT = "cut"
    BACK_CUT = "back cut"
    SHALLOW_CUT = "shallow cut"
    EXIT = "come out"
    FILL = "fill"
    COME_TO_BALL = "come to the ball"
    REPLACE = "take back"
    SCREEN = "screen"
    USE_SCREEN = "use the screen"
    FLASH = "flash"
    SLIDE = "slide on"
    HAND_OFF = "take the hand-off"
    INSIDE = "move inside"
    CLEAR = "clear the path"
    BALL = "have the ball"
    DRIBBLE = "dribble at"
    LOOK_TO_DRIBBLE = "look to dribble"
    HOLD = "hold"
    GET_BACK = "get back"
    REBOUND = "rebound"
    FORGET = "forget"
    NO_ANSWER = "no answer"


class Route(StrEnum):
    """How a run is run; `motion` turns it into a path."""

    PLAIN = "plain"
    FRONT = "front"
    REAR = "rear"
    BEHIND_DEFENDER = "behind the defender"
    BASELINE = "baseline"
    FAR_SIDE = "far side"
    ALONG_ARC = "along the arc"
    THROUGH_ELBOW = "through the elbow"
    THROUGH_LANE = "through the lane"


#: Actions that move nobody.
STILL = frozenset({Kind.BALL, Kind.LOOK_TO_DRIBBLE, Kind.HOLD, Kind.FORGET, Kind.NO_ANSWER})

#: Cuts: runs into the lane.
CUTS = frozenset({Kind.CUT, Kind.BACK_CUT, Kind.SHALLOW_CUT})

#: Actions that are run even when they end where they began: to the ball, behind the defender, to the rebound.
ROUND_TRIPS = frozenset({Kind.COME_TO_BALL, Kind.CUT, Kind.REBOUND})


@dataclass(frozen=True, slots=True)
class Claim:
    """A sentence that also wanted the player, and what it wanted of him. `habit` is a rank, 0 for A."""

    habit: int
    kind: Kind
    target: Spot


@dataclass(frozen=True, slots=True)
class Action:
    """One player's answer. `habit` is the rank of the winning sentence, None where no sentence speaks."""

    player: int
    kind: Kind
    origin: Spot
    target: Spot
    habit: int | None = None
    beat: tuple[Claim, ...] = ()
    route: Route = Route.PLAIN

    @property
    def moves(self) -> bool:
        """Whether the player runs."""
        return self.kind not in STILL and (self.origin is not self.target or self.kind in ROUND_TRIPS)


def letter(habit: int | None) -> str | None:
    """The letter of a rank: A for 0, B for 1; after Z comes AA; None where no sentence speaks."""
    if habit is None:
        return None
    return ("" if habit < 26 else chr(64 + habit // 26)) + chr(65 + habit % 26)
