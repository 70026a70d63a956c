"""`backcut quiz` as a coach types it: a page in a folder, a table from codes, one sentence where something is wrong."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
import typer
from tests.engine.floor import book
from typer.testing import CliRunner, Result

from backcut.cli.quiz import quiz
from backcut.teaching.quizzes import Result as Told
from backcut.teaching.quizzes.code import book_number, written

from .pages import html

app = typer.Typer(add_completion=False, pretty_exceptions_enable=False)
app.command()(quiz)

#: Newer than what a phone of 2018 knows (ECMAScript 2018 and later), as far as a look at the text can tell.
TOO_NEW = re.compile(
    r"\?\.[a-z(\[]|\?\?|\{\s*\.\.\.|\.flat\(|\.flatMap\(|fromEntries|matchAll|replaceAll|\bcatch \{|\.at\("
)


def typed(*words: str) -> Result:
    return CliRunner().invoke(app, list(words))


def code(shirt: int, name: str = "school-team") -> str:
    this = book(name)
    return written(Told(shirt, book_number(this), ((1, 2),) * len(this.sentences)))


def test_a_page_is_written_into_a_folder_that_was_not_there(tmp_path: Path) -> None:
    done = typed("school-team", "Fill", "--count", "3", "--player", "3", "--out", str(tmp_path / "new"))
    assert done.exit_code == 0, done.output
    assert "3 questions" in done.output
    assert (tmp_path / "new" / "quiz-school-team-fill-3.html").read_text("utf-8").startswith("<!doctype html>")


def test_the_questions_are_told_as_data_with_one_right_answer_or_more(tmp_path: Path) -> None:
    told = json.loads(typed("first-month", "--out", str(tmp_path), "--json").output)
    assert len(told["questions"]) == 10
    for question in told["questions"]:
        assert 0 < sum(choice["right"] for choice in question["choices"]) < len(question["choices"])


def test_codes_from_a_file_become_a_table_of_players_and_sentences(tmp_path: Path) -> None:
    file = tmp_path / "codes.txt"
    file.write_text(f"{code(4)}\n\n{code(11)}\n", "utf-8")
    done = typed("read", str(file))
    assert done.exit_code == 0, done.output
    assert re.search(r"\b11 +1/2 ", done.output)
    assert "24/48" in done.output
    told = json.loads(typed("read", str(file), "--json").output)
    assert [player["shirt"] for player in told["players"]] == [4, 11]


def test_what_cannot_be_read_is_named_and_the_rest_is_read_all_the_same() -> None:
    broken = code(4)[:-1] + ("0" if code(4)[-1] != "0" else "1")
    done = typed("read", code(5), broken, code(6, "first-month"))
    assert done.exit_code == 1
    assert f"{broken}: this code is mistyped" in done.output
    assert f"{code(6, 'first-month')}: this code is of another book" in done.output
    assert re.search(r"\b5 +1/2 ", done.output)


def test_one_code_may_be_typed_with_blanks() -> None:
    done = typed("read", *code(5).split("-"))
    assert done.exit_code == 0, done.output


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("school-team", "--count", "0"), "Ask for one question or more"),
        (("school-team", "Jammed"), "decides nothing that can be asked"),
        (("school-team", "Zigzag"), "is no sentence of this book"),
        (("school-team", "--player", "3", "--squad"), "Give one of the two"),
        (("school-team", "Cut", "Fill"), "Give one sentence"),
        (("no-such-book",), "no shipped book"),
        (("read",), "No code is given"),
        (("school-team", "--out", "/proc/nowhere"), "cannot be written"),
    ],
)
def test_what_is_wrong_is_said_in_words(words: tuple[str, ...], said: str) -> None:
    done = typed(*words)
    assert done.exception is not None
    assert said in str(done.exception)


def test_the_script_is_written_for_old_phones() -> None:
    script = html().rpartition("<script>")[2]
    assert "use strict" in script
    assert TOO_NEW.findall(script) == []
