"""What every command shares: where output goes, JSON, and files that are written whole or not at all."""

from __future__ import annotations

import errno
import json
import os
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from rich.console import Console

from backcut.errors import BackcutError

#: Exit code for findings or problems in a book.
PROBLEMS = 1

console = Console(highlight=False, emoji=False, soft_wrap=False)


def print_json(data: Any) -> None:
    """Print plain JSON, never wrapped or coloured."""
    sys.stdout.write(json.dumps(data, ensure_ascii=False, indent=2) + "\n")


def check_places(book: str, files: Mapping[str, Path | None]) -> None:
    """Refuse, before anything is worked out, what could not be written afterwards or would be written over the book.

    `files` are by the option that names them. Raises: BackcutError for the first that cannot be.
    """
    seen = {Path(book).resolve(): "the book itself"}
    for option, file in files.items():
        if file is None:
            continue
        if why := _cannot_be_written(file):
            raise BackcutError(f"{file}: this file cannot be written ({why}). Name another place.")
        if taken := seen.get(file.resolve()):
            raise BackcutError(f"{option} {file}: this is {taken}. Name another place.")
        seen[file.resolve()] = f"the file of {option} too"


def _cannot_be_written(file: Path) -> str:
    """Why a file cannot be written, as the system says it; empty where it can be."""
    try:
        if file.is_dir():
            return os.strerror(errno.EISDIR)
        above = next(folder for folder in file.absolute().parents if folder.exists())
        if not above.is_dir():
            return os.strerror(errno.ENOTDIR)
    except OSError as error:
        return error.strerror or str(error)
    return "" if os.access(above, os.W_OK) else os.strerror(errno.EACCES)
