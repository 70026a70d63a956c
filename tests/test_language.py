"""One catalogue: English as it stands, another language where there is one, and the book's own words untouched."""

from __future__ import annotations

from gettext import NullTranslations

import pytest
from tests.pseudo import PSEUDO, is_pseudo

from backcut.court.spots import Spot
from backcut.errors import BackcutError
from backcut.language import direction, far, language, measuring, say, say_many, speaking, units


def test_english_is_what_is_written_in_the_program() -> None:
    assert say("{n} passes", n=3) == "3 passes"
    assert say("no values, so {braces} stay") == "no values, so {braces} stay"
    assert [say_many("{n} ball", "{n} balls", n) for n in (0, 1, 2)] == ["0 balls", "1 ball", "2 balls"]
    assert (language(), direction()) == ("en", "ltr")


def test_another_language_is_spoken_until_the_end_of_the_block_even_if_something_fails() -> None:
    def fails() -> None:
        with speaking("xx", PSEUDO):
            assert is_pseudo(say("has no answer"))
            assert is_pseudo(Spot.LW.title)
            raise RuntimeError

    with pytest.raises(RuntimeError):
        fails()
    assert Spot.LW.title == "left wing"


@pytest.mark.parametrize(
    ("code", "way"), [("ar", "rtl"), ("he", "rtl"), ("fa_IR", "rtl"), ("de", "ltr"), ("en", "ltr")]
)
def test_the_way_a_language_is_written(code: str, way: str) -> None:
    """Unicode scripts Arabic and Hebrew are written from the right (Unicode Standard Annex 9)."""
    with speaking(code):
        assert direction() == way
        assert say("cut") == "cut"  # where there is no catalogue, English


def test_a_catalogue_with_gaps_falls_back_to_english() -> None:
    with speaking("xx", NullTranslations()):
        assert say("fills the {target}", target=Spot.T.title) == "fills the top"


@pytest.mark.parametrize(
    ("metres", "half_feet", "inches"),
    [(1.8, "6 ft", "5 ft 11 in"), (6.75, "22 ft", "22 ft 2 in"), (0.1, "0.5 ft", "0 ft 4 in")],
)
def test_lengths_are_said_in_the_units_asked_for(metres: float, half_feet: str, inches: str) -> None:
    """One international foot is 0.3048 m exactly (1959 agreement); to the nearest half foot, and to the inch."""
    assert (far(metres), far(metres, exact=True)) == (f"{metres:.1f} m", f"{metres:.2f} m")
    with measuring("ft"):
        assert (units(), far(metres), far(metres, exact=True)) == ("ft", half_feet, inches)
    assert units() == "m"


def test_other_units_there_are_not() -> None:
    with pytest.raises(BackcutError, match='--units "yd": there are m and ft'), measuring("yd"):
        pass
