"""Which spot a tracked player is on: the nearest one with hysteresis, and "between spots" where he is near none.

Real players rarely stand still on a spot: with our spots the median distance to the nearest one is 4.26 ft, and 38.7 %
of all player moments are more than 5 ft from any (measured on 2,881 real half courts, see docs/film.md). So a player
takes a spot when he comes close and keeps it until he has clearly left.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from backcut.court.spots import Spot
from backcut.motion.timeline import Floats

ENTER_M = 1.524  # 5 ft, estimate: a third of 15 ft, the least distance between neighbours of a ring (common practice)
LEAVE_M = 2.134  # 7 ft, estimate; measured: then 19 instead of 25 % of all stays are shorter than 0.5 s

BETWEEN = "between spots"
NO_SPOT = -1

Places = Mapping[Spot, tuple[float, float]]


def nearest(places_m: Floats, spots: Places) -> tuple[NDArray[np.intp], Floats]:
    """Index of the nearest spot, in the order of `spots`, and the distance in metres; `places_m` (..., 2)."""
    at = np.array([spots[spot] for spot in spots], dtype=np.float64)
    away_m = np.linalg.norm(places_m[..., None, :] - at, axis=-1)
    return away_m.argmin(axis=-1), away_m.min(axis=-1)


def on_spots(
    places_m: Floats, spots: Places, *, enter_m: float = ENTER_M, leave_m: float = LEAVE_M
) -> tuple[tuple[Spot | None, ...], ...]:
    """For each moment and player the spot he is on, or None between spots; `places_m` (n, p, 2) metres.

    He takes the nearest spot within `enter_m`, keeps it up to `leave_m`, and changes over only from outside `enter_m`.
    """
    names = list(spots)
    at = np.array([spots[spot] for spot in names], dtype=np.float64)
    away_m = np.linalg.norm(places_m[:, :, None] - at, axis=-1)
    closest = away_m.argmin(axis=-1)
    current = [NO_SPOT] * places_m.shape[1]
    result = []
    for i in range(len(places_m)):
        for p, spot in enumerate(current):
            if spot != NO_SPOT and away_m[i, p, spot] <= enter_m:
                continue
            if away_m[i, p, closest[i, p]] <= enter_m:
                current[p] = int(closest[i, p])
            elif spot != NO_SPOT and away_m[i, p, spot] > leave_m:
                current[p] = NO_SPOT
        result.append(tuple(None if spot == NO_SPOT else names[spot] for spot in current))
    return tuple(result)


def title(spot: Spot | None) -> str:
    """What a coach calls it: "right wing" or "between spots"."""
    return BETWEEN if spot is None else spot.title
