"""Judge what was walked through by one property: where it breaks, and which situations show it."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from backcut.prove.property import Always, Breach, Eventually, Numbers, seen
from backcut.prove.walk import Edge, Walk

Bools = NDArray[np.bool_]


@dataclass(slots=True)
class Broken:
    """One cause: a breach as it first shows, all situations that show it, and for what never ends the way round."""

    breach: Breach
    nodes: list[int] = field(default_factory=list)
    onward: tuple[Edge, ...] = ()


def judge_always(walk: Walk, prop: Always, numbers: Numbers) -> list[Broken]:
    """Every cause for which the property breaks somewhere, the fewest events first."""
    found: dict[str, Broken] = {}
    for node, decision in enumerate(walk.decisions):
        if decision.troubles and not prop.of_holes:
            continue
        for breach in prop.looks(seen(walk, node), numbers):
            broken = found.setdefault(breach.cause, Broken(breach))
            if not broken.nodes or broken.nodes[-1] != node:
                broken.nodes.append(node)
    return list(found.values())


def judge_eventually(walk: Walk, prop: Eventually, numbers: Numbers) -> list[Broken]:
    """Every cause for which something begins and a possession can go on for ever without its end.

    For ever means: in a set of situations that lead to one another and, whatever comes, to nothing else but the end
    of the possession. A set that the possession can leave is no breach: sooner or later another pass is thrown. With
    the number `whatever` at 1 it is one: then the same passes may go round for ever.
    """
    return list(_Rounds(walk, prop, numbers).broken())


class _Rounds:
    """The situations in which it is not over, each once for every player it can be about."""

    def __init__(self, walk: Walk, prop: Eventually, numbers: Numbers) -> None:
        self.walk, self.prop, self.numbers = walk, prop, numbers
        self.begun = [list(prop.begins(seen(walk, node), numbers)) for node in range(len(walk.situations))]
        tracked = any(player is not None for players in self.begun for player in players)
        self.who: Sequence[int | None] = walk.numbers if tracked else (None,)
        self.slot = {player: i for i, player in enumerate(self.who)}
        self.width = len(self.who)

    @cached_property
    def open(self) -> list[bool]:
        """Per situation and player, whether it is not over."""
        return [
            not self.prop.ends(seen(self.walk, node), self.numbers, player)
            for node in range(len(self.walk.situations))
            for player in self.who
        ]

    def ways(self, state: int) -> Iterator[tuple[Edge, int]]:
        """The edges on from a situation and player, without those that end the possession, and where they lead."""
        node, slot = divmod(state, self.width)
        player = self.who[slot]
        for edge in self.walk.edges[node]:
            if self.walk.situations[edge.target].ended is None:
                to = slot if player is None else edge.turn.worn.index(player)
                yield edge, edge.target * self.width + to

    def broken(self) -> Iterator[Broken]:
        if not any(self.begun):
            return
        for_ever = self._for_ever()
        if not for_ever.any():
            return
        doomed = self._leading_to(for_ever)
        found: dict[str, Broken] = {}
        for node, players in enumerate(self.begun):
            for player in players:
                state = node * self.width + self.slot[player]
                if not doomed[state]:
                    continue
                breach = self.prop.breach(seen(self.walk, node), self.numbers, player)
                broken = found.get(breach.cause)
                if broken is None:
                    found[breach.cause] = broken = Broken(breach, [], self._round(state, for_ever))
                if not broken.nodes or broken.nodes[-1] != node:
                    broken.nodes.append(node)
        yield from found.values()

    def _for_ever(self) -> Bools:
        """Where a possession can go round for ever: in a set of states that lead to one another and nowhere else."""
        # Loaded only where something has begun that has to end.
        from scipy.sparse import csr_matrix
        from scipy.sparse.csgraph import connected_components

        size = len(self.open)
        sources: list[int] = []
        targets: list[int] = []
        left = np.zeros(size, dtype=np.bool_)
        alone = np.zeros(size, dtype=np.bool_)
        for state in range(size):
            node = state // self.width
            if not self.open[state] or self.walk.situations[node].ended is not None:
                continue
            onward = [to for _, to in self.ways(state)]
            within = [to for to in onward if self.open[to]]
            # What comes after a hole in the book, or was not looked at, nobody knows.
            looked = self.walk.looked[node] and not self.walk.decisions[node].troubles
            left[state] = not looked or len(within) < len(onward)
            alone[state] = looked and (not onward or state in onward)
            sources += [state] * len(within)
            targets += within
        graph = csr_matrix((np.ones(len(sources)), (sources, targets)), shape=(size, size))
        _, part = connected_components(graph, directed=True, connection="strong")
        stays = (np.bincount(part)[part] > 1) | alone
        if not self.numbers.get("whatever"):
            come_from = part[sources]
            left_parts = np.zeros(size, dtype=np.bool_)
            left_parts[part[left]] = True
            left_parts[come_from[come_from != part[targets]]] = True
            stays &= ~left_parts[part]
        return np.asarray(np.array(self.open) & stays, dtype=np.bool_)

    def _leading_to(self, goal: Bools) -> list[bool]:
        back: dict[int, list[int]] = {}
        for state in range(len(self.open)):
            if self.open[state]:
                for _, to in self.ways(state):
                    if self.open[to]:
                        back.setdefault(to, []).append(state)
        doomed: list[bool] = goal.tolist()
        waiting = deque(np.flatnonzero(goal).tolist())
        while waiting:
            for before in back.get(waiting.popleft(), ()):
                if not doomed[before]:
                    doomed[before] = True
                    waiting.append(before)
        return doomed

    def _round(self, start: int, for_ever: Bools) -> tuple[Edge, ...]:
        """The shortest way into a round that never ends, and once round it."""
        into, state = self._shortest(start, lambda to: bool(for_ever[to]), already=True)
        lap, _ = self._shortest(state, lambda to: to == state, already=False)
        return (*into, *lap)

    def _shortest(self, start: int, goal: Callable[[int], bool], *, already: bool) -> tuple[list[Edge], int]:
        if already and goal(start):
            return [], start
        came: dict[int, tuple[int, Edge]] = {}
        waiting = deque([start])
        while waiting:
            state = waiting.popleft()
            for edge, to in self.ways(state):
                if not self.open[to] or to in came:
                    continue
                came[to] = state, edge
                if goal(to):
                    way, at = [], to
                    while True:
                        at, edge = came[at]
                        way.append(edge)
                        if at == start:
                            return way[::-1], to
                waiting.append(to)
        return [], start
