"""Where and with whom a book is played."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from backcut.court.spots import Spot
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
