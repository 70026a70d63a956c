"""`backcut play`: a possession by the book, as a table and as JSON."""

from __future__ import annotations

from pathlib import Path

import pytest

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.event import EventKind
from backcut.offence.formation import formations
from backcut.offence.library import presets
from backcut.offence.situation_text import situation_from_text

from .told import backcut

SOUND = """\
Title: Our [red] team :fire:
Formation: five-out
When I pass to the next spot, I cut to the rim.
When the next spot toward the ball is empty, I fill it at once.
Otherwise I hold, wide, feet set.
"""


@pytest.mark.parametrize("book", [*presets(), *formations()])
def test_the_possession_as_json_has_the_documented_shape(book: str) -> None:
    data = backcut("play", book, "--json").data
    assert {"book", "court", "start", "steps"} <= set(data)
    assert {"spots", "ball"} <= set(data["start"])
    numbers = {"1", "2", "3", "4", "5"}
    letters = {sentence["letter"] for sentence in data["sentences"]}
    assert data["steps"]
    for step in (data["start"], *data["steps"]):
        assert set(step["spots"]) == numbers
        assert set(step["spots"].values()) <= set(Spot)
        assert str(step["ball"]) in numbers
        assert situation_from_text(step["situation"]).ball == step["ball"]
    for step in data["steps"]:
        assert {"event", "actions", "spots", "ball"} <= set(step)
        assert step["kind"] in set(EventKind)
        for action in step["actions"]:
            assert {"player", "kind", "from", "to", "habit", "beat"} <= set(action)
            assert str(action["player"]) in numbers
            assert action["kind"] in set(Kind)
            assert {action["from"], action["to"]} <= set(Spot)
            assert action["habit"] in letters | {None}
            assert set(action["beat"]) <= letters
            assert action["habit"] not in action["beat"]


def test_the_first_pass_of_five_out_as_data() -> None:
    # After top to right wing the passer cuts, the two behind move up one spot, the cutter takes the corner that is
    # left; nobody else moves: common practice, no source.
    said = backcut("play", "five-out", "--moves", "T>RW", "--json")
    data = said.data
    assert (said.code, said.err) == (0, "")
    assert (data["book"], data["court"]) == ("Five-out", "fiba")
    assert data["start"]["spots"] == {"1": "T", "2": "RW", "3": "LW", "4": "RC", "5": "LC"}
    assert data["start"]["ball"] == 1
    (step,) = data["steps"]
    assert (step["event"], step["ball"], step["open"]) == ("T>RW", 2, [])
    assert step["spots"] == {"1": "LC", "2": "RW", "3": "T", "4": "RC", "5": "LW"}
    moved = [(a["player"], a["kind"], a["from"], a["to"]) for a in step["actions"] if a["from"] != a["to"]]
    assert moved == [(1, "cut", "T", "R"), (3, "fill", "LW", "T"), (5, "fill", "LC", "LW"), (1, "come out", "R", "LC")]


def test_the_table_names_the_sentence_that_won_and_those_it_beat() -> None:
    said = backcut("play", "school-team", "--moves", "T>RW, deny 3")
    assert said.code == 0
    for words in ("1 passes to 2", "cuts to the rim", "F Cut", "X3 denies 3", "back cuts", "C Back", "L Wide"):
        assert words in said.out


def test_the_same_seed_gives_the_same_possession() -> None:
    first, again, other = (backcut("play", "school-team", "--seed", seed, "--json").data for seed in (7, 7, 8))
    assert first == again
    assert first["steps"] != other["steps"]


@pytest.mark.parametrize("book", [*presets(), *formations()])
@pytest.mark.parametrize("seed", range(5))
def test_a_possession_drawn_by_seed_can_be_written_and_played_again(book: str, seed: int) -> None:
    drawn = backcut("play", book, "--seed", seed, "--json").data
    moves = ", ".join(step["event"] for step in drawn["steps"])
    again = backcut("play", book, "--moves", moves, "--json").data
    assert [step["situation"] for step in again["steps"]] == [step["situation"] for step in drawn["steps"]]


@pytest.mark.parametrize("name", ["five-out", "Five Out", "open post", "four-out one-in"])
def test_a_formations_name_in_place_of_a_book_plays_its_plain_book(name: str) -> None:
    said = backcut("play", name, "--json")
    assert said.code == 0
    assert said.data["problems"] == []


def test_a_start_of_ones_own_is_used_in_both_notations() -> None:
    short = "1:RW* 2:T 3:LW 4:RC 5:LC"
    names = "1 right wing, ball; 2 top; 3 left wing; 4 right corner; 5 left corner"
    first, second = (
        backcut("play", "five-out", "--start", start, "--moves", "1>2", "--json") for start in (short, names)
    )
    assert first.data == second.data
    assert first.data["start"]["spots"]["1"] == "RW"


def test_two_players_are_enough_for_a_possession() -> None:
    said = backcut("play", "five-out", "--start", "1:T* 2:RW", "--moves", "T>RW", "--json")
    assert (said.code, set(said.data["start"]["spots"])) == (0, {"1", "2"})


def test_a_title_is_printed_as_it_is_written(tmp_path: Path) -> None:
    book = tmp_path / "ours.txt"
    book.write_text(SOUND, encoding="utf-8")
    for title in ("Our [red] team :fire:", "[/b] :100:"):
        book.write_text(SOUND.replace("Our [red] team :fire:", title), encoding="utf-8")
        said = backcut("play", book, "--moves", "T>RW")
        assert (said.code, title in said.words) == (0, True)


def test_a_book_with_problems_is_played_as_far_as_it_goes_with_exit_code_1(tmp_path: Path) -> None:
    book = tmp_path / "ours.txt"
    book.write_text(SOUND.replace("at once", "at wonce") + "Court: fiba\nCourt: nba\n", encoding="utf-8")
    said = backcut("play", book, "--moves", "T>RW")
    assert (said.code, said.err) == (1, "")
    assert "2 problems in this book" in said.words
    assert f'{book}:4:59: No sentence of a book goes on with "wonce."' in said.out
    assert f'{book}:7:1: "court" is said twice' in said.out
    assert "cuts to the rim" in said.words
    data = backcut("play", book, "--moves", "T>RW", "--json")
    assert data.code == 1
    assert [(problem["line"], problem["column"]) for problem in data.data["problems"]] == [(4, 59), (7, 1)]
    assert data.data["steps"]


@pytest.mark.parametrize(
    "line", ["5 stays inside.", "Start: 1:T* 2:RS 3:LW 4:RC 5:LC", "Start: 1:R* 2:RW 3:LW 4:RC 5:LC"]
)
@pytest.mark.parametrize("command", ["play", "count"])
def test_a_book_whose_start_cannot_be_lists_its_problems_and_plays_nothing(
    command: str, line: str, tmp_path: Path
) -> None:
    book = tmp_path / "ours.txt"
    book.write_text(SOUND + line + "\n", encoding="utf-8")
    said = backcut(command, book)
    assert (said.code, said.err) == (1, "")
    assert f"{book}:6:1: " in said.out
    assert backcut(command, book, "--json").data["problems"][0]["line"] == 6


def test_a_possession_from_inside_ends_with_a_shot_when_nothing_can_be_drawn() -> None:
    assert backcut("play", "five-out", "--start", "1:Lb* 2:RW 3:LW 4:RC 5:LC").code in (0, 2)


def test_a_book_that_leaves_the_ball_alone_ends_with_a_shot(tmp_path: Path) -> None:
    book = tmp_path / "ours.txt"
    book.write_text(
        "Title: Ours\nFormation: five-out\nPlayers: 2\nWhen I pass to the next spot, I cut to the rim.\n"
        "When my cut is over, I come out to the corner opposite where I came from.\n"
        "Otherwise I hold, wide, feet set.\n",
        encoding="utf-8",
    )
    for seed in range(5):
        assert backcut("play", book, "--seed", seed, "--json").code == 0
