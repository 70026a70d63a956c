"""Where a plain defender wants to stand, so that a cut can be read: at his man, denying, sagging, jumped to the ball.

It is a fixed mix of his man, the ball and the hoop, 0.62 / 0.11 / 0.27 (Franks et al. 2015, Annals of Applied
Statistics). He is no coverage: he does not help, switch or rotate.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from backcut.motion.floor import HOOP_M
from backcut.offence.situation import Guard

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Bools = NDArray[np.bool_]

#: Weights of man, ball, hoop. Plain: Franks et al. 2015; the others are estimates around it.
MIX: dict[Guard, tuple[float, float, float]] = {
    Guard.PLAIN: (0.62, 0.11, 0.27),
    Guard.SAGS: (0.42, 0.13, 0.45),
    Guard.JUMPED: (0.55, 0.25, 0.20),
}
GUARDS = (Guard.PLAIN, Guard.SAGS, Guard.JUMPED, Guard.DENIES)
DENYING = GUARDS.index(Guard.DENIES)
_MIXES = np.array([MIX.get(guard, MIX[Guard.PLAIN]) for guard in GUARDS])
DENIES_M = 0.85  # estimate: an arm's length up the lane to the ball, chest to man: a hand in it, a foot past the arc
ON_BALL_M = 1.3  # an arm and a half; measured median of professionals 5.0 ft (1.5 m) from the holder


def defender_place(
    guard: Guard, man_m: tuple[float, float], ball_m: tuple[float, float], *, on_ball: bool = False
) -> tuple[float, float]:
    """Where a defender wants to stand, in metres, given his man and the ball."""
    man, ball = np.asarray(man_m, dtype=np.float64), np.asarray(ball_m, dtype=np.float64)
    x, y = wanted_m(man, ball, np.array(GUARDS.index(guard)), np.array(on_ball))
    return float(x), float(y)


def wanted_m(men_m: Floats, ball_m: Floats, guards: Ints, on_ball: Bools) -> Floats:
    """Where defenders want to stand, (..., 2) metres.

    `men_m` and `ball_m` (..., 2) metres; for each defender his order, a place in `GUARDS`, and whether he is on the
    ball (...).
    """
    mix = _MIXES[guards]
    place = mix[..., :1] * men_m + mix[..., 1:2] * ball_m + mix[..., 2:] * HOOP_M
    denies = (guards == DENYING) & ~on_ball
    place = np.where(denies[..., None], men_m + DENIES_M * _units(ball_m - men_m), place)
    reach = np.minimum(ON_BALL_M, 0.6 * np.hypot(men_m[..., 0], men_m[..., 1]))
    return np.where(on_ball[..., None], men_m + reach[..., None] * _units(HOOP_M - men_m), place)


def _units(vectors: Floats) -> Floats:
    """The vectors (..., 2) at length one; (0, 0) stays."""
    length = np.hypot(vectors[..., 0], vectors[..., 1])[..., None]
    return np.where(length > 1e-9, vectors / np.maximum(length, 1e-9), 0.0)
