"""What a reader of one tracking format is. The readers themselves stand one a file in `readers/`."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from backcut.errors import FilmError
from backcut.film.file import column_names
from backcut.film.rows import Rows


@dataclass(frozen=True, slots=True)
class Ask:
    """What is wanted of a file: one of its clips, and the second file that explains it where the format has one."""

    clip: str | None = None
    meta: Path | None = None


@dataclass(frozen=True, slots=True)
class Reader:
    """One format. `recognises` gets the names of the columns of the table; `read` raises FilmError."""

    name: str
    says: str
    recognises: Callable[[tuple[str, ...]], bool]
    read: Callable[[Path, Ask], Rows]


@cache
def readers() -> tuple[Reader, ...]:
    """Every reader found in `readers/`, by name. Raises: FilmError if two carry one name."""
    import backcut.film.readers as folder

    found = [
        importlib.import_module(f"{folder.__name__}.{module.name}").READER
        for module in pkgutil.iter_modules(folder.__path__)
    ]
    names = [reader.name for reader in found]
    if len(set(names)) < len(names):
        raise FilmError(f"Two readers carry the same name: {', '.join(sorted(names))}.")
    return tuple(sorted(found, key=lambda reader: reader.name))


def reader_of(path: Path) -> Reader:
    """The one reader that recognises this file. Raises: FilmError if none or several do."""
    columns = column_names(path)
    fitting = [reader for reader in readers() if reader.recognises(columns)]
    if len(fitting) == 1:
        return fitting[0]
    known = "; ".join(f"{reader.name}: {reader.says}" for reader in readers())
    shown = ", ".join(columns[:12]) or "none that can be read"
    problem = "fits several formats" if fitting else "is in no format that can be read"
    raise FilmError(f"{path.name}: this {problem}; its columns are {shown}. The formats are: {known}.")
