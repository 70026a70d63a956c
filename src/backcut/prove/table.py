"""A book as tables of ticks and passes: the rules are asked once for each row, everything after that is gathering.

A timed situation is a row of whole numbers: the picture's place, a clock for each player, the ball's clock, and the
count's clock. Arrays of them have the shape (n, players + 3), int64, columns in that order.

A tick's row is found by the picture, by which players are still running, and by whether a count goes up; a pass's row
by the picture and the place of the pass among those that may happen there. A row says which picture comes next, which
player stands where in it, and what becomes of the clocks.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from backcut.engine.advance import MOST_COUNTS, follow, happen, kind_of_pass
from backcut.engine.decide import decide
from backcut.engine.play import settled, stand
from backcut.engine.possession import Decision
from backcut.offence.action import Action, Kind
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Doing, Guard, Player, Situation
from backcut.prove.depth import NEEDS
from backcut.prove.fold import Turn, fold, plain
from backcut.prove.packed import MOST_TICKS
from backcut.prove.timing import LOOKS, Timing

Ints = NDArray[np.int64]
Bools = NDArray[np.bool_]
#: Which passes may be thrown in a picture; the table adds whether ball and receiver are ready.
May = Callable[[Situation], Iterator[Event]]

ON_THE_WAY = frozenset({Doing.CUTTING, Doing.FILLING, Doing.OUT})
QUICK = frozenset({EventKind.KICK_OUT, EventKind.TO_CUTTER})


def passes(book: Book, situation: Situation) -> Iterator[Event]:
    """Every pass that may be thrown in a picture, whoever is on the way: none to a cutter, none before an answer."""
    if situation.ended is not None or (situation.last is not None and situation.last.fresh):
        return
    for player in situation.players:
        if player.number == situation.ball or player.guard is Guard.DENIES or player.doing is Doing.CUTTING:
            continue
        kind = kind_of_pass(book, situation, player.number)
        if kind is not EventKind.TO_CUTTER and NEEDS.get(kind, "") in ("", *book.rules.names):
            yield Event(kind, situation.ball, player.number)


def cuts_first(situation: Situation, decision: Decision, running: Collection[int]) -> Decision:
    """Everybody's answers where a cut is finished before anything else is asked.

    Once the catcher has looked at him a cutter counts in the lane, and the rules may send him out; whoever is `running`
    still holds instead, and is asked again when he is at the rim.
    """
    late = {player.number for player in situation.players if player.doing is Doing.LANE} & set(running)
    if not late:
        return decision
    actions = tuple(
        Action(action.player, Kind.HOLD, action.origin, action.origin) if action.player in late else action
        for action in decision.actions
    )
    return replace(decision, actions=actions)


class _Ledger:
    """Rows of whole numbers (n, width), int32, that grow at the end."""

    def __init__(self, width: int) -> None:
        self._held = np.zeros((1024, width), dtype=np.int32)
        self.size = 0

    def add(self, row: list[int]) -> int:
        if self.size == len(self._held):
            self._held = np.concatenate([self._held, np.zeros_like(self._held)])
        self._held[self.size] = row
        self.size += 1
        return self.size - 1

    @property
    def rows(self) -> NDArray[np.int32]:
        return self._held[: self.size]


class Table:
    """Pictures, rows of ticks and rows of passes, written as they are first asked for.

    `pictures`, `decisions` and `settled` go together, one a picture; `turns` and `events` are told by the rows.
    """

    def __init__(
        self,
        book: Book,
        timing: Timing,
        role: dict[int, int],
        mirror: bool,
        may: May | None = None,
        until_all_stand: bool = False,
    ) -> None:
        self.book, self.timing, self.role, self.mirror = book, timing, role, mirror
        self.until_all_stand = until_all_stand
        self.may = may or (lambda situation: passes(book, situation))
        self.numbers = tuple(role)
        self.slot = {number: i for i, number in enumerate(self.numbers)}
        self.players = len(role)
        self.reads_count = book.values["when to fill"] == "count of two"
        self.pictures: list[Situation] = []
        self.decisions: list[Decision] = []
        self.settled: list[bool] = []
        self.tick_turns: list[Turn] = []
        self.pass_turns: list[Turn] = []
        self.events: list[Event] = []
        self._index: dict[Situation, int] = {}
        self._folded: dict[Situation, tuple[int, Turn]] = {}
        n = self.players
        # Of a picture: the clock over which each is still running (n), bits of who is in the lane without the ball,
        # whether a count is waited for, whether the book leaves something open, whether all stand, its first pass row
        # (-1: not written yet) and how many there are.
        self._facts = _Ledger(n + 6)
        self._tick_rows = _Ledger(1 + 4 * n)
        self._pass_rows = _Ledger(5 + n)
        self._row_of = np.full(1024 << (n + 1), -1, dtype=np.int32)

    @property
    def rows(self) -> int:
        """How many rows were written: so often the rules were asked what comes next."""
        return self._tick_rows.size + self._pass_rows.size

    # Pictures.

    def picture(self, situation: Situation) -> tuple[int, Turn]:
        """The place of the picture that stands for a situation, and how it lies in it."""
        bare = plain(self.book, situation)
        known = self._folded.get(bare)
        if known is None:
            folded, turn = fold(bare, self.role, self.mirror)
            place = self._index.get(folded)
            known = self._folded[bare] = (self._new(folded) if place is None else place), turn
        return known

    def _new(self, situation: Situation) -> int:
        decision = decide(self.book, situation)
        self._index[situation] = place = len(self.pictures)
        rest = situation.ended is None and settled(self.book, situation, decision)
        self.pictures.append(situation)
        self.decisions.append(decision)
        stands = rest and stand(situation) == situation
        self.settled.append(stands)
        waits = self.reads_count and not rest and situation.count < MOST_COUNTS
        lane = sum(1 << i for i, p in enumerate(situation.players) if _waits_in_lane(situation, p))
        there = {Doing.CUTTING: LOOKS - 1, Doing.LANE: self.timing.lane}
        over = [there.get(player.doing, 0) for player in situation.players]
        self._facts.add([*over, lane, int(waits), int(bool(decision.troubles)), int(stands), -1, 0])
        return place

    def waits_in_lane(self) -> Bools:
        """Per picture and place of a player, whether he is in the lane without the ball."""
        lane = self._facts.rows[:, self.players, None]
        return np.asarray((lane >> np.arange(self.players)) & 1, dtype=np.bool_)

    @property
    def left_open(self) -> Bools:
        """Per picture, whether the book leaves something open in it: from there nothing is walked any further."""
        return np.asarray(self._facts.rows[:, self.players + 2] > 0, dtype=np.bool_)

    # A tick.

    def tick(self, now: Ints) -> Ints:
        """Timed situations one tick later, if no pass comes; the same where the book leaves something open."""
        n = self.players
        picture, clocks, ball, count = now[:, 0], now[:, 1 : n + 1], now[:, n + 1], now[:, n + 2]
        row, counted = self.tick_row(now)
        told = self._tick_rows.rows[row]
        after = np.empty_like(now)
        after[:, 0] = told[:, 0]
        source, times, more, most = (told[:, 1 + k * n : 1 + (k + 1) * n] for k in range(4))
        after[:, 1 : n + 1] = (np.take_along_axis(clocks, source.astype(np.intp), 1) * times + more).clip(0, most)
        after[:, n + 1] = np.maximum(ball - 1, 0)
        after[:, n + 2] = 0
        if self.reads_count:
            facts = self._facts.rows
            waited = facts[picture, n + 1] > 0
            left = np.where(counted, self.timing.count, count - 1)
            after[:, n + 2] = np.where(waited & (facts[told[:, 0], n + 1] > 0), left, 0)
        stuck = self.left_open[picture]
        after[stuck] = now[stuck]
        return after

    def running(self, now: Ints) -> tuple[Bools, Bools]:
        """Who is still on the way after the next tick, (n, players), and whether a count goes up in it, (n,)."""
        n, facts = self.players, self._facts.rows[now[:, 0]]
        return now[:, 1 : n + 1] > facts[:, :n], (facts[:, n + 1] > 0) & (now[:, n + 2] <= 1)

    def tick_row(self, now: Ints) -> tuple[Ints, Bools]:
        """The row of each timed situation's next tick, written where it is new, and whether a count goes up in it."""
        n = self.players
        running, counted = self.running(now)
        key = (now[:, 0] << (n + 1)) | ((running << np.arange(n)).sum(axis=1) << 1) | counted
        self._make_room()
        row = self._row_of[key]
        for missing in np.unique(key[row < 0]).tolist():
            self._row_of[missing] = self._write_tick(missing >> (n + 1), (missing >> 1) & ((1 << n) - 1), missing & 1)
            self._make_room()
        return self._row_of[key].astype(np.int64), counted

    def _make_room(self) -> None:
        if len(self.pictures) << (self.players + 1) > len(self._row_of):
            self._row_of = np.concatenate([self._row_of, np.full_like(self._row_of, -1)])

    def _write_tick(self, picture: int, mask: int, counts: int) -> int:
        situation, decision = self.pictures[picture], self.decisions[picture]
        running = frozenset(number for i, number in enumerate(self.numbers) if mask >> i & 1)
        decision = cuts_first(situation, decision, running)
        after = situation
        if situation.ended is None and not decision.troubles:
            after = follow(self.book, situation, decision, running=running, counts=bool(counts))
        to, turn = self.picture(after)
        then = self.pictures[to]
        told = {action.player: action for action in decision.actions}
        source = [self.slot[number] for number in turn.worn]
        clocks = [
            self._clock(situation, situation.players[i], told[self.numbers[i]], then, then.players[j], mask >> i & 1)
            for j, i in enumerate(source)
        ]
        self.tick_turns.append(turn)
        return self._tick_rows.add([to, *source, *(part for parts in zip(*clocks, strict=True) for part in parts)])

    def _clock(
        self, situation: Situation, before: Player, told: Action, then: Situation, after: Player, runs: int
    ) -> tuple[int, int, int]:
        """What becomes of one player's clock: so many times what it was, so much more, and at most this."""
        if after.doing is Doing.CUTTING:
            return (1, -LOOKS, MOST_TICKS) if runs else (0, self.timing.cut(situation, told), MOST_TICKS)
        if after.doing in ON_THE_WAY:
            if told.moves:
                if before.doing in ON_THE_WAY:
                    # He runs on: what was left of his way, and the new leg.
                    return 1, self.timing.on(told) - 1, max(self.timing.longest(told) - 2, 0)
                # The last tick of a run is the one in which he arrives.
                return 0, max(self.timing.run(situation, told) - 2, 0), MOST_TICKS
            return (1, -1, MOST_TICKS) if runs else (0, 0, 0)
        if after.doing is not Doing.LANE:
            return 0, 0, 0
        if before.doing is Doing.CUTTING:
            return 1, self.timing.lane, MOST_TICKS
        return (1, -1, MOST_TICKS) if _waits_in_lane(situation, before) else (0, self.timing.lane, MOST_TICKS)

    # A pass.

    def passes(self, now: Ints) -> tuple[Ints, Ints, Ints]:
        """Every pass that can be thrown now: from which of the situations, its row, and what it leads to."""
        n = self.players
        first, many = self._pass_places(now[:, 0])
        # Whoever has not even gathered the ball throws nothing.
        soonest = max(self.timing.hold - self.timing.gather, 0)
        facts = self._facts.rows[now[:, 0]]
        left = np.maximum(now[:, 1 : n + 1] - facts[:, :n], 0)
        can = now[:, n + 1] <= (0 if self.until_all_stand else soonest)
        if self.until_all_stand:
            can &= (facts[:, n + 3] > 0) & ~left.any(axis=1)
        many = np.where(can, many, 0)
        source = np.repeat(np.arange(len(now)), many)
        row = np.repeat(first - np.cumsum(many) + many, many) + np.arange(len(source))
        told = self._pass_rows.rows[row]
        receiver, flight, quick = told[:, n + 1], told[:, n + 2], told[:, n + 3] > 0
        ready = now[source, n + 1] <= np.where(quick, soonest, 0)
        # Ball and receiver meet at his spot, and not before he is there.
        ready &= left[source, receiver] < np.maximum(flight, 1)
        source, row, told, flight = source[ready], row[ready], told[ready], flight[ready]
        after = np.empty((len(source), n + 3), dtype=np.int64)
        after[:, 0] = told[:, 0]
        after[:, 1 : n + 1] = np.take_along_axis(now[source, 1 : n + 1], told[:, 1 : n + 1].astype(np.intp), 1)
        facts, there = self._facts.rows[told[:, 0]], told[:, n + 4]
        after[np.arange(len(source)), 1 + there] = facts[np.arange(len(source)), there]
        after[:, n + 1] = flight + self.timing.hold
        waits = facts[:, n + 1] > 0
        after[:, n + 2] = np.where(waits, flight + self.timing.count, 0)
        return source, row, after

    def _pass_places(self, picture: Ints) -> tuple[Ints, Ints]:
        n = self.players
        facts = self._facts.rows
        for missing in np.unique(picture[facts[picture, n + 4] < 0]).tolist():
            first = self._pass_rows.size
            for event in () if self.decisions[missing].troubles else self.may(self.pictures[missing]):
                self._write_pass(self.pictures[missing], event)
            self._facts.rows[missing, n + 4 :] = first, self._pass_rows.size - first
        facts = self._facts.rows[picture]
        return facts[:, n + 4].astype(np.int64), facts[:, n + 5].astype(np.int64)

    def _write_pass(self, situation: Situation, event: Event) -> None:
        assert event.receiver is not None
        to, turn = self.picture(happen(self.book, situation, event))
        self.pass_turns.append(turn)
        self.events.append(event)
        flight = self.timing.flight(situation, event)
        quick = int(event.kind in QUICK)
        there = turn.worn.index(event.receiver)
        source = [self.slot[number] for number in turn.worn]
        self._pass_rows.add([to, *source, self.slot[event.receiver], flight, quick, there])

    # A start.

    def start(self, situation: Situation) -> tuple[Ints, Turn]:
        """A possession's first timed situation (players + 3,): who is on the way sets out now, the ball is ready."""
        place, turn = self.picture(situation)
        left = {player.number: self.timing.begun(situation, player) for player in situation.players}
        waits = bool(self._facts.rows[place, self.players + 1])
        clocks = [left[number] for number in turn.worn]
        return np.array([place, *clocks, 0, self.timing.count if waits else 0], dtype=np.int64), turn


def _waits_in_lane(situation: Situation, player: Player) -> bool:
    return player.doing is Doing.LANE and player.number != situation.ball
