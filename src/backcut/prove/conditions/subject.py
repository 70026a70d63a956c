"""Of whom a coach's own property speaks: "somebody", "at least two of us", "5", "the player with the ball"."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum

from backcut.prove.property import Seen

#: As many as there are: "everybody", "1 and 2".
ALL = -1
_ANY = 99


class Of(StrEnum):
    """Among whom is counted."""

    US = "us"
    NUMBERS = "numbers"
    HOLDER = "the player with the ball"
    THAT = "that player"


@dataclass(frozen=True, slots=True)
class Who:
    """How many of whom: `least` to `most` must be so; `contrary` says in words that it is not so, "" where none does.

    "that player" is whoever "somebody" before it was.
    """

    words: str
    least: int = 1
    most: int = _ANY
    of: Of = Of.US
    numbers: tuple[int, ...] = ()
    plural: bool = False
    contrary: str = ""

    @property
    def single(self) -> bool:
        """Whether it is one certain player, of whom the verb says whether it is so."""
        return self.of in (Of.HOLDER, Of.THAT) or (self.of is Of.NUMBERS and len(self.numbers) == 1)

    @property
    def somebody(self) -> bool:
        """Whether "that player" may point here."""
        return self.of is Of.US and (self.least, self.most) == (1, _ANY)

    def pool(self, seen: Seen, that: int | None) -> frozenset[int]:
        """The numbers among whom is counted."""
        match self.of:
            case Of.US:
                return frozenset(player.number for player in seen.situation.players)
            case Of.HOLDER:
                return frozenset({seen.situation.ball})
            case Of.THAT:
                return frozenset() if that is None else frozenset({that})
        return frozenset(self.numbers)

    def enough(self, pool: frozenset[int], groups: Collection[frozenset[int]]) -> bool:
        """Whether so many are so; of several groups one must have enough, and none may have too many."""
        least = len(pool) if self.least == ALL else self.least
        enough = [least <= len(pool & group) <= self.most for group in groups]
        return any(enough) if least else all(enough)


SOMEBODY = Who("somebody", contrary="nobody")
NOBODY = Who("nobody", 0, 0, contrary="somebody")
EVERYBODY = Who("everybody", ALL, contrary="not everybody")
HOLDER = Who("the player with the ball", of=Of.HOLDER)
BALL = Who("the ball", of=Of.HOLDER)
THAT = Who("that player", of=Of.THAT)

#: How a count is said, with what makes it not so.
BOUNDS = ("at least", "at most", "exactly", "more than", "fewer than")
COUNTS = ("one", "two", "three", "four", "five", "six")


def counted(bound: str, count: int) -> Who:
    """So many of us: "two of us" (at least two), "at most two of us", "exactly two of us"."""
    bound = bound or "at least"
    number = COUNTS[count - 1] if 0 < count <= len(COUNTS) else str(count)
    contrary = {"at least": "fewer than", "fewer than": "at least", "at most": "more than", "more than": "at most"}
    least, most = {
        "at least": (count, _ANY),
        "more than": (count + 1, _ANY),
        "at most": (0, count),
        "fewer than": (0, count - 1),
        "exactly": (count, count),
    }[bound]
    other = f"{contrary[bound]} {number} of us" if bound in contrary else ""
    return Who(f"{bound} {number} of us", least, most, plural=count != 1, contrary=other)


def numbered(numbers: tuple[int, ...], every: bool = True) -> Who:
    """Players by number: "5", "1 and 2", "1 or 2"."""
    if len(numbers) == 1:
        return Who(str(numbers[0]), of=Of.NUMBERS, numbers=numbers)
    words = (" and " if every else " or ").join(map(str, numbers))
    contrary = f"not both {words}" if every else f"neither {words.replace(' or ', ' nor ')}"
    return Who(words, ALL if every else 1, of=Of.NUMBERS, numbers=numbers, plural=every, contrary=contrary)
