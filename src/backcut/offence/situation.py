"""A situation: who is where, who is on the way, who has the ball, and what each defender does. No coordinates."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from backcut.court.spots import Spot
from backcut.errors import SituationError
from backcut.offence.event import EventKind


class Doing(StrEnum):
    """What a player is in the middle of."""

    STANDING = "standing"
    CUTTING = "cutting"
    LANE = "in the lane"
    OUT = "coming out"
    FILLING = "filling"
    FLASHED = "flashed"


#: Who runs to the rim or is there: off the ring, and on no spot that could be taken.
IN_LANE = (Doing.LANE, Doing.CUTTING)


class Guard(StrEnum):
    """What a player's own defender does."""

    PLAIN = "plain"
    DENIES = "denies"
    SAGS = "sags"
    JUMPED = "jumped to the ball"


class Cause(StrEnum):
    """Why a player is in the lane: the sentence of the cut also owns the way out."""

    PASSED = "passed"
    DENIED = "denied"
    DRIBBLED_AT = "dribbled at"
    KICKED_OUT = "kicked out"
    FLASHED = "flashed"


@dataclass(frozen=True, slots=True)
class Player:
    """One attacker. A player on the way counts at the spot he is going to; a cutter counts at the rim.

    `origin` is where the present run began; `side` the side of the ball it began on (-1 left, +1 right);
    `order` ranks the cutters in the lane, the first in is 0.
    """

    number: int
    at: Spot
    doing: Doing = Doing.STANDING
    guard: Guard = Guard.PLAIN
    origin: Spot | None = None
    side: int = 0
    order: int = 0
    cause: Cause | None = None
    jammed: bool = False
    forgets: bool = False

    def mirrored(self) -> Player:
        """The same player on the other side of the floor."""
        return replace(self, at=self.at.mirror, origin=self.origin and self.origin.mirror, side=-self.side)


@dataclass(frozen=True, slots=True)
class Last:
    """The last pass or dribble; `fresh` until everybody has answered it once; a dribble has a `target`."""

    kind: EventKind
    player: int
    origin: Spot
    fresh: bool = True
    target: Spot | None = None

    def mirrored(self) -> Last:
        """The same pass or dribble on the other side of the floor."""
        return replace(self, origin=self.origin.mirror, target=self.target and self.target.mirror)


@dataclass(frozen=True, slots=True)
class Situation:
    """Frozen and hashable. `players` in order of number; `ball` is the holder's number; `count` since the catch."""

    players: tuple[Player, ...]
    ball: int
    last: Last | None = None
    count: int = 0
    ended: EventKind | None = None

    def player(self, number: int) -> Player:
        """The player with this number. Raises: SituationError if nobody wears it."""
        for player in self.players:
            if player.number == number:
                return player
        raise SituationError(
            f"Nobody wears {number}; on the floor are {', '.join(str(p.number) for p in self.players)}."
        )

    @property
    def holder(self) -> Player:
        """The player with the ball."""
        return self.player(self.ball)

    def with_players(self, *changed: Player) -> Situation:
        """The same situation with these players put in place of those with the same numbers."""
        new = {player.number: player for player in changed}
        return replace(self, players=tuple(new.get(player.number, player) for player in self.players))

    def mirrored(self) -> Situation:
        """The same situation on the other side of the floor."""
        players = tuple(player.mirrored() for player in self.players)
        return replace(self, players=players, last=self.last and self.last.mirrored())

    def spots(self) -> dict[int, Spot]:
        """Where each number stands or is going."""
        return {player.number: player.at for player in self.players}
