"""Make a property of a coach's own sentence."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from backcut.prove.conditions.condition import Condition, Leaf
from backcut.prove.conditions.grammar import ALWAYS, NEVER, SOMETIMES
from backcut.prove.conditions.sentence import OwnSentence
from backcut.prove.property import Always, Breach, Eventually, Numbers, Property, Seen, Sometimes
from backcut.prove.who import who
from backcut.prove.whole import Whole

_WHY = "The coach's own sentence."


def own_property(name: str, sentence: OwnSentence) -> Property:
    """The property that a coach's own sentence asks for; its name is the sentence itself."""
    judge = _Judge(sentence)
    says = name + "."
    if sentence.kind in (ALWAYS, NEVER):
        return Always(name, says, _WHY, looks=judge.looks)
    if sentence.kind == SOMETIMES:
        return Sometimes(name, says, _WHY, looks=judge.never_happens)
    return Eventually(
        name, says, _WHY, {"whatever": 0.0}, begins=judge.begins, ends=judge.ends, breach=judge.never_ends
    )


class _Judge:
    """One sentence judged: `then` has to hold, or must not where `so` is false, wherever `when` holds."""

    def __init__(self, sentence: OwnSentence) -> None:
        bound = sentence.bound()
        self.when, self.then, self.so, self.points = bound.when, bound.then, sentence.kind != NEVER, sentence.points
        self.words = sentence.words()

    def _those(self, seen: Seen) -> Iterator[int | None]:
        """For whom `when` holds: each "that player", None where the sentence points at nobody."""
        for that in [player.number for player in seen.situation.players] if self.points else [None]:
            if self.when is None or self.when.holds(seen, that):
                yield that

    def looks(self, seen: Seen, numbers: Numbers) -> Iterator[Breach]:
        """What breaks an "always" or a "never" here."""
        for that in self._those(seen):
            if self.then.holds(seen, that) is not self.so:
                here = " and ".join(part.here(seen, that) for part in (self.when, self.then) if part is not None)
                yield self._breach(seen, that, _capital(here))

    def begins(self, seen: Seen, numbers: Numbers) -> Iterator[int | None]:
        """For whom it begins here."""
        yield from self._those(seen)

    def ends(self, seen: Seen, numbers: Numbers, player: int | None) -> bool:
        """Whether it has come to its end."""
        return self.then.holds(seen, player)

    def never_ends(self, seen: Seen, numbers: Numbers, player: int | None) -> Breach:
        """That it begins here and may never come to its end."""
        here = self.when.here(seen, player) if self.when is not None else ""
        end = self.then.words(that=str(player))
        return self._breach(seen, player, _capital(f"{here}, and it may never come to it that {end}"))

    def never_happens(self, whole: Whole, numbers: Numbers) -> Iterator[Breach]:
        """That it happens nowhere in what was walked through."""
        if not any(self.then.holds(seen, that) for seen in whole.seen() for that in self._those(seen)):
            cause = f"It never happens that {self.words}."
            yield Breach(cause, cause)

    def _breach(self, seen: Seen, that: int | None, text: str) -> Breach:
        situation = seen.situation
        called = "" if that is None else who(seen.book, situation, situation.player(that))
        leaves = list(dict.fromkeys(_leaves(seen, that, self.when, self.then)))
        players = tuple(sorted({number for leaf in leaves for number in leaf.players(seen, that)}))
        habits = {rank for leaf in leaves if leaf.act for rank in _ranks(seen, leaf.players(seen, that))}
        spots = {spot for leaf in leaves if leaf.place is not None for spot in leaf.place.spots(seen)}
        return Breach(
            cause=_capital(self.then.words(not self.so, called)),
            text=text,
            players=players,
            habits=tuple(sorted(habits)),
            spot=next(iter(spots)) if len(spots) == 1 else None,
        )


def _leaves(seen: Seen, that: int | None, *parts: Condition | None) -> Iterator[Leaf]:
    for part in parts:
        if part is not None:
            yield from part.why(seen, that)


def _ranks(seen: Seen, numbers: Collection[int]) -> Iterator[int]:
    return (a.habit for a in seen.decision.actions if a.player in numbers and a.habit is not None)


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}."
