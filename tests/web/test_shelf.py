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
from backcut.offence.book_text import MOST_BYTES
from backcut.web.shelf import Shelf
from backcut.web.versions import MOST_DAYS, MOST_RECENT

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
    last = MOST_RECENT + MOST_DAYS + 20
    for number in range(last + 1):
        shelf.autosave("ours", other(number))
        shelf.autosave("ours", other(number))
    stamps = shelf.versions("ours")
    assert len(stamps) <= MOST_RECENT + MOST_DAYS
    recent = [shelf.version("ours", stamp) for stamp in stamps[:MOST_RECENT]]
    assert recent == [other(last - back) for back in range(MOST_RECENT)]


def test_of_earlier_days_the_last_version_stays(tmp_path: Path) -> None:
    folder = tmp_path / "ours.versions"
    folder.mkdir()
    for day in range(1, 29):
        for hour in (18, 19, 20):
            (folder / f"2026-02-{day:02}T{hour}-00-00.000000.txt").write_text(other(day * 100 + hour))
    shelf = Shelf(tmp_path)
    for number in range(MOST_RECENT):
        shelf.autosave("ours", other(number))
    old = [stamp for stamp in shelf.versions("ours") if stamp < "2026-03"]
    assert old == [f"2026-02-{day:02}T20-00-00.000000" for day in range(28, 0, -1)]


def test_a_clock_that_was_set_back_loses_no_version(tmp_path: Path) -> None:
    folder = tmp_path / "ours.versions"
    folder.mkdir()
    (folder / "2099-12-31T23-59-59.999999.txt").write_text(other(1))
    (folder / "2026-13-45T99-99-99.000000.txt").write_text("no day there is, so no version")
    shelf = Shelf(tmp_path)
    shelf.autosave("ours", other(2))
    shelf.autosave("ours", other(3))
    assert [shelf.version("ours", stamp) for stamp in shelf.versions("ours")] == [other(3), other(2), other(1)]


def test_a_version_that_cannot_be_read_stops_nobody(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep("ours", TEXT, None)
    shelf.autosave("ours", other(1))
    (tmp_path / "ours.versions" / f"{shelf.versions('ours')[0]}.txt").write_bytes(b"\xff\xfe")
    shelf.autosave("ours", other(2))
    shelf.keep("ours", other(3), digest(TEXT))
    assert shelf.read("ours") == other(3)
    assert [shelf.version("ours", stamp) for stamp in shelf.versions("ours")[:2]] == [TEXT, other(2)]


def test_the_file_that_was_named_is_the_one_that_is_written(tmp_path: Path) -> None:
    own = tmp_path / "elsewhere" / "ours.txt"
    own.parent.mkdir()
    own.write_text(TEXT)
    shelf = Shelf(tmp_path / "books", own)
    shelf.keep("ours", other(1), digest(TEXT))
    assert own.read_text() == other(1)
    assert not (shelf.folder / "ours.txt").exists()


@pytest.mark.parametrize(
    ("stem", "name"),
    [
        ("ours", "ours"),
        ("my_book", "my_book"),
        ("week.2 (new)", "week 2 new"),
        ("_ours", "ours"),
        (" ours", "ours"),
        ("con", "book con"),
        ("...", "book"),
        ("x" * 200, "x" * 55),
    ],
)
def test_a_file_that_was_named_is_on_the_shelf_whatever_it_is_called(tmp_path: Path, stem: str, name: str) -> None:
    own = tmp_path / f"{stem}.txt"
    own.write_text(TEXT)
    shelf = Shelf(tmp_path / "books", own)
    assert shelf.own_name == name
    assert shelf.has(name)
    assert [book.name for book in shelf.books() if not book.shipped] == [name]
    shelf.keep(name, other(1), digest(shelf.read(name)))
    assert own.read_text() == other(1)
    assert sorted(file.name for file in tmp_path.iterdir()) == sorted(["books", own.name])
    assert [shelf.version(name, stamp) for stamp in shelf.versions(name)] == [TEXT]


def test_who_may_read_a_file_stays_as_it_was(tmp_path: Path) -> None:
    own = tmp_path / "ours.txt"
    own.write_text(TEXT)
    own.chmod(0o600)
    Shelf(tmp_path / "books", own).keep("ours", other(1), digest(TEXT))
    assert own.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "nothing in it"),
        (" \n\x0b\n", "nothing in it"),
        ("\ufeff\n", "nothing in it"),
        (TEXT + "# \0\n", "no letter"),
        (TEXT + "# \ud800\n", "no letter"),
        (TEXT + "# " + "é" * (MOST_BYTES // 2) + "\n", "longer than 64 kB"),
    ],
)
def test_what_could_not_be_opened_again_is_not_kept(tmp_path: Path, text: str, why: str) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep("ours", TEXT, None)
    with pytest.raises(ShelfError, match=why):
        shelf.keep("ours", text, digest(TEXT))
    shelf.autosave("ours", text)
    assert shelf.read("ours") == TEXT
    assert shelf.versions("ours") == []


# As editors on other systems write them: the Unicode standard on line ends (5.8) and the byte order mark (23.8).
@pytest.mark.parametrize("as_written", [TEXT.replace("\n", "\r\n"), "\ufeff" + TEXT, TEXT.rstrip("\n")])
def test_a_text_from_another_system_is_not_taken_for_another_text(tmp_path: Path, as_written: str) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep("ours", as_written, None)
    assert shelf.read("ours") == TEXT
    shelf.keep("ours", other(1), digest(as_written))
    (tmp_path / "ours.txt").write_bytes(as_written.encode())
    shelf.keep("ours", other(2), digest(shelf.read("ours")))
    assert shelf.read("ours") == other(2)


def test_a_disk_that_takes_nothing_is_said(tmp_path: Path) -> None:
    (tmp_path / "books").write_text("a file where the folder would be")
    with pytest.raises(Exception, match="cannot be written"):
        Shelf(tmp_path / "books").keep("ours", TEXT, None)
    Shelf(tmp_path / "books").autosave("ours", TEXT)  # nobody is stopped for it


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


# Two processes that look at the book at the same time; what one may write the other must not write over unseen.
def test_of_two_servers_on_one_folder_neither_loses_what_it_was_told_is_kept(tmp_path: Path) -> None:
    keeps = (MOST_RECENT - 10) // 2  # so that no version has to make room
    Shelf(tmp_path).keep("ours", TEXT, None)
    code = (
        "import sys\nfrom pathlib import Path\nfrom backcut.web.shelf import Shelf\n"
        "from backcut.files import digest\nfrom backcut.errors import ConflictError\n"
        "shelf = Shelf(Path(sys.argv[1]))\nprint('ready', flush=True)\nsys.stdin.readline()\n"
        f"for number in range({keeps}):\n"
        "    while True:\n"
        "        was = shelf.read('ours')\n"
        f"        now = {TEXT!r}.replace('Ours', sys.argv[2] + str(number))\n"
        "        try:\n            shelf.keep('ours', now, digest(was))\n"
        "        except ConflictError:\n            continue\n"
        "        break\n"
    )
    both = [
        subprocess.Popen(
            [sys.executable, "-c", code, str(tmp_path), who], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )
        for who in ("A", "B")
    ]
    try:
        for one in both:
            assert one.stdout is not None
            assert one.stdout.readline() == "ready\n"
        for one in both:
            assert one.stdin is not None
            one.stdin.write("go\n")
            one.stdin.flush()
        for one in both:
            one.communicate(timeout=60)
            assert one.returncode == 0
    finally:
        for one in both:
            one.kill()
    shelf = Shelf(tmp_path)
    there = {shelf.read("ours"), *(shelf.version("ours", stamp) for stamp in shelf.versions("ours"))}
    kept = {TEXT.replace("Ours", f"{who}{number}") for who in ("A", "B") for number in range(keeps)}
    assert kept <= there


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
    put: set[str] = set()  # all that was ever written; too little for one to have to make room
    for who, what, number in does:
        shelf = shelves[who]
        if what == "autosave":
            shelf.autosave("ours", other(number))
            put.add(other(number))
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
                put.add(there)
        if there is not None:
            assert shelf.read("ours") == there
        found = {shelf.version("ours", stamp) for stamp in shelf.versions("ours")}
        assert found | ({there} if there else set()) == put
