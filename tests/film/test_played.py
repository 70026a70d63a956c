"""A film on the page: the same timeline as a played possession."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from backcut.court.courts import court
from backcut.court.placing import place_spots
from backcut.film.played import at_spots, guarded, to_timeline
from backcut.film.reading import read_film
from backcut.film.strip import Strip
from backcut.film.summary import summarise
from backcut.motion.timeline import pose
from backcut.page import film_page

from .invented import Sample

FIBA = court("fiba")
SPOTS = place_spots(FIBA)


@pytest.fixture
def strip(sample: Sample) -> Strip:
    return read_film(sample.csv())


def test_the_page_reads_the_same_places_as_the_film(strip: Strip) -> None:
    timeline = to_timeline(strip)
    for i, t_s in enumerate(strip.t_s):
        now = pose(timeline, float(t_s))
        assert [now.players[n] for n in (1, 2, 3, 4, 5)] == [pytest.approx(p) for p in strip.attackers_m[i]]
        assert now.ball[:2] == pytest.approx(strip.ball_m[i])


def test_every_defender_carries_the_number_of_his_man_and_looks_at_him(strip: Strip) -> None:
    shuffled = replace(
        strip,
        defenders_m=strip.defenders_m[:, [3, 0, 4, 1, 2]],
        defenders=tuple(strip.defenders[i] for i in (3, 0, 4, 1, 2)),
    )
    assert guarded(shuffled) == (3, 0, 4, 1, 2)
    now = pose(to_timeline(shuffled), 0.0)
    for number, (x, y, heading_deg) in now.defenders.items():
        toward = np.array(now.players[number]) - (x, y)
        # 0 is +y, clockwise on a page whose y points down, so a quarter turn looks toward -x
        looks = np.array([np.sin(np.radians(heading_deg)), np.cos(np.radians(heading_deg))])
        assert looks == pytest.approx(toward / np.linalg.norm(toward), abs=1e-9)


def test_a_heading_never_spins_a_full_turn_between_two_moments(strip: Strip) -> None:
    circle = np.linspace(0, 4 * np.pi, len(strip.t_s))
    around = np.stack([np.cos(circle), np.sin(circle)], axis=-1)
    turning = replace(strip, defenders_m=strip.attackers_m + around[:, None])
    for track in to_timeline(turning).facing_deg.values():
        assert np.abs(np.diff(track.place_m[:, 0])).max() < 60


def test_the_one_pass_of_the_sample_is_seen(strip: Strip) -> None:
    timeline = to_timeline(strip)
    assert [one.player for one in timeline.held] == [1, 2]
    (flight,) = timeline.flights
    assert (flight.from_player, flight.to_player, flight.kind) == (1, 2, "pass")
    assert flight.start_s < 1.5
    assert flight.end_s > 1.0
    assert pose(timeline, 0.5).holder == 1
    assert pose(timeline, 2.5).holder == 2


def test_a_ball_that_goes_to_the_basket_was_shot(strip: Strip) -> None:
    ball_m = strip.ball_m.copy()
    ball_m[25:] = np.linspace((5.2, 5.2), (0.0, 0.0), len(ball_m) - 25)
    last = to_timeline(replace(strip, ball_m=ball_m)).flights[-1]
    assert (last.from_player, last.to_player, last.kind) == (2, None, "shot")


def test_shirt_numbers_stay_and_long_names_become_one_to_five(strip: Strip) -> None:
    assert replace(strip, attackers=("4", "7", "11", "23", "41")).numbers == (4, 7, 11, 23, 41)
    assert replace(strip, attackers=("4", "04", "11", "23", "41")).numbers == (1, 2, 3, 4, 5)
    assert replace(strip, attackers=("ann", "bea", "cem", "dov", "eva")).numbers == (1, 2, 3, 4, 5)


def test_who_leaves_a_spot_is_told_once_when_it_happens(strip: Strip) -> None:
    told = at_spots(strip, SPOTS, FIBA)
    assert told[0] == (0.0, {1: "top", 2: "right wing", 3: "right corner", 4: "left wing", 5: "left corner"})
    assert all(before[1] != after[1] for before, after in pairwise(told))
    # 1 starts to cut at 1.5 s (the sample) and must be said to leave the top after that
    assert 1.5 < next(t_s for t_s, where in told if where[1] != "top") < 2.5


def test_who_is_not_past_mid_court_is_in_the_back_court(strip: Strip) -> None:
    attackers_m = strip.attackers_m.copy()
    attackers_m[:5, 1] = (0.0, FIBA.mid_court_y_m + 0.5)
    told = at_spots(replace(strip, attackers_m=attackers_m), SPOTS, FIBA)
    assert told[0][1][2] == "in the back court"
    assert told[-1][1][2] == "right wing"


def test_the_summary_counts_every_moment_of_the_half_court_once(strip: Strip) -> None:
    summary = summarise(strip, SPOTS, FIBA)
    assert summary.half_court_s == pytest.approx(3.0)
    assert summary.holder_changes == 1
    for one in summary.attackers:
        assert sum(one.on.values()) + one.between == pytest.approx(1.0)
    assert summary.attackers[2].guarded_by == "X3"
    assert summary.attackers[2].on[next(iter(summary.attackers[2].on))] == 1.0


def test_a_film_makes_a_page(strip: Strip) -> None:
    page = film_page(
        to_timeline(strip), SPOTS, FIBA, title="A <film>", notes=["invented"], at_spots=at_spots(strip, SPOTS, FIBA)
    )
    assert page.lstrip().lower().startswith("<!doctype html>")
    assert "A &lt;film&gt;" in page
    assert "right corner" in page
