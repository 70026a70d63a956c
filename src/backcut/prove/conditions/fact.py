"""A fact: one thing that can be so of players, of a spot, or of the whole situation, with the words for it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from backcut.court.spots import Spot
from backcut.prove.property import Seen

#: The players of whom it is so; several groups where it is so of each on its own.
Groups = tuple[frozenset[int], ...]


@dataclass(frozen=True, slots=True)
class Shown:
    """A condition, a five-out situation in which it holds, and one in which it does not; all others settled."""

    says: str
    so: str
    not_so: str


@dataclass(frozen=True, slots=True)
class PlayerFact:
    """What can be so of a player.

    `says` are the ways to say it, as of several players, with {place} or {side} for where; the first is how it is
    written back. `players(seen, spots)` are those of whom it is so. `of_ball`: can be said of the ball; `act`: is what
    a sentence tells a player to do; `whole`: cannot be said with "not".
    """

    name: str
    says: tuple[str, ...]
    means: str
    players: Callable[[Seen, frozenset[Spot]], Groups]
    shown: Shown
    of_ball: bool = False
    act: bool = False
    whole: bool = False

    def verb(self, plural: bool, so: bool, where: str = "") -> str:
        """The words after the subject: "is in the lane", "do not cut"."""
        head, _, rest = self.says[0].partition(" ")
        be, have = head == "are", head == "have"
        if be:
            verb = ("are" if plural else "is") + ("" if so else " not")
        elif not so:
            verb = f"{'do' if plural else 'does'} not {head}"
        else:
            verb = head if plural else "has" if have else f"{head}s"
        return " ".join(f"{verb} {rest}".format(place=where, side=where).split())


@dataclass(frozen=True, slots=True)
class SpotFact:
    """What can be so of a spot."""

    name: str
    says: tuple[str, ...]
    means: str
    holds: Callable[[Seen, Spot], bool]
    shown: Shown


@dataclass(frozen=True, slots=True)
class AllFact:
    """What can be so of the whole situation; `says_not` is its contrary in words, read as well."""

    name: str
    says: tuple[str, ...]
    says_not: tuple[str, ...]
    means: str
    holds: Callable[[Seen], bool]
    shown: Shown


Fact = PlayerFact | SpotFact | AllFact
