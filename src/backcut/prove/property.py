"""What has to hold in a book: named sentences of three kinds, found by scanning `properties/`, one file each."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import TYPE_CHECKING

from backcut.court.spots import Spot
from backcut.engine.possession import Decision
from backcut.offence.action import Action
from backcut.offence.book import Book
from backcut.offence.situation import Situation
from backcut.prove.depth import Depth

if TYPE_CHECKING:
    from backcut.prove.walk import Walk
    from backcut.prove.whole import Whole


@dataclass(frozen=True, slots=True)
class Seen:
    """One situation as a property sees it: everybody's answers in it, and whether all have settled.

    Where runs are put in time, `waited_s` says for how long each player has been in the lane, and `run_s` how long a
    run takes this squad.
    """

    book: Book
    situation: Situation
    decision: Decision
    settled: bool
    waited_s: Mapping[int, float] = field(default_factory=dict)
    run_s: Callable[[Action], float] | None = None


def seen(walk: Walk, node: int) -> Seen:
    """A situation of a walk as properties see it."""
    return Seen(walk.book, walk.situations[node], walk.decisions[node], walk.settled[node])


@dataclass(frozen=True, slots=True)
class Breach:
    """One thing that is wrong. `cause` groups: no numbers and no sides in it, so that one cause is one finding.

    `text` says it of this situation, with numbers; `habits` are the ranks of the sentences behind it.
    """

    cause: str
    text: str
    players: tuple[int, ...] = ()
    habits: tuple[int, ...] = ()
    spot: Spot | None = None


#: The numbers a property is asked with, by name: `{"seconds": 3.0}`.
Numbers = Mapping[str, float]


@dataclass(frozen=True)
class Property:
    """A named sentence that has to hold.

    `says` is the sentence, with slots for its numbers: "Nobody waits in the lane longer than {seconds} seconds." `why`
    says what a coach has from it and names the source, or "common practice, no source". `numbers` are the defaults.
    `timed` ones are judged on runs in time and left out where a book is only walked through in beats.
    """

    name: str
    says: str
    why: str
    numbers: Numbers = field(default_factory=dict)
    timed: bool = False

    @property
    def kind(self) -> str:
        """Always, eventually or sometimes."""
        return type(self).__name__.lower()

    def sentence(self, numbers: Numbers) -> str:
        """The sentence with its numbers in it."""
        return self.says.format(**{name: f"{numbers[name]:g}" for name in self.numbers})


@dataclass(frozen=True)
class Always(Property):
    """Holds in every situation. `looks(seen, numbers)` yields what breaks it there.

    Where the book leaves something open only properties `of_holes` are judged: the rest would be its consequences.
    """

    of_holes: bool = False
    looks: Callable[[Seen, Numbers], Iterator[Breach]] = lambda seen, numbers: iter(())


@dataclass(frozen=True)
class Eventually(Property):
    """What begins also ends, whatever comes after.

    `begins(seen, numbers)` yields the players (None for no one in particular) for whom it has begun in this situation;
    `ends(seen, numbers, player)` says whether it is over for that player. Broken where, from a situation in which it
    has begun, the possession can go round for ever without its end. `breach` says so, of the situation it began in.
    """

    begins: Callable[[Seen, Numbers], Iterator[int | None]] = lambda seen, numbers: iter(())
    ends: Callable[[Seen, Numbers, int | None], bool] = lambda seen, numbers, player: True
    breach: Callable[[Seen, Numbers, int | None], Breach] = lambda seen, numbers, player: Breach("", "")


@dataclass(frozen=True)
class Sometimes(Property):
    """Holds somewhere. `looks(whole, numbers)` yields what never happens in anything that was walked through.

    `depths` are the depths that must have been walked through before "never" can be said; none: those asked for.
    """

    looks: Callable[[Whole, Numbers], Iterator[Breach]] = lambda whole, numbers: iter(())
    depths: tuple[Depth, ...] = ()


@cache
def properties() -> Mapping[str, Property]:
    """Every property by name, found by scanning `properties/`: one file each that exports `PROPERTY`.

    Raises: ValueError if two files export the same name.
    """
    from backcut.prove import properties as folder

    found: dict[str, Property] = {}
    for module in sorted(pkgutil.iter_modules(folder.__path__), key=lambda module: module.name):
        prop: Property = importlib.import_module(f"{folder.__name__}.{module.name}").PROPERTY
        if prop.name in found:
            raise ValueError(f"Two properties are called {prop.name!r}.")
        found[prop.name] = prop
    return found
