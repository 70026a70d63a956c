"""The stops of the time line: where it starts, each decision, where it ends, and who stands where at each."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.web.floors import floor

from backcut.engine.play import play
from backcut.errors import BackcutError
from backcut.motion.timeline import pose
from backcut.offence.library import presets
from backcut.offence.moves import moves_from_text
from backcut.offence.situation import IN_LANE
from backcut.prove.wanted import right
from backcut.web.changes import Draw, changed
from backcut.web.evening import DEMO
from backcut.web.floor import Floor, played
from backcut.web.stops import END_S, told


def possessions(book: str) -> list[Floor]:
    """The start alone, the demo, and moves that were drawn, half of them without the shot at the end."""
    drawn = [changed(floor(book=book), Draw(kind="draw", seed=seed)) for seed in range(8)]
    drawn[4:] = [replace(here, moves=here.moves[:-1]) for here in drawn[4:]]
    return [floor(book=book), floor(", ".join(DEMO), book=book), *drawn]


def test_before_anything_happens_there_is_one_stop_and_all_stand() -> None:
    now = told(floor())
    (stop,) = now.stops
    assert (stop.step, stop.beats, stop.stands) == (0, 0, True)
    assert stop.situation == played(floor()).begins
    assert [moment.t_s for moment in now.show.moments] == [0.0]
    assert now.show.moments[0].caption == "1 has the ball."


@pytest.mark.parametrize("book", presets())
def test_every_possession_starts_where_all_stand_and_goes_on_in_time(book: str) -> None:
    for here in possessions(book):
        now = told(here)
        times = [moment.t_s for moment in now.show.moments]
        assert len(now.stops) == len(times)
        assert times[0] == 0.0
        assert times == sorted(times)
        assert (now.stops[0].step, now.stops[0].stands) == (0, True)
        way = [(stop.step, stop.beats) for stop in now.stops]
        assert way == sorted(way)
        assert {stop.step for stop in now.stops[1:]} <= set(range(1, len(now.played.steps) + 1))


@pytest.mark.parametrize("book", presets())
def test_the_last_stop_is_where_all_stand_unless_it_was_just_seen_or_the_ball_is_gone(book: str) -> None:
    stood = 0
    for here in possessions(book):
        now = told(here)
        if not now.played.steps:
            continue
        after, end = now.played.steps[-1].after, now.stops[-1]
        if end.stands:
            stood += 1
            assert end.situation == after
            assert after.ended is None
            assert now.show.moments[-1].t_s == now.show.timeline.duration_s
        elif after.ended is None and not any(b.decision.troubles for b in now.played.steps[-1].beats):
            assert now.show.timeline.duration_s - now.show.moments[-1].t_s <= END_S
    assert stood


def test_a_possession_that_goes_on_ends_where_all_stand() -> None:
    now = told(floor("1>2"))
    assert now.stops[-1].beats == len(now.played.steps[0].beats) or now.stops[-1].stands
    assert not told(floor("1>2, shot 2")).stops[-1].stands


@pytest.mark.parametrize("book", presets())
def test_what_is_asked_at_a_stop_is_a_situation_the_rules_went_through(book: str) -> None:
    for here in possessions(book):
        now = told(here)
        for stop in now.stops:
            if stop.step and not stop.stands:
                step = now.played.steps[stop.step - 1]
                assert stop.asked in [beat.before for beat in step.beats] or stop.asked == step.after
                assert stop.situation in [beat.before for beat in step.beats] or stop.situation == step.after


@pytest.mark.parametrize("book", presets())
def test_the_keyboard_finds_every_player_once_and_every_empty_spot_of_the_ring(book: str) -> None:
    for here in possessions(book):
        now = told(here)
        ring = {str(spot) for spot in now.played.book.formation.ring}
        for place, stop in enumerate(now.stops):
            cells = now.cells(place)
            players = [cell for cell in cells if cell.player is not None]
            assert sorted(cell.player or 0 for cell in players) == sorted(p.number for p in stop.situation.players)
            assert [cell.player for cell in cells if cell.ball] == [stop.situation.ball]
            taken = {str(player.at) for player in stop.situation.players}
            assert {cell.id for cell in cells if cell.player is None} == ring - taken


@pytest.mark.parametrize("book", presets())
def test_a_cutter_is_found_where_he_runs_and_whoever_is_counted_on_a_spot_is_found_there(book: str) -> None:
    for here in possessions(book):
        now = told(here)
        for place, stop in enumerate(now.stops):
            seen = pose(now.show.timeline, now.show.moments[place].t_s).players
            for cell in now.cells(place):
                if cell.player is None:
                    continue
                player = stop.situation.player(cell.player)
                runs = player.doing in IN_LANE or player.at not in now.show.spots
                x, y = seen[cell.player] if runs else now.show.spots[player.at]
                assert (cell.x, cell.y) == (round(x * 100), round(y * 100))


def test_a_cell_says_where_who_has_what_and_what_his_defender_does() -> None:
    now = told(floor("1>2"))
    assert "right wing, 2, has the ball" in [cell.label for cell in now.cells(1)]
    denied = told(floor("1>2, sag 4"))
    assert any(cell.label.endswith("4, defender sagging") for cell in denied.cells(len(denied.stops) - 1))
    empty = told(floor("1>2")).cells(2)
    assert all(cell.label.endswith(", empty") for cell in empty if cell.player is None)


@pytest.mark.parametrize("book", presets())
def test_where_each_player_goes_is_what_the_book_says_there(book: str) -> None:
    for here in possessions(book)[:4]:
        now = told(here)
        for place, stop in enumerate(now.stops):
            said = now.right(place)
            for player in stop.asked.players:
                spots = right(now.played.book, stop.asked, player.number)
                assert said[str(player.number)] == sorted(spot.title for spot in spots)


# ── as far as it goes ───────────────────────────────────────────────────


@pytest.mark.parametrize(
    ("moves", "goes", "why"),
    [
        ("1>2, 1>3", 1, "1>3"),
        ("1>2, 2>3, 2>1, 1>4", 2, "2>1"),
        ("lay-up 1, 1>2", 1, "1>2"),
        ("jam 3", 0, "jam 3"),
        ("1>2, deny 9", 1, "deny 9"),
    ],
)
def test_a_possession_is_played_as_far_as_it_goes_and_says_why_not_farther(moves: str, goes: int, why: str) -> None:
    here = floor(moves)
    seen = played(here)
    assert len(seen.steps) == goes
    assert why in seen.stuck
    assert told(here).played.stuck == seen.stuck


@pytest.mark.parametrize("book", presets())
def test_what_is_played_of_another_books_possession_is_the_longest_beginning_that_can_be(book: str) -> None:
    for other in presets():
        for seed in range(5):
            moves = changed(floor(book=other), Draw(kind="draw", seed=seed)).moves
            seen = played(Floor(floor(book=book).text, "", moves))
            read = moves_from_text(", ".join(moves))
            goes = len(seen.steps)
            assert not goes or play(seen.book, seen.begins, read[:goes]) == list(seen.steps)
            if goes < len(read):
                with pytest.raises(BackcutError) as refused:
                    play(seen.book, seen.begins, read[: goes + 1])
                assert str(refused.value) == seen.stuck


@pytest.mark.parametrize("start", ["nonsense", "1 T* 2 T 3 LW 4 RW 5 LC", "1 LS* 2 RS 3 LW 4 RW 5 LC"])
def test_a_start_that_is_none_of_this_book_is_said_and_its_own_is_shown(start: str) -> None:
    seen = played(floor(start=start))
    assert seen.stuck.endswith(".")
    assert seen.begins == played(floor()).begins
    assert len(told(floor(start=start)).stops) == 1


def test_a_start_of_the_coachs_own_is_where_it_starts() -> None:
    start = "1 RW*; 2 T; 3 LW; 4 RC; 5 LC"
    seen = played(floor("1>2", start=start))
    assert seen.stuck == ""
    assert seen.begins.ball == 1
    assert str(seen.begins.holder.at) == "RW"
    assert len(seen.steps) == 1
