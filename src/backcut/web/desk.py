"""The floors that are open now, each with its history: undo and redo walk along it, nothing is lost on the way."""

from __future__ import annotations

import secrets
from collections import OrderedDict
from dataclasses import dataclass, field, replace
from threading import RLock

from backcut.errors import BackcutError, ConflictError, GoneError
from backcut.files import digest
from backcut.web.floor import Floor

#: Tabs open at once, and steps back, that one evening needs (own design): older ones make room.
MOST_FLOORS = 64
MOST_BACK = 400


@dataclass(frozen=True, slots=True)
class Page:
    """One entry of a history: what was on the floor, and what was done to come there, in words."""

    floor: Floor
    done: str


@dataclass(frozen=True, slots=True)
class Open:
    """A floor that is open: its history, where in it we are, how often it changed, and the book's name on the shelf.

    `stands` is the digest of the text as it stood on the shelf when it was read or kept; empty where it never was.
    """

    id: str
    pages: tuple[Page, ...]
    at: int = 0
    revision: int = 0
    name: str = ""
    stands: str = ""

    @property
    def floor(self) -> Floor:
        """What is on the floor now."""
        return self.pages[self.at].floor

    @property
    def undo(self) -> str:
        """What would be undone, in words; empty where there is nothing."""
        return self.pages[self.at].done if self.at else ""

    @property
    def redo(self) -> str:
        """What would be done again, in words; empty where there is nothing."""
        return self.pages[self.at + 1].done if self.at + 1 < len(self.pages) else ""

    def then(self, floor: Floor, done: str) -> Open:
        """With another floor at the end; what had been undone is gone."""
        pages = (*self.pages[: self.at + 1], Page(floor, done))[-MOST_BACK:]
        return replace(self, pages=pages, at=len(pages) - 1, revision=self.revision + 1)

    def back(self, by: int) -> Open:
        """One step back (-1) or on (+1). Raises: BackcutError where there is none."""
        if not 0 <= self.at + by < len(self.pages):
            raise BackcutError("There is nothing to undo." if by < 0 else "There is nothing to do again.")
        return replace(self, at=self.at + by, revision=self.revision + 1)


@dataclass(slots=True)
class Desk:
    """All floors that are open. Every method may be called from any thread."""

    floors: OrderedDict[str, Open] = field(default_factory=OrderedDict)
    lock: RLock = field(default_factory=RLock)

    def open(self, floor: Floor, name: str = "", stands: str = "") -> Open:
        """A new floor of its own; when there are too many, the one that was longest left alone makes room."""
        with self.lock:
            made = Open(secrets.token_urlsafe(9), (Page(floor, ""),), name=name, stands=stands)
            self.floors[made.id] = made
            while len(self.floors) > MOST_FLOORS:
                self.floors.popitem(last=False)
            return made

    def find(self, ident: str) -> Open:
        """The floor of this name. Raises: GoneError."""
        with self.lock:
            if ident not in self.floors:
                raise GoneError("This floor is not open here any more. Open its book again; what you kept is there.")
            self.floors.move_to_end(ident)
            return self.floors[ident]

    def put(self, was: Open, now: Open) -> Open:
        """The floor changed. Raises: GoneError, or ConflictError where it has changed since `was` was looked at."""
        with self.lock:
            if self.find(was.id).revision != was.revision:
                raise stale()
            self.floors[was.id] = now
            return now

    def keep(self, ident: str, name: str, text: str) -> Open:
        """The book was kept as this text under a name, whatever was changed on the floor since. Raises: GoneError."""
        with self.lock:
            self.floors[ident] = replace(self.find(ident), name=name, stands=digest(text))
            return self.floors[ident]


def stale() -> ConflictError:
    """What is said to whoever changed a floor as it stood before another change."""
    return ConflictError("The floor has changed since, perhaps in another window. Look at it again, then change it.")
