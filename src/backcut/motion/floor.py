"""The edges of the playing floor that a run has to stay inside."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

HOOP_M = np.zeros(2)  # the house frame: the origin lies under the centre of the ring


@dataclass(frozen=True, slots=True)
class Floor:
    """Inside edges of the attacked half in the house frame: the baseline lies at y = -`baseline_m`.

    The defaults are the FIBA court (Official Basketball Rules, Art. 2: 15 m wide, ring 1.575 m from the end line).
    """

    half_width_m: float = 7.5
    baseline_m: float = 1.575
    depth_m: float = 14.0 - 1.575
    margin_m: float = 0.3  # estimate: half a shoulder's width between a runner's middle and the line

    @property
    def edges_m(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """How far a runner's middle may go: the least x and y, and the greatest."""
        x = self.half_width_m - self.margin_m
        return (-x, -self.baseline_m + self.margin_m), (x, self.depth_m - self.margin_m)

    def inside(self, path_m: Floats) -> Floats:
        """The path (n, 2) with every point that is over a line brought back inside it."""
        return np.clip(path_m, *self.edges_m)


FIBA_FLOOR = Floor()
