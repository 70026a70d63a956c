"""The naive second reading of the rules comes to the same situations as the proof: the same sets, not only as many."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from tests.engine.second import choices_of, ring_of, start_of
from tests.oracle.reading import WITH_PAIRS, reach
from tests.prove.books import named

from backcut.engine.possession import Decision
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Situation
from backcut.prove.depth import Depth, may_happen
from backcut.prove.starts import Start
from backcut.prove.walk import walk

_TOLD = frozenset({EventKind.PASS, EventKind.SKIP, EventKind.DENY})


@pytest.mark.parametrize(
    "name", ["five-out", "four-out", "three-out", "opposite-corner", "opposite-own", "nearest-fills"]
)
@pytest.mark.parametrize(
    ("depth", "moves"),
    [(Depth.SETTLED, ("pass", "skip")), (Depth.DENIED, WITH_PAIRS)],
    ids=["settled", "denied"],
)
def test_both_readings_come_to_the_same_settled_situations(name: str, depth: Depth, moves: tuple[str, ...]) -> None:
    book = named(name)

    def may(situation: Situation, decision: Decision, settled: bool) -> Iterator[Event]:
        if settled:  # the second reading knows no fillers on the way
            yield from (e for e in may_happen(book, situation, decision, settled, depth) if e.kind in _TOLD)

    walked = walk(book, depth, told_apart=True, mirrored=False, begin=[Start("the start", book.start())], may=may)
    ring = ring_of(book)
    ours = {
        (tuple((p.number, str(p.at)) for p in situation.players if str(p.at) in ring), situation.ball)
        for situation, rest, decision in zip(walked.situations, walked.settled, walked.decisions, strict=True)
        if rest and not decision.troubles
    }
    where, ball = start_of(book)
    # Without a sentence for it, a skip is not tried and a denial moves nobody.
    needs = {"skip": "skip pass", "deny": "back cut", "deny pair": "back cut"}
    told = tuple(move for move in moves if needs.get(move, "hold") in book.rules.names)
    theirs = {
        (tuple(sorted(stands.items())), holder)
        for stands, holder in reach(ring, where, ball, told, choices_of(book))[0]
    }
    assert ours == theirs
