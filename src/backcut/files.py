"""Files that are written whole or not at all, and the short name of a text."""

from __future__ import annotations

import os
import tempfile
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from stat import S_IMODE

from backcut.errors import BackcutError

# Asked once, before there are threads: it cannot be asked without being changed for a moment.
_MASK = os.umask(0)
os.umask(_MASK)


def digest(text: str) -> str:
    """A short name for a text: the same text has the same, another has another."""
    return sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def digest_of(path: Path) -> str:
    """The short name of a file's text, letter by letter; empty where it cannot be read."""
    try:
        return digest(path.read_bytes().decode())
    except (OSError, UnicodeDecodeError):
        return ""


def write_whole(path: Path, text: str) -> None:
    """Write a text file whole or not at all; who may read it stays. Raises: BackcutError when it cannot be written."""
    try:
        data = text.encode()
    except UnicodeEncodeError:
        raise BackcutError(f"{path}: the text holds bytes that are no letters, so nothing was written.") from None
    write_bytes_whole(path, data)


def write_bytes_whole(path: Path, data: bytes) -> None:
    """The same for a file that is no text: a picture, a PDF, a clip. Raises: BackcutError when it cannot be written."""
    name = ""
    try:
        if path.exists() and not path.is_file():  # a pipe or a terminal: it must not be replaced
            path.write_bytes(data)
            return
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}.")
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())  # else a crash could leave the new name with nothing in it
        os.chmod(name, S_IMODE(path.stat().st_mode) if path.exists() else 0o666 & ~_MASK)
        os.replace(name, path)
    except OSError as error:
        raise BackcutError(f"{path}: this file cannot be written ({error.strerror}). Name another place.") from None
    finally:
        with suppress(OSError):  # what is left when the writing failed; otherwise it bears the new name already
            os.unlink(name)
