"""Judge a book in time: three seconds, runs in time, and holes that are filled late.

The ball waits until all stand at the depth *settled*, and is passed as early as the hold count allows at *overlapped*;
the other depths are not put in time. A hole beside the ball is filled when somebody stands in it. Its time counts from
the catch, or from when it appears where that is later.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from backcut.engine.gym import Gym, gym
from backcut.offence.book import Book
from backcut.offence.situation import Situation
from backcut.prove.depth import Depth
from backcut.prove.fold import Turn, own_mirror
from backcut.prove.packed import Packing
from backcut.prove.possession import Possession
from backcut.prove.properties.holes_are_filled import PROPERTY as HOLES
from backcut.prove.properties.holes_are_filled import Beside, beside, late
from backcut.prove.property import Always, Breach, Numbers, Property
from backcut.prove.replay import replay
from backcut.prove.ticks import MOST, TickWalk, patient_by_side_s, walk_in_ticks
from backcut.prove.timing import LANE_LIMIT_S, TICK_S, timing
from backcut.prove.walk import Progress

Ints = NDArray[np.int64]

#: Every run, flight and look is rounded up to ticks: half of the usual tick, so that each gains less than 0.25 s.
JUDGED_TICK_S = TICK_S / 2
#: The depths that are put in time.
TIMED_DEPTHS = (Depth.SETTLED, Depth.OVERLAPPED)


@dataclass(frozen=True, slots=True)
class TimedBroken:
    """One cause for which a property breaks in time, told as it lies in the possession that shows it.

    `situations` counts the situations that show it, clocks not told apart, left and right told apart; `far` is how many
    events the nearest is away.
    """

    prop: Property
    numbers: Numbers
    breach: Breach
    situations: int
    far: int
    possession: Possession


@dataclass(frozen=True, slots=True)
class TimedCovered:
    """What was looked at in time: situations with their clocks, without them, and the passes that were tried.

    `tick_s` is the seconds of a tick, `far` the most events since a start, `seconds` how long it took; `waiting` were
    found but not looked at.
    """

    timed: int
    pictures: int
    passes: int
    tick_s: float
    far: int
    seconds: float
    waiting: int = 0


@dataclass(slots=True)
class TimedResult:
    """What was found in time at one depth, the nearest first, and what was covered; `stopped` where it was early."""

    depth: Depth
    covered: TimedCovered
    broken: list[TimedBroken] = field(default_factory=list)
    stopped: bool = False


def is_timed(prop: Property) -> bool:
    """Whether a property is judged on runs in time: also or only."""
    return prop.timed or prop.name == HOLES.name


def judge_timed(
    book: Book,
    depth: Depth,
    wanted: Sequence[tuple[Property, Numbers]],
    *,
    where: Gym | None = None,
    named: Collection[int] = (),
    sided: bool = False,
    most: int = MOST,
    progress: Progress | None = None,
) -> TimedResult | None:
    """Judge what is wanted in time at this depth; None where the depth, or nothing of it, is put in time.

    `where` replaces the book's own gym. Stopped by `most` or by KeyboardInterrupt, what was found so far is returned.

    Raises: CourtError or MotionError for a court or a squad that is not known, or a ring that cannot be placed.
    """
    asked = [(prop, numbers) for prop, numbers in wanted if is_timed(prop)]
    if depth not in TIMED_DEPTHS or not asked:
        return None
    began = time.perf_counter()
    where = where or gym(book)
    limit_s = max((numbers["seconds"] for prop, numbers in asked if prop.name == "three seconds"), default=LANE_LIMIT_S)
    made = walk_in_ticks(
        book,
        time=timing(book, where, tick_s=JUDGED_TICK_S, lane_limit_s=limit_s),
        mirrored=not sided,
        named=named,
        until_all_stand=depth is Depth.SETTLED,
        most=most,
        progress=progress,
    )
    judge, stopped = _Judge(made), bool(made.unfinished) and len(made) <= most
    broken: list[TimedBroken] = []
    try:
        for prop, numbers in asked:
            broken += judge.broken(prop, numbers)
    except KeyboardInterrupt:
        stopped = True
    broken.sort(key=lambda cause: (cause.far, -cause.situations))
    covered = TimedCovered(
        timed=len(made),
        pictures=int((judge.first >= 0).sum()),
        passes=made.tried,
        tick_s=made.tick_s,
        far=len(made.layers) - 1,
        seconds=time.perf_counter() - began,
        waiting=made.unfinished,
    )
    return TimedResult(depth, covered, broken, stopped)


@dataclass(slots=True)
class _Cause:
    """A cause in the making: the nearest timed situation that shows it so far, and all pictures that do."""

    index: int
    pictures: set[int] = field(default_factory=set)


class _Judge:
    """One walk judged: `first` is, per picture, the first timed situation that has it, -1 where none was reached."""

    def __init__(self, walk: TickWalk) -> None:
        self.walk = walk
        self.picture = Packing(walk.table.players).picture(walk.packed)
        pictures, first = np.unique(self.picture, return_index=True)
        self.first = np.full(len(walk.pictures), -1, dtype=np.int64)
        self.first[pictures] = first

    def broken(self, prop: Property, numbers: Numbers) -> Iterator[TimedBroken]:
        """Every cause for which the property breaks."""
        if isinstance(prop, Always):
            for cause, shown in self._always(prop, numbers).items():
                yield self._told(prop, numbers, shown, self._as_it_lies(prop, numbers, cause))
        else:
            after_s = self._empty_s()
            for side, shown in self._late(after_s, numbers["seconds"]).values():
                yield self._told(prop, numbers, shown, self._late_as_it_lies(after_s, side))

    def _told(
        self, prop: Property, numbers: Numbers, shown: _Cause, told: Callable[[int, Turn], Breach]
    ) -> TimedBroken:
        possession, turn = replay(self.walk, shown.index)
        situations = sum(self._images(picture) for picture in shown.pictures)
        far = self.walk.far(shown.index)
        return TimedBroken(prop, numbers, told(shown.index, turn), situations, far, possession)

    def _images(self, picture: int) -> int:
        table = self.walk.table
        return 2 if table.mirror and own_mirror(table.pictures[picture], table.role) is None else 1

    # Always.

    def _always(self, prop: Always, numbers: Numbers) -> dict[str, _Cause]:
        found: dict[str, _Cause] = {}
        left_open, (_, longest) = self.walk.table.left_open, self.walk.lane_wait
        slot = self.walk.table.slot
        for picture in np.flatnonzero((self.first >= 0) & ~left_open[: len(self.first)]).tolist():
            for breach in prop.looks(self.walk.seen(picture), numbers):
                first = int(self.first[picture])
                waits = [int(longest[picture, slot[number]]) for number in breach.players]
                tried = sorted({first, *(index for index in waits if index >= 0)})
                index = next((index for index in tried if self._shows(index, prop, numbers, breach.cause)), None)
                if index is not None:
                    cause = found.setdefault(breach.cause, _Cause(index))
                    cause.index = min(cause.index, index)
                    cause.pictures.add(picture)
        return found

    def _shows(self, index: int, prop: Always, numbers: Numbers, cause: str) -> bool:
        return any(breach.cause == cause for breach in prop.looks(self.walk.seen_at(index), numbers))

    def _as_it_lies(self, prop: Always, numbers: Numbers, cause: str) -> Callable[[int, Turn], Breach]:
        def told(index: int, turn: Turn) -> Breach:
            found = prop.looks(self.walk.seen_at(index, turn), numbers)
            return next(breach for breach in found if breach.cause == cause)

        return told

    # Holes.

    def _empty_s(self) -> NDArray[np.float64]:
        """Per timed situation and side of the ball, for how long a hole is empty from the catch on; nan without one."""
        walk, book = self.walk, self.walk.book
        sides = [beside(book, situation) for situation in walk.pictures]
        holes = np.array([[side is Beside.HOLE for side in both] for both in sides], dtype=np.bool_)
        filled = dict(zip(walk.pictures, sides, strict=True))

        def stands(situation: Situation) -> tuple[bool, bool]:
            left, right = filled[situation]
            return left is Beside.FILLED, right is Beside.FILLED

        empty_s = patient_by_side_s(walk, stands)
        ball = walk.rows(np.arange(len(walk)))[:, -2]
        in_the_air_s = np.maximum(ball - walk.table.timing.hold, 0) * walk.tick_s
        return np.where(holes[self.picture], empty_s - in_the_air_s[:, None], np.nan)

    def _late(self, after_s: NDArray[np.float64], seconds: float) -> dict[str, tuple[int, _Cause]]:
        found: dict[str, tuple[int, _Cause]] = {}
        seen: set[tuple[int, int, bool]] = set()
        for index, place in np.argwhere(after_s > seconds + 1e-9).tolist():
            empty_s, side = float(after_s[index, place]), 2 * place - 1
            picture = int(self.picture[index])
            # One picture and side is one situation, however long it lasts; the first is the nearest.
            if (key := (picture, side, np.isinf(empty_s))) in seen:
                continue
            seen.add(key)
            cause = late(self.walk.seen_at(index), side, empty_s).cause
            found.setdefault(cause, (side, _Cause(index)))[1].pictures.add(picture)
        return found

    def _late_as_it_lies(self, after_s: NDArray[np.float64], side: int) -> Callable[[int, Turn], Breach]:
        def told(index: int, turn: Turn) -> Breach:
            seconds = float(after_s[index, (side + 1) // 2])
            return late(self.walk.seen_at(index, turn), -side if turn.flipped else side, seconds)

        return told
