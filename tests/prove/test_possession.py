"""A way through a walk is a possession that can be played, move for move."""

from __future__ import annotations

import pytest
from tests.prove.books import SHIPPED, named

from backcut.engine.play import play
from backcut.offence.moves import moves_from_text
from backcut.prove.depth import Depth
from backcut.prove.fold import fold, plain
from backcut.prove.possession import possession
from backcut.prove.walk import walk


@pytest.mark.parametrize("name", SHIPPED)
@pytest.mark.parametrize("depth", list(Depth))
def test_the_move_list_of_every_situation_plays_to_that_situation(name: str, depth: Depth) -> None:
    book = named(name)
    made = walk(book, depth, most=2000)
    every = max(1, len(made.situations) // 150)
    for node in range(0, len(made.situations), every):
        shown = possession(made, node)
        if not shown.steps:
            assert fold(plain(book, shown.start), made.role, made.mirror)[0] == made.situations[node]
            continue
        steps = play(book, shown.start, moves_from_text(shown.moves))
        assert [step.event.kind for step in steps] == [step.event.kind for step in shown.steps]
        assert steps[-1].before == shown.steps[-1].before
        beats = [beat.before for beat in steps[-1].beats] + [steps[-1].after]
        assert shown.seen in beats, shown.moves
        assert fold(plain(book, shown.seen), made.role, made.mirror)[0] == made.situations[node]


def test_a_plain_pass_is_written_as_a_plain_pass() -> None:
    made = walk(named("opposite-corner"))
    hole = next(node for node, decision in enumerate(made.decisions) if decision.troubles)
    shown = possession(made, hole)
    assert shown.moves.count(">") == 1
    assert "after" not in shown.moves
    assert "early" not in shown.moves


def test_an_early_pass_says_when_it_comes() -> None:
    made = walk(named("first-month"), Depth.OVERLAPPED)
    written = {possession(made, node).moves for node in range(len(made.situations)) if made.far[node] == 2}
    assert any("early" in moves for moves in written)
    assert any("after 1 beat" in moves for moves in written)
