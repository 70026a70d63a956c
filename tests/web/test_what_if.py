"""What if: every move that is offered can be made, and what belongs to a moment is offered there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from tests.web.floors import floor

from backcut.engine.play import one_step, play
from backcut.errors import BackcutError
from backcut.offence.library import presets
from backcut.offence.moves import moves_from_text
from backcut.offence.situation import IN_LANE, Doing, Guard
from backcut.web.changes import Draw, Happen, changed
from backcut.web.envelope import CanData
from backcut.web.evening import DEMO
from backcut.web.floor import Floor, played
from backcut.web.stops import Stop, told

#: Possessions against moves that were drawn: every other one ends with its shot, the rest where all stand.
DRAWN = range(6)


def possessions(book: str) -> Iterator[Floor]:
    yield floor(book=book)
    yield floor(", ".join(DEMO), book=book)
    for seed in DRAWN:
        drawn = changed(floor(book=book), Draw(kind="draw", seed=seed))
        yield drawn if seed % 2 else replace(drawn, moves=drawn.moves[:-1])


def offers(here: Floor) -> Iterator[tuple[Stop, CanData]]:
    now = told(here)
    for place, stop in enumerate(now.stops):
        for can in now.cans(place):
            yield stop, can


def offered(moves: str, stop: int, kind: str, book: str = "school-team") -> list[str]:
    return [can.move for can in told(floor(moves, book=book)).cans(stop) if can.kind == kind]


def can_be_made(here: Floor, keep: int, move: str) -> bool:
    try:
        changed(here, Happen(kind="happen", keep=keep, move=move))
    except BackcutError:
        return False
    return True


@pytest.mark.parametrize("book", presets())
def test_every_move_that_is_offered_can_be_made(book: str) -> None:
    for here in possessions(book):
        for _, can in offers(here):
            then = changed(here, Happen(kind="happen", keep=can.keep, move=can.move))
            assert then.moves == (*here.moves[: can.keep], can.move)
            assert played(then).stuck == ""


@pytest.mark.parametrize("book", presets())
def test_an_early_move_comes_after_just_the_beats_it_names(book: str) -> None:
    early = 0
    for here in possessions(book):
        for stop, can in offers(here):
            if not can.early:
                continue
            early += 1
            assert can.move.startswith(f"after {stop.beats} beat")
            then = changed(here, Happen(kind="happen", keep=can.keep, move=can.move))
            assert len(played(then).steps[can.keep - 1].beats) == stop.beats
    assert early


@pytest.mark.parametrize("book", presets())
def test_a_pass_to_the_cutter_is_offered_only_while_somebody_cuts(book: str) -> None:
    for here in possessions(book):
        for stop, can in offers(here):
            if can.kind == "pass to the cutter":
                assert can.to is not None
                assert stop.situation.player(can.to).doing in IN_LANE
                assert not stop.stands


@pytest.mark.parametrize("book", presets())
def test_a_cut_is_taken_away_only_while_it_is_on_the_way(book: str) -> None:
    for here in possessions(book):
        for stop, can in offers(here):
            if can.kind == "jam":
                assert any(player.doing is Doing.CUTTING for player in stop.situation.players)
                after = played(changed(here, Happen(kind="happen", keep=can.keep, move=can.move))).steps[-1]
                assert after.event.player == can.player


@pytest.mark.parametrize("book", presets())
def test_when_all_stand_every_pass_and_denial_that_can_be_is_offered(book: str) -> None:
    for here in possessions(book):
        now = told(here)
        step = len(now.played.steps)
        stand = now.played.begins if not step else now.played.steps[-1].after
        if stand.ended is not None:
            continue
        numbers = [player.number for player in stand.players]
        tried = [f"{stand.ball}>{n}" for n in numbers] + [f"{does} {n}" for n in numbers for does in ("deny", "free")]
        mine = {can.move for can in now.cans(len(now.stops) - 1) if can.keep == step}
        for move in tried:
            who = stand.player(int(move.split(">")[-1].split()[-1]))
            # To let somebody be who is let be, and to deny who is denied, changes nothing: these are left out.
            if move.startswith("free") and who.guard is Guard.PLAIN:
                continue
            if move.startswith("deny") and who.guard is not Guard.PLAIN:
                continue
            assert (move in mine) is can_be_made(here, step, move), move


def test_a_coach_sees_at_the_start_what_can_be_done_first() -> None:
    assert offered("", 0, "pass") == ["1>2", "1>3"]
    assert offered("", 0, "skip") == ["1>4", "1>5"]
    assert offered("", 0, "dribble") == ["dribble 1>LW", "dribble 1>RW"]
    assert offered("", 0, "deny") == ["deny 2", "deny 3", "deny 4", "deny 5"]
    assert offered("", 0, "shot") == ["shot 1"]
    assert offered("", 0, "free") == []


def test_whoever_is_denied_can_be_let_be_and_not_be_denied_twice() -> None:
    last = len(told(floor("deny 2")).stops) - 1
    assert "free 2" in offered("deny 2", last, "free") or "deny 2" in offered("deny 2", last, "deny")
    for stop, can in offers(floor("deny 2", book="first-month")):
        if can.keep == 1 and can.kind == "deny" and can.player == 2:
            assert stop.situation.player(2).guard is not Guard.DENIES or not stop.stands


def test_what_goes_with_a_pass_is_offered_with_it_and_not_later() -> None:
    moves = "1>2, 2>3"
    now = told(floor(moves))
    with_it = [place for place, stop in enumerate(now.stops) if stop.step == 2 and stop.beats == 1]
    later = [place for place, stop in enumerate(now.stops) if stop.step == 2 and stop.beats > 1]
    assert with_it
    assert later
    for place in with_it:
        assert offered(moves, place, "jump") == ["jump 2"]
        assert offered(moves, place, "forget")
    for place in later:
        assert offered(moves, place, "jump") == []
        assert offered(moves, place, "forget") == []


def test_after_the_shot_nothing_can_be_done() -> None:
    now = told(floor("1>2, shot 2"))
    assert [can for can in now.cans(len(now.stops) - 1) if can.keep == 2] == []


def test_whoever_has_the_ball_at_the_rim_lays_it_up_and_does_not_shoot() -> None:
    moves = "1>2, 2>3, deny 4, early 3>4"
    last = len(told(floor(moves)).stops) - 1
    assert offered(moves, last, "lay-up") == ["lay-up 4"]
    assert offered(moves, last, "shot") == []


def test_the_ball_is_said_first() -> None:
    kinds = [can.kind for can in told(floor("1>2")).cans(1)]
    first = [place for place, kind in enumerate(kinds) if kind in ("pass to the cutter", "pass", "skip")]
    assert max(first) < kinds.index("deny")
    assert kinds[0] == "pass to the cutter"


def test_what_is_offered_says_in_words_what_it_is() -> None:
    cans = {can.move: can for can in told(floor("1>2")).cans(1)}
    assert cans["2>3"].words == "2 passes to 3"
    assert (cans["2>3"].player, cans["2>3"].to, cans["2>3"].key) == (2, 3, "Enter")
    assert (cans["deny 3"].player, cans["deny 3"].to, cans["deny 3"].key) == (3, None, "d")
    for can in cans.values():
        assert can.words
        assert not can.words.endswith(".")


def test_a_move_made_in_mid_step_finds_the_players_where_they_were_seen() -> None:
    here = floor("1>2")
    for stop, can in offers(here):
        if can.early and can.kind == "pass":
            then = changed(here, Happen(kind="happen", keep=1, move=can.move))
            assert played(then).steps[1].before == stop.situation


def test_the_moves_are_those_of_the_move_list() -> None:
    book, begins = played(floor()).book, played(floor()).begins
    for _, can in offers(floor()):
        (move,) = moves_from_text(can.move)
        assert one_step(book, begins, move.event(begins)).after == play(book, begins, [move])[0].after
