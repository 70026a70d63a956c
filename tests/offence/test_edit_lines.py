"""A line of the book that is no sentence: written, changed, taken out; all else stays letter by letter."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.court.spots import Spot
from backcut.errors import NotationError
from backcut.motion.squads import SQUADS
from backcut.offence.edit import set_line, set_role, set_spot
from backcut.offence.library import preset_text, presets
from backcut.offence.reading import ROLES, book_from_text
from backcut.offence.settings import HEADERS

from .invented import CALMLY
from .test_edit import NOTED

NAMES = presets()
VALUES = {
    "title": "Ours: the # second",
    "formation": "three-out",
    "court": "NBA",
    "squad": "girls-u13",
    "denial": "a hand in the passing lane",
    "denial mark": "0.40 m inside the arc",
    "players": "4",
    "inside players": "0",
    "ring": "LW LS RS RW",
    "start": "1 top, ball; 2 right wing",
}
ONLY = "Otherwise I hold, wide, feet set.\n"


def lines(text: str) -> list[str]:
    return text.split("\n")


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("key", "value"), list(VALUES.items()), ids=list(VALUES))
def test_a_line_is_written_and_every_other_line_stays_as_it_is(name: str, key: str, value: str) -> None:
    text = preset_text(name)
    new = set_line(text, key, value)
    line = f"{key.capitalize()}: {value}"
    assert line in lines(new)
    assert [one for one in lines(new) if one != line] == [
        one for one in lines(text) if not one.startswith(f"{key.capitalize()}:")
    ]
    assert not any(line.startswith(f"{key.capitalize()}:") for line in lines(set_line(new, key, None)))
    assert set_line(new, key.upper(), f" {value} ") == new
    if not any(one.startswith(f"{key.capitalize()}:") for one in lines(text)):
        assert set_line(new, key, None) == text


@pytest.mark.parametrize("name", NAMES)
def test_what_a_line_says_is_what_the_book_reads(name: str) -> None:
    text = preset_text(name)
    assert book_from_text(set_line(text, "title", VALUES["title"]))[0].title == VALUES["title"]
    assert book_from_text(set_line(text, "denial mark", VALUES["denial mark"]))[0].mark_m == -0.4
    assert book_from_text(set_line(text, "denial mark", "the arc"))[0].mark_m == 0
    assert book_from_text(set_line(text, "denial", VALUES["denial"]))[0].values["denial"] == "hand"
    assert book_from_text(set_line(text, "court", "NBA"))[0].court == "NBA"


def test_a_line_stays_where_it_stands_and_keeps_its_key_as_written() -> None:
    text = "# ours\n\ntitle :   Noted\n" + ONLY + "  Exit: fewest\n"
    assert set_line(text, "title", "Other") == text.replace("Noted", "Other")
    assert set_line("Title:\n", "title", "Other") == "Title: Other\n"


def test_a_new_line_comes_below_the_lines_that_stand_before_it() -> None:
    assert set_line(NOTED, "squad", "men") == NOTED.replace("five-out\n", "five-out\nSquad: men\n")
    assert set_line(ONLY, "title", "x") == "Title: x\n" + ONLY
    assert set_line("# ours\n\n" + ONLY, "title", "x") == "# ours\n\nTitle: x\n" + ONLY
    assert set_line("Formation: four-out\n", "title", "x") == "Title: x\nFormation: four-out\n"


def test_a_line_said_twice_is_gone_when_it_is_taken_out() -> None:
    assert set_line("Title: x\nCourt: NBA\nTitle: y\n", "title", None) == "Court: NBA\n"


def test_a_line_that_is_taken_out_does_not_join_those_about_it() -> None:
    text = ONLY + "Title: x\n  4 never cuts.\n"
    assert set_line(text, "title", None) == ONLY + "\n  4 never cuts.\n"


def test_a_value_that_is_none_is_written_and_becomes_a_problem() -> None:
    text = set_line(preset_text("school-team"), "formation", "six-out")
    assert ['No formation is called "six-out"' in p.wrong for p in book_from_text(text, SQUADS)[1]] == [True]


@pytest.mark.parametrize("value", ["", "  ", "a\nb", "a\r\nTitle: b", "a\u2028b"])
def test_a_value_is_words_on_one_line(value: str) -> None:
    with pytest.raises(NotationError, match="on one line"):
        set_line(NOTED, "title", value)


@pytest.mark.parametrize("key", ["coach", "", "why", "prove", "off", "title: x\nformation"])
def test_a_key_no_book_has_is_refused(key: str) -> None:
    with pytest.raises(NotationError, match="is no line of a book"):
        set_line(NOTED, key, "x")


def test_every_line_that_a_book_can_have_once_can_be_written() -> None:
    assert set(VALUES) - {"denial"} == set(HEADERS)


# ── moved spots ─────────────────────────────────────────────────────────


@pytest.mark.parametrize(
    ("at_m", "says"),
    [
        ((-6.4, 3.1), "6.40 m left, 3.10 m out"),
        ((6.404, 0.0), "6.40 m right, 0.00 m out"),
        ((0.0, 8.25), "0 m off, 8.25 m out"),
        ((-0.004, -0.5), "0 m off, 0.50 m back"),
    ],
)
def test_a_moved_spot_is_written_as_a_coach_measures_it(at_m: tuple[float, float], says: str) -> None:
    assert f"\nLeft wing: {says}\n" in set_spot(NOTED, Spot.LW, at_m)


@CALMLY
@given(st.sampled_from(tuple(Spot)), st.floats(-20, 20), st.floats(-5, 30))
def test_a_moved_spot_lies_where_it_was_put_to_the_centimetre_and_goes_back(spot: Spot, x_m: float, y_m: float) -> None:
    text = preset_text("school-team")
    moved = set_spot(text, spot, (x_m, y_m))
    x, y = book_from_text(moved)[0].moved[spot]
    assert (x, y) == pytest.approx((x_m, y_m), abs=0.0051)
    assert set_spot(moved, spot, (x, y)) == moved
    assert set_spot(moved, spot, None) == text
    assert set_spot(text, spot, None) == text


def test_a_spot_without_a_place_is_refused() -> None:
    for at_m in ((math.nan, 1.0), (1.0, math.inf)):
        with pytest.raises(NotationError, match="left wing"):
            set_spot(NOTED, Spot.LW, at_m)


# ── exceptions by number ────────────────────────────────────────────────


@pytest.mark.parametrize("text", [*map(preset_text, NAMES), NOTED])
@pytest.mark.parametrize("role", ROLES)
def test_an_exception_is_written_once_and_taken_out_again(text: str, role: str) -> None:
    with_it = set_role(text, f"3 {role}", True)
    assert f"3 {role}." in lines(with_it)
    assert getattr(book_from_text(with_it)[0].exceptions, ROLES[role]) >= {3}
    assert set_role(with_it, f" 3  {role.upper()}. ", True) == with_it
    assert set_role(with_it, f"3 {role}", False) == text
    assert set_role(text, f"3 {role}", False) == text


def test_an_exception_comes_below_those_there_are_else_at_the_end() -> None:
    assert set_role(NOTED, "5 stays inside", True) == NOTED.replace("cuts.\n", "cuts.\n5 stays inside.\n")
    assert set_role(ONLY, "5 stays inside", True) == ONLY + "\n5 stays inside.\n"
    assert set_role(NOTED, "4 never cuts", False) == NOTED.replace("4 never cuts.\n", "")


@pytest.mark.parametrize("role", ["4 sleeps", "never cuts", "", "1234 never cuts", "4 never cuts.\nTitle: x"])
def test_what_is_no_exception_is_refused(role: str) -> None:
    with pytest.raises(NotationError, match='"5 never cuts"'):
        set_role(NOTED, role, True)
