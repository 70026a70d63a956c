"""A moment as it is drawn: everybody in his place, every tab where it can be read."""

from __future__ import annotations

import math

import pytest

from backcut.court.courts import court
from backcut.motion.timeline import pose
from backcut.picture.floor import floor
from backcut.picture.lettering import Box, flag_box
from backcut.picture.moment import bodies, floor_label, scene
from backcut.picture.scene import Mark, Word
from backcut.picture.show import Show

from .demo import demo

SHOW = demo()
ROOM = floor(court("fiba")).room
MOMENTS = range(len(SHOW.moments))


def flags(show: Show, index: int) -> list[Mark]:
    drawn = scene(show, show.moments[index], ROOM)
    return [p for p in drawn.over if isinstance(p, Mark)]


@pytest.mark.parametrize("index", MOMENTS)
def test_nobody_is_moved_to_look_better(index: int) -> None:
    moment = SHOW.moments[index]
    places = pose(SHOW.timeline, moment.t_s)
    marks = {mark.name: mark for mark in bodies(moment, SHOW.timeline)}
    for player, (x, y) in places.players.items():
        assert (marks[f"p{player}"].x_cm, marks[f"p{player}"].y_cm) == pytest.approx((x * 100, y * 100))
    for player, (x, y, _) in places.defenders.items():
        assert (marks[f"x{player}"].x_cm, marks[f"x{player}"].y_cm) == pytest.approx((x * 100, y * 100))


@pytest.mark.parametrize("index", MOMENTS)
def test_every_tab_is_on_the_floor_and_clear_of_the_players(index: int) -> None:
    places = pose(SHOW.timeline, SHOW.moments[index].t_s)
    for flag in flags(SHOW, index):
        box = flag_box(flag.x_cm, flag.y_cm, flag.word)
        assert box.overlap(ROOM) == pytest.approx((box.right - box.left) * (box.bottom - box.top))
        assert all(box.depth((x * 100, y * 100), 47.0) == 0.0 for x, y in places.players.values())


@pytest.mark.parametrize("index", MOMENTS)
def test_no_tab_covers_another(index: int) -> None:
    boxes: list[Box] = [flag_box(f.x_cm, f.y_cm, f.word) for f in flags(SHOW, index)]
    assert all(a.overlap(b) == 0.0 for i, a in enumerate(boxes) for b in boxes[i + 1 :])


def test_every_move_carries_the_letter_of_its_sentence_and_only_the_lit_tab_is_filled() -> None:
    assert {(f.text, f.word): f.style for f in flags(SHOW, 3)} == {
        ("A", "back cut"): "on",
        ("C", "fill the top"): "",
        ("D", "out"): "",
    }


def test_an_open_spot_without_an_arrow_says_its_name() -> None:
    words = [p.text for p in scene(SHOW, SHOW.moments[4], ROOM).over if isinstance(p, Word)]
    assert words == ["right wing"]


def test_the_ball_sits_on_its_holders_ring_toward_the_next_pass() -> None:
    (ball,) = (mark for mark in bodies(SHOW.moments[0], SHOW.timeline) if mark.symbol == "ball")
    dx, dy = ball.shift_cm
    assert math.hypot(dx, dy) == pytest.approx(60.0)
    assert dx < 0 < 60 > dy  # from the top toward the left wing: left, and up the page
    assert dy < 0


def test_only_the_denier_is_filled_and_only_the_man_on_the_ball_has_arms() -> None:
    symbols = {m.name: m.symbol for m in bodies(SHOW.moments[3], SHOW.timeline) if m.name.startswith("x")}
    assert symbols == {"x1": "plain", "x2": "denies", "x3": "arms", "x4": "plain", "x5": "plain"}


def test_the_floor_can_be_heard() -> None:
    said = floor_label(SHOW, SHOW.moments[3])
    assert "3 at the left wing, has the ball" in said
    assert "2 between spots, back cuts, defender denies" in said
