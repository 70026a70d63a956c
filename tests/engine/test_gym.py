"""Where and with whom a book is played."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from backcut.court.spots import Spot
from backcut.engine.choose import possession
from backcut.engine.gym import gym, timed
from backcut.engine.play import play
from backcut.errors import CourtError, MotionError
from backcut.offence.book import plain_book
from backcut.offence.formation import formation
from backcut.offence.library import open_book, presets
from backcut.offence.moves import moves_from_text

FIVE_OUT = plain_book(formation("five-out"))


def test_a_book_is_played_on_its_own_court_by_its_own_squad() -> None:
    book, _ = open_book("first-month")
    here = gym(book)
    assert (here.court.name, here.squad.name) == ("mini", "girls-u13")


def test_the_command_may_name_others() -> None:
    here = gym(FIVE_OUT, "nba", "men")
    assert (here.court.name, here.squad.name) == ("nba", "men")


def test_a_ring_too_long_for_young_passers_is_shrunk_and_it_is_said() -> None:
    # Top to wing is 21.0 ft on the FIBA court: a long pass for a twelve-year-old (common practice, computed).
    here = gym(FIVE_OUT, "fiba", "girls-u13")
    assert here.placing.scale < 1
    assert here.placing.said is not None
    assert "shrunk" in here.placing.said
    longest = max(pair.distance_m for pair in here.placing.pairs)
    assert longest == pytest.approx(here.squad.longest_pass_m)
    assert here.said[-1] == here.placing.said


def test_a_spot_that_the_coach_moved_lies_where_the_coach_put_it() -> None:
    book = replace(FIVE_OUT, moved={Spot.LW: (-5.5, 4.6)})
    assert gym(book, "fiba", "men").placing.spots[Spot.LW] == (-5.5, 4.6)


@pytest.mark.parametrize("name", presets())
def test_every_shipped_book_can_be_put_in_time_in_its_own_gym(name: str) -> None:
    book, _ = open_book(name)
    ball, wing = book.start().holder, next(p for p in book.start().players if p.at is Spot.RW)
    timeline = timed(book, play(book, book.start(), moves_from_text(f"{ball.number}>{wing.number}")), gym(book))
    assert math.isfinite(timeline.duration_s)
    assert set(timeline.players) == {1, 2, 3, 4, 5}


def test_an_unknown_court_or_squad_is_said() -> None:
    with pytest.raises(CourtError, match="fiba"):
        gym(FIVE_OUT, "moon")
    with pytest.raises(MotionError, match="girls-u13"):
        gym(FIVE_OUT, None, "giants")


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("name", presets())
def test_no_defender_outruns_the_squad_or_leaves_the_floor(name: str, seed: int) -> None:
    book, _ = open_book(name)
    here = gym(book)
    timeline = timed(book, possession(book, book.start(), seed), here)
    t = np.arange(0.0, timeline.duration_s, 0.2)
    for track in timeline.defenders.values():
        way = np.array([track.at(moment)[:2] for moment in t])
        # Over a fifth of a second, so that the two centimetres of thinning do not count.
        assert np.hypot(*np.diff(way, axis=0).T).max() / 0.2 <= here.squad.runner.top_speed_m_s + 0.3
        assert np.abs(way[:, 0]).max() <= here.court.half_width_m + 0.02
        assert way[:, 1].min() >= here.court.baseline_y_m - 0.02


def starts_to_cut_s(denial: str, mark_m: float = 0.0) -> float:
    """When 2 sets out for the back cut after X2 has begun to deny."""
    school, _ = open_book("school-team")
    book = replace(school, choices={**school.choices, "denial": denial}, mark_m=mark_m)
    steps = play(book, book.start(), moves_from_text("deny 2"))
    return next(run.start_s for run in timed(book, steps, gym(book)).runs if run.kind == "back cut")


def test_what_a_book_calls_a_denial_decides_when_the_back_cut_begins() -> None:
    # On the FIBA court the lane lies up to 0.4 m inside the arc: a hand is there before a foot is past it.
    assert starts_to_cut_s("hand") < starts_to_cut_s("foot")
    assert starts_to_cut_s("either") == starts_to_cut_s("hand")


def test_a_mark_moved_in_is_reached_earlier_and_one_moved_out_later() -> None:
    assert starts_to_cut_s("foot", -0.8) < starts_to_cut_s("foot") < starts_to_cut_s("foot", 0.4)
    assert starts_to_cut_s("either", -3.0) < starts_to_cut_s("hand")
