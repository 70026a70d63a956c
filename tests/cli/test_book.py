"""`backcut book`: list, new, check and format."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest

from backcut.offence.library import preset_text, presets
from backcut.offence.reading import book_from_text

from .told import backcut


def test_the_shipped_books_are_listed() -> None:
    listed = backcut("book", "list")
    data = backcut("book", "list", "--json").data
    assert [row["name"] for row in data] == list(presets())
    assert {row["formation"] for row in data} == {"five-out", "four-out", "three-out"}
    for row in data:
        assert f"{row['name']}: {row['title']}, " in listed.words


@pytest.mark.parametrize("name", presets())
def test_a_new_book_is_the_shipped_one_and_has_no_problems(name: str, tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    said = backcut("book", "new", file, "--from", name)
    assert (said.code, said.err) == (0, "")
    assert file.read_text(encoding="utf-8") == preset_text(name)
    assert [path.name for path in tmp_path.iterdir()] == ["ours.txt"]
    checked = backcut("book", "check", file)
    assert checked.code == 0
    assert "no problems" in checked.words


def test_a_new_book_may_have_its_own_title_in_a_folder_of_its_own(tmp_path: Path) -> None:
    file = tmp_path / "books" / "ours.txt"
    assert backcut("book", "new", file, "--title", " Our\n first  team ").code == 0
    book, problems = book_from_text(file.read_text(encoding="utf-8"))
    assert (book.title, problems) == ("Our first team", ())


def test_a_new_book_may_be_read_by_whom_other_files_may(tmp_path: Path) -> None:
    file, other = tmp_path / "ours.txt", tmp_path / "other.txt"
    other.touch()
    backcut("book", "new", file)
    assert stat.S_IMODE(file.stat().st_mode) == stat.S_IMODE(other.stat().st_mode)


@pytest.mark.parametrize("words", [(), ("--from", "two-bigs")])
def test_an_existing_file_is_left_alone(words: tuple[str, ...], tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    file.write_text("mine", encoding="utf-8")
    said = backcut("book", "new", file, *words)
    assert (said.code, said.out) == (2, "")
    assert said.err == f"{file}: this file exists already and is left alone. Name another file.\n"
    assert file.read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize("name", presets())
def test_a_shipped_book_is_printed_even(name: str) -> None:
    assert backcut("book", "format", name).out == preset_text(name)


def test_a_book_is_made_even_on_the_screen_or_in_its_file(tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    messy = "title:  Ours\r\nFORMATION: five-out\r\n\r\n\r\n# mine\r\notherwise i hold wide feet set\r\n"
    even = "Title: Ours\nFORMATION: five-out\n\n# mine\nWide. Otherwise I hold, wide, feet set.\n"
    file.write_bytes(messy.encode())
    assert backcut("book", "format", file).out == even
    assert file.read_bytes() == messy.encode()
    assert backcut("book", "format", file, "--in-place").code == 0
    assert file.read_bytes() == even.encode()
    assert [path.name for path in tmp_path.iterdir()] == ["ours.txt"]


def test_what_cannot_be_read_is_kept_when_a_book_is_made_even(tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    file.write_text("Title: Ours\nOtherwise I dance  all\n   night.\n* * *\n", encoding="utf-8")
    backcut("book", "format", file, "--in-place")
    assert file.read_text(encoding="utf-8") == "Title: Ours\nOtherwise I dance  all\n   night.\n* * *\n"


def test_a_misspelt_phrase_is_shown_with_its_place_and_the_nearest(tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    text = preset_text("school-team").replace("my defender\n  denies me", "my defender denies me")
    file.write_text("\n" * 90 + text.replace("I back cut at once", "I backcut at once"), encoding="utf-8")
    said = backcut("book", "check", file)
    assert (said.code, said.err) == (1, "")
    line = next(i for i, row in enumerate(file.read_text().splitlines(), 1) if "backcut" in row)
    # Lines beyond the hundredth too: the place is digits between colons, never a picture.
    assert line > 100
    assert f'{file}:{line}:60: No sentence of a book goes on with "backcut at once."' in said.out
    assert '"When I am one pass away and my defender denies me, I back cut."' in said.out
    (problem,) = backcut("book", "check", file, "--json").data["problems"]
    assert set(problem) == {"line", "column", "code", "wrong", "right"}
    assert (problem["line"], problem["code"]) == (line, "unknown sentence")


def test_the_hundredth_line_is_said_in_digits(tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    file.write_text("# \n" * 99 + preset_text("first-month").replace("# The", "Teh:"), encoding="utf-8")
    assert f"{file}:100:1: " in backcut("book", "check", file).out


def test_a_shipped_book_is_not_written_over() -> None:
    said = backcut("book", "format", "school-team", "--in-place")
    assert said.code == 2
    assert said.err.startswith("school-team is a shipped book. Start your own with: backcut book new ")


def test_a_file_comes_before_the_shipped_book_of_its_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("school-team").write_text("Title: Mine\nFormation: five-out\nOtherwise I hold, wide, feet set.\n")
    assert backcut("book", "check", "school-team", "--json").data["book"] == "Mine"
