"""A clip plays anywhere, is short and small, and everybody in it stands where the pose has them."""

from __future__ import annotations

import io
from itertools import pairwise
from pathlib import Path
from typing import Any

import av
import numpy as np
import pytest
from tests.cli.told import backcut
from tests.pseudo import PSEUDO, hard_wired
from tests.teaching.books import book, shown
from tests.teaching.test_words import own

from backcut.language import speaking
from backcut.motion.timeline import pose
from backcut.picture.show import Show
from backcut.picture.story import show
from backcut.teaching.clips.clip import Clip, clip
from backcut.teaching.clips.cut import FPS, LONGEST_S, SHORTEST_S, Part, cut_of, cut_whole, pictures
from backcut.teaching.clips.sheet import UPRIGHT, WIDE, Shape, Sheet
from backcut.teaching.clips.sprites import drawn


def told(name: str, rank: int) -> Show:
    return show(book(name), list(shown(name)[rank].possession.steps))


def made(name: str, rank: int, shape: Shape = UPRIGHT, light: str = "day") -> Clip:
    here = told(name, rank)
    return clip(here, cut_of(here, shown(name)[rank]), shape=shape, light=light)


def frames(one: Clip) -> tuple[Any, list[Any]]:
    """The stream as the coding library tells of it, and every picture."""
    with av.open(io.BytesIO(one.mp4), "r") as file:
        stream = file.streams.video[0]
        assert not file.streams.audio
        context = stream.codec_context
        about = (context.name, context.pix_fmt, context.width, context.height, float(stream.average_rate or 0))
        return about, [frame.to_ndarray(format="rgb24") for frame in file.decode(video=0)]


@pytest.mark.parametrize(("rank", "shape"), [(0, UPRIGHT), (1, UPRIGHT), (2, WIDE), (3, WIDE)])
def test_every_clip_of_the_first_month_plays_in_a_phone_s_chat(rank: int, shape: Shape) -> None:
    """Read back by FFmpeg's libraries: H.264, 4:2:0, 6 to 10 s, under 1.5 MB."""
    one = made("first-month", rank, shape)
    about, seen = frames(one)
    assert about == ("h264", "yuv420p", shape.wide_px, shape.high_px, FPS)
    assert SHORTEST_S <= len(seen) / FPS <= LONGEST_S
    assert len(seen) / FPS == pytest.approx(one.seconds)
    assert len(one.mp4) < 1_500_000


def test_what_a_phone_reads_first_stands_first() -> None:
    """ISO/IEC 14496-12: the movie box before the media data, so that it plays before all of it has come."""
    data = made("first-month", 2).mp4
    assert 0 < data.index(b"moov") < data.index(b"mdat")


@pytest.mark.parametrize("name", ["first-month", "school-team", "four-out-school-team", "two-bigs"])
def test_every_sentence_fits_into_six_to_ten_seconds_still_then_slow_then_at_game_speed(name: str) -> None:
    for rank, one in shown(name).items():
        here = told(name, rank)
        cut = cut_of(here, one)
        shot = pictures(here, cut)
        assert SHORTEST_S <= len(shot) / FPS <= LONGEST_S
        parts = [picture.part for picture in shot]
        assert parts == sorted(parts, key=list(Part).index)
        assert set(parts) == set(Part)
        game = [picture.t_s for picture in shot if picture.part is Part.GAME]
        assert np.median([b - a for a, b in pairwise(game) if b > a]) == pytest.approx(1 / FPS, abs=0.001)
        slow = [picture.t_s for picture in shot if picture.part is Part.SLOW]
        assert np.median([b - a for a, b in pairwise(slow) if b > a]) < 0.9 / FPS
        assert slow[-1] == pytest.approx(cut.ends_s, abs=0.1)


def test_a_possession_is_shown_from_its_beginning_as_far_as_there_is_time() -> None:
    here = told("school-team", 8)
    cut = cut_whole(here)
    assert cut.begins_s == 0.0
    assert cut.whole is (cut.ends_s == here.timeline.duration_s)


@pytest.mark.parametrize("shape", [UPRIGHT, WIDE])
def test_everybody_is_drawn_where_the_pose_has_them(shape: Shape) -> None:
    """In decoded pictures: the middle of the white disc of every player, within two pixels of the pose."""
    here = told("school-team", 2)
    cut = cut_of(here, shown("school-team")[2])
    _, seen = frames(clip(here, cut, shape=shape))
    sheet = Sheet.of(here, shape, "day")
    found = 0
    for number in np.linspace(0, len(seen) - 1, 12).astype(int):
        picture = pictures(here, cut)[number]
        places = pose(here.timeline, picture.t_s)
        guards = [sheet.place(x * 100, y * 100) for x, y, _ in places.defenders.values()]
        others = {n: sheet.place(x * 100, y * 100) for n, (x, y) in places.players.items()}
        for player, (x, y) in others.items():
            near = [
                g
                for g in [*guards, *(o for n, o in others.items() if n != player)]
                if np.hypot(g[0] - x, g[1] - y) < 90
            ]
            if near or player == places.holder or not 40 < x < shape.floor_px - 40:
                continue  # overlapped marks have no whole disc
            cx, cy = disc(seen[number], x, y, 47 * 1.22 * sheet.px_cm)
            assert np.hypot(cx - x, cy - y) < 2.0, (player, picture.t_s)
            found += 1
    assert found >= 12


def disc(picture: Any, x: float, y: float, radius: float) -> tuple[float, float]:
    """The middle of the ring of ink nearest to this place, by the weight of its dark pixels."""
    reach = int(radius + 8)
    left, top = int(x) - reach, int(y) - reach
    part = picture[max(top, 0) : int(y) + reach, max(left, 0) : int(x) + reach].astype(float).mean(2)
    rows, columns = np.mgrid[: part.shape[0], : part.shape[1]]
    far = np.hypot(columns + max(left, 0) - x, rows + max(top, 0) - y)
    bright = (part > 250) & (far < radius + 4)
    dark = (part < 110) & (far > radius * 0.75) & (far < radius + 5)
    weight = bright if bright.sum() > dark.sum() else dark
    return float((columns[weight]).mean() + max(left, 0)), float((rows[weight]).mean() + max(top, 0))


def test_the_poster_is_the_first_picture_and_the_words_say_it_all() -> None:
    one = made("first-month", 2)
    with av.open(io.BytesIO(one.poster), "r", format="png_pipe") as file:
        poster = next(file.decode(video=0)).to_ndarray(format="rgb24")
    _, seen = frames(one)
    assert np.abs(poster.astype(int) - seen[0]).mean() < 4
    assert "C Fill. When the next spot toward the ball is empty, I fill it at once." in one.words
    assert "At the start: 1 at the top, has the ball" in one.words
    assert "2 fills the top" in one.words


def test_no_word_is_hard_wired() -> None:
    with speaking("xx", PSEUDO):
        here = told("school-team", 2)
        sheet = Sheet.of(here, UPRIGHT, "day")
        one = clip(here, cut_of(here, shown("school-team")[2]))
        assert drawn(sheet.over(here.moments[0])).shape == (1280, 720, 4)
    assert hard_wired(one.words, *own("school-team")) == []


def test_from_the_command_line_come_clip_poster_and_words(tmp_path: Path) -> None:
    said = backcut("clip", "first-month", "Fill", "--out", tmp_path / "clips")
    assert said.code == 0
    assert sorted(file.name for file in (tmp_path / "clips").iterdir()) == ["C Fill.mp4", "C Fill.png", "C Fill.txt"]
    told_ = backcut("clip", "school-team", "--moves", "1>2", "--wide", "--light", "night", "--out", tmp_path, "--json")
    assert told_.data["clips"][0]["file"].endswith("possession.mp4")
    assert told_.data["clips"][0]["bytes"] == (tmp_path / "possession.mp4").stat().st_size


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("first-month", "Zip"), '"Zip" is no sentence of this book.'),
        (("first-month", "--light", "dusk"), '--light "dusk": there are day, night, print.'),
        (("first-month", "--moves", "1>9"), "9"),
    ],
)
def test_what_cannot_be_shown_is_one_sentence(words: tuple[str, ...], said: str, tmp_path: Path) -> None:
    refused = backcut("clip", *words, "--out", tmp_path / "o")
    assert refused.code == 2
    assert said in refused.err
    assert not (tmp_path / "o").exists()


def test_a_file_where_the_folder_would_be_is_not_touched(tmp_path: Path) -> None:
    (tmp_path / "o").write_text("mine")
    refused = backcut("clip", "first-month", "Fill", "--out", tmp_path / "o")
    assert (refused.code, refused.out) == (2, "")
    assert (tmp_path / "o").read_text() == "mine"
