"""One spot round after every turn: who stands where in each turn, and when the false cue comes."""

from __future__ import annotations

import random
from collections.abc import Iterator

Turn = tuple[int, ...]


def turns(players: int, size: int, count: int) -> Iterator[Turn]:
    """Who stands on each spot, turn by turn: places in the line, from 0.

    Everybody moves one spot round; the last spot goes to the end of the line, and its first comes to the first spot.
    """
    for turn in range(count):
        yield tuple((turn - spot) % players for spot in range(size))


def false_turns(players: int, decider: int, one_in: int, seed: int = 1) -> tuple[int, ...]:
    """The turns (from 0) in which the cue is false: once for everybody in so many rounds of the line, drawn by seed.

    `decider` is the spot of whoever reads the cue. Nobody can know when it comes, and after `one_in` rounds everybody
    has met it once and the true one every other time. Raises: ValueError for less than one in two.
    """
    if one_in < 2:
        raise ValueError(f"One in {one_in} leaves no true cue; give one in two or rarer.")
    draw = random.Random(seed)
    return tuple(sorted(draw.randrange(one_in) * players + (player + decider) % players for player in range(players)))
