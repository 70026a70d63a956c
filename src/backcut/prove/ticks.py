"""Walk through a book in time: the ball may move on at every tick while cutters and fillers are on the way.

How long a run takes comes from `motion`, for the book's own gym. One tick: everybody is asked, whoever is told to run
sets out, whoever has run long enough arrives; at each tick a pass may be thrown that the receiver can catch.

Left out: shots, passes to a cutter, dribbles and denials; the steps of inside players, who are where they go at once;
and the time a cutter is in the lane on his way to the rim and out again: his wait begins at the rim.

A fill "once the catcher has looked" begins as where a possession is put in time, when a share of the cut is run: from
there on the cutter counts in the lane, but is not told to come out before he has been at the rim.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from backcut.engine.decide import decide
from backcut.engine.gym import Gym, gym
from backcut.engine.possession import Decision
from backcut.offence.action import Action
from backcut.offence.book import Book
from backcut.offence.situation import Situation
from backcut.prove.fold import Turn, has_mirror, roles
from backcut.prove.packed import Known, Packing
from backcut.prove.property import Seen
from backcut.prove.starts import Start, starts
from backcut.prove.table import May, Table
from backcut.prove.timing import Timing, timing
from backcut.prove.walk import Edge, Progress

Ints = NDArray[np.int64]
Floats = NDArray[np.float64]

#: Timed situations a walk visits before it stops and says so.
MOST = 5_000_000
#: Timed situations looked at together: more gain nothing and need memory.
CHUNK = 1 << 17

_TICK, _START = -1, -2


@dataclass(slots=True)
class TickWalk:
    """All timed situations reached, in the order of discovery: the fewest events first.

    Per timed situation, packed: picture and clocks in `packed`, in `parent` the one it was first reached from, in
    `move` the pass of the table that led there (-1: a tick, -2: a start). `layers` are the places where one event more
    begins. The first `looked` were tried with every event; `tried` is how many events that were. `begun` says which
    starts lie where. Like a walk in beats, it does not go on from where the book leaves something open.
    """

    table: Table
    packed: Ints
    parent: NDArray[np.int32]
    move: NDArray[np.int32]
    layers: list[int]
    looked: int
    tried: int
    begun: dict[int, list[tuple[Start, Turn]]] = field(default_factory=dict)
    _wait: tuple[Floats, Ints] | None = None
    _after: NDArray[np.int32] | None = None
    _flips: NDArray[np.bool_] | None = None

    @property
    def book(self) -> Book:
        """The book that was walked through."""
        return self.table.book

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers of the folded situations, in order: the same in all of them."""
        return self.table.numbers

    @property
    def tick_s(self) -> float:
        """The seconds of one tick."""
        return self.table.timing.tick_s

    @property
    def pictures(self) -> Sequence[Situation]:
        """The situations without their clocks, folded."""
        return self.table.pictures

    @property
    def unfinished(self) -> int:
        """How many timed situations were found but not looked at."""
        return len(self) - self.looked

    def __len__(self) -> int:
        return len(self.packed)

    def far(self, index: int) -> int:
        """The events since the start on the shortest way to a timed situation."""
        return int(np.searchsorted(self.layers, index, side="right")) - 1

    def timed(self, index: int) -> tuple[int, tuple[int, ...], int, int]:
        """A timed situation: picture, the players' clocks, the ball's clock, the count's clock, in ticks."""
        picture, *clocks, ball, count = self.rows(np.array([index]))[0].tolist()
        return picture, tuple(clocks), ball, count

    def stands(self, index: int) -> bool:
        """Whether all stand in a timed situation: all have settled, and nobody is on the way."""
        row = self.rows(np.array([index]))
        return self.table.settled[int(row[0, 0])] and not self.table.running(row)[0].any()

    def rows(self, index: Ints) -> Ints:
        """Timed situations (n,) as the table writes them, (n, players + 3)."""
        return Packing(self.table.players).unpack(self.packed[index])

    def seen(self, picture: int) -> Seen:
        """A picture as properties see it, with the longest time each player has waited in the lane in it."""
        waited = dict(zip(self.numbers, self.lane_wait[0][picture].tolist(), strict=True))
        return self._seen(self.table.pictures[picture], self.table.decisions[picture], picture, waited)

    def seen_at(self, index: int, turn: Turn | None = None) -> Seen:
        """A timed situation as properties see it, as it lies by `turn`; without, as it is folded."""
        turn = turn or Turn(self.numbers)
        row = self.rows(np.array([index]))[0]
        picture, lane = int(row[0]), self.table.timing.lane
        waits = self.table.waits_in_lane()[picture]
        waited_s = np.where(waits, np.maximum(lane - row[1 : 1 + self.table.players], 0) * self.tick_s, np.nan)
        situation = turn.situation(self.table.pictures[picture])
        waited = dict(zip(turn.worn, waited_s.tolist(), strict=True))
        return self._seen(situation, decide(self.book, situation), picture, waited)

    def _seen(self, situation: Situation, decision: Decision, picture: int, waited: Mapping[int, float]) -> Seen:
        strides = self.table.timing.strides

        def run_s(action: Action) -> float:
            assert strides is not None
            return strides.run_s(action.kind, action.origin, action.target, action.route, situation.holder.at)

        told = {number: seconds for number, seconds in waited.items() if not math.isnan(seconds)}
        rest = self.table.settled[picture]
        return Seen(self.book, situation, decision, rest, told, run_s if strides is not None else None)

    def way_to(self, index: int) -> tuple[int, list[Edge]]:
        """The start's timed situation, and the edges of the shortest way from it: an event, or None for a tick."""
        way: list[Edge] = []
        while (move := int(self.move[index])) != _START:
            before = int(self.parent[index])
            if move == _TICK:
                way.append(Edge(None, index, self._turn(before)))
            else:
                way.append(Edge(self.table.events[move], index, self.table.pass_turns[move]))
            index = before
        return index, way[::-1]

    def wait_from(self, index: int, ticks: int) -> list[Edge]:
        """The edges of so many ticks without a pass, fewer where nothing changes any more."""
        way: list[Edge] = []
        for _ in range(ticks):
            after = int(self.after[index])
            if after in (-1, index):
                break
            way.append(Edge(None, after, self._turn(index)))
            index = after
        return way

    @property
    def lane_wait(self) -> tuple[Floats, Ints]:
        """Per picture and player, the longest wait in the lane in seconds, and the first timed situation that shows it.

        Shape (pictures, players) both; nan and -1 where the player is not waiting in the lane. Waits are counted up to
        one tick over the limit.
        """
        if self._wait is None:
            self._wait = self._longest_waits()
        return self._wait

    @property
    def after(self) -> NDArray[np.int32]:
        """Per timed situation the one a tick later, itself where nothing changes, -1 where that was not walked."""
        if self._after is None:
            self._after, self._flips = self._ticked()
        return self._after

    @property
    def flips(self) -> NDArray[np.bool_]:
        """Per timed situation whether the one a tick later lies in it as its mirror image."""
        if self._flips is None:
            self._after, self._flips = self._ticked()
        return self._flips

    def _turn(self, index: int) -> Turn:
        row, _ = self.table.tick_row(self.rows(np.array([index])))
        return self.table.tick_turns[int(row[0])]

    def _longest_waits(self) -> tuple[Floats, Ints]:
        lane = self.table.waits_in_lane()
        best = np.full(lane.shape, -1, dtype=np.int64)
        for part in _parts(np.arange(len(self))):
            rows = self.rows(part)
            # The longer wait wins, then the earlier find.
            waited = np.maximum(self.table.timing.lane - rows[:, 1 : 1 + self.table.players], 0)
            value = (waited << 32) | (0xFFFFFFFF - part)[:, None]
            np.maximum.at(best, rows[:, 0], value)
        best[~lane] = -1
        wait_s = np.where(best < 0, np.nan, (best >> 32) * self.tick_s)
        return wait_s, np.where(best < 0, -1, 0xFFFFFFFF - (best & 0xFFFFFFFF))

    def _ticked(self) -> tuple[NDArray[np.int32], NDArray[np.bool_]]:
        order = np.argsort(self.packed, kind="stable").astype(np.int32)
        in_order = self.packed[order]
        after, flips = np.empty(len(self), dtype=np.int32), np.zeros(len(self), dtype=np.bool_)
        packing = Packing(self.table.players)
        for part in _parts(np.arange(len(self))):
            rows = self.rows(part)
            told, _ = self.table.tick_row(rows)
            flips[part] = np.array([turn.flipped for turn in self.table.tick_turns], dtype=np.bool_)[told]
            packed = packing.pack(self.table.tick(rows))
            at = np.minimum(np.searchsorted(in_order, packed), len(self) - 1)
            after[part] = np.where(in_order[at] == packed, order[at], -1)
        return after, flips


def patient_s(walk: TickWalk, holds: Callable[[Situation], bool]) -> Floats:
    """From every timed situation, the seconds until `holds` is true of the picture if no further pass comes, (n,).

    inf where it never is: all stand, or they go round and round; nan where nobody can tell: the walk was stopped, or
    the book leaves something open before.
    """
    return patient_by_side_s(walk, lambda situation: (holds(situation),) * 2)[:, 0]


def patient_by_side_s(walk: TickWalk, holds: Callable[[Situation], tuple[bool, bool]]) -> Floats:
    """The same for something on the left and on the right of the floor: (n, 2). A mirror image swaps the two."""
    true = np.array([holds(situation) for situation in walk.pictures], dtype=np.bool_)
    picture = Packing(walk.table.players).picture(walk.packed)
    ends = (walk.after == -1) | walk.table.left_open[picture]
    ticks = np.where(true[picture], 0.0, np.inf)
    ticks[ends[:, None] & np.isinf(ticks)] = np.nan
    ticks = ticks.ravel()
    after = (2 * walk.after.astype(np.int64)[:, None] + (walk.flips[:, None] ^ np.array([False, True]))).ravel()
    waiting = np.flatnonzero(np.isinf(ticks))
    while len(waiting):
        later = ticks[after[waiting]]
        told = ~np.isinf(later)
        if not told.any():
            break
        ticks[waiting[told]] = later[told] + 1
        waiting = waiting[~told]
    return np.asarray(ticks * walk.tick_s).reshape(-1, 2)


def walk_in_ticks(
    book: Book,
    *,
    where: Gym | None = None,
    time: Timing | None = None,
    mirrored: bool = True,
    named: Collection[int] = (),
    begin: Sequence[Start] | None = None,
    may: May | None = None,
    until_all_stand: bool = False,
    most: int = MOST,
    progress: Progress | None = None,
) -> TickWalk:
    """Every timed situation the book comes to, from every start.

    `where` and `time` replace the book's own gym and timing, `begin` and `may` the starts and the passes; with
    `until_all_stand` the ball waits for everybody. `named` numbers are told apart, and `mirrored` folds left and right
    into one where ring and floor allow it. Stopped by `most` or by KeyboardInterrupt, the walk returns what it has, and
    how much was waiting.

    Raises: CourtError or MotionError for a court or a squad that is not known, or a ring that cannot be placed.
    """
    time = time or timing(book, where or gym(book))
    mirror = mirrored and has_mirror(book) and not book.moved
    table = Table(book, time, roles(book, named), mirror, may, until_all_stand)
    return _Walker(table, most, progress).go(begin or starts(book))


class _Walker:
    def __init__(self, table: Table, most: int, progress: Progress | None) -> None:
        self.table, self.most, self.progress = table, most, progress
        self.packing, self.known = Packing(table.players), Known()
        self.parts: list[tuple[Ints, NDArray[np.int32], NDArray[np.int32]]] = []
        self.size = self.looked = self.tried = 0
        self.layers: list[int] = []

    def go(self, begin: Sequence[Start]) -> TickWalk:
        firsts = [(start, *self.table.start(start.situation)) for start in sorted(begin, key=lambda start: start.far)]
        layer = np.empty(0, dtype=np.int64)
        try:
            while len(layer) or any(start.far >= len(self.layers) for start, _, _ in firsts):
                self.layers.append(self.size - len(layer))
                begins = [row for start, row, _ in firsts if start.far == len(self.layers) - 1]
                layer = self._wait(np.concatenate([layer, self._begin(begins)]))
                if self._full:
                    break
                layer = self._pass(layer)
        except KeyboardInterrupt:
            if not self.parts:
                raise
        packed, parent, move = (np.concatenate(columns) for columns in zip(*self.parts, strict=True))
        begun: dict[int, list[tuple[Start, Turn]]] = {}
        for start, row, turn in firsts:
            for index in np.flatnonzero(packed == self.packing.pack(row[None])[0]).tolist():
                begun.setdefault(index, []).append((start, turn))
        return TickWalk(self.table, packed, parent, move, self.layers, self.looked, self.tried, begun)

    def _begin(self, rows: list[Ints]) -> Ints:
        if not rows:
            return np.empty(0, dtype=np.int64)
        return self._found(self.packing.pack(np.array(rows)), np.full(len(rows), -1), np.full(len(rows), _START))

    def _found(self, packed: Ints, parent: Ints, move: Ints) -> Ints:
        """Those of the numbers that are new, kept with where they came from."""
        place = self.known.new(packed)
        found = packed[place]
        self.parts.append((found, parent[place].astype(np.int32), move[place].astype(np.int32)))
        self.size += len(place)
        if self.progress is not None and len(place):
            self.progress(self.size)
        return found

    @property
    def _full(self) -> bool:
        return self.size > self.most or len(self.table.pictures) >= self.packing.most_pictures

    def _wait(self, layer: Ints) -> Ints:
        """The layer with everything that comes of it without an event, which lies at the end of what is found."""
        first, found = self.size - len(layer), [layer]
        place, ahead = first, [layer]
        while ahead and not self._full:
            following = []
            for waiting in ahead:
                for part in _parts(waiting):
                    after = self.packing.pack(self.table.tick(self.packing.unpack(part)))
                    changed = after != part
                    parents = np.arange(place, place + len(part))[changed]
                    place += len(part)
                    new = self._found(after[changed], parents, np.full(len(parents), _TICK))
                    if len(new):
                        following.append(new)
            found += following
            ahead = following
        return np.concatenate(found)

    def _pass(self, layer: Ints) -> Ints:
        found, place = [layer[:0]], self.size - len(layer)
        for part in _parts(layer):
            source, row, after = self.table.passes(self.packing.unpack(part))
            self.tried += len(row)
            found.append(self._found(self.packing.pack(after), place + source, row))
            place += len(part)
            self.looked = place
            if self._full:
                break
        return np.concatenate(found)


def _parts(whole: Ints) -> Iterator[Ints]:
    for start in range(0, len(whole), CHUNK):
        yield whole[start : start + CHUNK]
