"""How two books differ, in a coach's words; and whether a younger book stays true in the older one.

What is compared are *moments*: one event in a situation that the first book comes to. From the same situation both
books are asked what everybody is told until all have settled. A moment in which players are still on the way is
compared where both books have come to it by the same answers.

Counted are moments with players told apart and left and right told apart (`images`).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Container, Sequence
from dataclasses import dataclass, field, replace
from math import factorial, prod

from backcut.court.spots import Spot
from backcut.engine.advance import MOST_COUNTS, happen
from backcut.engine.decide import decide
from backcut.engine.play import one_step
from backcut.engine.possession import Decision, Step
from backcut.offence.action import Kind
from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.inside import INSIDE_PLACES
from backcut.offence.situation import IN_LANE, Doing, Player, Situation
from backcut.prove.depth import Depth
from backcut.prove.differ import Sort, unlike
from backcut.prove.fold import has_mirror, roles
from backcut.prove.possession import Possession, possession
from backcut.prove.side_by_side import Chosen, Reading, read, why_not
from backcut.prove.told import Teller, Told
from backcut.prove.walk import Edge, Walk, walk

#: Told what is being looked at and how many situations have been found.
Progress = Callable[[str, int], None]

#: The depths that are compared unless others are asked for.
USUAL = (Depth.SETTLED, Depth.DENIED)


@dataclass(frozen=True, slots=True)
class Shown:
    """Where a difference shows first: an event of a situation of the first book's walk, and what it is about."""

    walk: Walk
    node: int
    edge: Edge

    @property
    def events(self) -> int:
        """How many events it takes to see it, this one included."""
        return self.walk.far[self.node] + 1

    def possession(self) -> Possession:
        """The shortest possession to it, the event included, played by the first book."""
        return possession(self.walk, self.node, (self.edge,))

    def answered_by(self, book: Book) -> Step:
        """The last step of that possession as `book` answers it."""
        last = self.possession().steps[-1]
        return replace(one_step(book, last.before, last.event), text=last.text)


@dataclass(frozen=True, slots=True)
class Difference:
    """One way in which the second book answers otherwise than the first.

    `text` says it: "the corner passer holds instead of cutting to the rim and coming back". `moments` counts those
    in which it is so; `sentences` are the ranks, in the first and in the second book, behind the first answer that
    differs, None where none spoke.
    """

    sort: Sort
    text: str
    moments: int
    sentences: tuple[int | None, int | None]
    shown: Shown


@dataclass(slots=True)
class Comparison:
    """Two books compared: `a` is the one that is known, `b` the other; differences say what `b` does instead.

    `apart` says why nothing could be compared spot by spot. `situations` counts the settled line-ups of `a` on the ring
    with the ball on the ring, as `counts` does; `moments` all moments that were compared, `differing` those with other
    runs, `retimed` those with the same runs another way or at another time; `unlike` those that come up under `a` only
    on its own way there. `waiting` situations were found but not looked at.
    """

    a: Book
    b: Book
    reading: Reading
    apart: str | None = None
    situations: int = 0
    moments: int = 0
    differing: int = 0
    retimed: int = 0
    unlike: int = 0
    waiting: int = 0
    stopped: bool = False
    differences: list[Difference] = field(default_factory=list)

    def of(self, *sorts: Sort) -> list[Difference]:
        """The differences of these sorts, those that show most often first."""
        return [difference for difference in self.differences if difference.sort in sorts]

    @property
    def times(self) -> list[Chosen]:
        """The choices about when something is done that the two make otherwise."""
        return [chosen for chosen in self.reading.choices if chosen.time]

    @property
    def same(self) -> bool:
        """Whether the two books play alike, at the same times, as far as was looked."""
        return not (self.apart or self.differences or self.times or self.unlike or self.stopped or self.waiting)


def compare(
    a: Book,
    b: Book,
    depths: Sequence[Depth] = USUAL,
    progress: Progress | None = None,
    *,
    walks: Sequence[Walk] = (),
) -> Comparison:
    """Every moment the book `a` comes to at these depths in which `b` answers otherwise, grouped in words.

    `walks` through `a` that were made already are used where they fit. Stopped by KeyboardInterrupt, it returns what
    it has.
    """
    return _Looking(a, b, progress).look(depths, walks)


def contradictions(
    younger: Book,
    older: Book,
    depths: Sequence[Depth] = USUAL,
    progress: Progress | None = None,
    *,
    walks: Sequence[Walk] = (),
) -> Comparison:
    """Where a younger book does not stay true in the older one: differences of runs in the result are contradictions.

    A habit of the younger book stays true if, in every moment in which it speaks, the older book gives the same player
    the same runs and the same end; the way and the time may differ, and are named. Holding because nothing else speaks
    ("otherwise I hold") is no promise against a sentence the younger players have not learnt yet: such a sentence of
    the older book, and all that follows from it, contradicts nothing. A sentence that they have learnt and that says
    more in the older book does.
    """
    return _Looking(younger, older, progress, learnt_only=True).look(depths, walks)


def images(situation: Situation, role: dict[int, int] | None = None, mirror: bool = True) -> int:
    """How many situations a folded one stands for, players told apart: its orbit, by formula.

    Numbers of one role change places on the perimeter, and among themselves inside; `mirror` counts its mirror image
    too, where that is another situation.
    """
    here = _marks(situation, role or {})
    sizes = Counter(group for group, _ in here.elements())
    ways = prod(factorial(n) for n in sizes.values()) // prod(factorial(n) for n in here.values())
    return ways * (2 if mirror and _marks(situation.mirrored(), role or {}) != here else 1)


def _marks(situation: Situation, role: dict[int, int]) -> Counter[tuple[tuple[int, bool], object]]:
    """Everybody's state without the number, per role and whether inside; the last pass is part of its passer's."""
    last = situation.last
    return Counter(
        (
            (role.get(player.number, 0), player.at in INSIDE_PLACES and player.doing is Doing.STANDING),
            (
                replace(player, number=0),
                player.number == situation.ball,
                replace(last, player=0) if last is not None and last.player == player.number else None,
            ),
        )
        for player in situation.players
    )


@dataclass(slots=True)
class _Group:
    sentences: tuple[int | None, int | None]
    shown: Shown
    moments: int = 0


class _Looking:
    """Looks for differences of two books, moment by moment."""

    def __init__(self, a: Book, b: Book, progress: Progress | None, learnt_only: bool = False) -> None:
        self.a, self.b, self.progress = a, b, progress
        self.result = Comparison(a, b, read(a, b), why_not(a, b))
        excepted = a.exceptions != b.exceptions
        self.named = _excepted(a) | _excepted(b) if excepted else frozenset[int]()
        self.role = roles(a, self.named)
        self.mirror = has_mirror(a)
        self.by_a = Teller(a, self.role, self.mirror)
        self.by_b = Teller(b, self.role, self.mirror)
        learnt = Teller(b, self.role, self.mirror, ask=lambda situation: _as_learnt(a, b, situation))
        # Whose answers must differ too before a difference counts: see `contradictions`.
        self.by_learnt = learnt if learnt_only else self.by_b
        self.groups: dict[tuple[Sort, str], _Group] = {}
        self.seen: set[tuple[Situation, Event]] = set()
        self.line_ups: dict[Situation, int] = {}

    def look(self, depths: Sequence[Depth], walks: Sequence[Walk]) -> Comparison:
        result = self.result
        if result.apart is not None:
            return result
        try:
            for depth in depths:
                made = self._walk(depth, walks)
                self._through(made)
                if made.unfinished:
                    result.waiting = made.unfinished
                    raise KeyboardInterrupt
        except KeyboardInterrupt:
            result.stopped = True
        result.situations = sum(self.line_ups.values())
        result.differences = [
            Difference(sort, text, group.moments, group.sentences, group.shown)
            for (sort, text), group in self.groups.items()
        ]
        result.differences.sort(key=lambda d: (list(Sort).index(d.sort), -d.moments, d.shown.events, d.text))
        return result

    def _walk(self, depth: Depth, walks: Sequence[Walk]) -> Walk:
        for made in walks:
            if (made.book, made.depth, made.role, made.mirror) == (self.a, depth, self.role, self.mirror):
                return made
        tell = self.progress
        return walk(
            self.a, depth, named=self.named, progress=None if tell is None else (lambda count: tell(depth, count))
        )

    def _through(self, made: Walk) -> None:
        self.by_a.walked(made)
        shared = self._shared(made)
        for node, (situation, edges) in enumerate(zip(made.situations, made.edges, strict=True)):
            if made.settled[node]:
                # The ball has waited until all stand.
                situation = replace(situation, count=MOST_COUNTS)
                self._line_up(situation)
            if self.progress is not None:
                self.progress(f"{made.depth}, compared", node + 1)
            new = [e for e in edges if e.event is not None and (situation, e.event) not in self.seen]
            if not new:
                continue
            weight = images(situation, self.role, self.mirror)
            self.seen.update((situation, edge.event) for edge in new if edge.event is not None)
            if not shared[node]:
                self.result.unlike += weight * len(new)
                continue
            for edge in new:
                assert edge.event is not None
                self._moment(situation, edge.event, weight, Shown(made, node, edge))

    def _line_up(self, situation: Situation) -> None:
        """Count a settled situation by who stands where on the ring and who has the ball."""
        ring = self.a.rules.index
        if situation.holder.doing in IN_LANE or situation.holder.at not in ring:
            return
        key, _ = self.by_a.fold(Situation(tuple(_on(p, ring) for p in situation.players), situation.ball))
        if key not in self.line_ups:
            self.line_ups[key] = images(key, self.role, self.mirror)

    def _shared(self, made: Walk) -> list[bool]:
        """Per situation, whether both books come to it: from one where all stand, by events and the same answers."""
        shared = [settled or node in made.begun for node, settled in enumerate(made.settled)]
        waiting = [node for node, known in enumerate(shared) if known]
        while waiting:
            node = waiting.pop()
            for edge in made.edges[node]:
                if not shared[edge.target] and (edge.event is not None or self._same_beat(made.situations[node])):
                    shared[edge.target] = True
                    waiting.append(edge.target)
        return shared

    def _same_beat(self, situation: Situation) -> bool:
        one, other = self.by_a.beat(situation), self.by_learnt.beat(situation)
        return one is not None and one == other

    def _moment(self, situation: Situation, event: Event, weight: int, shown: Shown) -> None:
        after = happen(self.a, situation, event)
        told_a, told_b = self.by_a.told(after), self.by_b.told(after)
        learnt = told_b if self.by_learnt is self.by_b else self.by_learnt.told(after)
        found: dict[tuple[Sort, str], tuple[int | None, int | None]] = {}
        for player in after.players:
            a, b, as_learnt = (told[player.number] for told in (told_a, told_b, learnt))
            if a.what != b.what and _promises_nothing(a, b, as_learnt):
                continue
            for one in unlike(self.a, after, event, player, a, b):
                found.setdefault((one.sort, one.text), one.sentences)
        self.result.moments += weight
        if any(sort is Sort.WHAT for sort, _ in found):
            self.result.differing += weight
        elif found:
            self.result.retimed += weight
        for key, sentences in found.items():
            group = self.groups.setdefault(key, _Group(sentences, shown))
            if shown.events < group.shown.events:
                group.sentences, group.shown = sentences, shown
            group.moments += weight


def _on(player: Player, ring: Container[Spot]) -> Player:
    """A player as line-ups are counted: on a spot of the ring, somewhere inside, or on the way."""
    if player.at in ring:
        return Player(player.number, player.at)
    inside = player.at in INSIDE_PLACES and player.doing is Doing.STANDING
    return Player(player.number, Spot.N if inside else Spot.R)


def _excepted(book: Book) -> frozenset[int]:
    return book.exceptions.never_corner | book.exceptions.never_cuts


def _as_learnt(younger: Book, older: Book, situation: Situation) -> Decision:
    """The older book's answers, without sentences unknown to the younger book where that has nothing to say."""
    before, now = decide(younger, situation), decide(older, situation)
    actions = []
    for old, new in zip(before.actions, now.actions, strict=True):
        by_rest = old.habit is None or younger.sentences[old.habit].phrase.covers_rest
        unknown = new.habit is not None and older.sentences[new.habit].phrase.name not in younger.rules.names
        actions.append(replace(old, habit=None, beat=()) if by_rest and unknown else new)
    return Decision(tuple(actions), now.troubles)


def _promises_nothing(younger: Told, older: Told, learnt: Told) -> bool:
    """Whether another answer of the older book contradicts nothing: see `contradictions`."""
    silent = any(answer.kind is Kind.NO_ANSWER for answer in younger.answers)
    return learnt is not older and (silent or younger.what == learnt.what)
