"""Formations: which ring the perimeter players stand on, who starts where, and where inside players start."""

from __future__ import annotations

import difflib
import importlib
import pkgutil
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from backcut.court.spots import PERIMETER, Spot
from backcut.errors import NotationError, SituationError
from backcut.offence.situation import Player, Situation


@dataclass(frozen=True, slots=True)
class Formation:
    """`start` lists the ring spots of players 1, 2, ..., `inside` the spots of the next numbers; `ball` is a spot."""

    name: str
    title: str
    ring: tuple[Spot, ...]
    start: tuple[Spot, ...]
    ball: Spot
    inside: tuple[Spot, ...] = ()
    also_called: tuple[str, ...] = ()

    def situation(self) -> Situation:
        """Everybody at the start, the ball on its spot."""
        spots = (*self.start, *self.inside)
        players = tuple(Player(number, spot) for number, spot in enumerate(spots, 1))
        return Situation(players, ball=spots.index(self.ball) + 1)

    def on_ring(self, ring: tuple[Spot, ...], players: int) -> Formation:
        """The same formation on another ring, or with another number of perimeter players.

        Fewer players stand in an unbroken line about the middle of the ring; the ball starts at its middle, on the left
        of two. Raises: SituationError if the ring is no ring or holds too few spots.
        """
        if any(spot not in PERIMETER for spot in ring) or list(ring) != sorted(set(ring), key=PERIMETER.index):
            raise SituationError(f"{' '.join(ring)} is no ring: name perimeter spots from left to right, each once.")
        if not 2 <= players <= len(ring):
            raise SituationError(f"A ring of {len(ring)} spots takes 2 to {len(ring)} players, not {players}.")
        if ring == self.ring and players == len(self.start):
            return self
        first = (len(ring) - players) // 2
        line = ring[first : first + players]
        if players == len(self.start) and set(self.start) <= set(ring):
            line = tuple(spot for spot in ring if spot in self.start)
        ball = self.ball if self.ball in line else line[(len(line) - 1) // 2]
        # The ball is 1, then those beside it, right before left, as in the full formations.
        middle = line.index(ball)
        order = sorted(range(len(line)), key=lambda i: (abs(i - middle), i < middle))
        start = tuple(line[i] for i in order) if set(line) != set(self.start) else self.start
        return Formation(self.name, self.title, ring, start, ball, self.inside, self.also_called)


@cache
def formations() -> Mapping[str, Formation]:
    """Every formation by name, found by scanning `formations/`. Raises: ValueError if two share a name."""
    from backcut.offence import formations as folder

    found: dict[str, Formation] = {}
    for module in pkgutil.iter_modules(folder.__path__):
        formation: Formation = importlib.import_module(f"{folder.__name__}.{module.name}").FORMATION
        if formation.name in found:
            raise ValueError(f"Two formations are called {formation.name!r}.")
        found[formation.name] = formation
    return dict(sorted(found.items()))


def formation(name: str) -> Formation:
    """The formation with this name, in any case and with spaces or hyphens. Raises: NotationError if there is none."""
    wanted = "-".join(name.lower().replace("-", " ").split())
    called = {alias: item for item in formations().values() for alias in (item.name, *item.also_called)}
    if wanted in called:
        return called[wanted]
    near = difflib.get_close_matches(wanted, called, 1)
    hint = f" Did you mean {near[0]}?" if near else ""
    raise NotationError(f'No formation is called "{name}".{hint} The formations are: {", ".join(formations())}.')
