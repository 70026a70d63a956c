"""What every command shares: where output goes, JSON, and files that are written whole or not at all."""

from __future__ import annotations

import json
import os
import sys
import tempfile
from contextlib import suppress
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


def write_whole(path: Path, text: str) -> None:
    """Write a text file whole or not at all. Raises: BackcutError when the place cannot be written."""
    name = ""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(name, 0o666 & ~mask)
        os.replace(name, path)
    except OSError as error:
        raise BackcutError(f"{path}: this file cannot be written ({error.strerror}). Name another place.") from None
    except UnicodeEncodeError:
        raise BackcutError(f"{path}: the text holds bytes that are no letters, so nothing was written.") from None
    finally:
        with suppress(OSError):  # what is left when the writing failed; otherwise it bears the new name already
            os.unlink(name)
