"""A drill holds the decision with as few players as can be, and its false cues are answered otherwise."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from tests.teaching.books import book, every, shown

from backcut.engine.play import play
from backcut.errors import BackcutError
from backcut.offence.action import Kind
from backcut.offence.moves import moves_from_text
from backcut.teaching.drills.cues import cues
from backcut.teaching.drills.piece import Piece, pieces
from backcut.teaching.drills.places import places


def told(piece: Piece, numbers: tuple[int, ...]) -> set[tuple[object, ...]]:
    """All that the player of the piece is told when only these are there; nothing where it cannot be played."""
    there = replace(piece.start, players=tuple(p for p in piece.start.players if p.number in numbers))
    try:
        steps = play(piece.book, there, moves_from_text(piece.moves))
    except BackcutError:
        return set()
    if any(beat.decision.troubles for step in steps for beat in step.beats):
        return set()
    actions = [a for beat in steps[-1].beats for a in beat.decision.actions if a.player == piece.player]
    return {(a.habit, a.kind, a.target) for a in actions}


@pytest.mark.parametrize(("name", "rank"), every())
def test_with_one_player_fewer_the_decision_is_gone(name: str, rank: int) -> None:
    least = pieces(shown(name)[rank])[0]
    wanted = (rank, least.action.kind, least.action.target)
    assert wanted in told(least, least.numbers)
    every_number = [p.number for p in shown(name)[rank].possession.start.players]
    whole = replace(least, start=shown(name)[rank].possession.start)
    for numbers in combinations(every_number, least.size - 1):
        if least.player in numbers and whole.start.ball in numbers and len(numbers) > 1:
            assert wanted not in told(whole, numbers)


@pytest.mark.parametrize(("name", "rank"), every())
def test_forms_grow_by_one_player_up_to_the_whole_team(name: str, rank: int) -> None:
    forms = pieces(shown(name)[rank])
    sizes = [form.size for form in forms]
    assert sizes == list(range(sizes[0], len(shown(name)[rank].possession.start.players) + 1))
    for form in forms:
        assert (rank, form.action.kind, form.action.target) in told(form, form.numbers)


@pytest.mark.parametrize(("name", "rank"), every())
def test_a_false_cue_has_another_answer_than_the_true_one(name: str, rank: int) -> None:
    for piece in pieces(shown(name)[rank]):
        true, *false = cues(piece)
        assert true.true
        assert true.action == piece.action
        assert (true.action.habit, true.action.kind, true.action.target) == (
            rank,
            piece.action.kind,
            piece.action.target,
        )
        for cue in false:
            assert (cue.action.habit, cue.action.kind, cue.action.target) != (
                rank,
                true.action.kind,
                true.action.target,
            )
            assert cue.action.player == piece.player
            assert cue.action.kind is not Kind.NO_ANSWER


def test_every_sentence_of_the_school_team_can_be_drilled_with_a_false_cue_off_a_defender_or_the_ball() -> None:
    for rank, one in shown("school-team").items():
        assert any(cue.kind is not None for form in pieces(one) for cue in cues(form)[1:]), book("school-team").cue(
            rank
        )


@pytest.mark.parametrize(("name", "rank"), every())
def test_a_drill_is_run_on_both_sides(name: str, rank: int) -> None:
    spots = places(pieces(shown(name)[rank])[0])
    assert spots
    assert {spot.mirror for spot in spots} == set(spots)


def test_the_passer_cuts_from_every_spot_of_the_ring() -> None:
    first = book("first-month")
    assert places(pieces(shown("first-month")[0])[0]) == first.formation.ring
