"""One writer at a time in a folder, of all processes on this machine; the lock ends with the process that holds it."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Wait until nobody else writes in this folder, and keep it so meanwhile. The folder is made where there is none.

    Between looking at a file and writing it another process could write it too, and one of the two would be lost.
    Raises: OSError where the folder cannot be made.
    """
    folder.mkdir(parents=True, exist_ok=True)
    handle = _open(folder)
    try:
        # A network drive may know no locks. There one window is still safe from the other: one process has one shelf.
        with suppress(OSError):
            _lock(handle)
        yield
    finally:
        os.close(handle)  # which lets go of the lock


if sys.platform == "win32":
    import msvcrt

    def _open(folder: Path) -> int:
        return os.open(folder / ".lock", os.O_RDWR | os.O_CREAT)

    def _lock(handle: int) -> None:
        msvcrt.locking(handle, msvcrt.LK_LOCK, 1)
else:
    import fcntl

    def _open(folder: Path) -> int:
        return os.open(folder, os.O_RDONLY)  # the folder itself is locked, so no file is left lying about

    def _lock(handle: int) -> None:
        fcntl.flock(handle, fcntl.LOCK_EX)
