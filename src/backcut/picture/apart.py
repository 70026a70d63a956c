"""Room on a small picture: marks that overlap are pushed apart a little, and a question mark finds a free side."""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import combinations

from backcut.picture.lines import Place
from backcut.picture.scene import Word

#: Marks are moved by this at most, and kept this far from one another; on the floor itself no mark is ever moved
#: (the look; own design, no source).
APART_CM = 40.0
GAP_CM = 6.0
#: From the edge of a disc to the middle of its question mark (own design, no source).
ASKS_CM = 45.0

#: A mark: "p" a player's disc, "x" a defender's plate, and the number.
Key = tuple[str, int]


def pushed_apart(at: Mapping[Key, Place], wide: Mapping[Key, float]) -> dict[Key, Place]:
    """The places of marks of these half widths, those that overlap moved along the line between them."""
    out = dict(at)
    for a, b in combinations(at, 2):
        far = math.dist(out[a], out[b])
        gap = wide[a] + wide[b] + GAP_CM - far
        if gap > 0:
            dx, dy = toward(out[a], out[b])
            out[a] = _near(at[a], (out[a][0] - dx * gap / 2, out[a][1] - dy * gap / 2))
            out[b] = _near(at[b], (out[b][0] + dx * gap / 2, out[b][1] + dy * gap / 2))
    return out


def _near(home: Place, wanted: Place) -> Place:
    far = math.dist(home, wanted)
    if far <= APART_CM:
        return wanted
    dx, dy = toward(home, wanted)
    return home[0] + dx * APART_CM, home[1] + dy * APART_CM


def toward(a: Place, b: Place) -> Place:
    """The unit direction from one place to another; sideways where they are the same."""
    far = math.dist(a, b)
    return ((b[0] - a[0]) / far, (b[1] - a[1]) / far) if far > 1.0 else (1.0, 0.0)


def question(place: Place, radius: float, others: list[Place]) -> Word:
    """A question mark beside a player who has no answer, on the side where nobody stands nearest."""
    sides = [(place[0] + side * (radius + ASKS_CM), place[1]) for side in (1, -1)]
    x, y = max(sides, key=lambda spot: min((math.dist(spot, other) for other in others), default=0.0) - abs(spot[0]))
    return Word("say mid lost", x, y + 36.0, "?")
