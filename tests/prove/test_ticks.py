"""A walk in time agrees with the beats where no clock runs, and with the rules asked one by one where clocks run."""

from __future__ import annotations

import random
from dataclasses import dataclass, replace

import numpy as np
import pytest
from tests.prove.books import SHIPPED, named, small

from backcut.engine.advance import MOST_COUNTS, follow, happen
from backcut.engine.decide import decide
from backcut.engine.gym import gym
from backcut.engine.play import settle, settled
from backcut.offence.action import Kind
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Doing, Situation
from backcut.prove.depth import Depth
from backcut.prove.fold import Turn, fold, plain
from backcut.prove.packed import Known, Packing
from backcut.prove.table import Table, passes
from backcut.prove.ticks import TickWalk, patient_s, walk_in_ticks
from backcut.prove.timing import BEATS, LOOKS, Timing, timing
from backcut.prove.walk import walk

WAY = (Doing.CUTTING, Doing.FILLING, Doing.OUT)
EVERY = (*SHIPPED, "nearest-fills", "opposite-own", "opposite-corner")


@dataclass(frozen=True)
class Floor:
    """A timed situation as it lies on the floor: clocks by number, nothing folded, nothing packed."""

    situation: Situation
    clocks: dict[int, int]
    ball: int
    count: int


def _in_lane(situation: Situation, number: int) -> bool:
    return situation.player(number).doing is Doing.LANE and number != situation.ball


def _counting(book: Book, situation: Situation) -> bool:
    reads = book.values["when to fill"] == "count of two" and situation.count < MOST_COUNTS
    return reads and not settled(book, situation, decide(book, situation))


def _tick(book: Book, time: Timing, now: Floor) -> Floor:
    """One tick by asking the rules: what the tables say, read a second time."""
    before, decision = now.situation, decide(book, now.situation)
    there = {Doing.CUTTING: LOOKS - 1, Doing.LANE: time.lane}
    runs = frozenset(p.number for p in before.players if now.clocks[p.number] > there.get(p.doing, 0))
    # Who is still on his way to the rim is asked nothing.
    late = {p.number for p in before.players if p.doing is Doing.LANE and p.number in runs}
    held = (replace(a, kind=Kind.HOLD, target=a.origin) if a.player in late else a for a in decision.actions)
    decision = replace(decision, actions=tuple(held))
    counted = _counting(book, before) and now.count <= 1
    after = follow(book, before, decision, running=runs, counts=counted)
    clocks = {}
    for player, action in zip(after.players, decision.actions, strict=True):
        number, was = player.number, before.player(player.number).doing
        clock, left = now.clocks[player.number], 0
        if player.doing is Doing.CUTTING:
            left = clock - LOOKS if number in runs else time.cut(before, action)
        elif player.doing in WAY and action.moves and was not in WAY:
            left = time.run(before, action) - 2
        elif player.doing in WAY and action.moves:
            left = min(clock + time.on(action) - 1, time.longest(action) - 2)
        elif player.doing in WAY and number in runs:
            left = clock - 1
        elif player.doing is Doing.LANE and was is Doing.CUTTING:
            left = clock + time.lane
        elif player.doing is Doing.LANE:
            left = clock - 1 if _in_lane(before, number) else time.lane
        clocks[number] = max(left, 0)
    count = time.count if counted else now.count - 1
    counting = _counting(book, before) and _counting(book, after)
    return Floor(after, clocks, max(now.ball - 1, 0), count if counting else 0)


def _passed(book: Book, time: Timing, now: Floor) -> list[tuple[Event, Floor]]:
    """Every pass that can be thrown now."""
    found = []
    for event in passes(book, now.situation):
        assert event.receiver is not None
        held = time.hold - (time.gather if event.kind is EventKind.KICK_OUT else time.hold)
        flight = time.flight(now.situation, event)
        if now.ball > max(held, 0) or now.clocks[event.receiver] >= max(flight, 1):
            continue
        after = happen(book, now.situation, event)
        count = flight + time.count if _counting(book, after) else 0
        found.append((event, Floor(after, now.clocks | {event.receiver: 0}, flight + time.hold, count)))
    return found


def _lying(table: Table, row: list[int], turn: Turn) -> Floor:
    picture, *clocks, ball, count = row
    return Floor(turn.situation(table.pictures[picture]), dict(zip(turn.worn, clocks, strict=True)), ball, count)


def _any_turn(table: Table, chance: random.Random) -> Turn:
    slots: dict[int, list[int]] = {}
    for number in chance.sample(table.numbers, len(table.numbers)):
        slots.setdefault(table.role[number], []).append(number)
    worn = tuple(slots[table.role[number]].pop() for number in table.numbers)
    return Turn(worn, table.mirror and chance.random() < 0.5)


def _alike(table: Table, picture: int, clocks: list[int], *more: int) -> tuple[int, ...]:
    """One row for the two in which a timed situation can be written whose picture is its own mirror image."""
    rows = [clocks]
    if table.mirror:
        image, turn = fold(table.pictures[picture].mirrored(), table.role, False)
        if image == table.pictures[picture]:
            rows.append([clocks[table.slot[number]] for number in turn.worn])
    return (picture, *min(rows), *more)


def _folded(table: Table, floor: Floor) -> tuple[int, ...]:
    picture, turn = table.picture(floor.situation)
    return _alike(table, picture, [floor.clocks[number] for number in turn.worn], floor.ball, floor.count)


def _row(table: Table, row: list[int]) -> tuple[int, ...]:
    picture, *clocks, ball, count = row
    return _alike(table, picture, clocks, ball, count)


def _rows(made: TickWalk) -> list[list[int]]:
    rows: list[list[int]] = Packing(made.table.players).unpack(made.packed).tolist()
    return rows


@pytest.mark.parametrize("name", EVERY)
def test_when_every_run_takes_one_tick_the_pictures_are_those_of_the_beats(name: str) -> None:
    book = named(name)
    beats = walk(book, Depth.OVERLAPPED, may=lambda situation, decision, rest: passes(book, situation))
    made = walk_in_ticks(book, time=BEATS)
    assert {made.pictures[row[0]] for row in _rows(made)} == set(beats.situations)
    assert (len(made), made.tried, made.unfinished) == (len(beats.situations), beats.moves, 0)


@pytest.mark.parametrize("name", EVERY)
def test_the_tables_say_what_the_rules_say_when_asked_one_by_one(name: str) -> None:
    book = named(name)
    made = walk_in_ticks(book)
    table, chance = made.table, random.Random(7)
    rows = chance.sample(_rows(made), min(300, len(made)))
    after = table.tick(np.array(rows))
    source, _, passed = table.passes(np.array(rows))
    for i, row in enumerate(rows):
        lies = _lying(table, row, _any_turn(table, chance))
        if table.left_open[row[0]]:
            assert after[i].tolist() == row
            assert i not in source
            continue
        assert _folded(table, _tick(book, table.timing, lies)) == _row(table, after[i].tolist())
        told = sorted(_row(table, to) for to in passed[source == i].tolist())
        assert told == sorted(_folded(table, floor) for _, floor in _passed(book, table.timing, lies))


@pytest.mark.parametrize("name", EVERY)
def test_a_ball_that_waits_until_all_stand_finds_the_settled_possession(name: str) -> None:
    made = walk_in_ticks(named(name))
    book, table = made.book, made.table
    place = {number: i for i, number in enumerate(made.packed.tolist())}
    still = np.flatnonzero(made.after == np.arange(len(made)))
    rows = Packing(table.players).unpack(made.packed[still])
    source, passed, after = table.passes(rows)
    assert len(passed)
    for event, row, index in zip(passed.tolist(), source.tolist(), Packing(table.players).pack(after), strict=True):
        end = made.wait_from(place[int(index)], 100)[-1].target
        if table.left_open[made.timed(end)[0]]:
            assert name not in SHIPPED
            continue
        before = table.pictures[int(rows[row, 0])]
        _, stands = settle(book, happen(book, before, table.events[event]))
        # The count of a settled situation is what no sentence can read any more.
        stands = replace(stands, count=made.pictures[made.timed(end)[0]].count)
        assert made.pictures[made.timed(end)[0]] == fold(plain(book, stands), table.role, table.mirror)[0]


@pytest.mark.parametrize("name", ["small", "first-month", "two-bigs"])
def test_left_and_right_folded_into_one_loses_and_adds_nothing(name: str) -> None:
    book = small() if name == "small" else named(name)
    folded, apart = walk_in_ticks(book), walk_in_ticks(book, mirrored=False)
    assert folded.table.mirror
    one = {_row(folded.table, row) for row in _rows(folded)}
    numbers = Turn(apart.numbers)
    assert {_folded(folded.table, _lying(apart.table, row, numbers)) for row in _rows(apart)} == one
    assert len(folded) < len(apart)


@pytest.mark.parametrize("name", ["school-team", "two-bigs"])
def test_the_way_to_a_timed_situation_can_be_walked_on_the_floor(name: str) -> None:
    made = walk_in_ticks(named(name))
    book, table = made.book, made.table
    for index in random.Random(3).sample(range(len(made)), 40):
        first, way = made.way_to(index)
        start, turn = made.begun[first][0]
        floor = _lying(table, _rows(made)[first], turn)
        events = start.far
        for edge in way:
            if edge.event is None:
                floor = _tick(book, table.timing, floor)
            else:
                event = turn.event(edge.event, made.numbers)
                floor = dict(_passed(book, table.timing, floor))[event]
                events += 1
            turn = turn.then(edge.turn, made.numbers)
            shown = _lying(table, _rows(made)[edge.target], turn)
            assert plain(book, floor.situation) == shown.situation
            assert (floor.clocks, floor.ball, floor.count) == (shown.clocks, shown.ball, shown.count)
        assert events == made.far(index)
        assert (way[-1].target if way else first) == index


def test_the_longest_wait_in_the_lane_is_shown_by_a_timed_situation() -> None:
    made = walk_in_ticks(named("school-team"))
    wait_s, example = made.lane_wait
    places = np.argwhere(example >= 0)
    assert len(places)
    for picture, slot in places.tolist():
        index = int(example[picture, slot])
        assert made.timed(index)[0] == picture
        assert made.seen_at(index).waited_s[made.numbers[slot]] == wait_s[picture, slot]
    number = made.numbers[places[0][1]]
    assert made.seen(int(places[0][0])).waited_s[number] == wait_s[tuple(places[0])]


def test_patience_is_the_time_until_it_comes_true_without_a_pass() -> None:
    made = walk_in_ticks(named("first-month"))

    def empty(situation: Situation) -> bool:
        return not any(player.doing in (Doing.CUTTING, Doing.LANE) for player in situation.players)

    told = patient_s(made, empty)
    for index in range(len(made)):
        way = [index, *(edge.target for edge in made.wait_from(index, 200))]
        first = next((i for i, at in enumerate(way) if empty(made.pictures[made.timed(at)[0]])), np.inf)
        assert told[index] == first * made.tick_s
    assert np.all(np.isinf(patient_s(made, lambda situation: False)))


def test_a_walk_that_is_stopped_says_how_much_was_waiting() -> None:
    book = named("four-out-school-team")
    whole, part = walk_in_ticks(book), walk_in_ticks(book, most=1000)
    assert whole.unfinished == 0
    assert 0 < part.unfinished < len(part) < len(whole)
    assert np.array_equal(part.packed, whole.packed[: len(part)])
    assert not np.isnan(patient_s(whole, lambda situation: False)).any()
    assert np.isnan(patient_s(part, lambda situation: False)).any()


def test_a_walk_that_is_interrupted_keeps_what_it_has() -> None:
    def stop(found: int) -> None:
        if found > 500:
            raise KeyboardInterrupt

    made = walk_in_ticks(named("school-team"), progress=stop)
    assert len(made) > 500
    assert made.unfinished > 0
    first, way = made.way_to(len(made) - 1)
    assert first in made.begun
    assert way


def test_a_spot_that_the_coach_moved_keeps_left_and_right_apart() -> None:
    book = named("first-month")
    place = gym(book).placing.spots
    x, y = next(at for spot, at in place.items() if spot == "LC")
    moved = replace(book, moved={next(spot for spot in place if spot == "LC"): (x, y + 0.2)})
    assert walk_in_ticks(book).table.mirror
    assert not walk_in_ticks(moved).table.mirror


def test_a_catcher_who_holds_longer_passes_in_fewer_timed_situations() -> None:
    book = named("school-team")
    usual = timing(book, gym(book))
    assert len(walk_in_ticks(book, time=usual)) < len(walk_in_ticks(book, time=replace(usual, hold=0, gather=0)))


def test_a_number_is_new_only_once() -> None:
    known, chance = Known(), np.random.default_rng(5)
    seen: set[int] = set()
    for _ in range(50):
        numbers = chance.integers(0, 3000, 200)
        places = known.new(numbers)
        fresh = [number for i, number in enumerate(numbers.tolist()) if number not in seen | set(numbers[:i].tolist())]
        assert numbers[places].tolist() == fresh
        seen |= set(numbers.tolist())


def test_packing_comes_back() -> None:
    rows = np.array([[1_000_000, 63, 0, 5, 7, 1, 63, 2], [0, 0, 0, 0, 0, 0, 0, 1]])
    packing = Packing(5)
    assert np.array_equal(packing.unpack(packing.pack(rows)), rows)
    assert packing.picture(packing.pack(rows)).tolist() == [1_000_000, 0]
