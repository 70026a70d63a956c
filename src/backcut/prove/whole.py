"""Everything that was walked through for one book: one walk a depth, and what is counted over all of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from backcut.offence.book import Book
from backcut.prove.depth import Depth
from backcut.prove.lift import Lifted, lift
from backcut.prove.property import Seen
from backcut.prove.walk import Walk


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
            walk = self.walk(depth)
            for situation, decision, settled in zip(walk.situations, walk.decisions, walk.settled, strict=True):
                yield Seen(self.book, situation, decision, settled)

    def lifted(self, depth: Depth) -> Lifted:
        """The walk at this depth with the players told apart."""
        if depth not in self.lifts:
            self.lifts[depth] = lift(self.walk(depth))
        return self.lifts[depth]

    def made(self) -> Mapping[Depth, Walk]:
        """The walks made so far."""
        return self.walks
