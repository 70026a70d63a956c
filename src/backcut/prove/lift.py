"""From folded situations back to players told apart: which numbers can stand where, without asking the rules again.

A walk over folded situations knows, for each way on, how the next situation lies in the one before (`Turn`). So every
player-by-player situation is a folded one with a turn, and the ways between them are compositions of turns: the rules
were asked once per picture, the rest is gathering from tables.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import permutations, product

import numpy as np
from numpy.typing import NDArray

from backcut.court.spots import Spot
from backcut.offence.situation import IN_LANE, Situation
from backcut.prove.fold import Turn
from backcut.prove.walk import Walk

Bools = NDArray[np.bool_]
Ints = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Lifted:
    """A walk with the players told apart and left and right kept apart.

    `situations` is how many were reached; `settled` how many of them are settled, by who stands where on the ring and
    who has the ball; `possible` how many there would be if everybody could be on every spot of the same pictures;
    `stands` the ring spots on which each number stands in a settled situation.
    """

    situations: int
    settled: int
    possible: int
    stands: dict[int, set[Spot]]


def lift(walk: Walk) -> Lifted:
    """Count what a walk reaches with the players told apart; every start counts as it is, unmirrored."""
    turns = _turns(walk)
    reached = _reached(walk, turns)
    keys, every, stands = _settled(walk, turns, reached)
    return Lifted(int(reached.sum()), len(keys), len(every), stands)


def apart(walk: Walk) -> Iterator[Situation]:
    """Every situation the walk comes to, players and sides told apart, each once."""
    turns = _turns(walk)
    for situation, row in zip(walk.situations, _reached(walk, turns), strict=True):
        yield from (turns[i].situation(situation) for i in np.flatnonzero(row))


def _turns(walk: Walk) -> list[Turn]:
    """Every way a folded situation can lie on the floor: numbers change places within their role, sides may flip."""
    slots: dict[int, list[int]] = {}
    for place, number in enumerate(walk.numbers):
        slots.setdefault(walk.role[number], []).append(place)
    ways = []
    for chosen in product(*(permutations(places) for places in slots.values())):
        worn = list(walk.numbers)
        for places, order in zip(slots.values(), chosen, strict=True):
            for place, taken in zip(places, order, strict=True):
                worn[place] = walk.numbers[taken]
        ways.append(tuple(worn))
    return [Turn(worn, flipped) for flipped in ((False, True) if walk.mirror else (False,)) for worn in ways]


def _reached(walk: Walk, turns: list[Turn]) -> Bools:
    """Per folded situation and turn, whether the walk comes there."""
    place = {turn: i for i, turn in enumerate(turns)}
    own = [walk.own_mirror(node) for node in range(len(walk.situations))]

    def straight(turn: Turn, mirror: Turn | None) -> int:
        # A situation that is its own mirror image lies in two ways on the floor that are one.
        return place[turn.then(mirror, walk.numbers) if mirror is not None and turn.flipped else turn]

    kinds: dict[tuple[Turn, Turn | None], int] = {}
    ways = [
        (edge.target, kinds.setdefault((edge.turn, own[edge.target]), len(kinds)))
        for edges in walk.edges
        for edge in edges
    ]
    target, kind = np.array(ways, dtype=np.int64).reshape(-1, 2).T
    whither = [[straight(at.then(turn, walk.numbers), mirror) for at in turns] for turn, mirror in kinds]
    to = np.array(whither, dtype=np.int64).reshape(-1, len(turns))
    many = np.array([len(edges) for edges in walk.edges])
    first = np.cumsum(many) - many

    reached = np.zeros((len(walk.situations), len(turns)), dtype=np.bool_)
    fresh = np.zeros_like(reached)
    for begin, begun in walk.begun.items():
        for _, turn in begun:
            fresh[begin, straight(turn, own[begin])] = True
    while fresh.any():
        reached |= fresh
        node, at = np.divmod(np.flatnonzero(fresh), len(turns))
        fresh[:] = False
        # One row for every way out of every place that is new.
        out = many[node]
        way = np.repeat(first[node] - np.cumsum(out) + out, out) + np.arange(out.sum())
        fresh[target[way], to[kind[way], np.repeat(at, out)]] = True
        fresh &= ~reached
    return reached


def _settled(walk: Walk, turns: list[Turn], reached: Bools) -> tuple[set[int], set[int], dict[int, set[Spot]]]:
    """The settled situations by who stands where on the ring and who has the ball: reached, all, and by number."""
    ring, numbers = walk.book.formation.ring, walk.numbers
    index = {spot: i + 1 for i, spot in enumerate(ring)}
    base = len(ring) + 1
    slot = {number: i for i, number in enumerate(numbers)}
    worn = np.array([[slot[number] for number in turn.worn] for turn in turns])
    flipped = np.array([turn.flipped for turn in turns])
    keyed: list[tuple[Ints, Bools, Bools]] = []
    stands: dict[int, set[Spot]] = {number: set() for number in numbers}
    for node, (situation, settled) in enumerate(zip(walk.situations, walk.settled, strict=True)):
        holder = situation.holder
        if not settled or holder.doing in IN_LANE or holder.at not in index:
            continue
        here = np.array([index.get(player.at, 0) for player in situation.players])
        there = np.array([index.get(player.at.mirror, 0) for player in situation.players])
        codes = np.where(flipped[:, None], there, here)
        key = (codes * base**worn).sum(axis=1) * len(numbers) + worn[:, slot[situation.ball]]
        keyed.append((key, reached[node], codes > 0))
        for place in range(len(numbers)):
            came = reached[node] & (codes[:, place] > 0)
            for code, who in set(zip(codes[came, place].tolist(), worn[came, place].tolist(), strict=True)):
                stands[numbers[who]].add(ring[code - 1])
    keys = {k for key, came, _ in keyed for k in key[came].tolist()}
    # Who never comes on to the ring is not asked to be there.
    may_be_on = np.array([bool(stands[number]) for number in numbers])[worn]
    every = {k for key, _, on in keyed for k in key[np.all(may_be_on | ~on, axis=1)].tolist()}
    return keys, every, stands
