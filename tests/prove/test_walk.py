"""A walk comes to every situation once; folding players and sides loses none of them and adds none."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from tests.prove.books import four, named, small

from backcut.engine.explore import explore, moves
from backcut.engine.possession import Decision
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Situation
from backcut.prove import walk as walking
from backcut.prove.depth import Depth
from backcut.prove.fold import fold, has_mirror, plain
from backcut.prove.lift import apart, lift
from backcut.prove.starts import Start, starts
from backcut.prove.walk import Edge, May, Walk, walk

PASS, SKIP, DENY = EventKind.PASS, EventKind.SKIP, EventKind.DENY


def _only(book: Book, *kinds: EventKind) -> May:
    def may(situation: Situation, decision: Decision, settled: bool) -> Iterator[Event]:
        return moves(book, situation, frozenset(kinds)) if settled else iter(())

    return may


def _counted(name: str, *kinds: EventKind) -> tuple[int, int]:
    book = named(name)
    found = lift(walk(book, begin=[Start("the start", book.start())], may=_only(book, *kinds)))
    return found.settled, found.possible


def test_five_out_with_neighbour_passes_comes_to_all_600_situations() -> None:
    # design of the trade, common practice, no source; 600 = 5! line-ups times 5 spots of the ball
    assert _counted("five-out", PASS) == (600, 600)


def test_four_out_with_neighbour_passes_alone_leaves_half_of_its_line_ups_out() -> None:
    # the parity trap; common practice, no source, counted here: 96 of 192, and all with back cuts
    assert _counted("four-out", PASS) == (96, 192)
    assert _counted("four-out", PASS, DENY) == (192, 192)
    assert _counted("four-out", PASS, SKIP) == (288, 288)


@pytest.mark.parametrize("name", ["five-out", "four-out", "three-out"])
@pytest.mark.parametrize("kinds", [(PASS,), (PASS, SKIP), (PASS, DENY)], ids=["pass", "skip", "deny"])
def test_players_told_apart_are_counted_as_by_asking_the_rules_each_time(
    name: str, kinds: tuple[EventKind, ...]
) -> None:
    counted, _ = explore(named(name), frozenset(kinds))
    assert _counted(name, *kinds)[0] == counted.situations


def _floor(made: Walk) -> set[Situation]:
    return {plain(made.book, situation) for situation in apart(made)}


_SMALL = [(small(), depth) for depth in Depth] + [(four(), depth) for depth in (*Depth,)[:2]]


@pytest.mark.parametrize(("book", "depth"), _SMALL, ids=[f"{len(b.start().players)} {d}" for b, d in _SMALL])
def test_folding_loses_no_situation_and_adds_none(book: Book, depth: Depth) -> None:
    all_apart = walk(book, depth, told_apart=True, mirrored=False)
    everything = set(all_apart.situations)
    assert len(everything) == len(all_apart.situations)
    for mirrored in (True, False):
        folded = walk(book, depth, mirrored=mirrored)
        assert len(folded.situations) < len(everything)
        assert _floor(folded) == everything
        assert lift(folded).situations == len(everything)
        nearest: dict[Situation, int] = {}
        for situation, far in zip(all_apart.situations, all_apart.far, strict=True):
            alike, _ = fold(situation, folded.role, folded.mirror)
            nearest[alike] = min(far, nearest.get(alike, far))
        assert nearest == dict(zip(folded.situations, folded.far, strict=True))


@pytest.mark.parametrize(
    ("name", "depth"),
    [("school-team", Depth.SETTLED), ("first-month", Depth.DENIED), ("two-bigs", Depth.DENIED)],
)
def test_folding_holds_for_whole_books(name: str, depth: Depth) -> None:
    book = named(name)
    all_apart = walk(book, depth, told_apart=True, mirrored=False)
    assert lift(walk(book, depth)).situations == len(all_apart.situations)
    assert _floor(walk(book, depth, mirrored=False)) == set(all_apart.situations)


def test_the_fewest_events_lead_to_every_situation() -> None:
    made = walk(named("school-team"), Depth.DENIED)
    for node, edges in enumerate(made.edges):
        for edge in edges:
            assert made.far[edge.target] <= made.far[node] + (edge.event is not None)
        _, way = made.way_to(node)
        start = made.begun[made.way_to(node)[0]][0][0]
        assert made.far[node] == start.far + sum(edge.event is not None for edge in way)


def test_a_book_begins_with_the_ball_with_anyone_after_a_throw_in_and_before_a_kick_out() -> None:
    found = starts(named("school-team"))
    said = [start.said for start in found]
    assert said[:5] == ["the start"] * 5
    assert {start.situation.ball for start in found[:5]} == {1, 2, 3, 4, 5}
    assert found[0].situation == named("school-team").start()
    assert "after a throw-in by 4" in said
    assert said.count("1 has driven to the rim") == 2  # from the top, to either side
    assert said.count("2 has driven to the rim") == 1


def test_a_ring_without_a_mirror_image_is_not_folded() -> None:
    book = named("three-out")
    assert has_mirror(book)
    odd = small()
    odd_ring = odd.formation.on_ring(odd.formation.ring[:2], 2)
    assert not has_mirror(Book("odd", odd_ring, odd.sentences))


def test_a_walk_that_is_too_long_stops_and_says_how_much_was_waiting() -> None:
    made = walk(named("school-team"), Depth.DENIED, most=100)
    assert 100 < len(made.situations) < 400
    assert made.unfinished > 0
    assert sum(made.looked) + made.unfinished == len(made.situations)
    assert made.multiplied.most_common(1)[0][1] > 0


def test_a_walk_that_is_stopped_by_hand_keeps_what_it_has() -> None:
    def stop(count: int) -> None:
        if count == 50:
            raise KeyboardInterrupt

    made = walk(named("school-team"), Depth.DENIED, progress=stop)
    assert len(made.situations) == 49  # the fiftieth was found, but not yet the way to it
    assert made.unfinished > 0


def test_what_comes_after_a_hole_in_the_book_is_not_followed() -> None:
    made = walk(named("opposite-corner"))
    holes = [node for node, decision in enumerate(made.decisions) if decision.troubles]
    assert holes
    assert all(made.edges[node] == [] for node in holes)


def test_a_walk_that_is_stopped_between_any_two_lines_is_whole(monkeypatch: pytest.MonkeyPatch) -> None:
    for calls in range(1, 60, 3):
        left = calls

        def sometimes(*given: object) -> Edge:
            nonlocal left
            left -= 1
            if left == 0:
                raise KeyboardInterrupt
            return Edge(*given)  # type: ignore[arg-type]

        monkeypatch.setattr(walking, "Edge", sometimes)
        made = walk(named("school-team"), Depth.DENIED)
        sizes = {len(made.situations), len(made.decisions), len(made.parent), len(made.edges), len(made.looked)}
        assert len(sizes) == 1
        for node in range(len(made.situations)):
            made.way_to(node)
            assert all(edge.target < len(made.situations) for edge in made.edges[node])
        assert made.unfinished
