"""What nobody states is found from the places, or asked for by the name of the option."""

from dataclasses import replace

import numpy as np
import pytest

from backcut.errors import FilmError
from backcut.film.detect import How
from backcut.film.reading import read_film
from backcut.film.stated import Attack, Origin, Stated, Units, YAxis

from .invented import Sample

IN_UNITS = {"m": 1.0, "ft": 1 / 0.3048, "cm": 100.0}


@pytest.mark.parametrize("attack", ["left", "right"])
@pytest.mark.parametrize("origin", ["corner", "centre", "basket"])
@pytest.mark.parametrize("units", ["m", "ft", "cm"])
def test_units_origin_and_attack_are_found_from_the_places(
    sample: Sample, units: str, origin: str, attack: str
) -> None:
    strip = read_film(sample.having(origin=origin, attack=attack, per_metre=IN_UNITS[units]).csv())
    facts = strip.facts
    assert (facts.units.value, facts.units.how) == (units, How.DETECTED)
    assert (facts.origin.value, facts.origin.how) == (origin, How.DETECTED)
    assert (facts.attack is None) if origin == "basket" else (facts.attack and facts.attack.value == attack)
    assert strip.attackers_m[0] == pytest.approx(np.array(START), abs=0.001)
    assert "attackers stand" in facts.units.evidence


def test_what_is_stated_is_not_searched_for(sample: Sample) -> None:
    header = ("court: fiba", "units: m", "origin: corner", "attack: right", "y_axis: up")
    facts = read_film(sample.having(header=header).csv()).facts
    assert {facts.units.how, facts.origin.how, facts.attack and facts.attack.how, facts.y_axis.how} == {How.STATED}


def test_the_command_goes_before_the_header_and_says_so(sample: Sample) -> None:
    path = sample.having(header=("court: fiba", "y_axis: down")).csv()
    strip = read_film(path, Stated(y_axis=YAxis.UP))
    assert strip.facts.y_axis.value is YAxis.UP
    assert strip.notes == ("The command states y_axis up, the file down; the command holds.",)


def test_the_y_axis_is_assumed_and_the_summary_can_say_so(sample: Sample) -> None:
    y_axis = read_film(sample.csv()).facts.y_axis
    assert (y_axis.value, y_axis.how) == (YAxis.UP, How.ASSUMED)
    assert "--y-axis" in y_axis.evidence


def test_a_squeezed_film_is_asked_for_its_units(sample: Sample) -> None:
    with pytest.raises(FilmError, match=r"sample.csv, columns x and y: .* neither so in m, ft nor cm: state --units"):
        read_film(sample.having(per_metre=0.1).csv())


def test_a_film_that_lies_on_no_court_is_asked_for_its_origin(sample: Sample) -> None:
    shifted = tuple(replace(row, y=row.y - 40) for row in sample.rows)
    with pytest.raises(FilmError, match=r"does not lie on a FIBA court.*--units, --origin and --court"):
        read_film(sample.having(rows=shifted, header=("court: fiba",)).csv(), Stated(units=Units.M))


def test_a_film_that_could_start_in_two_places_is_asked_for_its_origin(sample: Sample) -> None:
    narrow = tuple(replace(row, x=row.x * 0.8, y=row.y * 0.9 + 0.5) for row in sample.rows)
    clustered = sample.having(rows=narrow, origin="basket")
    near = tuple(replace(row, x=3.5 + row.x * 0.6, y=1 + row.y * 0.6) for row in sample.rows)
    assert read_film(clustered.csv()).facts.origin.value is Origin.BASKET
    with pytest.raises(
        FilmError, match=r"lies on the court in several ways \(.* from a basket if from the .*\): state --origin"
    ):
        read_film(sample.having(rows=near, origin="basket").csv(), Stated(units=Units.M))


def test_a_film_of_both_halves_is_asked_for_its_attack(sample: Sample) -> None:
    far = tuple(replace(row, y=row.y + 7.5) for row in sample.rows)
    with pytest.raises(FilmError, match=r"which does not decide which basket is attacked: state --attack"):
        read_film(sample.having(rows=far).csv())
    assert read_film(sample.having(rows=far).csv(), Stated(attack=Attack.RIGHT)).facts.attack


def test_two_team_names_are_told_apart_by_who_is_nearest_to_the_ball(sample: Sample) -> None:
    named = tuple(replace(row, team=TEAMS[row.team]) for row in sample.rows)
    strip = read_film(sample.having(rows=named).csv())
    assert (strip.offence.value, strip.offence.how) == ("visitor", How.DETECTED)
    assert strip.attackers == ("1", "2", "3", "4", "5")
    stated = read_film(sample.having(rows=named).csv(), Stated(offence="home"))
    assert stated.attackers == ("X1", "X2", "X3", "X4", "X5")


def test_a_ball_as_near_to_one_side_as_to_the_other_is_asked_for_the_offence(sample: Sample) -> None:
    named = [replace(row, team=TEAMS[row.team]) for row in sample.rows]
    halfway = [replace(row, x=0.0, y=5.6) if row.team == "ball" and row.t < 1.5 else row for row in named]
    with pytest.raises(FilmError, match=r"column team: .* does not decide who attacks: state --offence"):
        read_film(sample.having(rows=tuple(halfway)).csv())


TEAMS = {"offence": "visitor", "defence": "home", "ball": "ball"}
START = ((0.0, 7.5), (5.2, 5.2), (6.9, 0.2), (-5.2, 5.2), (-6.9, 0.2))  # invented, as in the sample
