"""A clip plays anywhere, is short and small, shows its own sentence, and everybody stands where the pose has them."""

from __future__ import annotations

import io
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import av
import numpy as np
import pytest
from tests.cli.told import backcut
from tests.pseudo import PSEUDO, hard_wired
from tests.teaching.books import book, every, shown
from tests.teaching.test_words import own

from backcut.engine.play import play
from backcut.errors import BackcutError
from backcut.language import speaking
from backcut.motion.timeline import pose
from backcut.offence.action import letter
from backcut.offence.library import preset_text
from backcut.offence.moves import moves_from_text
from backcut.teaching.clips.clip import Clip, clip
from backcut.teaching.clips.cut import FPS, LONGEST_S, SHORTEST_S, SLOW, Lines, Part, cut, pictures, stops
from backcut.teaching.clips.shape import UPRIGHT, WIDE, Layout, Shape
from backcut.teaching.clips.sprites import decoded
from backcut.teaching.clips.told import Told, told_example, told_moves
from backcut.teaching.clips.words import Words, set_words, words

#: The number that ITU-T H.273 gives ITU-R BT.709.
BT709 = 1
#: So far a letter may reach over the line it is set by.
OVER_PX = 3
#: So far beside its place a line is looked for.
REACH_PX = 8


def told(name: str, rank: int) -> Told:
    return told_example(shown(name)[rank])


@cache
def made(name: str, rank: int, *, wide: bool = False, light: str = "day") -> Clip:
    return clip(told(name, rank), wide=wide, light=light)


def of_moves(moves: str, rank: int | None = None) -> Told:
    here = book("school-team")
    return told_moves(here, play(here, here.start(), moves_from_text(moves)), rank)


def frames(one: Clip) -> tuple[Any, list[Any]]:
    """The stream as the coding library tells of it, and every picture."""
    with av.open(io.BytesIO(one.mp4), "r") as file:
        stream = file.streams.video[0]
        assert not file.streams.audio
        context = stream.codec_context
        assert (context.colorspace, context.color_primaries, context.color_trc) == (BT709, BT709, BT709)
        about = (context.name, context.pix_fmt, context.width, context.height, float(stream.average_rate or 0))
        return about, [frame.to_ndarray(format="rgb24") for frame in file.decode(video=0)]


@pytest.mark.parametrize(
    ("name", "rank", "wide"),
    [
        ("first-month", 0, False),
        ("first-month", 1, False),
        ("first-month", 2, True),
        ("first-month", 3, True),
        ("school-team", 1, False),
        ("school-team", 4, True),
        ("school-team", 10, False),
    ],
)
def test_a_clip_plays_in_a_phone_s_chat(name: str, rank: int, wide: bool) -> None:
    """Read back by FFmpeg's libraries: H.264, 4:2:0, BT.709, 6 to 10 s, under 1.5 MB.

    ISO/IEC 14496-12: the movie box stands before the media data, so that it plays before all of it has come.
    """
    one, shape = made(name, rank, wide=wide), WIDE if wide else UPRIGHT
    about, seen = frames(one)
    assert about == ("h264", "yuv420p", shape.wide_px, shape.high_px, FPS)
    assert SHORTEST_S <= len(seen) / FPS <= LONGEST_S
    assert len(seen) / FPS == pytest.approx(one.seconds)
    assert len(one.mp4) < 1_500_000
    assert 0 < one.mp4.index(b"moov") < one.mp4.index(b"mdat")


def test_the_same_sentence_makes_the_same_clip() -> None:
    one, again = made("first-month", 2), clip(told("first-month", 2))
    assert (one.mp4, one.poster, one.words) == (again.mp4, again.poster, again.words)


@pytest.mark.parametrize(("name", "rank"), every())
def test_every_sentence_is_still_first_then_a_third_of_the_speed_then_at_game_speed(name: str, rank: int) -> None:
    here = told(name, rank)
    part = cut(here)
    shot = pictures(here.show, part)
    at_s = here.show.moments[part.decision].t_s
    assert SHORTEST_S <= len(shot) / FPS <= LONGEST_S
    parts = [picture.part for picture in shot]
    assert parts == sorted(parts, key=list(Part).index)
    still = [picture for picture in shot if picture.part is Part.STILL]
    assert 1.5 <= len(still) / FPS <= 2.0
    assert {(picture.t_s, picture.lines) for picture in still} == {(at_s, Lines.ALL)}
    for which, speed in ((Part.SLOW, SLOW), (Part.GAME, 1)):
        times = [picture.t_s for picture in shot if picture.part is which]
        steps = [b - a for a, b in pairwise(times) if b > a]
        assert np.median(steps) == pytest.approx(1 / speed / FPS, abs=1e-6)
        assert max(steps) < 1.6 / speed / FPS
        assert times[0] < at_s + 1e-6
        assert times[-1] > at_s + 0.6, "the decision is seen to be done"


@pytest.mark.parametrize(("name", "rank"), every())
def test_the_sentence_a_clip_is_about_stands_there_at_its_decision(name: str, rank: int) -> None:
    here = told(name, rank)
    moment = here.show.moments[here.decision]
    said = words(here.show, moment, Part.STILL)
    one = book(name).sentences[rank]
    assert (said.letter, said.cue, said.sentence) == (str(letter(rank)), f"{book(name).cue(rank)}.", one.text)
    assert [a.player for a in moment.answers if a.lit and a.player == here.about.player] == [shown(name)[rank].player]
    assert str(here.about.player) in said.caption
    assert len(moment.arrows) <= 4


def test_the_slow_part_stands_at_its_decision() -> None:
    for name, rank in every():
        here = told(name, rank)
        part = cut(here)
        assert here.decision in stops(here.show, part)
        stood = [p for p in pictures(here.show, part) if p.part is Part.SLOW and p.lines is Lines.ALL]
        assert {picture.moment for picture in stood} == set(stops(here.show, part))


@pytest.mark.parametrize("shape", [UPRIGHT, WIDE])
def test_everybody_is_drawn_where_the_pose_has_them(shape: Shape) -> None:
    """In decoded pictures: the middle of the white disc of every player, within two pixels of the pose."""
    here = told("school-team", 8)
    layout = Layout.of(here.show, shape)
    _, seen = frames(made("school-team", 8, wide=shape is WIDE))
    shot = pictures(here.show, cut(here))
    found, moving = 0, 0
    first = pose(here.show.timeline, shot[0].t_s).players
    before = {n: layout.place(px * 100, py * 100) for n, (px, py) in first.items()}
    for number in np.linspace(0, len(seen) - 1, 16).astype(int):
        places = pose(here.show.timeline, shot[number].t_s)
        guards = [layout.place(x * 100, y * 100) for x, y, _ in places.defenders.values()]
        players = {n: layout.place(x * 100, y * 100) for n, (x, y) in places.players.items()}
        for player, (x, y) in players.items():
            others = [*guards, *(o for n, o in players.items() if n != player)]
            if player == places.holder or any(np.hypot(g[0] - x, g[1] - y) < 90 for g in others):
                continue  # overlapped marks have no whole disc, and the holder has the ball on it
            cx, cy = disc(seen[number], x, y, 47 * 1.22 * layout.px_cm)
            assert np.hypot(cx - x, cy - y) < 2.0, (player, shot[number].t_s)
            found += 1
            moving += np.hypot(x - before[player][0], y - before[player][1]) > 20
    assert found >= 20
    assert moving >= 2


@pytest.mark.parametrize("shape", [UPRIGHT, WIDE])
def test_the_floor_lies_where_the_marks_are_placed(shape: Shape) -> None:
    """The sidelines of the court, 5 cm wide outside its width, are dark where the places of the pose put them."""
    here = told("school-team", 8)
    layout = Layout.of(here.show, shape)
    picture = frames(made("school-team", 8, wide=shape is WIDE))[1][0].astype(float).mean(2)
    _, y = layout.place(0.0, 400.0)
    for side in (-1, 1):
        x, _ = layout.place(side * (here.show.court.half_width_m + here.show.court.line_width.m / 2) * 100, 0.0)
        row = picture[int(y), int(x) - REACH_PX : int(x) + REACH_PX + 1]
        assert abs(int(np.argmin(row)) - REACH_PX) <= 1
        assert row.min() < 170


def disc(picture: Any, x: float, y: float, radius: float) -> tuple[float, float]:
    """The middle of the white within reach of this place, as far as it is one disc and more than a sliver."""
    rows, columns = np.mgrid[: picture.shape[0], : picture.shape[1]]
    white = (picture.min(2) > 244) & (np.hypot(columns + 0.5 - x, rows + 0.5 - y) < radius * 1.2)
    assert white.sum() > 0.5 * np.pi * radius**2
    return float(columns[white].mean()) + 0.5, float(rows[white].mean()) + 0.5


def test_a_defender_stands_over_no_attacker() -> None:
    """Where X1 follows 1 so closely that they overlap, the disc of 1 is whole."""
    here = told("school-team", 5)
    layout = Layout.of(here.show, UPRIGHT)
    _, seen = frames(made("school-team", 5))
    shot = pictures(here.show, cut(here))
    looked = 0
    for picture, one in zip(shot, seen, strict=True):
        places = pose(here.show.timeline, picture.t_s)
        (x, y), (gx, gy, _) = places.players[1], places.defenders[1]
        if picture.part is Part.GAME and np.hypot(gx - x, gy - y) < 0.9 and places.holder != 1:
            px, py = layout.place(x * 100, y * 100)
            cx, cy = disc(one, px, py, 47 * 1.22 * layout.px_cm)
            assert np.hypot(cx - px, cy - py) < 2.5
            looked += 1
    assert looked > 5


def test_the_poster_is_the_first_picture_and_the_words_say_it_all() -> None:
    one = made("first-month", 2)
    poster = decoded(one.poster)[..., :3]
    _, seen = frames(one)
    assert np.abs(poster - seen[0]).mean() < 3
    assert "C Fill. When the next spot toward the ball is empty, I fill it at once." in one.words
    assert "1 passes to 3. 1 cuts to the rim. (A Cut.)" in one.words
    assert "2 fills the top" in one.words
    assert "3 at the left wing, has the ball" in one.words


@pytest.mark.parametrize("shape", [UPRIGHT, WIDE])
def test_the_longest_words_stay_in_the_picture_and_off_the_floor(shape: Shape) -> None:
    layout = Layout.of(told("school-team", 8).show, shape)
    said = Words(
        "A title that is long", "Game speed", "M", "Long cue.", "A long sentence of a book. " * 9, "1 cuts. " * 9
    )
    solid = decoded(set_words(said, shape, layout.head, layout.body, "day"))[..., 3] > 0
    body = layout.body
    outside = solid.copy()
    for room in (layout.head, body):
        outside[int(room.y) - OVER_PX : int(room.y + room.high) + 1, int(room.x) : int(room.x + room.wide) + 1] = False
    assert solid.any()
    assert not outside.any()


def test_where_it_is_written_from_the_right_the_letter_stands_at_the_right() -> None:
    layout = Layout.of(told("school-team", 8).show, UPRIGHT)
    said = Words("", "", "A", "", "", "")
    with speaking("he", PSEUDO):
        right = decoded(set_words(said, UPRIGHT, layout.head, layout.body, "day"))[..., 3]
    left = decoded(set_words(said, UPRIGHT, layout.head, layout.body, "day"))[..., 3]
    assert np.flatnonzero(left.any(0)).max() < 360 < np.flatnonzero(right.any(0)).min()


@pytest.mark.parametrize("rank", [2, 4])
def test_no_word_is_hard_wired(rank: int) -> None:
    with speaking("xx", PSEUDO):
        here = told("school-team", rank)
        texts = [
            getattr(words(here.show, moment, part), name)
            for moment in here.show.moments
            for part in Part
            for name in ("part", "caption")
        ]
        texts.append(clip(here).words)
    for text in texts:
        assert hard_wired(text, *own("school-team")) == [], text


def test_moves_that_are_given_are_shown_round_the_decision_of_the_last() -> None:
    here = of_moves("1>2, 2>3")
    assert here.all_of_it
    assert here.about.step == 1
    part = cut(here)
    assert not part.whole, "a possession of two passes lasts longer than a clip has room for"
    assert part.game_s[0] < here.show.moments[here.decision].t_s < part.game_s[1]


def test_moves_that_are_given_are_cut_to_the_sentence_that_is_named() -> None:
    here = of_moves("1>2, 2>3", rank=5)
    assert {a.letter for a in here.show.moments[here.decision].answers if a.lit} == {"F"}
    with pytest.raises(BackcutError, match="In these moves C Back tells nobody what to do"):
        of_moves("1>2", rank=2)


def test_from_the_command_line_come_clip_poster_and_words(tmp_path: Path) -> None:
    said = backcut("clip", "first-month", "Fill", "--out", tmp_path / "clips")
    assert said.code == 0
    assert sorted(file.name for file in (tmp_path / "clips").iterdir()) == ["C Fill.mp4", "C Fill.png", "C Fill.txt"]
    told_ = backcut("clip", "school-team", "--moves", "1>2", "--wide", "--light", "night", "--out", tmp_path, "--json")
    assert told_.data["clips"][0]["file"].endswith("possession.mp4")
    assert told_.data["clips"][0]["bytes"] == (tmp_path / "possession.mp4").stat().st_size


def test_a_sentence_that_never_speaks_has_no_clip_and_the_others_have_theirs(tmp_path: Path) -> None:
    twice = preset_text("first-month") + "\nHold. Otherwise I hold, wide, feet set.\n"
    (tmp_path / "book.txt").write_text(twice)
    said = backcut("clip", tmp_path / "book.txt", "--out", tmp_path / "o", "--json")
    made_ = [Path(one["file"]).name for one in said.data["clips"]]
    assert made_ == ["A Cut.mp4", "B Out.mp4", "C Fill.mp4", "D Wide.mp4"]
    assert said.data["silent"] == ["E Hold"]
    refused = backcut("clip", tmp_path / "book.txt", "E", "--out", tmp_path / "p")
    assert refused.code == 2
    assert "E Hold never tells anybody what to do in this book" in refused.err
    assert not (tmp_path / "p").exists()


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (("first-month", "Zip"), '"Zip" is no sentence of this book.'),
        (("first-month", "--light", "dusk"), '--light "dusk": there are day, night, print.'),
        (("first-month", "--moves", "1>9"), "9"),
        (("first-month", "--start", "1:T* 2:RW 3:LW 4:RC 5:LC"), "give --moves too"),
        (("school-team", "Back", "--moves", "1>2"), "In these moves C Back tells nobody what to do."),
    ],
)
def test_what_cannot_be_shown_is_one_sentence(given: tuple[str, ...], said: str, tmp_path: Path) -> None:
    refused = backcut("clip", *given, "--out", tmp_path / "o")
    assert refused.code == 2
    assert said in refused.err
    assert not (tmp_path / "o").exists()


@pytest.mark.parametrize("below", ["", "further"])
def test_a_file_where_the_folder_would_be_is_not_touched(below: str, tmp_path: Path) -> None:
    (tmp_path / "o").write_text("mine")
    refused = backcut("clip", "first-month", "Fill", "--out", tmp_path / "o" / below)
    assert (refused.code, refused.out) == (2, "")
    assert (tmp_path / "o").read_text() == "mine"
