"""Walk through every situation a book can come to, breadth first: the fewest events first, then the fewest beats."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from backcut.engine.advance import follow, happen
from backcut.engine.decide import decide
from backcut.engine.play import settled, stand
from backcut.engine.possession import Decision
from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.situation import Situation
from backcut.prove.depth import Depth, may_happen
from backcut.prove.fold import Turn, fold, has_mirror, own_mirror, plain, roles
from backcut.prove.starts import Start, starts

#: Situations a walk visits before it stops and says so.
MOST = 1_000_000

#: Told how many situations have been found so far; whoever wants to stop the walk raises KeyboardInterrupt.
Progress = Callable[[int], None]
#: Which events may happen in a situation, given everybody's answers and whether all have settled.
May = Callable[[Situation, Decision, bool], Iterator[Event]]


@dataclass(frozen=True, slots=True)
class Edge:
    """One way on: an event, or None for one beat of answers. `turn` says how the target lies in the source."""

    event: Event | None
    target: int
    turn: Turn


@dataclass(slots=True)
class Walk:
    """All folded situations reached, in the order of discovery, and the ways between them.

    `role` says which numbers were not told apart, `mirror` whether left and right were folded. Per situation:
    everybody's answers, whether all have settled, the events since the start on the shortest way, the edge it was
    first reached by (parent, place among the parent's edges), its edges, and whether it was looked at: where not, its
    edges are not all there, and the walk was stopped. `begun` says which starts lie where; `multiplied` how many
    situations were first reached by a run that the sentence of this rank asked for.

    A situation in which the book leaves something open (`Decision.troubles`) is kept, but not followed any further:
    what five players do who do not know what to do, no book says.
    """

    book: Book
    depth: Depth
    role: Mapping[int, int]
    mirror: bool
    situations: list[Situation] = field(default_factory=list)
    decisions: list[Decision] = field(default_factory=list)
    settled: list[bool] = field(default_factory=list)
    far: list[int] = field(default_factory=list)
    parent: list[tuple[int, int] | None] = field(default_factory=list)
    edges: list[list[Edge]] = field(default_factory=list)
    begun: dict[int, list[tuple[Start, Turn]]] = field(default_factory=dict)
    looked: list[bool] = field(default_factory=list)
    multiplied: Counter[int | None] = field(default_factory=Counter)

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers of the folded situations, in order: the same in all of them."""
        return tuple(self.role)

    @property
    def unfinished(self) -> int:
        """How many situations were found but not looked at."""
        return self.looked.count(False)

    @property
    def holes(self) -> int:
        """In how many situations the book leaves something open."""
        return sum(bool(decision.troubles) for decision in self.decisions)

    @property
    def moves(self) -> int:
        """How many events were tried: edges that are no beat."""
        return sum(edge.event is not None for edges in self.edges for edge in edges)

    def own_mirror(self, node: int) -> Turn | None:
        """How a situation lies in itself when mirrored; None where sides are not folded or the image is another."""
        return own_mirror(self.situations[node], self.role) if self.mirror else None

    def images(self, node: int) -> int:
        """How many situations a folded one stands for, players not told apart: two where its mirror is another."""
        return 2 if self.mirror and self.own_mirror(node) is None else 1

    def way_to(self, node: int) -> tuple[int, list[Edge]]:
        """The start's situation and the edges of the shortest way from it."""
        way: list[Edge] = []
        while (before := self.parent[node]) is not None:
            node, place = before
            way.append(self.edges[node][place])
        return node, way[::-1]


def walk(
    book: Book,
    depth: Depth = Depth.SETTLED,
    *,
    told_apart: bool = False,
    mirrored: bool = True,
    named: Collection[int] = (),
    begin: Sequence[Start] | None = None,
    may: May | None = None,
    most: int = MOST,
    progress: Progress | None = None,
) -> Walk:
    """Every situation the book comes to at this depth, from every start.

    `told_apart` keeps the players' numbers apart, `mirrored` folds left and right into one where the ring allows it;
    `begin` and `may` replace the starts and the events. Stopped by `most` or by KeyboardInterrupt, the walk returns
    what it has, and how much was waiting.
    """
    role = roles(book, named if not told_apart else [player.number for player in book.start().players])
    return _Walker(book, depth, role, mirrored and has_mirror(book), may, most, progress).go(begin or starts(book))


class _Walker:
    def __init__(
        self,
        book: Book,
        depth: Depth,
        role: dict[int, int],
        mirror: bool,
        may: May | None,
        most: int,
        progress: Progress | None,
    ) -> None:
        self.book, self.role, self.mirror, self.most, self.progress = book, role, mirror, most, progress
        self.may = may or (lambda situation, decision, rest: may_happen(book, situation, decision, rest, depth))
        self.walk = Walk(book, depth, role, mirror)
        self.index: dict[Situation, int] = {}

    def go(self, begin: Sequence[Start]) -> Walk:
        waiting, far = sorted(begin, key=lambda start: start.far), 0
        layer: list[int] = []
        try:
            while (layer or waiting) and len(self.index) <= self.most:
                while waiting and waiting[0].far == far:
                    layer += self._begin(waiting.pop(0))
                for node in layer:  # grows while it is read: the beats after an event belong to its layer
                    layer += self._wait(node)
                following: list[int] = []
                for node in layer:
                    following += self._events(node)
                    self.walk.looked[node] = True
                    if len(self.index) > self.most:
                        break
                layer, far = following, far + 1
        except KeyboardInterrupt:
            self._mend()
        return self.walk

    def _mend(self) -> None:
        """Take away what was half added when the walk was stopped: Ctrl-C may come between any two lines."""
        walk = self.walk
        lists: list[list[Any]] = [walk.situations, walk.decisions, walk.settled, walk.far, walk.parent, walk.edges]
        lists.append(walk.looked)
        whole = min(map(len, lists))
        if whole:
            before = walk.parent[whole - 1]
            known = whole - 1 in walk.begun if before is None else before[1] < len(walk.edges[before[0]])
            whole -= not known
        for each in lists:
            del each[whole:]
        for edges in walk.edges:
            while edges and edges[-1].target >= whole:
                edges.pop()

    def _begin(self, start: Start) -> list[int]:
        node, turn, new = self._node(start.situation, None, start.far)
        self.walk.begun.setdefault(node, []).append((start, turn))
        return [node] if new else []

    def _node(self, situation: Situation, parent: tuple[int, int] | None, far: int) -> tuple[int, Turn, bool]:
        """The node of a situation, how it lies there, and whether it is new."""
        folded, turn = fold(plain(self.book, situation), self.role, self.mirror)
        node = self.index.get(folded)
        if node is not None:
            return node, turn, False
        walk, node = self.walk, len(self.index)
        decision = decide(self.book, folded)
        rest = folded.ended is None and settled(self.book, folded, decision)
        self.index[folded] = node
        walk.situations.append(folded)
        walk.decisions.append(decision)
        walk.settled.append(rest and stand(folded) == folded)
        walk.far.append(far)
        walk.parent.append(parent)
        walk.edges.append([])
        walk.looked.append(False)
        if self.progress is not None:
            self.progress(len(self.index))
        return node, turn, True

    def _add(self, node: int, event: Event | None, situation: Situation) -> list[int]:
        """One more edge of a node; the target, if it is new."""
        edges = self.walk.edges[node]
        far = self.walk.far[node] + (event is not None)
        target, turn, new = self._node(situation, (node, len(edges)), far)
        edges.append(Edge(event, target, turn))
        if not new:
            return []
        if event is None:
            self.walk.multiplied.update({a.habit for a in self.walk.decisions[node].actions if a.moves})
        return [target]

    def _wait(self, node: int) -> list[int]:
        situation, decision = self.walk.situations[node], self.walk.decisions[node]
        if situation.ended is not None or self.walk.settled[node] or decision.troubles:
            return []
        rest = settled(self.book, situation, decision)
        return self._add(node, None, stand(situation) if rest else follow(self.book, situation, decision))

    def _events(self, node: int) -> list[int]:
        walk, found = self.walk, []
        situation, decision = walk.situations[node], walk.decisions[node]
        if decision.troubles:
            return []
        for event in self.may(situation, decision, walk.settled[node]):
            found += self._add(node, event, happen(self.book, situation, event))
        return found
