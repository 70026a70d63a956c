"""What the page asks for, done: open a book, change what is on the floor, go back and on, keep a book."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, field

from backcut.errors import BackcutError, ShelfError
from backcut.files import digest
from backcut.offence.book import plain_book
from backcut.offence.edit import text_of
from backcut.offence.formation import formation
from backcut.offence.library import preset_text, presets
from backcut.web.changes import Change, Choose, Cut, Draw, Happen, Line, Role, Sentence, Show, Spot, Write, changed
from backcut.web.desk import Desk, Open, Page, stale
from backcut.web.envelope import FloorData
from backcut.web.floor import Floor, book_text
from backcut.web.seen import Seen
from backcut.web.shelf import Kept, Shelf
from backcut.web.stops import Stop, told
from backcut.web.view import floor_data

#: The possession that runs on a first visit: a pass and cut, a denial and its back cut, a lay-up. Invented.
DEMO = ("1>2", "2>3", "deny 4", "early 3>4", "lay-up 4")
DEMO_BOOK = "school-team"


@dataclass(slots=True)
class Evening:
    """Everything that is open, and what has been walked through. Every method may be called from any thread."""

    shelf: Shelf
    began_with: str = DEMO_BOOK
    desk: Desk = field(default_factory=Desk)
    seen: dict[str, Seen] = field(default_factory=dict)

    def get_ready(self) -> None:
        """Play and draw the first floor before anybody asks for it, so that it is there at once."""
        with suppress(BackcutError):
            floor = _demo(Floor(self.text_of(self.began_with)))
            floor_data(Open("", (Page(floor, ""),)), Seen().data(told(floor).played.book))

    def open(self, book: str = "", text: str = "", start: str = "", moves: str = "", stands: str = "") -> FloorData:
        """A new floor: a book from the shelf or a text, with a possession; the demo plays where nothing is asked.

        `stands` is the digest of what stood on the shelf when the text came from there, perhaps long ago.
        """
        name = book or ("" if text else self.began_with)
        own = book_text(text or self.text_of(name))
        stands = stands if text else digest(own)
        asked = Show(kind="show", start=start, moves=moves)
        made = changed(Floor(own), asked)
        if not moves and not start:
            made = _demo(made)
        told(made)  # what cannot be shown is refused before it is open
        here = self.desk.open(made, name, stands)
        for gone in set(self.seen) - set(self.desk.floors):
            self.seen.pop(gone, None)
        return self._shown(here)

    def text_of(self, name: str) -> str:
        """The text of a book on the shelf, of a shipped one, or of a formation. Raises: BackcutError."""
        if self.shelf.has(name):
            return self.shelf.read(name)
        if name in presets():
            return preset_text(name)
        try:  # never a file: the page may not name one
            return text_of(plain_book(formation(name)))
        except BackcutError:
            raise ShelfError(f'No book is kept as "{name[:60]}". Open one from the list of books.') from None

    def books(self) -> list[Kept]:
        """Every book that can be opened."""
        return self.shelf.books()

    def look(self, ident: str) -> FloorData:
        """A floor as it is."""
        return self._shown(self.desk.find(ident))

    def change(self, ident: str, revision: int, change: Change) -> FloorData:
        """A change made on the floor as it stood at a revision. Raises: BackcutError where it cannot be."""
        was = self._at(ident, revision)
        floor = changed(was.floor, change)
        told(floor)
        now = self.desk.put(was, was.then(floor, _done(change)))
        return self._shown(now, was, change)

    def back(self, ident: str, revision: int, by: int) -> FloorData:
        """Undo (-1), or do again (+1)."""
        was = self._at(ident, revision)
        return self._shown(self.desk.put(was, was.back(by)), was)

    def keep(self, ident: str, name: str) -> FloorData:
        """The book is kept on the shelf under a name. Raises: BackcutError where the shelf cannot or may not."""
        here = self.desk.find(ident)
        known = here.stands or None if here.name == name else None
        self.shelf.keep(name, here.floor.text, known)
        return self._shown(self.desk.keep(ident, name, here.floor.text))

    def _at(self, ident: str, revision: int) -> Open:
        here = self.desk.find(ident)
        if here.revision != revision:
            raise stale()
        return here

    def _shown(self, here: Open, was: Open | None = None, change: Change | None = None) -> FloorData:
        now = told(here.floor)
        book = now.played.book
        walked = self.seen.get(here.id, Seen()).with_steps(book, now.played.steps)
        self.seen[here.id] = walked
        edited = was is not None and was.floor.text != here.floor.text
        if edited and here.name:
            self.shelf.autosave(here.name, here.floor.text)
        return floor_data(
            here,
            walked.data(book),
            was=was.floor if edited and was is not None else None,
            stop=_look_at(change, now.stops),
            runs=_runs(change) or (was is None and bool(now.played.steps)),
        )


def _demo(floor: Floor) -> Floor:
    """The demo possession, as far as the book plays it."""
    for count in range(len(DEMO), 0, -1):
        made = Floor(floor.text, "", DEMO[:count])
        try:
            if not told(made).played.stuck:
                return made
        except BackcutError:
            continue
    return floor


def _look_at(change: Change | None, stops: Sequence[Stop]) -> int | None:
    """The stop the page should go to: where what was just done begins; None to stay in time."""
    last = len(stops) - 1
    match change:
        case Happen(keep=keep):
            return next((i for i, stop in enumerate(stops) if stop.step > keep), last)
        case Show(step=step, beat=beat) if step is not None:
            there = [i for i, stop in enumerate(stops) if stop.step == step + 1]
            return next((i for i in there if stops[i].beats > beat), there[-1] if there else last)
        case Show() | Draw():
            return 0
        case Cut():
            return last
        case _:
            return None


def _runs(change: Change | None) -> bool:
    """Whether what was done should be seen running: a move, or another possession from its start."""
    return isinstance(change, (Happen, Draw)) or (isinstance(change, Show) and change.step is None)


def _done(change: Change) -> str:
    """What was done, in words, for "Undo: ..."."""
    match change:
        case Happen(move=move):
            return move
        case Cut():
            return "go back"
        case Show():
            return "another possession"
        case Draw():
            return "a drawn possession"
        case Write():
            return "the text of the book"
        case Sentence(do=do):
            return f"a sentence: {do}"
        case Choose(name=name):
            return name
        case Line(key=key):
            return key
        case Spot(spot=spot):
            return f"the place of {spot}"
        case Role(role=role):
            return role
