"""Where the spots lie on a court: computed from its lines, moved by the coach, shrunk for a squad's passes."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations, pairwise
from types import MappingProxyType

from backcut.court.record import Court, Point
from backcut.court.spacing import Fit, Pair, band_m
from backcut.court.spots import PERIMETER, Spot
from backcut.court.units import feet, in_feet, in_metres
from backcut.court.usual import FIVE_OUT, USUAL, Steps, stand_in_ring_m, usual_spots_m
from backcut.errors import CourtError

NEAREST_M = 1.0  # two players of a ring nearer than this share a spot: estimate


@dataclass(frozen=True, slots=True)
class Placing:
    """Where every spot lies (metres, house frame), and what had to be done to put it there.

    `scale` is 1 where the ring was not shrunk; `said` tells the coach about a stand-in ring, a shrunk ring and pairs
    that miss their band, None where there is nothing to tell.
    """

    spots: Mapping[Spot, Point]
    ring: tuple[Spot, ...]
    court: Court
    scale: float
    said: str | None
    pairs: tuple[Pair, ...]


def place_spots(
    court: Court,
    ring: tuple[Spot, ...] | None = None,
    *,
    moved: Mapping[Spot, Point] | None = None,
    longest_pass_m: float | None = None,
    steps: Steps = USUAL,
) -> dict[Spot, Point]:
    """Every spot in metres of the house frame; see `place`."""
    return dict(place(court, ring, moved=moved, longest_pass_m=longest_pass_m, steps=steps).spots)


def place(
    court: Court,
    ring: tuple[Spot, ...] | None = None,
    *,
    moved: Mapping[Spot, Point] | None = None,
    longest_pass_m: float | None = None,
    steps: Steps = USUAL,
) -> Placing:
    """Place all spots for a ring (left corner to right corner; five-out when None) on a court.

    Parameters: `moved` puts spots where the coach wants them (metres, house frame); `longest_pass_m` shrinks the
    perimeter toward the basket until no two neighbours of the ring are farther apart.
    Raises: CourtError for a ring that cannot be, a spot moved off the floor or within 1 m of another of the ring, or a
    longest pass so short that the ring would fall together.
    """
    ring = _checked_ring(FIVE_OUT if ring is None else ring)
    usual = usual_spots_m(court, ring, steps)
    spots = usual | {Spot(spot): (float(x), float(y)) for spot, (x, y) in (moved or {}).items()}
    for spot in map(Spot, moved or {}):
        _check_moved(court, ring, spots, spot)
    scale = _scale(ring, spots, longest_pass_m)
    if scale < 1.0:
        spots = spots | {spot: (spots[spot][0] * scale, spots[spot][1] * scale) for spot in PERIMETER}
        _check_shrunk(ring, spots, scale, longest_pass_m)
    pairs = tuple(
        Pair(a, b, math.dist(spots[a], spots[b]), *band_m(math.dist(usual[a], usual[b]) * scale, scale, longest_pass_m))
        for a, b in pairwise(ring)
    )
    return Placing(MappingProxyType(spots), ring, court, scale, _said(court, scale, longest_pass_m, pairs), pairs)


def _checked_ring(ring: tuple[Spot, ...]) -> tuple[Spot, ...]:
    order = [PERIMETER.index(spot) for spot in map(Spot, ring) if spot in PERIMETER]
    if len(order) != len(ring) or order != sorted(set(order)) or not order:
        listed = ", ".join(Spot(spot).title for spot in ring) or "no spot at all"
        raise CourtError(f"The ring {listed} cannot be: a ring names perimeter spots once each, left corner to right.")
    return tuple(map(Spot, ring))


def _check_moved(court: Court, ring: tuple[Spot, ...], spots: Mapping[Spot, Point], spot: Spot) -> None:
    x, y = spots[spot]
    if not (math.isfinite(x) and math.isfinite(y) and court.on_floor((x, y))):
        raise CourtError(
            f"The {spot.title} cannot be at x {x:g}, y {y:g} m: it must lie on the floor, x between "
            f"{-court.half_width_m:.2f} and {court.half_width_m:.2f}, y between {court.baseline_y_m:.2f} and "
            f"{court.mid_court_y_m:.2f}."
        )
    for other in ring:
        distance_m = math.dist(spots[spot], spots[other])
        if other is not spot and distance_m < NEAREST_M:
            raise CourtError(
                f"The {spot.title} cannot be at x {x:g}, y {y:g} m: that is {distance_m:.2f} m from the {other.title}. "
                f"Two spots of a ring need at least {NEAREST_M:g} m."
            )


def _scale(ring: tuple[Spot, ...], spots: Mapping[Spot, Point], longest_pass_m: float | None) -> float:
    if longest_pass_m is None:
        return 1.0
    if not (math.isfinite(longest_pass_m) and longest_pass_m > 0):
        raise CourtError(f"The longest pass is {longest_pass_m:g} m; it must be more than nothing.")
    longest = max((math.dist(spots[a], spots[b]) for a, b in pairwise(ring)), default=0.0)
    return min(1.0, longest_pass_m / longest) if longest else 1.0


def _check_shrunk(
    ring: tuple[Spot, ...], spots: Mapping[Spot, Point], scale: float, longest_pass_m: float | None
) -> None:
    for a, b in combinations(ring, 2):
        if math.dist(spots[a], spots[b]) < NEAREST_M:
            raise CourtError(
                f"A longest pass of {longest_pass_m:g} m shrinks the ring to {scale:.0%} and puts the {a.title} within "
                f"{NEAREST_M:g} m of the {b.title}. Take a longer pass or a ring with fewer spots."
            )


def _said(court: Court, scale: float, longest_pass_m: float | None, pairs: tuple[Pair, ...]) -> str | None:
    told = []
    if not court.has_arc:
        ring_m = stand_in_ring_m(court)
        why = "" if ring_m == feet(15) else f", the largest that fits a floor {in_metres(court.width.m)} wide"
        told.append(f"No arc here: the spots stand on a stand-in ring of {in_metres(ring_m)} ({in_feet(ring_m)}){why}.")
    if scale < 1.0 and longest_pass_m is not None:
        told.append(
            f"The ring is shrunk to {scale:.0%} so that no pass to a neighbour is longer than "
            f"{in_metres(longest_pass_m)} ({in_feet(longest_pass_m)})."
        )
    told.extend(f"{_capital(str(pair))}." for pair in pairs if pair.fit is not Fit.FITS)
    return " ".join(told) or None


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
