"""How far apart neighbours on the ring stand, and the band that their distance should lie in.

Common practice asks for 15-18 ft between neighbours, but no court can give that on every pair: where custom puts the
spots (a step behind the arc, the wing on the free-throw line extended) the top and the wing are 21.0 ft apart on the
FIBA court and 17.3 ft on the NFHS court. So the band belongs to court, ring and pair:

1. Begin with the common band, 15-18 ft.
2. Widen it until it holds the distance which the court's own geometry gives that pair, with a step of leeway: what
   the lines force on everybody is nobody's mistake.
3. But never below 12 ft, where one defender guards two, nor above 22 ft, the longest pass of a grown squad, nor above
   the longest pass of this squad. A pair that the geometry drives beyond these is told as too near or too far.

On a ring that was shrunk for a squad, 15, 18 and 12 ft shrink with it: shorter passes go with shorter steps (estimate).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from backcut.court.record import Court, Point
from backcut.court.spots import Spot
from backcut.court.units import feet, in_feet, in_metres
from backcut.errors import CourtError

COMMON_LOW_M = feet(15)  # common practice, no source
COMMON_HIGH_M = feet(18)  # common practice, no source
LEAST_M = feet(12)  # lower end of the coaches' range 12-18 ft: hoopscollege.com, Good spacing
MOST_M = feet(22)  # throwable by adults with an open lane: common practice, no source
LEEWAY_M = feet(1)  # one step: estimate


class Fit(StrEnum):
    """How a distance lies in its band."""

    FITS = "fits"
    TOO_NEAR = "too near"
    TOO_FAR = "too far"


@dataclass(frozen=True, slots=True)
class Pair:
    """Two neighbours on the ring: distance, band (all metres), and how it fits; `common` judges by 15-18 ft alone."""

    a: Spot
    b: Spot
    distance_m: float
    low_m: float
    high_m: float

    @property
    def fit(self) -> Fit:
        """How the distance lies in the band of this court, ring and pair."""
        return _fit(self.distance_m, self.low_m, self.high_m)

    @property
    def common(self) -> Fit:
        """How the distance lies in the common 15-18 ft."""
        return _fit(self.distance_m, COMMON_LOW_M, COMMON_HIGH_M)

    def __str__(self) -> str:
        """The pair as a coach says it."""
        return (
            f"{self.a.title} to {self.b.title}: {in_metres(round(self.distance_m, 2))} ({in_feet(self.distance_m)}), "
            f"{self.fit}, band {in_metres(round(self.low_m, 2))} to {in_metres(round(self.high_m, 2))}"
        )


def band_m(usual_m: float, scale: float = 1.0, longest_pass_m: float | None = None) -> tuple[float, float]:
    """The band (low, high) in metres of a pair that custom puts `usual_m` apart on this court and ring."""
    low = max(min(COMMON_LOW_M * scale, usual_m - LEEWAY_M), LEAST_M * scale)
    most = MOST_M if longest_pass_m is None else min(MOST_M, longest_pass_m)
    high = min(max(COMMON_HIGH_M * scale, usual_m + LEEWAY_M), most)
    return min(low, high), high


def even_ring_m(court: Court, *, follow_corner: bool = True) -> tuple[Point, ...]:
    """Five places on the arc's outer edge every 45 degrees, left corner to right corner, house frame.

    `follow_corner` puts the corners on the straight part of the line, where it is painted; otherwise they stand on the
    full circle. Raises: CourtError on a court without an arc.
    """
    if not court.has_arc:
        raise CourtError(f'The court "{court.name}" has no arc; places on the arc need one.')
    radius = court.arc_radius.m
    corner = court.corner_three_from_centre_line.m if follow_corner else radius
    circle = [(radius * math.cos(math.radians(a)), radius * math.sin(math.radians(a))) for a in (135, 90, 45)]
    return (-corner, 0.0), *circle, (corner, 0.0)


def gaps_m(places_m: tuple[Point, ...]) -> tuple[float, ...]:
    """Distances in metres from each place to the next."""
    return tuple(math.dist(a, b) for a, b in pairwise(places_m))


def _fit(distance_m: float, low_m: float, high_m: float) -> Fit:
    if distance_m < low_m - 1e-9:
        return Fit.TOO_NEAR
    return Fit.TOO_FAR if distance_m > high_m + 1e-9 else Fit.FITS
