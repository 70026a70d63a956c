"""`drill` and `tonight` as a coach types them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from backcut.offence.library import preset_text

from .told import backcut


def test_a_drill_is_said_with_its_cues_its_rotation_and_the_caution() -> None:
    said = backcut("drill", "first-month", "Fill", "--players", 8)
    assert said.code == 0
    for line in ("C  Fill, guided defence", "1 passes to 3: 2 fills the top.", "one spot round", "Stop on pain."):
        assert line in said.out


def test_every_sentence_at_every_stage_as_data() -> None:
    said = backcut("drill", "school-team", "--stage", "all", "--players", 10, "--baskets", 2, "--json")
    made = json.loads(said.out)
    assert len(made["drills"]) == 12 * 4
    assert made["instead"] == []
    assert "problems" not in made


def test_what_two_can_do_is_done_and_what_they_cannot_is_said() -> None:
    made = json.loads(backcut("drill", "first-month", "--players", 2, "--json").out)
    assert [one["letter"] for one in made["drills"]] == ["A"]
    assert any("C Fill takes 3 players" in line for line in made["instead"])


def test_chains_are_drawn_by_seed() -> None:
    said = backcut("drill", "school-team", "--chains", 4)
    assert said.out.count("\n") == 4
    assert said.out == backcut("drill", "school-team", "--chains", 4).out
    assert said.out != backcut("drill", "school-team", "--chains", 4, "--seed", 2).out


def test_tonight_is_a_running_order_for_those_who_are_there() -> None:
    said = backcut("tonight", "first-month", "--players", 9, "--minutes", 45)
    assert said.code == 0
    for line in ("Tonight: Fill", "18:00 to 18:45, 9 players, 1 basket, 4 balls", "6 to 9", "What does 2 do?"):
        assert line in said.out
    made = json.loads(backcut("tonight", "first-month", "--players", 7, "--minutes", 45, "--json").out)
    assert sum(one["minutes"] for one in made["activities"]) == 45


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("drill", "first-month", "Zip"), '"Zip" is no sentence of this book.'),
        (
            ("drill", "first-month", "--stage", "hard"),
            '--stage "hard": there are alone, guided, advantage, live, or all.',
        ),
        (("drill", "first-month", "--players", "0"), "--players 0: there cannot be fewer than 1."),
        (("drill", "first-month", "Fill", "--players", "2"), "C Fill takes 3 players, and there are 2."),
        (("drill", "first-month", "--chains", "2"), "No sentence of this book answers a denial"),
        (("tonight", "first-month", "--minutes", "5"), "--minutes 5: give 20 to 150 minutes."),
        (("tonight", "first-month", "--begins", "soon"), '--begins "soon": give a time such as 18:00.'),
        (("tonight", "none-such"), "none-such"),
    ],
)
def test_what_cannot_be_is_one_sentence(words: tuple[str, ...], said: str) -> None:
    told = backcut(*words)
    assert (told.code, told.out) == (2, "")
    assert told.err.startswith(said) or said in told.err
    assert "Traceback" not in told.err


def test_a_book_with_problems_is_taught_as_far_as_it_can_be_read(tmp_path: Path) -> None:
    book = tmp_path / "ours.txt"
    book.write_text(preset_text("first-month") + "\nZig. When I zig, I zag.\n")
    said = backcut("drill", book, "Cut")
    assert said.code == 1
    assert "One problem in this book" in said.out
    assert "A  Cut, guided defence" in said.out
    made = json.loads(backcut("drill", book, "Cut", "--json").out)
    assert len(made["problems"]) == 1
    empty = tmp_path / "empty.txt"
    empty.write_text("Title: Empty\n")
    assert "nothing to teach yet" in backcut("drill", empty).err
