"""What holds in every possession of every book, asked of possessions drawn by lot."""

from __future__ import annotations

import json
from dataclasses import replace

from hypothesis import HealthCheck, Phase, given, settings

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.engine.explore import explore
from backcut.engine.play import settle
from backcut.engine.report import to_dict
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.offence.moves import move_text, moves_from_text
from backcut.offence.situation import Doing
from backcut.offence.situation_text import situation_from_text, situation_text

from .likeness import decision_likeness, renumbered
from .random_play import Possession, books, possessions

SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]
OFTEN = settings(max_examples=250, deadline=None, derandomize=True, suppress_health_check=SLOW, database=None)
SELDOM = settings(OFTEN, max_examples=100)
RARELY = settings(OFTEN, max_examples=20)

NUMBERS = {1: 9, 2: 12, 3: 4, 4: 7, 5: 5}


@OFTEN
@given(possessions())
def test_nobody_shares_a_spot(possession: Possession) -> None:
    for situation in possession.situations:
        standing = [p.at for p in situation.players if p.doing not in (Doing.LANE, Doing.CUTTING)]
        assert len(standing) == len(set(standing)), situation_text(situation)
        assert Spot.R not in standing, "the rim is run to, never held"


@OFTEN
@given(possessions())
def test_what_is_right_on_the_right_is_right_on_the_left(possession: Possession) -> None:
    for situation in possession.situations:
        assert situation.mirrored().mirrored() == situation
        here, there = decide(possession.book, situation), decide(possession.book, situation.mirrored())
        assert decision_likeness(there) == decision_likeness(here, mirrored=True), situation_text(situation)


@OFTEN
@given(possessions())
def test_the_number_on_the_shirt_changes_nothing(possession: Possession) -> None:
    for situation in possession.situations:
        here = decide(possession.book, situation)
        there = decide(possession.book, renumbered(situation, NUMBERS))
        assert decision_likeness(there) == decision_likeness(here, numbers=NUMBERS), situation_text(situation)


@OFTEN
@given(possessions())
def test_to_decide_twice_is_to_decide_the_same(possession: Possession) -> None:
    for step in possession.steps:
        for beat in step.beats:
            assert decide(possession.book, beat.before) == beat.decision


@OFTEN
@given(possessions())
def test_everybody_gets_one_answer_and_where_none_speaks_it_is_said(possession: Possession) -> None:
    for step in possession.steps:
        for beat in step.beats:
            assert [a.player for a in beat.decision.actions] == [p.number for p in beat.before.players]
            silent = {a.player for a in beat.decision.actions if str(a.kind) == "no answer"}
            assert silent == {trouble.player for trouble in beat.decision.troubles}


@OFTEN
@given(possessions())
def test_all_settle_whatever_has_happened(possession: Possession) -> None:
    beats, after = settle(possession.book, possession.steps[-1].after)
    assert len(beats) < 40
    assert not any(player.doing is Doing.CUTTING for player in after.players)
    again, the_same = settle(possession.book, after)
    assert (len(again), the_same) == (1, after)


@OFTEN
@given(possessions())
def test_a_situation_reads_back_as_it_was_written(possession: Possession) -> None:
    for situation in possession.situations:
        for names in (False, True):
            text = situation_text(situation, names)
            assert situation_text(situation_from_text(text), names) == text


@settings(OFTEN, phases=(Phase.generate,))
@given(possessions())
def test_a_situation_that_was_written_and_read_is_the_same_situation(possession: Possession) -> None:
    for situation in possession.situations:
        assert situation_from_text(situation_text(situation)) == situation


@SELDOM
@given(possessions())
def test_every_move_reads_back_as_it_was_written(possession: Possession) -> None:
    for step in possession.steps:
        [move] = moves_from_text(step.text)
        event = move.event(step.before)
        if event.kind is EventKind.PASS:
            # Which pass it is, and that a pass to a cutter comes before he is out, the situation says.
            event = replace(event, kind=step.event.kind, early=step.event.early)
        assert event == step.event
        assert move_text(event) == step.text


@SELDOM
@given(possessions())
def test_a_possession_can_be_written_as_json(possession: Possession) -> None:
    report = to_dict(possession.book, "fiba", possession.steps[0].before, possession.steps)
    assert json.loads(json.dumps(report)) == report
    assert len(report["steps"]) == len(possession.steps)


@RARELY
@given(books())
def test_a_count_reaches_no_more_than_there_are_ways_to_stand(book: Book) -> None:
    count, depth = explore(book, frozenset({EventKind.PASS}))
    ring, players = len(book.formation.ring), len(book.formation.start)
    ways = players
    for spot in range(ring - players, ring):
        ways *= spot + 1
    assert count.situations <= ways
    assert set(range(count.depth + 1)) == set(depth.values())
