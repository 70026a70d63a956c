"""The border between a source and the house frame: one flip, and both directions of attack alike."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.court.courts import court
from backcut.film.frame import Frame, to_house, usual_y_axis
from backcut.film.stated import Attack, Origin, Units, YAxis
from backcut.motion.timeline import Floats

NBA = court("nba")
LEFT = Frame(Units.FT, Origin.CORNER, Attack.LEFT, YAxis.UP)
RIGHT = Frame(Units.FT, Origin.CORNER, Attack.RIGHT, YAxis.UP)
FOOT_M = 0.3048  # exact, agreement of 1959

places = st.tuples(st.floats(0, 94), st.floats(0, 50)).map(np.array)


def test_the_attacked_basket_is_the_origin_whichever_it_is() -> None:
    # rims of a 94 x 50 ft court: NBA Official Rules 2021-22, Rule 1: 4 ft board, 6 in gap, 9 in ring radius
    assert to_house(np.array([5.25, 25.0]), LEFT, NBA) == pytest.approx([0, 0], abs=1e-12)
    assert to_house(np.array([88.75, 25.0]), RIGHT, NBA) == pytest.approx([0, 0], abs=1e-12)


def test_the_right_hand_of_who_attacks_the_right_basket_is_at_small_y() -> None:
    # whoever looks along +x in a drawing with y up has the right hand at small y
    assert to_house(np.array([60.0, 5.0]), RIGHT, NBA) == pytest.approx([20 * FOOT_M, 28.75 * FOOT_M])


def test_the_right_hand_of_who_attacks_the_left_basket_is_at_large_y() -> None:
    assert to_house(np.array([34.0, 45.0]), LEFT, NBA) == pytest.approx([20 * FOOT_M, 28.75 * FOOT_M])


def test_from_basket_to_mid_court_is_plus_y_on_both_sides() -> None:
    assert to_house(np.array([47.0, 25.0]), RIGHT, NBA)[1] == pytest.approx(NBA.mid_court_y_m)
    assert to_house(np.array([47.0, 25.0]), LEFT, NBA)[1] == pytest.approx(NBA.mid_court_y_m)


@given(places)
def test_the_two_directions_are_a_half_turn_of_each_other(place: Floats) -> None:
    turned = np.array([94.0, 50.0]) - place
    assert to_house(turned, LEFT, NBA) == pytest.approx(to_house(place, RIGHT, NBA), abs=1e-9)


@given(places.filter(lambda p: abs(p[1] - 25) > 0.1))
def test_the_two_directions_are_not_a_mirror_image(place: Floats) -> None:
    mirrored = np.array([94.0 - place[0], place[1]])
    assert to_house(mirrored, LEFT, NBA)[0] == pytest.approx(-to_house(place, RIGHT, NBA)[0], abs=1e-9)


@pytest.mark.parametrize("frame", [LEFT, RIGHT])
@given(places, places, places)
def test_a_y_up_film_is_flipped_exactly_once_and_keeps_its_distances(
    frame: Frame, a: Floats, b: Floats, c: Floats
) -> None:
    def turn(p: Floats, q: Floats, r: Floats) -> float:
        (x1, y1), (x2, y2) = q - p, r - p
        return float(x1 * y2 - x2 * y1)

    house = [to_house(p, frame, NBA) for p in (a, b, c)]
    assert turn(*house) == pytest.approx(-turn(a, b, c) * FOOT_M**2, abs=1e-6)
    assert np.linalg.norm(house[0] - house[1]) == pytest.approx(np.linalg.norm(a - b) * FOOT_M)


@pytest.mark.parametrize("attack", list(Attack))
@given(places)
def test_a_y_down_film_is_the_same_film_seen_with_its_y_turned_over(attack: Attack, place: Floats) -> None:
    down = Frame(Units.FT, Origin.CORNER, attack, YAxis.DOWN)
    up = Frame(Units.FT, Origin.CORNER, attack, YAxis.UP)
    assert to_house(np.array([place[0], 50 - place[1]]), down, NBA) == pytest.approx(to_house(place, up, NBA), abs=1e-9)


@pytest.mark.parametrize("attack", list(Attack))
@pytest.mark.parametrize("y_axis", list(YAxis))
@given(places)
def test_the_centre_as_origin_only_moves_the_numbers(attack: Attack, y_axis: YAxis, place: Floats) -> None:
    corner = Frame(Units.FT, Origin.CORNER, attack, y_axis)
    centre = Frame(Units.FT, Origin.CENTRE, attack, y_axis)
    moved = place - np.array([47.0, 25.0])
    assert to_house(moved, centre, NBA) == pytest.approx(to_house(place, corner, NBA), abs=1e-9)


def test_a_film_whose_origin_is_the_basket_is_the_house_frame_already() -> None:
    frame = Frame(Units.CM, Origin.BASKET, None, usual_y_axis(Origin.BASKET))
    assert to_house(np.array([[520.0, 430.0], [-60.0, 10.0]]), frame, NBA) == pytest.approx(
        np.array([[5.2, 4.3], [-0.6, 0.1]])
    )


def test_a_basket_film_drawn_with_y_up_has_its_right_hand_at_minus_x() -> None:
    frame = Frame(Units.M, Origin.BASKET, None, YAxis.UP)
    assert to_house(np.array([5.0, 4.0]), frame, NBA) == pytest.approx([-5.0, 4.0])
