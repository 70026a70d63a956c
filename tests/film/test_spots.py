"""On a spot or between spots: taken when near, kept until clearly left."""

from itertools import groupby

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from backcut.court.courts import court
from backcut.court.placing import place_spots
from backcut.court.spots import Spot
from backcut.film.spots import BETWEEN, ENTER_M, LEAVE_M, nearest, on_spots, title

SPOTS = place_spots(court("fiba"))
WING = np.array(SPOTS[Spot.RW])
OUT = WING / np.linalg.norm(WING)  # straight away from the basket there is no other spot


def walk(*away_m: float) -> list[Spot | None]:
    """Where a player is said to be who stands so many metres outside the right wing, one moment after the other."""
    path = np.array([WING + OUT * away for away in away_m])[:, None]
    return [row[0] for row in on_spots(path, SPOTS)]


def test_a_player_on_the_wing_is_on_the_wing() -> None:
    assert walk(0.0) == [Spot.RW]


def test_he_takes_the_spot_when_he_is_near_and_not_before() -> None:
    assert walk(ENTER_M + 0.1, ENTER_M - 0.1) == [None, Spot.RW]


def test_he_keeps_it_until_he_has_clearly_left() -> None:
    between = (ENTER_M + LEAVE_M) / 2
    assert walk(0.0, between, LEAVE_M + 0.1, between) == [Spot.RW, Spot.RW, None, None]


def test_swaying_about_the_edge_of_a_spot_changes_nothing() -> None:
    assert set(walk(1.0, *[ENTER_M - 0.05, ENTER_M + 0.05] * 20)) == {Spot.RW}


def test_he_changes_over_to_a_neighbour_he_has_come_close_to() -> None:
    slot, top = (np.array(SPOTS[spot]) for spot in (Spot.RS, Spot.T))
    path = np.linspace(slot, top, 25)[:, None]
    said = [row[0] for row in on_spots(path, SPOTS)]
    assert [spot for spot, _ in groupby(said)] == [Spot.RS, Spot.T]


def test_nobody_at_mid_court_is_on_a_spot_and_the_words_say_so() -> None:
    assert on_spots(np.array([[[0.0, 12.0]]]), SPOTS) == ((None,),)
    assert title(None) == BETWEEN == "between spots"
    assert title(Spot.RW) == "right wing"


@given(st.floats(-7.5, 7.5), st.floats(-1.5, 12.4))
def test_the_nearest_spot_is_nearer_than_every_other(x: float, y: float) -> None:
    which, away_m = nearest(np.array([x, y]), SPOTS)
    all_m = [float(np.hypot(x - sx, y - sy)) for sx, sy in SPOTS.values()]
    assert away_m == pytest.approx(min(all_m))
    assert all_m[which] == pytest.approx(min(all_m))


@given(st.lists(st.tuples(st.floats(-7.5, 7.5), st.floats(-1.5, 12.4)), min_size=1, max_size=20))
def test_the_other_side_of_the_floor_is_told_as_its_mirror_image(places: list[tuple[float, float]]) -> None:
    here = np.array(places)[:, None]
    away_m = np.sort([[np.hypot(x - sx, y - sy) for sx, sy in SPOTS.values()] for x, y in places])
    assume((away_m[:, 1] - away_m[:, 0] > 1e-6).all())
    told = [row[0] for row in on_spots(here, SPOTS)]
    flipped = [row[0] and row[0].mirror for row in on_spots(here * np.array([-1.0, 1.0]), SPOTS)]
    assert flipped == told
