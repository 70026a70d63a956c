"""Books on the shelf: whole or not at all, never lost, never outside their folder."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.errors import BackcutError, ConflictError, ShelfError
from backcut.files import digest
from backcut.web.shelf import MOST_VERSIONS, Shelf

TEXT = "Title: Ours\nFormation: five-out\n\nWide. Otherwise I hold, wide, feet set.\n"


def other(number: int) -> str:
    return TEXT.replace("Ours", f"Ours {number}")


def test_nothing_is_made_until_something_is_kept(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path / "books")
    assert all(book.shipped for book in shelf.books())
    assert not shelf.folder.exists()
    shelf.keep("ours", TEXT, None)
    assert shelf.read("ours") == TEXT
    assert [book.name for book in shelf.books() if not book.shipped] == ["ours"]


@pytest.mark.parametrize(
    "name",
    ["", "..", "../ours", "a/b", "a\\b", ".hidden", "ours\n", "con", "x" * 61, "a\0b", "ours.txt/..", "é/ü", " ours"],
)
def test_a_name_never_leads_out_of_the_folder(tmp_path: Path, name: str) -> None:
    shelf = Shelf(tmp_path / "books")
    for ask in (lambda: shelf.keep(name, TEXT, None), lambda: shelf.read(name), lambda: shelf.versions(name)):
        with pytest.raises(ShelfError, match="cannot be kept"):
            ask()
    assert list(tmp_path.iterdir()) == []


def test_a_name_may_have_letters_of_any_language_and_spaces(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep("Ünser Büch 2", TEXT, None)
    assert shelf.read("Ünser Büch 2") == TEXT


def test_two_windows_do_not_write_over_one_another(tmp_path: Path) -> None:
    first, second = Shelf(tmp_path), Shelf(tmp_path)
    first.keep("ours", TEXT, None)
    first.keep("ours", other(1), digest(TEXT))
    with pytest.raises(ConflictError, match="changed on disk since"):
        second.keep("ours", other(2), digest(TEXT))
    assert second.read("ours") == other(1)
    with pytest.raises(ConflictError):
        second.keep("ours", other(2), None)


def test_what_stood_there_before_is_among_the_versions(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep("ours", TEXT, None)
    shelf.keep("ours", other(1), digest(TEXT))
    assert [shelf.version("ours", stamp) for stamp in shelf.versions("ours")] == [TEXT]
    with pytest.raises(ShelfError, match="no version"):
        shelf.version("ours", "../../ours")


def test_versions_are_put_by_once_in_order_and_not_without_end(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    for number in range(MOST_VERSIONS + 20):
        shelf.autosave("ours", other(number))
        shelf.autosave("ours", other(number))
    stamps = shelf.versions("ours")
    assert len(stamps) <= MOST_VERSIONS
    assert shelf.version("ours", stamps[0]) == other(MOST_VERSIONS + 19)
    assert shelf.version("ours", stamps[1]) == other(MOST_VERSIONS + 18)


def test_the_file_that_was_named_is_the_one_that_is_written(tmp_path: Path) -> None:
    own = tmp_path / "elsewhere" / "ours.txt"
    own.parent.mkdir()
    own.write_text(TEXT)
    shelf = Shelf(tmp_path / "books", own)
    shelf.keep("ours", other(1), digest(TEXT))
    assert own.read_text() == other(1)
    assert not (shelf.folder / "ours.txt").exists()


def test_a_disk_that_takes_nothing_is_said(tmp_path: Path) -> None:
    (tmp_path / "books").write_text("a file where the folder would be")
    with pytest.raises(Exception, match="cannot be written"):
        Shelf(tmp_path / "books").keep("ours", TEXT, None)
    Shelf(tmp_path / "books").autosave("ours", TEXT)  # nobody is stopped for it


def test_an_empty_book_is_not_kept_over_a_full_one(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep("ours", TEXT, None)
    with pytest.raises(ShelfError, match="nothing to keep"):
        shelf.keep("ours", " \n", digest(TEXT))
    shelf.autosave("ours", "\n")
    assert shelf.read("ours") == TEXT
    assert shelf.versions("ours") == []


def test_a_version_that_was_damaged_stops_nobody(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.autosave("ours", TEXT)
    (stamp,) = shelf.versions("ours")
    (tmp_path / "ours.versions" / f"{stamp}.txt").write_bytes(b"\xff\x00")
    shelf.autosave("ours", other(1))
    shelf.keep("ours", other(2), None)
    assert shelf.version("ours", shelf.versions("ours")[0]) == other(1)


def test_a_book_that_was_damaged_on_disk_is_not_written_over(tmp_path: Path) -> None:
    (tmp_path / "ours.txt").write_bytes(b"Title: Caf\xe9\n")
    with pytest.raises(BackcutError, match="not UTF-8"):
        Shelf(tmp_path).keep("ours", TEXT, None)
    assert (tmp_path / "ours.txt").read_bytes() == b"Title: Caf\xe9\n"
    assert "ours" not in [book.name for book in Shelf(tmp_path).books()]


# A process that is killed between the writing and the taking of its name: the moment in which most could be lost.
def test_a_crash_in_the_middle_of_a_save_leaves_the_old_book_whole(tmp_path: Path) -> None:
    Shelf(tmp_path).keep("ours", TEXT, None)
    code = (
        "import os, sys\nfrom pathlib import Path\nfrom backcut.web.shelf import Shelf\n"
        "from backcut.files import digest\n"
        "os.replace = lambda *names: os._exit(9)\n"
        f"Shelf(Path({str(tmp_path)!r})).keep('ours', {other(1)!r}, digest({TEXT!r}))\n"
    )
    done = subprocess.run([sys.executable, "-c", code], env=os.environ, check=False, timeout=60)
    assert done.returncode == 9
    assert Shelf(tmp_path).read("ours") == TEXT
    Shelf(tmp_path).keep("ours", other(2), digest(TEXT))
    assert Shelf(tmp_path).read("ours") == other(2)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(st.integers(0, 1), st.sampled_from(["keep", "autosave", "read"]), st.integers(0, 5)), max_size=15
    )
)
def test_the_last_text_that_was_kept_is_always_there(
    tmp_path_factory: pytest.TempPathFactory, does: list[tuple[int, str, int]]
) -> None:
    folder = tmp_path_factory.mktemp("shelf")
    shelves = (Shelf(folder), Shelf(folder))
    known: list[str | None] = [None, None]
    there: str | None = None
    for who, what, number in does:
        shelf = shelves[who]
        if what == "autosave":
            shelf.autosave("ours", other(number))
        elif what == "read" and there is not None:
            known[who] = digest(shelf.read("ours"))
        elif what == "keep":
            try:
                shelf.keep("ours", other(number), known[who])
            except ConflictError:
                assert there is not None
                assert known[who] != digest(there)
            else:
                there = other(number)
                known[who] = digest(there)
        if there is not None:
            assert shelf.read("ours") == there
