"""Timed situations packed into one whole number each, and a set of such numbers that can grow to many millions."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int64]
Bools = NDArray[np.bool_]

CLOCK_BITS = 6
#: No clock may run longer, in ticks.
MOST_TICKS = (1 << CLOCK_BITS) - 1


@dataclass(frozen=True, slots=True)
class Packing:
    """Rows (n, players + 3) of picture, players' clocks, ball clock, count clock, and the numbers (n,) for them."""

    players: int

    @property
    def most_pictures(self) -> int:
        """How many pictures fit beside the clocks: two million with five players."""
        return 1 << (63 - CLOCK_BITS * (self.players + 2))

    def pack(self, rows: Ints) -> Ints:
        """The number of each row."""
        packed = rows[:, 0].copy()
        for column in range(1, self.players + 3):
            packed <<= CLOCK_BITS
            packed |= rows[:, column]
        return packed

    def unpack(self, packed: Ints) -> Ints:
        """The row of each number."""
        rows = np.empty((len(packed), self.players + 3), dtype=np.int64)
        for column in range(self.players + 2, 0, -1):
            rows[:, column] = packed & MOST_TICKS
            packed = packed >> CLOCK_BITS
        rows[:, 0] = packed
        return rows

    def picture(self, packed: Ints) -> Ints:
        """The picture of each number."""
        return packed >> (CLOCK_BITS * (self.players + 2))


class Known:
    """Numbers that have been seen, kept in a few sorted runs; a run is at least twice as long as the next."""

    def __init__(self) -> None:
        self._runs: list[Ints] = []

    def new(self, numbers: Ints) -> Ints:
        """The places (k,) of those not seen before, each number's first place, in order of place. They are seen now."""
        unseen, first = np.unique(numbers, return_index=True)
        for run in self._runs:
            at = np.minimum(np.searchsorted(run, unseen), len(run) - 1)
            fresh = run[at] != unseen
            unseen, first = unseen[fresh], first[fresh]
        if len(unseen):
            self._add(unseen)
        return np.sort(first)

    def _add(self, run: Ints) -> None:
        while self._runs and len(self._runs[-1]) < 2 * len(run):
            # Two sorted runs in one array: the stable sort merges them in a single pass.
            run = np.sort(np.concatenate([self._runs.pop(), run]), kind="stable")
        self._runs.append(run)
