"""The border: from the frame of a source to the house frame. The only place where film is turned, flipped or scaled.

    A source, seen from above, x along the length, y up        The house frame: the basket at the top

    W +-----------------------+                                        basket
      |           |           |  attack right ->                  -x  ---o--->  +x   the offence's right hand
      |-o         |         o-|  toward the basket at large x            |
      |           |           |                                         +y   toward mid-court
    0 +-----------------------+
      0                       L

Whoever attacks the right basket looks along +x and has small y at the right hand; whoever attacks the left basket
looks along -x and has large y there. So the two are a half turn of each other, never a mirror image. The house frame
itself is drawn with y down: going there from a y-up source flips the picture once, and this is where it happens.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from backcut.court.record import Court
from backcut.film.stated import Attack, Origin, Units, YAxis
from backcut.motion.timeline import Floats


@dataclass(frozen=True, slots=True)
class Frame:
    """How a source places things. `attack` is None exactly where the origin is the attacked basket."""

    units: Units
    origin: Origin
    attack: Attack | None
    y_axis: YAxis


def usual_y_axis(origin: Origin) -> YAxis:
    """Which way +y is taken to point where nobody says: up, but down under the basket, as in the house frame itself."""
    return YAxis.DOWN if origin is Origin.BASKET else YAxis.UP


def to_house(places: Floats, frame: Frame, court: Court) -> Floats:
    """Places (..., 2) in the frame and units of a source as metres of the house frame, same shape."""
    x, y = np.moveaxis(places * frame.units.in_metres, -1, 0)
    up = frame.y_axis is YAxis.UP
    if frame.origin is Origin.BASKET:
        return np.stack([-x if up else x, y], axis=-1)
    along_m, across_m = _from_corner(x, y, frame, court)
    if frame.attack is Attack.RIGHT:
        return np.stack(
            [court.width.m / 2 - across_m, court.length.m - court.basket_from_baseline.m - along_m], axis=-1
        )
    return np.stack([across_m - court.width.m / 2, along_m - court.basket_from_baseline.m], axis=-1)


def _from_corner(x_m: Floats, y_m: Floats, frame: Frame, court: Court) -> tuple[Floats, Floats]:
    """Metres along and across the court from the corner that lies at the lower left when y is drawn up."""
    up = frame.y_axis is YAxis.UP
    if frame.origin is Origin.CENTRE:
        return x_m + court.length.m / 2, (y_m if up else -y_m) + court.width.m / 2
    return x_m, y_m if up else court.width.m - y_m
