"""Three exits that are said in one line each: how many of the eight passes of a full five-out they leave open."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from tests.engine.floor import ran
from tests.prove.books import named

from backcut.engine.play import one_step
from backcut.engine.possession import Decision
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Situation
from backcut.prove.depth import Depth
from backcut.prove.judge import Broken, judge_always
from backcut.prove.proof import prove
from backcut.prove.property import Always, properties
from backcut.prove.starts import Start
from backcut.prove.walk import Edge, Walk, walk

SILENT = "B (Out) names no spot to come out to."
TAKEN = "B (Out) sends a player in the lane to a spot that is taken."

#: Worked out by hand on the ring LC LW T RW RC: who passes from where to where, and what is then left open. In full
#: five-out the exit must name the one spot that nobody has moved up from or to. Counted here; common practice, no
#: source.
LEFT_OPEN = {
    # The filler has left a spot unless nobody stands behind the passer: after a pass out of the corner.
    "nearest-fills": {("LC", "LW"): SILENT, ("RC", "RW"): SILENT},
    # With the ball at the top no corner is opposite; out of a corner nobody moves up, and the far corner stays taken.
    "opposite-corner": {
        ("LW", "T"): SILENT,
        ("RW", "T"): SILENT,
        ("LC", "LW"): TAKEN,
        ("RC", "RW"): TAKEN,
    },
    # Who cut from the top came from no side; the far corner empties only where the ball goes away from it.
    "opposite-own": {
        ("T", "LW"): SILENT,
        ("T", "RW"): SILENT,
        ("LC", "LW"): TAKEN,
        ("RC", "RW"): TAKEN,
        ("LW", "T"): TAKEN,
        ("RW", "T"): TAKEN,
    },
}
COUNTS = {"nearest-fills": (2, 0), "opposite-corner": (2, 2), "opposite-own": (2, 4)}  # silent, taken


def ball_with_anyone(book: Book) -> list[Start]:
    """The formation's start with the ball on each spot of the ring: five starts, told apart by spot."""
    first = book.start()
    return [Start("the start", Situation(first.players, player.number)) for player in first.players]


def eight_passes(name: str) -> Walk:
    """The walk through the eight passes to the next spot that a full five-out has, and what they lead to."""
    book = named(name)
    begin = ball_with_anyone(book)
    first = {start.situation for start in begin}

    def passes(situation: Situation, decision: Decision, settled: bool) -> Iterator[Event]:
        if situation not in first:
            return
        ring = book.rules.index
        for player in situation.players:
            if abs(ring[player.at] - ring[situation.holder.at]) == 1:
                yield Event(EventKind.PASS, situation.ball, player.number)

    return walk(book, told_apart=True, mirrored=False, begin=begin, may=passes)


def left_open(made: Walk) -> dict[tuple[str, str], str]:
    """Per pass, by spots, what the proof finds between it and the moment in which all stand."""
    found: dict[int, str] = {}
    for broken in holes(made):
        for node in broken.nodes:
            found[node] = broken.breach.cause
    open_: dict[tuple[str, str], str] = {}
    passed = 0
    for node in made.begun:
        holder = made.situations[node].holder
        for edge in made.edges[node]:
            if edge.event is None:
                continue
            passed += 1
            then = edge.target
            while then not in found and (beat := waits(made, then)) is not None:
                then = beat.target
            if then in found:
                catcher = made.situations[edge.target].holder
                open_[str(holder.at), str(catcher.at)] = found[then]
    assert passed == 8
    return open_


def waits(made: Walk, node: int) -> Edge | None:
    return next((edge for edge in made.edges[node] if edge.event is None), None)


def holes(made: Walk) -> list[Broken]:
    found: list[Broken] = []
    for prop in properties().values():
        if isinstance(prop, Always) and prop.of_holes:
            found += judge_always(made, prop, prop.numbers)
    return found


@pytest.mark.parametrize("name", LEFT_OPEN)
def test_of_the_eight_passes_of_a_full_five_out_exactly_these_are_left_open(name: str) -> None:
    found = left_open(eight_passes(name))
    assert found == LEFT_OPEN[name]
    silent, taken = (list(found.values()).count(cause) for cause in (SILENT, TAKEN))
    assert (silent, taken) == COUNTS[name]


@pytest.mark.parametrize("name", LEFT_OPEN)
def test_played_pass_by_pass_the_cutter_of_the_same_passes_stays_in_the_lane(name: str) -> None:
    book = named(name)
    ring = book.rules.index
    stuck = set()
    for start in ball_with_anyone(book):
        for player in start.situation.players:
            passer = start.situation.holder
            if abs(ring[player.at] - ring[passer.at]) != 1:
                continue
            step = one_step(book, start.situation, Event(EventKind.PASS, passer.number, player.number))
            if not any(run.startswith("come out") for run in ran(step)[passer.number]):
                stuck.add((str(passer.at), str(player.at)))
    assert stuck == set(LEFT_OPEN[name])


@pytest.mark.parametrize("name", LEFT_OPEN)
def test_a_proof_says_in_words_what_the_exit_leaves_open(name: str) -> None:
    proof = prove(named(name), (Depth.SETTLED,))
    found = {finding.breach.cause: finding for finding in proof.findings}
    assert {SILENT, TAKEN} & set(found) == set(LEFT_OPEN[name].values())
    for cause in set(LEFT_OPEN[name].values()):
        assert found[cause].far == 1
        assert found[cause].possession is not None
        assert found[cause].breach.text.startswith(("No sentence says what", f"{found[cause].breach.players[0]} is"))
    assert not proof.clean


def test_with_the_first_open_spot_none_of_the_eight_passes_leaves_anything_open() -> None:
    assert left_open(eight_passes("five-out")) == {}
