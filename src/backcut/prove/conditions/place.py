"""Where a coach's own property looks: a spot, a kind of spot, one side of the floor, the spots beside the ball."""

from __future__ import annotations

from dataclasses import dataclass

from backcut.court.spots import PERIMETER, Spot
from backcut.offence.book import Book
from backcut.offence.moment import Moment
from backcut.prove.property import Seen
from backcut.prove.who import plain_title

#: Spots by kind: "corner" is both corners. Spots on the axis are no kind, they have a name of their own.
KINDS = {
    kind: frozenset(spot for spot in Spot if spot.side and plain_title(spot) == kind)
    for kind in dict.fromkeys(plain_title(spot) for spot in Spot if spot.side)
}
RING = frozenset(PERIMETER)
SIDES = {side: frozenset(spot for spot in Spot if spot.side == side) for side in (-1, 1)}


@dataclass(frozen=True, slots=True)
class Place:
    """Spots as a coach says them. `among` are all they can be; of these only those the ball picks.

    `toward` 1 are the spots on the ball's side, -1 those on the far side; `beside` those one pass from the ball.
    """

    words: str
    among: frozenset[Spot]
    toward: int = 0
    beside: bool = False

    @property
    def sided(self) -> bool:
        """Whether it names left or right."""
        return {spot.mirror for spot in self.among} != self.among

    def spots(self, seen: Seen) -> frozenset[Spot]:
        """The spots that are meant in this situation; perimeter spots only where the book's ring has them."""
        spots = self.there_are(seen.book)
        if self.toward:
            side = self.toward * seen.situation.holder.at.side
            spots = frozenset(spot for spot in spots if side and spot.side == side)
        if self.beside:
            moment = Moment(seen.book.rules, seen.situation)
            near = {moment.ball - 1, moment.ball + 1} if moment.ball >= 0 else set()
            spots = frozenset(spot for spot in spots if seen.book.rules.index.get(spot) in near)
        return spots

    def there_are(self, book: Book) -> frozenset[Spot]:
        """Those that the book's formation has at all; inside spots it always has."""
        return self.among - (RING - frozenset(book.formation.ring))


def spot_place(spot: Spot) -> Place:
    """One named spot."""
    return Place(f"the {spot.title}", frozenset({spot}))
