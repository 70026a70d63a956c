"""A strip of film: one possession of real tracking in the house frame."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.film.detect import Facts, Known
from backcut.motion.timeline import Floats


@dataclass(frozen=True, eq=False)
class Strip:
    """One possession, n moments, metres of the house frame.

    `t_s` (n,) seconds from the first moment, `start_s` the clock of the source there; `attackers_m` and `defenders_m`
    (n, 5, 2); `ball_m` (n, 3), or (n, 2) where the height is not known. `attackers` and `defenders` are the names in
    the file, in the order of the arrays; `facts` and `offence` say how the places and the sides are known.
    """

    file: str
    reader: str
    court: str
    t_s: Floats
    start_s: float
    attackers_m: Floats
    defenders_m: Floats
    ball_m: Floats
    attackers: tuple[str, ...]
    defenders: tuple[str, ...]
    facts: Facts
    offence: Known[str]
    notes: tuple[str, ...] = ()

    @property
    def duration_s(self) -> float:
        """Seconds from the first moment to the last."""
        return float(self.t_s[-1])

    @property
    def rate_hz(self) -> float:
        """Moments a second, from the median step."""
        return 1 / float(np.median(np.diff(self.t_s)))

    @property
    def numbers(self) -> tuple[int, ...]:
        """A number for each attacker: the name where all five are different numbers up to 99, else 1 to 5."""
        if (
            all(name.isdecimal() and len(name) <= 2 for name in self.attackers)
            and len({*map(int, self.attackers)}) == 5
        ):
            return tuple(int(name) for name in self.attackers)
        return (1, 2, 3, 4, 5)

    def in_half_court(self, mid_court_y_m: float) -> NDArray[np.bool_]:
        """The moments, (n,), at which all five attackers are past mid-court."""
        return np.asarray((self.attackers_m[:, :, 1] <= mid_court_y_m).all(axis=1))
