"""A phrase: one kind of sentence a book may hold, with its words, its rule, and what a coach teaches about it."""

from __future__ import annotations

import importlib
import pkgutil
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.choices import CHOICES
from backcut.offence.situation import Cause, Player

if TYPE_CHECKING:
    from backcut.offence.moment import Moment

_SLOT = re.compile(r"\{([^}]+)\}")


@dataclass(frozen=True, slots=True)
class Answer:
    """What a sentence wants of one player."""

    kind: Kind
    target: Spot
    route: Route = Route.PLAIN


@dataclass(frozen=True, slots=True)
class Example:
    """A worked example: in `formation`, after `moves`, the player `player` has done `kind` and stands on `spot`."""

    formation: str
    moves: str
    player: int
    kind: Kind
    spot: Spot
    choices: Mapping[str, str] | None = None


@dataclass(frozen=True)
class Phrase:
    """One kind of sentence.

    `says` is the sentence with slots: `{choice}` must be filled with the words of a value, `[ {choice}]` may be.
    `answer(moment, player)` is the rule: what this sentence wants of the player now, or None when it is silent.
    `uses` names the choices that the rule reads; `ways_out` the causes whose way out belongs to this sentence when the
    book has no sentence of its own for it; `covers_rest` marks the sentence that speaks when no other does,
    `special_case_of` names the phrase that, asked earlier, answers this one's moments too unless the book's choice for
    them is to stay; `after_end` one that speaks once the possession has ended: then all others are silent.
    """

    name: str
    says: str
    cue: str
    why: str
    mistake: str
    answer: Callable[[Moment, Player], Answer | None]
    example: Example
    uses: tuple[str, ...] = ()
    ways_out: frozenset[Cause] = frozenset()
    covers_rest: bool = False
    after_end: bool = False
    special_case_of: str | None = None

    @property
    def slots(self) -> tuple[str, ...]:
        """The choices that stand in the sentence, in order."""
        return tuple(_SLOT.findall(self.says))

    def sentence(self, values: Mapping[str, str]) -> str:
        """The sentence in words; a slot that may be left out is left out unless `values` names its choice."""

        def optional(match: re.Match[str]) -> str:
            slot = _SLOT.search(match[1])
            return match[1] if slot and slot[1] in values else ""

        def fill(match: re.Match[str]) -> str:
            choice = CHOICES[match[1]]
            return choice.value(values.get(choice.name, choice.default)).words

        return _SLOT.sub(fill, re.sub(r"\[([^\]]*)\]", optional, self.says))


@cache
def phrases() -> Mapping[str, Phrase]:
    """Every phrase, found by scanning `habits/`: one file each that exports `PHRASE`.

    Raises: ValueError if two files export the same name or a slot is not a choice.
    """
    from backcut.offence import habits

    found: dict[str, Phrase] = {}
    for module in sorted(pkgutil.iter_modules(habits.__path__), key=lambda module: module.name):
        phrase: Phrase = importlib.import_module(f"{habits.__name__}.{module.name}").PHRASE
        if phrase.name in found:
            raise ValueError(f"Two phrases are called {phrase.name!r}.")
        if unknown := [name for name in (*phrase.slots, *phrase.uses) if name not in CHOICES]:
            raise ValueError(f"The phrase {phrase.name!r} names {unknown[0]!r}, which is no choice.")
        found[phrase.name] = phrase
    return found
