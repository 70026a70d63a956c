"""Everything that was walked through for one book: one walk a depth, and what is counted over all of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from backcut.offence.book import Book
from backcut.prove.depth import Depth
from backcut.prove.lift import Lifted, lift
from backcut.prove.property import Seen, seen
from backcut.prove.walk import Walk, walk

#: How many situations are near.
NEAR = 300


@dataclass(slots=True)
class Whole:
    """The walks through one book, each made when it is first asked for. `asked` are the depths the coach asked for."""

    book: Book
    asked: tuple[Depth, ...]
    make: Callable[[Depth], Walk]
    walks: dict[Depth, Walk] = field(default_factory=dict)
    lifts: dict[Depth, Lifted] = field(default_factory=dict)

    def walk(self, depth: Depth) -> Walk:
        """The walk at this depth."""
        if depth not in self.walks:
            self.walks[depth] = self.make(depth)
        return self.walks[depth]

    def seen(self, depths: tuple[Depth, ...] = ()) -> Iterator[Seen]:
        """Every situation of these depths, those asked for where none is named."""
        for depth in depths or self.asked:
            made = self.walk(depth)
            yield from (seen(made, node) for node in range(len(made.situations)))

    def near(self, depths: tuple[Depth, ...]) -> Iterator[Seen]:
        """The nearest situations of these depths: often enough to see that something does happen."""
        for depth in depths:
            near = self.walks.get(depth) or walk(self.book, depth, most=NEAR)
            yield from (seen(near, node) for node in range(len(near.situations)))

    def lifted(self, depth: Depth) -> Lifted:
        """The walk at this depth with the players told apart."""
        if depth not in self.lifts:
            self.lifts[depth] = lift(self.walk(depth))
        return self.lifts[depth]
