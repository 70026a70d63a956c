"""A condition of a coach's own property, read: whether it holds in a situation, and what is so there, in words."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass, replace

from backcut.court.spots import Spot
from backcut.prove.conditions.fact import AllFact, PlayerFact, SpotFact
from backcut.prove.conditions.place import Place
from backcut.prove.conditions.subject import BALL, EVERYBODY, NOBODY, THAT, Of, Who
from backcut.prove.property import Seen


class Condition(ABC):
    """What can be so. `that` is the number of "that player", None where nobody is meant."""

    @abstractmethod
    def holds(self, seen: Seen, that: int | None = None) -> bool:
        """Whether it is so in this situation."""

    @abstractmethod
    def words(self, so: bool = True, that: str = "that player") -> str:
        """The condition in words, or that it is not so; `that` is what "that player" is called."""

    @abstractmethod
    def leaves(self) -> Iterator[Leaf]:
        """The single conditions in it, in order."""

    @abstractmethod
    def why(self, seen: Seen, that: int | None = None) -> Iterator[Leaf]:
        """The single conditions that make it hold here, or not hold."""

    @abstractmethod
    def bound(self) -> Condition:
        """The same with "that player" in place of "somebody"."""

    def here(self, seen: Seen, that: int | None = None) -> str:
        """What is so in this situation, with numbers: "2 and 4 are in the lane"."""
        return " and ".join(dict.fromkeys(leaf.fact_here(seen, that) for leaf in self.why(seen, that)))


class Leaf(Condition):
    """A single condition; what it names, and what it points at in a situation."""

    def leaves(self) -> Iterator[Leaf]:
        """Itself."""
        yield self

    def why(self, seen: Seen, that: int | None = None) -> Iterator[Leaf]:
        """Itself."""
        yield self

    def bound(self) -> Condition:
        """Itself: it speaks of no player."""
        return self

    @abstractmethod
    def fact_here(self, seen: Seen, that: int | None) -> str:
        """What is so in this situation, with numbers."""

    def players(self, seen: Seen, that: int | None) -> tuple[int, ...]:
        """The players it is about in this situation."""
        return ()

    @property
    def place(self) -> Place | None:
        """Where it looks."""
        return None

    @property
    def subject(self) -> Who | None:
        """Of whom it speaks."""
        return None

    @property
    def act(self) -> bool:
        """Whether it is what a sentence tells a player to do."""
        return False


@dataclass(frozen=True, slots=True)
class Players(Leaf):
    """So many of these players do this or are there."""

    who: Who
    fact: PlayerFact
    where: Place | None = None
    so: bool = True

    @property
    def place(self) -> Place | None:
        """Where it looks."""
        return self.where

    @property
    def subject(self) -> Who | None:
        """Of whom it speaks."""
        return self.who

    @property
    def act(self) -> bool:
        """Whether it is what a sentence tells a player to do."""
        return self.fact.act

    def bound(self) -> Condition:
        """With "that player" in place of "somebody"."""
        return replace(self, who=THAT) if self.who.somebody else self

    def holds(self, seen: Seen, that: int | None = None) -> bool:
        """Whether so many of them are so."""
        pool = self.who.pool(seen, that)
        groups = self._groups(seen)
        return self.who.enough(pool, groups if self.so else [pool - group for group in groups])

    def _groups(self, seen: Seen) -> tuple[frozenset[int], ...]:
        return self.fact.players(seen, self.where.spots(seen) if self.where else frozenset())

    def words(self, so: bool = True, that: str = "that player") -> str:
        """The condition in words, or that it is not so."""
        who = that if self.who.of is Of.THAT else self.who.words
        if so or self.who.single:
            return f"{who} {self._verb(self.who.plural, self.so is so)}"
        if self.who.contrary:
            return f"{self.who.contrary} {self._verb(self.who.plural, self.so)}"
        return f"it is not so that {self.words()}"

    def _verb(self, plural: bool, so: bool) -> str:
        return self.fact.verb(plural, so, self.where.words if self.where else "")

    def fact_here(self, seen: Seen, that: int | None) -> str:
        """Who does this or is there, by number."""
        pool, there = self.who.pool(seen, that), self._there(seen)
        if self.who == BALL:
            return f"{BALL.words} {self._verb(False, pool <= there)}"
        if self.who.single:
            return f"{_listed(pool)} {self._verb(False, pool <= there)}"
        if not there:
            return f"{NOBODY.words} {self._verb(False, True)}"
        if len(there) == len(seen.situation.players):
            return f"{EVERYBODY.words} {self._verb(False, True)}"
        return f"{_listed(there)} {self._verb(len(there) > 1, True)}"

    def _there(self, seen: Seen) -> frozenset[int]:
        return max(self._groups(seen), key=len)

    def players(self, seen: Seen, that: int | None) -> tuple[int, ...]:
        """Those who do this or are there; the one who is meant, where it is one."""
        return tuple(sorted(self.who.pool(seen, that) if self.who.single else self._there(seen)))


def _listed(numbers: frozenset[int]) -> str:
    *first, last = map(str, sorted(numbers))
    return f"{', '.join(first)} and {last}" if first else last


@dataclass(frozen=True, slots=True)
class Spots(Leaf):
    """Some, none or every one of these spots is empty or taken. `which` is "some", "no" or "every"."""

    which: str
    spots: Place
    fact: SpotFact
    so: bool = True

    @property
    def place(self) -> Place | None:
        """Where it looks."""
        return self.spots

    def holds(self, seen: Seen, that: int | None = None) -> bool:
        """Whether it is so of some, none or every one of them."""
        so = [self.fact.holds(seen, spot) is self.so for spot in self.spots.spots(seen)]
        return all(so) if self.which == "every" else any(so) is (self.which == "some")

    def words(self, so: bool = True, that: str = "that player") -> str:
        """The condition in words, or that it is not so."""
        state = self.fact.says[0].removeprefix("are ")
        if not so and self.spots.toward:  # neither empty nor taken, while the ball is on no side
            return f"it is not so that {self.words()}"
        if self._one:
            return f"{self.spots.words} is {'' if self.so is so else 'not '}{state}"
        article = {"some": ("a", "no"), "no": ("no", "a"), "every": ("every", "not every")}[self.which][not so]
        return f"{article} {self.spots.words} is {'' if self.so else 'not '}{state}"

    def fact_here(self, seen: Seen, that: int | None) -> str:
        """Which of the spots are so, by name."""
        if self.spots.toward and not self.spots.spots(seen):
            return f"there is no {self.spots.words.removeprefix('the ')}"
        there = self._there(seen)
        state = self.fact.says[0].removeprefix("are ")
        if not there:
            return f"{self.spots.words} is not {state}" if self._one else f"no {self.spots.words} is {state}"
        return f"{' and '.join(f'the {spot.title}' for spot in there)} {'are' if len(there) > 1 else 'is'} {state}"

    @property
    def _one(self) -> bool:
        return self.spots.words.startswith("the ")

    def _there(self, seen: Seen) -> list[Spot]:
        spots = self.spots.spots(seen)
        return [spot for spot in Spot if spot in spots and self.fact.holds(seen, spot)]


@dataclass(frozen=True, slots=True)
class All(Leaf):
    """Something is so of the whole situation, or is not."""

    fact: AllFact
    so: bool = True

    def holds(self, seen: Seen, that: int | None = None) -> bool:
        """Whether it is so."""
        return self.fact.holds(seen) is self.so

    def words(self, so: bool = True, that: str = "that player") -> str:
        """The condition in words, or that it is not so."""
        return (self.fact.says if self.so is so else self.fact.says_not)[0]

    def fact_here(self, seen: Seen, that: int | None) -> str:
        """Whether it is so, in words."""
        return (self.fact.says if self.fact.holds(seen) else self.fact.says_not)[0]


@dataclass(frozen=True, slots=True)
class Joined(Condition):
    """Conditions joined with "and" (`every`) or with "or"."""

    parts: tuple[Condition, ...]
    every: bool

    def holds(self, seen: Seen, that: int | None = None) -> bool:
        """Whether all are so, or one of them is."""
        return (all if self.every else any)(part.holds(seen, that) for part in self.parts)

    def words(self, so: bool = True, that: str = "that player") -> str:
        """The conditions in words, or that it is not so."""
        if not so and not self.every and any(isinstance(part, Joined) for part in self.parts):
            # Turned round, its "or" would have to bind closer than its "and".
            return f"it is not so that {self.words(that=that)}"
        return (" and " if self.every is so else " or ").join(part.words(so, that) for part in self.parts)

    def leaves(self) -> Iterator[Leaf]:
        """The single conditions, in order."""
        for part in self.parts:
            yield from part.leaves()

    def why(self, seen: Seen, that: int | None = None) -> Iterator[Leaf]:
        """Those parts that are so where it holds, those that are not where it does not."""
        holds = self.holds(seen, that)
        for part in self.parts:
            if part.holds(seen, that) is holds:
                yield from part.why(seen, that)

    def bound(self) -> Condition:
        """With "that player" in place of "somebody"."""
        return replace(self, parts=tuple(part.bound() for part in self.parts))
