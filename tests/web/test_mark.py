"""The denial mark moved on the floor: the line is the one the reads use, the preview is what the book would do."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

import numpy as np
import pytest

from backcut.court.courts import COURTS, court
from backcut.court.written import court_from_text
from backcut.engine.gym import gym, timed
from backcut.engine.play import play
from backcut.engine.reads import FOOT_M, denied, past_mark_m
from backcut.motion.timeline import Timeline, pose
from backcut.offence.book import Book
from backcut.offence.library import preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.offence.settings import mark_from_text
from backcut.offence.situation import Situation
from backcut.web.mark import preview
from backcut.web.mark_line import LEAST_RING_M, STEP_M, handle_m, limits_m, mark_at, mark_path, mark_text, ring_m

DEPTHS = (-2.0, -1.0, -0.35, 0.0, 0.35, 1.0, 2.0)


def school_team(**lines: str) -> Book:
    text = preset_text("school-team")
    for old, new in lines.items():
        text = text.replace(old, new)
    book, problems = book_from_text(text)
    assert not problems
    return book


@cache
def denying(moves: str = "deny 2") -> tuple[Book, Timeline, Situation, float]:
    """The school team with 2 denied, at the second in which the book sees it."""
    book = school_team()
    steps = play(book, book.start(), moves_from_text(moves))
    line = timed(book, steps, gym(book))
    return book, line, steps[-1].before, line.cues_s[-1]


def tried(mark_m: float | None = None, book: Book | None = None) -> dict[str, Any]:
    own, line, situation, t_s = denying()
    return preview(book or own, line, situation, t_s, mark_m)


def points(path: str) -> np.ndarray[Any, np.dtype[np.float64]]:
    return np.array([[float(n) for n in pair.split()] for pair in re.split("[ML]", path)[1:]]) / 100


@pytest.mark.parametrize("name", COURTS)
@pytest.mark.parametrize("mark_m", DEPTHS)
def test_the_mark_runs_where_the_reads_begin_to_deny(name: str, mark_m: float) -> None:
    here = court(name)
    low, high = limits_m(here)
    depth = min(max(mark_m, low), high)
    line = points(mark_path(here, depth))
    # Away from the two corners, where the straight part meets the arc, every point of the line is on the mark.
    level = here.junction_m[1] if here.junction_m else -99.0
    away = line[np.abs(line[:, 1] - level) > 0.1]
    assert len(away) > 40
    assert np.abs(past_mark_m(away, here, depth)).max() < 0.005


@pytest.mark.parametrize("name", COURTS)
def test_the_mark_stays_on_the_floor_at_every_depth(name: str) -> None:
    here = court(name)
    low, high = limits_m(here)
    for depth in np.arange(low, high + STEP_M / 2, STEP_M).tolist():
        line = points(mark_path(here, depth))
        assert np.abs(line[:, 0]).max() <= here.half_width_m + 1e-3
        assert line[:, 1].max() <= here.mid_court_y_m + 1e-3
        assert line[:, 1].min() >= here.baseline_y_m - 1e-3


@pytest.mark.parametrize("name", COURTS)
def test_both_halves_of_the_mark_are_mirror_images(name: str) -> None:
    line = points(mark_path(court(name), -0.4))
    assert np.allclose(line, line[::-1] * (-1, 1))


def test_the_limits_are_two_metres_each_way_where_the_floor_has_room() -> None:
    assert limits_m(court("fiba")) == (-2.0, 2.0)


def test_on_a_small_floor_the_mark_stops_where_the_floor_does() -> None:
    here = court_from_text("fiba, 8 m x 6 m")
    low, high = limits_m(here)
    assert -2.0 < low < 0 < high < 2.0
    assert LEAST_RING_M <= ring_m(here) + low < LEAST_RING_M + STEP_M
    assert here.mid_court_y_m - STEP_M < ring_m(here) + high <= here.mid_court_y_m


@pytest.mark.parametrize("name", COURTS)
@pytest.mark.parametrize("mark_m", DEPTHS)
def test_the_handle_lies_on_the_mark_and_gives_the_depth_back(name: str, mark_m: float) -> None:
    here = court(name)
    book = school_team()
    low, high = limits_m(here)
    depth = round(min(max(mark_m, low), high), 2)
    place = handle_m(here, gym(book, name).placing.spots, depth)
    assert float(past_mark_m(np.array(place), here, depth)) == pytest.approx(0.0, abs=1e-6)
    assert mark_at(here, place) == pytest.approx(depth)


def test_a_dragged_place_is_rounded_to_five_centimetres_and_kept_within_the_limits() -> None:
    here = court("fiba")
    radius = here.arc_radius.m
    assert mark_at(here, (0.0, radius - 0.42)) == pytest.approx(-0.4)
    assert mark_at(here, (0.0, radius - 0.43)) == pytest.approx(-0.45)
    assert mark_at(here, (0.0, 0.5)) == -2.0
    assert mark_at(here, (0.0, 12.0)) == 2.0


@pytest.mark.parametrize("mark_m", DEPTHS)
def test_what_is_said_of_the_mark_is_what_the_book_reads(mark_m: float) -> None:
    assert mark_from_text(mark_text(mark_m)) == pytest.approx(mark_m)


def test_a_deeper_mark_lets_the_denied_wing_back_cut() -> None:
    found = tried(-1.0)
    assert found["denied"] == [2]
    assert [(cut["player"], cut["words"], cut["letter"]) for cut in found["cuts"]] == [(2, "back cuts", "C")]
    assert found["words"] == "Denied from 1.00 m inside the arc. X2 denies: 2 back cuts."


def test_a_mark_farther_out_takes_the_cut_away() -> None:
    found = tried(1.0)
    assert found["denied"] == []
    assert found["cuts"] == []
    assert found["words"] == "Denied from 1.00 m outside the arc. Nobody one pass away is denied."


def test_without_a_depth_the_books_own_mark_is_shown() -> None:
    book = school_team(**{"Denial mark: the arc": "Denial mark: 0.40 m inside the arc"})
    assert tried(book=book)["mark_m"] == -0.4
    assert tried()["mark_m"] == 0.0


@pytest.mark.parametrize("how", ["foot", "hand", "either"])
@pytest.mark.parametrize("mark_m", DEPTHS)
def test_the_preview_denies_whom_the_reads_deny(how: str, mark_m: float) -> None:
    book = school_team(**{"Denial: foot": f"Denial: {how}"})
    _, line, situation, t_s = denying()
    here, now = gym(book).court, pose(line, t_s)
    near = [
        player.number
        for player in situation.players
        if abs(book.rules.index[player.at] - book.rules.index[situation.holder.at]) == 1
    ]
    wanted = [
        n
        for n in near
        if denied(np.array(now.ball[:2]), np.array(now.players[n]), np.array(now.defenders[n][:2]), here, how, mark_m)
    ]
    assert preview(book, line, situation, t_s, mark_m)["denied"] == wanted


@pytest.mark.parametrize("mark_m", DEPTHS)
def test_the_front_foot_is_where_the_reads_have_it(mark_m: float) -> None:
    found = tried(mark_m)
    _, line, _, t_s = denying()
    now, here = pose(line, t_s), court("fiba")
    assert {foot["player"] for foot in found["feet"]} == set(now.defenders) - {now.holder}
    for foot in found["feet"]:
        body = np.array(now.defenders[foot["player"]][:2])
        ahead = FOOT_M if foot["foot"] == "front" else -FOOT_M
        # The place is told in whole centimetres.
        assert float(np.hypot(foot["x_cm"] / 100 - body[0], foot["y_cm"] / 100 - body[1])) == pytest.approx(
            FOOT_M, abs=0.01
        )
        past = float(past_mark_m(body, here, mark_m)) + ahead
        assert foot["past_m"] == pytest.approx(past, abs=0.006)
        assert foot["over"] is (past > 0)
        drawn = np.array([foot["x_cm"], foot["y_cm"]]) / 100
        assert float(past_mark_m(drawn, here, mark_m)) == pytest.approx(past, abs=0.02)


def test_a_book_that_reads_hands_says_that_feet_do_not_count() -> None:
    book = school_team(**{"Denial: foot": "Denial: hand"})
    said = preview(book, *denying()[1:], -2.0)["words"]
    assert said.startswith("Denied by a hand in the lane, wherever the feet are.")


def test_two_denials_bring_the_flash_that_the_book_asks_for() -> None:
    book = school_team()
    steps = play(book, book.start(), moves_from_text("deny 2+3"))
    line = timed(book, steps, gym(book))
    found = preview(book, line, steps[-1].before, line.cues_s[-1], -1.0)
    assert found["denied"] == [2, 3]
    assert {cut["letter"] for cut in found["cuts"]} == {"B", "C"}
    assert "4 flashes to the right elbow" in found["words"]


def test_after_the_shot_nobody_is_denied() -> None:
    book = school_team()
    steps = play(book, book.start(), moves_from_text("shot"))
    line = timed(book, steps, gym(book))
    found = preview(book, line, steps[-1].after, line.duration_s, -2.0)
    assert (found["denied"], found["cuts"]) == ([], [])


def test_a_court_without_an_arc_has_its_mark_on_the_stand_in_ring() -> None:
    here = court_from_text("fiba, no arc")
    line = points(mark_path(here, 0.5))
    assert np.abs(np.hypot(line[:, 0], line[:, 1]) - ring_m(here) - 0.5).max() < 0.005
