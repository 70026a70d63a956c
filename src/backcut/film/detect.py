"""Finds out what nobody states, from the places themselves, and says by what evidence. In doubt it asks."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, TypeVar

import numpy as np

from backcut.court.record import Court
from backcut.errors import FilmError
from backcut.film.frame import Frame, usual_y_axis
from backcut.film.moments import Moments
from backcut.film.stated import Attack, Origin, Stated, Units, YAxis
from backcut.motion.timeline import Floats

APART_M = (4.5, 14.0)  # median distance between attackers; measured: 4.85 to 13.5 m on 2,925 real clips
OFF_M = 2.0  # players step off the court so far; the free strip round it, FIBA rules art. 2, from memory
CLEAR_M = (
    2.5  # of two origins that fit, one must bring the five so much nearer; measured: of 8,631 films 0 wrong, 3 asked
)
ONE_HALF = 0.55  # share of attackers' moments in one half; measured: 99.0 % right, 1.0 % asked, 0 wrong of 2,925 clips
NEAREST = 0.65  # share of moments a side is nearest to the ball; measured: 91.9 % found, 7.2 % asked, 0.9 % wrong


class How(StrEnum):
    """Where a fact about a film comes from."""

    STATED = "stated"
    DETECTED = "detected"
    ASSUMED = "assumed"


T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Known(Generic[T]):
    """A fact about a film, how it is known, and the evidence in words."""

    value: T
    how: How
    evidence: str = ""


@dataclass(frozen=True, slots=True)
class Facts:
    """All that had to be known to place a film on the court."""

    units: Known[Units]
    origin: Known[Origin]
    attack: Known[Attack] | None
    y_axis: Known[YAxis]

    @property
    def frame(self) -> Frame:
        """The frame these facts make."""
        attack = None if self.attack is None else self.attack.value
        return Frame(self.units.value, self.origin.value, attack, self.y_axis.value)


def find_facts(moments: Moments, stated: Stated, court: Court) -> Facts:
    """What is stated, and the rest detected in this order: units, origin, attack.

    Raises: FilmError if the places do not decide, naming the option that would; or if they do not lie on the court.
    """
    units = Known(stated.units, How.STATED) if stated.units else _units(moments, court)
    places_m = moments.places * units.value.in_metres
    origin = Known(stated.origin, How.STATED) if stated.origin else _origin(moments, places_m, units.value, court)
    if stated.y_axis:
        y_axis = Known(stated.y_axis, How.STATED)
    else:
        y_axis = Known(usual_y_axis(origin.value), How.ASSUMED, "a film does not show it; --y-axis states it")
    if origin.value is Origin.BASKET:
        return Facts(units, origin, None, y_axis)
    attack = Known(stated.attack, How.STATED) if stated.attack else _attack(moments, places_m, origin.value, court)
    return Facts(units, origin, attack, y_axis)


def _units(moments: Moments, court: Court) -> Known[Units]:
    apart = typical_apart(moments.places[:, 1:6])
    for units in Units:
        if APART_M[0] <= apart * units.in_metres <= APART_M[1]:
            if not fitting(moments.places * units.in_metres, court):
                raise FilmError(
                    f"{moments.file}, columns x and y: the attackers stand {apart:.3g} apart, as in {units}, "
                    f"but {_range(moments.places)} is off a {court.title} court; state --units, --origin, --court."
                )
            return Known(
                units, How.DETECTED, f"attackers stand {apart:.3g} apart, which is {apart * units.in_metres:.1f} m"
            )
    raise FilmError(
        f"{moments.file}, columns x and y: the attackers stand {apart:.3g} apart in the middle of the film; real ones "
        f"stand {APART_M[0]:g} to {APART_M[1]:g} m apart, which is neither so in m, ft nor cm: state --units."
    )


def _origin(moments: Moments, places_m: Floats, units: Units, court: Court) -> Known[Origin]:
    near_m = {origin: _nearness_m(places_m[:, 1:6], origin, court) for origin in fitting(places_m, court)}
    found = sorted(near_m, key=lambda origin: near_m[origin])
    shown = f"{_range(moments.places)} {units}"
    if len(found) == 1:
        return Known(found[0], How.DETECTED, f"{shown} lies on the court only from the {found[0]}")
    if not found:
        raise FilmError(
            f"{moments.file}, columns x and y: {shown} does not lie on a {court.title} court ({court.length.m:g} x "
            f"{court.width.m:g} m) from a corner, the centre or a basket; state --units, --origin and --court."
        )
    said = ", ".join(f"{near_m[origin]:.1f} m from a basket if from the {origin}" for origin in found)
    if near_m[found[1]] - near_m[found[0]] < CLEAR_M:
        raise FilmError(
            f"{moments.file}, columns x and y: {shown} lies on the court in several ways (the attackers come within "
            f"{said}): state --origin."
        )
    return Known(found[0], How.DETECTED, f"the attackers come within {said}")


def _nearness_m(attackers_m: Floats, origin: Origin, court: Court) -> float:
    """How near the five come to a basket, on average over the five at their nearest moment, if this is the origin."""
    to_basket = court.length.m / 2 - court.basket_from_baseline.m
    middle = np.array([court.length.m / 2, court.width.m / 2]) if origin is Origin.CORNER else np.zeros(2)
    ends = (0.0,) if origin is Origin.BASKET else (-to_basket, to_basket)
    away_m = [np.linalg.norm(attackers_m - middle - (end, 0.0), axis=-1).mean(axis=1).min() for end in ends]
    return float(min(away_m))


def fitting(places_m: Floats, court: Court) -> list[Origin]:
    """The origins from which all players, (n, 11, 2) metres with the ball first, lie on the court or just off it."""
    low, high = places_m[:, 1:].min(axis=(0, 1)), places_m[:, 1:].max(axis=(0, 1))
    length, width = court.length.m, court.width.m
    boxes = {
        Origin.CORNER: ((0.0, 0.0), (length, width)),
        Origin.CENTRE: ((-length / 2, -width / 2), (length / 2, width / 2)),
        Origin.BASKET: (
            (-width / 2, -court.basket_from_baseline.m),
            (width / 2, length - court.basket_from_baseline.m),
        ),
    }
    return [
        origin
        for origin, (least, most) in boxes.items()
        if (low >= np.array(least) - OFF_M).all() and (high <= np.array(most) + OFF_M).all()
    ]


def _attack(moments: Moments, places_m: Floats, origin: Origin, court: Court) -> Known[Attack]:
    middle_m = court.length.m / 2 if origin is Origin.CORNER else 0.0
    share = float((places_m[:, 1:6, 0] > middle_m).mean())
    ball = Attack.RIGHT if places_m[-1, 0, 0] > middle_m else Attack.LEFT
    mostly = Attack.RIGHT if share > 0.5 else Attack.LEFT
    percent = max(share, 1 - share)
    said = f"attackers spend {percent:.0%} of their time in the {mostly} half and the ball ends in the {ball} half"
    if mostly is ball and percent >= ONE_HALF:
        return Known(mostly, How.DETECTED, said)
    raise FilmError(
        f"{moments.file}, column x: {said}, which does not decide which basket is attacked: state --attack."
    )


def typical_apart(attackers: Floats) -> float:
    """Median over time of the mean distance between attackers, (n, 5, 2), in their own units."""
    between = np.linalg.norm(attackers[:, :, None] - attackers[:, None], axis=-1)
    return float(np.median(between.sum(axis=(1, 2)) / 20))


def _range(places: Floats) -> str:
    low, high = places[:, 1:].min(axis=(0, 1)), places[:, 1:].max(axis=(0, 1))
    return f"x {low[0]:.4g} to {high[0]:.4g}, y {low[1]:.4g} to {high[1]:.4g}"
