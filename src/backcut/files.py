"""Files that are written whole or not at all, and the short name of a text."""

from __future__ import annotations

import os
import tempfile
from contextlib import suppress
from hashlib import sha256
from pathlib import Path

from backcut.errors import BackcutError


def digest(text: str) -> str:
    """A short name for a text: the same text has the same, another has another."""
    return sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def write_whole(path: Path, text: str) -> None:
    """Write a text file whole or not at all. Raises: BackcutError when the place cannot be written."""
    name = ""
    try:
        if path.exists() and not path.is_file():  # a pipe or a terminal: it must not be replaced
            path.write_text(text, "utf-8")
            return
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())  # else a crash could leave the new name with nothing in it
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
