"""A finding's moment and its still: the moment lies where the rules see it, the still shows what it is about."""

from __future__ import annotations

import math
from itertools import combinations

import pytest

from backcut.engine.play import play
from backcut.engine.possession import Step
from backcut.motion.timeline import pose
from backcut.offence.moves import moves_from_text
from backcut.picture.apart import APART_CM, pushed_apart
from backcut.picture.found import show_at, show_of_start
from backcut.picture.scene import Line, Mark
from backcut.picture.show import Moment, Show
from backcut.picture.still import About, still

from .proved import opposite

MOVES = ("T>RW, RW>T", "T>RW, deny 3", "T>RW, RW>RC, RC>RW")


def steps(moves: str) -> list[Step]:
    book = opposite()
    return play(book, book.start(), moves_from_text(moves))


@pytest.mark.parametrize("moves", MOVES)
def test_every_beat_of_a_possession_has_its_moment_in_order(moves: str) -> None:
    played = steps(moves)
    for number, step in enumerate(played):
        times = []
        for beat in range(len(step.beats) + 1):
            show, place = show_at(opposite(), played, (number, beat), "Look here.")
            moment = show.moments[place]
            assert "Look here." in moment.caption
            assert [m.t_s for m in show.moments] == sorted(m.t_s for m in show.moments)
            assert show.timeline.cues_s[number] <= moment.t_s <= show.timeline.duration_s
            times.append(moment.t_s)
            assert still(show, moment, played, About((number, beat))).words
        assert times == sorted(times)


def test_what_the_book_leaves_open_is_one_stop_and_not_two() -> None:
    played = steps("T>RW, RW>T")
    show, place = show_at(opposite(), played, (1, 3))
    assert place == len(show.moments) - 1
    assert [moment.caption for moment in show.moments].count("No sentence says what 2 does, in the lane.") == 1


def test_after_the_last_beat_all_stand_on_their_spots() -> None:
    played = steps("T>RW, deny 3")
    show, place = show_at(opposite(), played, (1, len(played[1].beats)), "All stand.")
    places = pose(show.timeline, show.moments[place].t_s).players
    for player in played[1].after.players:
        assert math.dist(places[player.number], show.spots[player.at]) < 1.0


def test_those_who_set_out_in_a_beat_have_their_arrows() -> None:
    played = steps("T>RW")
    cut = still(*_at(played, (0, 0)))
    lines = [line.style for line in cut.drawn if isinstance(line, Line)]
    assert lines.count("run") == 1
    assert lines.count("pass") == 1


def _at(played: list[Step], at: tuple[int, int]) -> tuple[Show, Moment, list[Step], About]:
    show, place = show_at(opposite(), played, at, "Here.")
    return show, show.moments[place], played, About(at)


def test_only_the_defender_who_denies_is_drawn() -> None:
    drawn = still(*_at(steps("T>RW, deny 3"), (1, 0))).drawn
    plates = [mark.text for mark in drawn if isinstance(mark, Mark) and mark.text.startswith("X")]
    assert plates == ["X3"]


def test_a_start_shows_everybody_on_his_spot() -> None:
    book = opposite()
    show = show_of_start(book, book.start())
    drawn = still(show, show.moments[0], (), About((0, 0))).drawn
    marks = {mark.text: mark for mark in drawn if isinstance(mark, Mark) and mark.text}
    for player in book.start().players:
        x, y = show.spots[player.at]
        assert math.dist((marks[str(player.number)].x_cm, marks[str(player.number)].y_cm), (x * 100, y * 100)) < 1.0
        assert marks[str(player.number)].symbol == ("holder" if player.number == book.start().ball else "attacker")


def test_marks_that_overlap_are_pushed_apart_a_little_and_no_more() -> None:
    at = {("p", 1): (0.0, 0.0), ("p", 2): (60.0, 0.0), ("x", 2): (60.0, 300.0)}
    moved = pushed_apart(at, dict.fromkeys(at, 50.0))
    assert moved["x", 2] == at["x", 2]
    assert math.dist(moved["p", 1], moved["p", 2]) == pytest.approx(106.0)
    close = pushed_apart({("p", 1): (0.0, 0.0), ("p", 2): (0.0, 0.0)}, dict.fromkeys(at, 200.0))
    assert all(math.dist(place, (0.0, 0.0)) <= APART_CM + 1e-6 for place in close.values())
    assert all(a != b for a, b in combinations(close.values(), 2))
