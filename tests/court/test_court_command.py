"""`backcut court` on the command line."""

import json

import pytest
import typer
from typer.testing import CliRunner

from backcut.cli.court import court_command
from backcut.court.courts import COURTS
from backcut.errors import CourtError

APP = typer.Typer()
APP.command("court")(court_command)


def told(*words: str) -> str:
    result = CliRunner().invoke(APP, list(words), catch_exceptions=False)
    assert result.exit_code == 0
    return result.output


def test_without_a_name_every_court_is_listed() -> None:
    listed = told()
    assert all(name in listed for name in COURTS)
    assert [record["name"] for record in json.loads(told("--json"))["courts"]] == list(COURTS)


def test_a_court_is_shown_in_metres_and_feet_with_edge_clause_and_edition() -> None:
    shown = told("nba")
    for words in ("23 ft 9 in", "7.239 m", "outer", "NBA Official Rules 2021-22, Rule 1, Section I-d"):
        assert words in shown


def test_json_gives_metres() -> None:
    fiba = json.loads(told("FIBA", "--json"))
    # FIBA Official Basketball Rules 2024, Art. 2; the straight part by Pythagoras
    assert (fiba["length"], fiba["width"], fiba["arc_radius"]) == (28.0, 15.0, 6.75)
    assert fiba["straight_part_from_baseline"] == pytest.approx(2.990, abs=0.001)


def test_a_tape_may_be_in_feet() -> None:
    gym = json.loads(
        told(
            "--length",
            "84 ft",
            "--width",
            "50 ft",
            "--arc",
            "19 ft 9 in",
            "--like",
            "nfhs",
            "--basket-height",
            "9 ft",
            "--json",
        )
    )
    assert (gym["length"], gym["arc_radius"]) == pytest.approx((25.6032, 6.0198))
    assert gym["basket_height"] == pytest.approx(2.7432)
    assert gym["sources"]["basket_height"]["status"] == "measured"
    assert gym["sources"]["lane_width"]["edition"] == "NFHS Basketball Rules 2018"


def test_a_tape_without_an_arc_has_none_and_one_that_leaves_it_out_keeps_it() -> None:
    assert json.loads(told("fiba", "--arc", "none", "--json"))["arc_radius"] is None
    kept = json.loads(told("fiba", "--width", "14.5", "--json"))
    assert kept["arc_radius"] == 6.75
    assert kept["sources"]["arc_radius"]["clause"] == "Art. 2.4.4"


def test_a_court_may_be_scaled() -> None:
    small = json.loads(told("mini", "--scale", "12x7", "--json"))
    assert (small["length"], small["width"]) == (12.0, 7.0)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("olympia",), "No court is called"),
        (("--width", "14", "--arc", "8"), "is wider than the floor"),
        (("mini", "--scale", "10x6"), "allows 28 x 15 m down to 12 x 7 m"),
        (("--length", "long"), "is no length"),
    ],
)
def test_what_cannot_be_is_one_clear_error(words: tuple[str, ...], said: str) -> None:
    with pytest.raises(CourtError, match=said):
        CliRunner().invoke(APP, list(words), catch_exceptions=False)
