"""Where the tab of each arrow goes: beside its line, clear of players, of other lines and of other tabs."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import chain

from backcut.picture.lines import Place, along, length_cm
from backcut.picture.marks import DISC_CM, FLAG_HALF_CM, FLAG_LEFT_CM, FLAG_RIGHT_CM, PLATE_CM

#: Mean advance of Literata's italic at 36 cm, measured on the labels in use: 0.46 em; rounded up for the halo.
WORD_CM = 17.5
AIR_CM = 14.0
#: The largest size of marks on a page, that of the phone (the look): what is clear there is clear everywhere.
LARGEST = 1.22
LINE_CM, LIT_CM = 6.0, 18.0  # half a line, half the marker's band
#: Where along the line a tab may stand, the best place first; each place after it costs so much more.
LATER = 3.0
SHARES = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82)


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle of the floor in cm."""

    left: float
    top: float
    right: float
    bottom: float

    def overlap(self, other: Box) -> float:
        """The shared area in cm2."""
        wide = min(self.right, other.right) - max(self.left, other.left)
        high = min(self.bottom, other.bottom) - max(self.top, other.top)
        return wide * high if wide > 0 and high > 0 else 0.0

    def depth(self, place: Place, reach: float) -> float:
        """How far a disc of radius `reach` at `place` reaches into the box."""
        x = min(max(place[0], self.left), self.right)
        y = min(max(place[1], self.top), self.bottom)
        return max(reach - math.dist(place, (x, y)), 0.0)

    def depths(self, places: Sequence[Place], reach: float) -> Iterator[float]:
        """The depths of those discs that reach into the box at all, in order: most do not."""
        left, right, top, bottom = self.left - reach, self.right + reach, self.top - reach, self.bottom + reach
        return (self.depth(place, reach) for place in places if left < place[0] < right and top < place[1] < bottom)


def around(place: Place, reach: float) -> Box:
    """The square of half width `reach` round a place."""
    return Box(place[0] - reach, place[1] - reach, place[0] + reach, place[1] + reach)


@dataclass(frozen=True)
class Crowd:
    """What a tab must keep clear of. `floor` is the drawn part of the court."""

    floor: Box
    discs: Sequence[Place]
    plates: Sequence[Place]
    lines: Sequence[Sequence[Place]]

    @cached_property
    def dots(self) -> list[Place]:
        """Places along all the lines."""
        return [dot for line in self.lines for dot in _dots(line)]


def flag_box(x: float, y: float, word: str) -> Box:
    """The room a tab with its word takes when the tab stands at `x`, `y`."""
    wide = FLAG_RIGHT_CM + (13.0 + WORD_CM * len(word) if word else 0.0)
    half = FLAG_HALF_CM * LARGEST
    return Box(x - FLAG_LEFT_CM * LARGEST, y - half, x + wide * LARGEST, y + half)


def _dots(path: Sequence[Place], every: float = 24.0) -> list[Place]:
    whole = length_cm(path)
    return [along(path, i * every)[0] for i in range(int(whole / every) + 1)]


def flag_place(path: Sequence[Place], word: str, crowd: Crowd, taken: Sequence[Box], lit: bool) -> tuple[Place, Box]:
    """The place of the tab for the arrow drawn along `path`, and the room it takes."""
    whole = length_cm(path)
    own_cm = LIT_CM if lit else LINE_CM
    own = _dots(path)
    size = flag_box(0.0, 0.0, word)
    best: tuple[float, Place, Box] | None = None
    for rank, share in enumerate(SHARES):
        if best is not None and best[0] <= LATER * rank:
            break  # the places that are left cost more, however free they are
        (px, py), (dx, dy) = along(path, whole * share)
        for nx, ny in ((dy, -dx), (-dy, dx)):
            reach = abs(nx) * (size.right - size.left) / 2 + abs(ny) * FLAG_HALF_CM + own_cm + AIR_CM
            x = px + nx * reach - (size.left + size.right) / 2
            y = py + ny * reach
            box = flag_box(x, y, word)
            dots = chain(box.depths(crowd.dots, LINE_CM), box.depths(own, own_cm))
            cost = LATER * rank + sum(4.0 * depth for depth in dots)
            cost += sum(12.0 * depth for depth in box.depths(crowd.discs, DISC_CM + 20.0))
            cost += sum(4.0 * depth for depth in box.depths(crowd.plates, PLATE_CM))
            cost += sum(2.0 * box.overlap(other) for other in taken)
            cost += 2.0 * ((box.right - box.left) * (box.bottom - box.top) - box.overlap(crowd.floor))
            if best is None or cost < best[0]:
                best = (cost, (x, y), box)
    assert best is not None  # SHARES is never empty
    return best[1], best[2]
