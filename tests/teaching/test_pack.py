"""Everything of a book in one folder, with a page that lists it; every file of it is what it says."""

from __future__ import annotations

import re
from datetime import date
from html import unescape
from pathlib import Path

import pytest
from playwright.sync_api import Browser
from tests.cli.told import backcut
from tests.teaching.books import book

from backcut.teaching.drills.drill import Hall
from backcut.teaching.pack import INDEX, File, pack
from backcut.teaching.sheets import PAPERS, stamp

KINDS = {".pdf": b"%PDF", ".html": b"<!doctype html>", ".png": b"\x89PNG"}


def files(name: str, hall: Hall, *, with_clips: bool) -> dict[str, File]:
    mark = stamp(book(name), date(2026, 11, 26))
    return {one.name: one for one in pack(book(name), mark, PAPERS["a4"], hall, 45, with_clips=with_clips)}


@pytest.fixture(scope="module")
def whole() -> dict[str, File]:
    return files("first-month", Hall(8, 1, 4), with_clips=True)


def test_a_book_of_four_sentences_gives_a_poster_cards_clips_a_quiz_and_tonight_s_page(whole: dict[str, File]) -> None:
    for part in (
        "tonight-a4.pdf",
        "poster-a3.pdf",
        "bench-large-a4.pdf",
        "booklet-a4.pdf",
        "cards-a4.pdf",
        "quiz.html",
    ):
        assert any(name.endswith(part) for name in whole), part
    assert sum(name.endswith(".mp4") for name in whole) == 4
    assert sum("handout" in name for name in whole) == 4
    for name, one in whole.items():
        assert one.data.startswith(KINDS.get(Path(name).suffix, b"")), name
        if name.endswith(".mp4"):
            assert one.data[4:8] == b"ftyp"


def test_the_page_lists_every_file_once_and_every_picture_is_said(
    whole: dict[str, File], tmp_path: Path, browser: Browser
) -> None:
    for name, one in whole.items():
        (tmp_path / name).write_bytes(one.data)
    text = whole[INDEX].data.decode()
    linked = [unescape(name) for name in re.findall(r'<a href="([^"]+)"', text)]
    assert sorted(linked) == sorted(name for name in whole if name != INDEX)
    page = browser.new_page(viewport={"width": 320, "height": 700})
    page.goto((tmp_path / INDEX).as_uri())
    assert page.evaluate("document.documentElement.scrollWidth <= 320")
    pictures = page.locator("img").all()
    assert len(pictures) == 4
    for picture in pictures:
        assert picture.evaluate("image => image.complete && image.naturalWidth > 0")
        assert len(picture.get_attribute("alt") or "") > 40
    page.close()


def test_where_too_little_is_there_what_can_be_made_is_made() -> None:
    made = files("first-month", Hall(2, 0, 0), with_clips=False)
    assert any("tonight" in name for name in made)
    assert not any("cards" in name for name in made)


def test_from_the_command_line(tmp_path: Path) -> None:
    said = backcut("handouts", "first-month", "--no-clips", "--paper", "letter", "--out", tmp_path / "all")
    assert said.code == 0
    assert "index.html" in said.out
    there = {file.name for file in (tmp_path / "all").iterdir()}
    assert INDEX in there
    assert any(name.endswith("poster-tabloid.pdf") for name in there)
    (tmp_path / "file").write_text("mine")
    refused = backcut("handouts", "first-month", "--out", tmp_path / "file")
    assert (refused.code, refused.out) == (2, "")
    assert backcut("handouts", "first-month", "--paper", "a0").code == 2


def test_tonight_and_its_cards_are_printed(tmp_path: Path) -> None:
    assert backcut("tonight", "first-month", "--minutes", 45, "--out", tmp_path).code == 0
    assert {file.name for file in tmp_path.iterdir()} == {"first-month-tonight-a4.pdf", "first-month-cards-a4.pdf"}
    assert backcut("drill", "school-team", "Back", "--out", tmp_path, "--paper", "letter").code == 0
    assert (tmp_path / "school-team-cards-letter.pdf").read_bytes().startswith(b"%PDF")
