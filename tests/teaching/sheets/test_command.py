"""`backcut sheet`: the files it writes and what it says where it cannot."""

from __future__ import annotations

import json
from io import BytesIO
from pathlib import Path

import pytest
import typer
from pypdf import PdfReader
from tests.teaching.books import book
from typer.testing import CliRunner

from backcut.cli.sheet import sheet
from backcut.errors import BackcutError

app = typer.Typer()
app.command()(sheet)


def run(*words: str) -> tuple[int, str]:
    """What the command says, and how it ends."""
    told = CliRunner().invoke(app, words, catch_exceptions=True)
    if isinstance(told.exception, BackcutError):
        raise told.exception
    assert told.exception is None or isinstance(told.exception, SystemExit)
    return told.exit_code, told.output


def test_a_habit_is_one_file_named_after_it(tmp_path: Path) -> None:
    code, said = run("school-team", "Fill", "--out", str(tmp_path), "--date", "2026-11-25")
    (file,) = tmp_path.iterdir()
    assert code == 0
    assert file.name == "school-team-handout-i-fill-a4.pdf"
    assert str(file) in said
    first = file.read_bytes()
    run("school-team", "i", "--out", str(tmp_path), "--date", "2026-11-25")
    assert file.read_bytes() == first  # one sheet is printed again without the others


def test_without_a_habit_every_sentence_has_a_handout(tmp_path: Path) -> None:
    code, said = run("first-month", "--paper", "letter", "--out", str(tmp_path / "new"), "--json")
    data = json.loads(said)
    assert code == 0
    assert [one["letter"] for one in data["sheets"]] == ["A", "B", "C", "D"]
    assert len(data["sheets"]) == len(book("first-month").sentences)
    for one in data["sheets"]:
        assert Path(one["file"]).stat().st_size == one["bytes"] < 5_000_000


@pytest.mark.parametrize("kind", ["poster", "bench", "booklet", "quiz"])
def test_every_other_kind_is_one_file(kind: str, tmp_path: Path) -> None:
    code, _ = run("five-out", "--kind", kind, "--out", str(tmp_path))
    (file,) = tmp_path.iterdir()
    assert code == 0
    assert f"-{kind}-" in file.name
    assert len(PdfReader(BytesIO(file.read_bytes())).pages) >= 1


def test_a_book_with_problems_is_printed_and_the_problems_are_told(tmp_path: Path) -> None:
    faulty = tmp_path / "ours.txt"
    faulty.write_text("Title: Ours\nFormation: five-out\nWhen I pass to the next spot, I cut to the rim.\nI zig.\n")
    code, said = run(str(faulty), "--kind", "bench", "--out", str(tmp_path))
    assert code == 1
    assert "zig" in said
    assert (tmp_path / "ours-bench-a4.pdf").exists()


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("school-team", "Zig"), '"Zig" is no sentence of this book'),
        (("school-team", "--kind", "banner"), r'--kind "banner": there are handout, poster, bench, booklet, quiz\.'),
        (("school-team", "--paper", "a9"), '--paper "a9": there is no such paper here'),
        (("school-team", "--date", "soon"), r'--date "soon": give a day such as 2026-11-25\.'),
        (("nowhere.txt",), "there is no such file"),
    ],
)
def test_one_clear_sentence_where_it_cannot(words: tuple[str, ...], told: str, tmp_path: Path) -> None:
    with pytest.raises(BackcutError, match=told):
        run(*words, "--out", str(tmp_path))
    assert list(tmp_path.iterdir()) == []
