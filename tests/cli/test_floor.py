"""`backcut floor` and bare `backcut` where no terminal is, and what is refused before anything is served."""

from __future__ import annotations

import re
import socket
from collections.abc import Callable
from contextlib import ExitStack, suppress
from pathlib import Path
from typing import Any

import pytest

from backcut.cli import floor
from backcut.errors import BackcutError
from backcut.offence.library import presets
from backcut.web.serve import listen

from .told import backcut


def never(*_: object, **__: object) -> None:
    raise AssertionError("The floor was served where no terminal is.")


@pytest.fixture(autouse=True)
def _serves_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("backcut.web.serve.serve", never)


@pytest.fixture
def served(monkeypatch: pytest.MonkeyPatch) -> list[dict[str, Any]]:
    """What is served in a terminal, which this becomes; nothing is."""
    asked: list[dict[str, Any]] = []
    monkeypatch.setattr("backcut.web.serve.serve", lambda shelf, **said: asked.append({"shelf": shelf, **said}))
    monkeypatch.setattr(floor, "sys", _Terminal())
    return asked


class _Terminal:
    """What `sys` is to the command in a terminal."""

    class stdout:  # noqa: N801
        """Where it prints."""

        isatty: Callable[[], bool] = staticmethod(lambda: True)


def test_without_a_terminal_the_main_job_is_reported_and_nothing_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    said = backcut()
    assert (said.code, said.err) == (0, "")
    assert "The school team, with a hole: 2 findings." in said.words
    assert "X4 denies 4" in said.words
    assert list(tmp_path.iterdir()) == []


def test_bare_and_floor_and_once_say_the_same() -> None:
    asked: list[tuple[str, ...]] = [(), ("floor",), ("--once",), ("floor", "--once")]
    said = {re.sub(r"\d+\.\d s\b", "some time", backcut(*words).out) for words in asked}  # how long a proof took
    assert len(said) == 1


@pytest.mark.parametrize("book", presets())
def test_every_book_that_comes_with_backcut_can_be_reported(book: str) -> None:
    said = backcut("floor", "--once", book)
    assert (said.code, said.err) == (0, "")
    assert said.out


def test_a_book_of_ones_own_is_reported_under_its_own_title(tmp_path: Path) -> None:
    own = tmp_path / "ours.txt"
    own.write_text("Title: Ours\nFormation: five-out\n\nWide. Otherwise I hold, wide, feet set.\n")
    said = backcut("floor", own)
    assert said.code == 0
    assert said.out.startswith("Ours: ")
    assert [file.name for file in tmp_path.iterdir()] == ["ours.txt"]


@pytest.mark.parametrize("words", [("floor", "nothing"), ("floor", "--once", "none.txt"), ("floor", "seven-out")])
def test_a_book_there_is_not_is_one_sentence(words: tuple[str, ...]) -> None:
    said = backcut(*words)
    assert (said.code, said.out) == (2, "")
    assert said.err.count("\n") == 1
    assert said.err.endswith(".\n")


@pytest.mark.parametrize("port", ["65536", "-1", "x", "9" * 400])
def test_a_port_that_is_none_is_refused(port: str) -> None:
    said = backcut("floor", "--port", port)
    assert (said.code, said.out) == (2, "")
    assert "--port" in said.err
    assert "Traceback" not in said.err


def test_the_help_lists_every_command_and_what_it_is_for() -> None:
    said = backcut("--help")
    assert said.code == 0
    for command in ("floor", "play", "book", "prove", "count", "court", "formations", "film"):
        assert f" {command} " in said.out
    assert "Open the live floor in the browser." in said.words


def test_the_help_of_the_floor_says_what_it_listens_on_and_where_books_are_kept() -> None:
    said = backcut("floor", "--help")
    for option in ("--host", "--port", "--books", "--no-browser", "--once"):
        assert option in said.out
    assert "only this machine by default" in said.words


def test_in_a_terminal_the_floor_is_served_over_the_folder_that_was_named(
    served: list[dict[str, Any]], tmp_path: Path
) -> None:
    assert backcut("floor", "--books", tmp_path / "ours", "--no-browser", "first-month").out == ""
    (asked,) = served
    assert asked["book"] == "first-month"
    assert (asked["host"], asked["port"], asked["browse"]) == ("127.0.0.1", None, False)
    assert (asked["shelf"].folder, asked["shelf"].own) == (tmp_path / "ours", None)


def test_a_file_that_was_named_is_the_book_that_is_served(served: list[dict[str, Any]], tmp_path: Path) -> None:
    own = tmp_path / "ours (2).txt"
    own.write_text("Title: Ours\n\nWide. Otherwise I hold, wide, feet set.\n")
    backcut("floor", own)
    (asked,) = served
    assert asked["book"] == "ours 2"
    assert asked["shelf"].own == own.resolve()
    assert asked["shelf"].read(asked["book"]).startswith("Title: Ours\n")


def test_in_a_terminal_a_book_there_is_not_serves_nothing(served: list[dict[str, Any]]) -> None:
    assert backcut("floor", "nothing").code == 2
    assert served == []


@pytest.mark.parametrize("host", ["", "é" * 80, "300.1.1.1", "::::"])
def test_an_address_that_cannot_be_had_is_one_sentence(host: str) -> None:
    with pytest.raises(BackcutError) as refused:
        listen(host, None)
    said = str(refused.value)
    assert said.endswith(".")
    assert "--host" in said
    assert "\n" not in said


def test_the_first_free_port_is_taken_and_when_there_is_none_that_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    with socket.socket() as free:  # away from the usual ports, where other tests serve
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    monkeypatch.setattr("backcut.web.serve.PORT", port)
    monkeypatch.setattr("backcut.web.serve.TRIED", 3)
    with ExitStack() as taken:
        got = []
        with suppress(BackcutError):  # somebody else may have one of the three
            for _ in range(3):
                got.append(taken.enter_context(listen("127.0.0.1", None)).getsockname()[1])
        assert got
        assert got == sorted(set(got))
        assert set(got) <= {port, port + 1, port + 2}
        with pytest.raises(BackcutError, match=f"any port from {port} to {port + 2}"):
            listen("127.0.0.1", None)
