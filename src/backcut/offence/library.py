"""Where books come from: the presets that are shipped, a file, or a formation's name for its plain book."""

from __future__ import annotations

from collections.abc import Collection
from importlib import resources
from os.path import exists, isfile
from pathlib import Path

from backcut.errors import BookFileError, NotationError
from backcut.offence.book import Book, plain_book
from backcut.offence.book_text import text_from_file
from backcut.offence.edit import text_of
from backcut.offence.formation import formation, formations
from backcut.offence.problems import Problem
from backcut.offence.reading import book_from_text


def presets() -> tuple[str, ...]:
    """The names of the shipped books."""
    folder = resources.files("backcut.offence") / "books"
    return tuple(sorted(item.name.removesuffix(".txt") for item in folder.iterdir() if item.name.endswith(".txt")))


def preset_text(name: str) -> str:
    """The text of a shipped book. Raises: BookFileError naming the books there are."""
    wanted = "-".join(name.lower().split())
    if wanted not in presets():
        raise BookFileError(f'No shipped book is called "{name}". There are: {", ".join(presets())}.')
    return (resources.files("backcut.offence") / "books" / f"{wanted}.txt").read_text("utf-8")


def book_text(name: str) -> str:
    """The text of a preset or of a file. Raises: BookFileError where there is neither."""
    if "-".join(name.lower().split()) in presets() and not isfile(name):
        return preset_text(name)
    if not exists(name):
        raise BookFileError(
            f"{name}: there is no such file, and no shipped book is called so. The shipped books are: "
            f"{', '.join(presets())}. `play`, `prove` and `count` take a formation too: {', '.join(formations())}."
        )
    return text_from_file(Path(name))


def source_text(name: str) -> str:
    """The text of the book called `name`; a formation's plain book is written out. Raises: BookFileError."""
    return text_of(plain_book(formation(name))) if _is_formation(name) else book_text(name)


def _is_formation(name: str) -> bool:
    if isfile(name):
        return False
    try:
        formation(name)
    except NotationError:
        return False
    return True


def open_book(name: str, squads: Collection[str] | None = None) -> tuple[Book, tuple[Problem, ...]]:
    """The book called `name` with its problems: a formation's plain book, a preset, or a file.

    Raises: BookFileError where there is none, or where the file cannot be read.
    """
    if _is_formation(name):
        return plain_book(formation(name)), ()
    return book_from_text(book_text(name), squads)
