"""Books on disk: kept whole or not at all, with the versions that were there before."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from threading import RLock

from backcut.errors import BackcutError, ConflictError, ShelfError
from backcut.files import digest, write_whole
from backcut.offence.book_text import text_from_file
from backcut.offence.library import preset_text, presets
from backcut.offence.reading import book_from_text

#: Versions of a book that are put by (own design): an evening's changes, and after that one a day.
MOST_VERSIONS = 60

_NAME = re.compile(r"[^\W_][\w' -]{0,59}")
_STAMP = re.compile(r"\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d\.\d{6}")
#: Names that one system or another takes for something else than a file.
_TAKEN = frozenset({"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))})


@dataclass(frozen=True, slots=True)
class Kept:
    """A book on the shelf; `shipped` books come with Backcut and are never written."""

    name: str
    title: str
    digest: str
    shipped: bool = False


@dataclass(slots=True)
class Shelf:
    """The books of one folder, and perhaps one file (`own`) that was named when the server was started.

    The folder is made when something is first put into it.
    """

    folder: Path
    own: Path | None = None
    lock: RLock = field(default_factory=RLock)

    def books(self) -> list[Kept]:
        """Every book that can be opened: one's own by name, then those that come with Backcut."""
        files = sorted(self.folder.glob("*.txt")) if self.folder.is_dir() else []
        names = [file.stem for file in files if _NAME.fullmatch(file.stem)]
        if self.own is not None and self.own.stem not in names and self.own.exists():
            names.insert(0, self.own.stem)
        mine = []
        for name in names:
            with suppress(BackcutError):  # a file that is no text is no book
                text = self.read(name)
                mine.append(Kept(name, book_from_text(text)[0].title, digest(text)))
        shipped = [(name, preset_text(name)) for name in presets() if name not in names]
        return mine + [Kept(name, book_from_text(text)[0].title, digest(text), True) for name, text in shipped]

    def has(self, name: str) -> bool:
        """Whether a book of one's own is kept under this name."""
        with suppress(ShelfError):
            return self._file(name).exists()
        return False

    def read(self, name: str) -> str:
        """The text of a book. Raises: ShelfError, BookFileError."""
        file = self._file(name)
        if not file.exists():
            raise ShelfError(f'No book is kept as "{name}".')
        return text_from_file(file)

    def keep(self, name: str, text: str, known: str | None) -> Kept:
        """The book written whole under a name; what stood there goes among its versions.

        `known` is the digest of the text that was read under this name, None where nothing is expected there.
        Raises: ConflictError where another text stands there by now; ShelfError for a name that cannot be; BackcutError
        where the disk does not take it.
        """
        file = self._file(name)
        if not text.strip():
            raise ShelfError("There is nothing to keep yet: the book is empty. Write a sentence first.")
        with self.lock:
            if file.exists():
                there = text_from_file(file)
                if there != text and digest(there) != known:
                    raise ConflictError(
                        f'"{name}" has changed on disk since, perhaps in another window. Keep this one under another '
                        "name, or open that one again."
                    )
                self._put_by(name, there)
            write_whole(file, text)
        return Kept(name, book_from_text(text)[0].title, digest(text))

    def autosave(self, name: str, text: str) -> None:
        """The text put by as a version, so that a closed window loses nothing. A disk that is full stops nobody."""
        with self.lock, suppress(OSError, BackcutError):
            if text.strip():
                self._put_by(name, text)

    def versions(self, name: str) -> list[str]:
        """The versions of a book by time, the newest first."""
        folder = self._versions(name)
        found = folder.glob("*.txt") if folder.is_dir() else ()
        return sorted((file.stem for file in found if _STAMP.fullmatch(file.stem)), reverse=True)

    def version(self, name: str, stamp: str) -> str:
        """The text of a version. Raises: ShelfError."""
        if stamp not in self.versions(name):
            raise ShelfError(f'"{name}" has no version "{stamp[:40]}". Ask for the list of its versions.')
        return text_from_file(self._versions(name) / f"{stamp}.txt")

    def _file(self, name: str) -> Path:
        if self.own is not None and name == self.own.stem:
            return self.own
        if not _NAME.fullmatch(name) or name.lower() in _TAKEN or name != name.strip():
            raise ShelfError(
                f'A book cannot be kept as "{name[:60]}". Take letters, numbers, spaces and hyphens, '
                "a letter or number first, 60 at most."
            )
        return self.folder / f"{name}.txt"

    def _versions(self, name: str) -> Path:
        self._file(name)  # refuses what is no name
        return self.folder / f"{name}.versions"

    def _put_by(self, name: str, text: str) -> None:
        known = self.versions(name)
        folder = self._versions(name)
        with suppress(OSError):  # a version that cannot be read is another
            if known and (folder / f"{known[0]}.txt").read_bytes() == text.encode():
                return
        stamp = f"{datetime.now(UTC):%Y-%m-%dT%H-%M-%S.%f}"
        if known and stamp <= known[0]:  # two within one tick of the clock
            stamp = f"{known[0][:-6]}{min(int(known[0][-6:]) + 1, 999_999):06}"
        write_whole(folder / f"{stamp}.txt", text)
        for old in _too_many([stamp, *known]):
            with suppress(OSError):  # it stays a while longer
                (folder / f"{old}.txt").unlink()


def _too_many(stamps: list[str]) -> list[str]:
    """The versions to let go, of all with the newest first: of each day the last one stays longer."""
    recent, older = stamps[: MOST_VERSIONS // 2], stamps[MOST_VERSIONS // 2 :]
    days: dict[str, str] = {}
    for stamp in older:
        days.setdefault(stamp[:10], stamp)
    stay = {*recent, *list(days.values())[: MOST_VERSIONS // 2]}
    return [stamp for stamp in stamps if stamp not in stay]
