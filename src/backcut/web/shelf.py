"""Books on disk: kept whole or not at all, with the versions that were there before."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from threading import RLock

from backcut.errors import BackcutError, ConflictError, ShelfError
from backcut.files import digest, digest_of, write_whole
from backcut.offence.book_text import MOST_BYTES, text_from_file
from backcut.offence.library import preset_text, presets
from backcut.offence.reading import book_from_text
from backcut.web.alone import alone
from backcut.web.versions import put_by, stamps_in

_NAME = re.compile(r"[^\W_][\w' -]{0,59}")
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

    The folder is made when something is first put into it. Any number of threads and processes may have the same one.
    """

    folder: Path
    own: Path | None = None
    lock: RLock = field(default_factory=RLock)

    @property
    def own_name(self) -> str:
        """The name of the one file on the shelf: its own, or what is left of that as a plain name."""
        return _plain(self.own.stem) if self.own is not None else ""

    def books(self) -> list[Kept]:
        """Every book that can be opened: one's own by name, then those that come with Backcut."""
        files = sorted(self.folder.glob("*.txt")) if self.folder.is_dir() else []
        names = [file.stem for file in files if _is_name(file.stem)]
        if self.own is not None and self.own_name not in names and self.own.exists():
            names.insert(0, self.own_name)
        mine = []
        for name in names:
            with suppress(BackcutError):  # a file that is no text is no book
                text = self.read(name)
                mine.append(Kept(name, book_from_text(text)[0].title, digest(text)))
        shipped = [(name, preset_text(name)) for name in presets() if name not in names]
        return mine + [Kept(name, book_from_text(text)[0].title, digest(text), True) for name, text in shipped]

    def has(self, name: str) -> bool:
        """Whether a book of one's own is kept under this name."""
        return _is_name(name) and self._file(name).exists()

    def read(self, name: str) -> str:
        """The text of a book. Raises: ShelfError, BookFileError."""
        file = self._file(name)
        if not file.exists():
            raise ShelfError(f'No book is kept as "{name}".')
        return text_from_file(file)

    def keep(self, name: str, text: str, known: str | None) -> Kept:
        """The book written whole under a name; what stood there goes among its versions.

        `known` is the digest of the text that was read or kept under this name, None where nothing is expected there.
        Raises: ConflictError where another text stands there by now; ShelfError for a name that cannot be, or a text
        that could not be opened again; BackcutError where the disk does not take it.
        """
        file = self._file(name)
        if why := _no_book(text):
            raise ShelfError(f'"{name}" is not kept: {why}')
        with self._writing(file):
            if file.exists():
                there = text_from_file(file)
                if there != text and known not in (digest(there), digest_of(file)):
                    raise ConflictError(
                        f'"{name}" has changed on disk since, perhaps in another window. Keep this one under another '
                        "name, or open that one again."
                    )
                put_by(self._versions(name), there)
            write_whole(file, text)
        return Kept(name, book_from_text(text)[0].title, digest(text))

    def autosave(self, name: str, text: str) -> None:
        """The text put by as a version, so that a closed window loses nothing. A disk that is full stops nobody."""
        if _no_book(text):
            return
        with suppress(BackcutError), self._writing(self._file(name)):
            put_by(self._versions(name), text)

    def versions(self, name: str) -> list[str]:
        """The versions of a book by time, the newest first."""
        return stamps_in(self._versions(name))

    def version(self, name: str, stamp: str) -> str:
        """The text of a version. Raises: ShelfError."""
        if stamp not in self.versions(name):
            raise ShelfError(f'"{name}" has no version "{stamp[:40]}". Ask for the list of its versions.')
        return text_from_file(self._versions(name) / f"{stamp}.txt")

    def _file(self, name: str) -> Path:
        if not _is_name(name):
            raise ShelfError(
                f'A book cannot be kept as "{name[:60]}". Take letters, numbers, spaces and hyphens, '
                "a letter or number first, 60 at most."
            )
        if self.own is not None and name == self.own_name:
            return self.own
        return self.folder / f"{name}.txt"

    @contextmanager
    def _writing(self, file: Path) -> Iterator[None]:
        """Nobody else looks at this file to write it meanwhile. Raises: BackcutError where its folder cannot be had."""
        with self.lock:
            try:
                with alone(file.parent):
                    yield
            except OSError as error:
                raise BackcutError(f"{file}: this cannot be written ({error.strerror}). Name another place.") from None

    def _versions(self, name: str) -> Path:
        self._file(name)  # refuses what is no name
        return self.folder / f"{name}.versions"


def _is_name(name: str) -> bool:
    return bool(_NAME.fullmatch(name)) and name == name.strip() and name.lower() not in _TAKEN


def _plain(name: str) -> str:
    """A name that can be kept: this one, or what its letters and numbers make."""
    if _is_name(name):
        return name
    words = " ".join(re.sub(r"[^\w' -]", " ", name).split()).lstrip("_' -")[:55].strip()
    return words if _is_name(words) else f"book {words}".strip()


def _no_book(text: str) -> str:
    """Why a text could not be opened again once it was kept; empty where it can."""
    if not text.removeprefix("\ufeff").strip():
        return "there is nothing in it yet. Write a sentence first."
    if "\x00" in text or re.search("[\ud800-\udfff]", text):
        return "it holds something that is no letter. Take that out first."
    if len(text.encode()) > MOST_BYTES:
        return f"it is longer than {MOST_BYTES // 1000} kB. A book is a few pages of text; make it shorter."
    return ""
