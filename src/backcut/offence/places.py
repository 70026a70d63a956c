"""Where the sentences stand in a book's text, on or off, with what belongs to each; and lines put in or taken out."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from backcut.errors import NotationError
from backcut.offence.book_text import Entry, entries_from_text, goes_on

_BLANK_FIRST = re.compile(r"[^\S\n]*\n")
_BLANK_LAST = re.compile(r"(?:\A|(?<=\n))[^\S\n]*\n\Z")


@dataclass(frozen=True, slots=True)
class Block:
    """A sentence and what belongs to it: whole lines, from `start` up to `end`, offsets into the text.

    `own` are its notes and the comments set in below it; `start` is where the comments directly above it begin.
    """

    entry: Entry
    own: tuple[Entry, ...]
    start: int
    end: int

    @property
    def off(self) -> bool:
        """Whether the sentence is switched off."""
        return self.entry.kind == "off"

    def notes(self, key: str) -> list[Entry]:
        """Its notes of this kind, "why" or "mistake"; the first is the one that is read."""
        return [entry for entry in self.own if entry.kind == "note" and line_key(entry) == key]


def ended(text: str) -> str:
    """The text with a line break at its end, where there is any."""
    return text if not text or text.endswith("\n") else text + "\n"


def line_key(entry: Entry) -> str:
    """Which note, or which line of the book, an entry is."""
    return " ".join(entry.raw.partition(":")[0].lower().split())


def line_words(entry: Entry) -> str:
    """What a note or a line of the book says."""
    return " ".join(entry.raw.partition(":")[2].split())


def blocks(text: str) -> tuple[Block, ...]:
    """Every sentence of a text that ends with a line break, in order, also those that are off or cannot be read."""
    entries = entries_from_text(text)
    found: list[Block] = []
    behind = 0  # the entries that belong to nothing yet begin here
    for i, entry in enumerate(entries):
        if entry.kind not in ("sentence", "off"):
            continue
        own, last = _own(entries[i + 1 :])
        first = i
        while first > behind and entries[first - 1].kind == "comment" and not entries[first - 1].raw[0].isspace():
            first -= 1
        behind = i + 1 + last
        found.append(Block(entry, own, entries[first].at, entries[behind - 1].end + 1))
    return tuple(found)


def _own(after: Sequence[Entry]) -> tuple[tuple[Entry, ...], int]:
    """Of what stands after a sentence, what is its own, and how many entries reach to the last of that."""
    own: list[Entry] = []
    last, apart = 0, False
    for i, entry in enumerate(after):
        if entry.kind == "note" or (entry.kind == "comment" and entry.raw[0].isspace() and not apart):
            own.append(entry)
            last = i + 1
        elif entry.kind not in ("comment", "blank"):
            break
        apart = apart or entry.kind == "blank" or not entry.raw[0].isspace()
    return tuple(own), last


def block_at(text: str, place: int) -> Block:
    """The sentence at this place, from 0. Raises: NotationError if there is none."""
    found = blocks(text)
    if not 0 <= place < len(found):
        raise NotationError(f"There is no sentence {place + 1} in this book; it has {len(found)}.")
    return found[place]


def joined(before: str, after: str) -> str:
    """Two runs of whole lines, apart by a blank line where the second would be read as more of the first."""
    return f"{before}\n{after}" if goes_on(before, after) else before + after


def spliced(text: str, start: int, end: int, new: str) -> str:
    """The text with whole lines in the place of whole lines; lines taken out leave no second blank line."""
    before, after = text[:start], text[end:]
    if not new:
        first, last = _BLANK_FIRST.match(after), _BLANK_LAST.search(before)
        if first and (last or not before):
            after = after[first.end() :]
        elif last and not after:
            before = before[: last.start()]
    return joined(before + new, after) or "\n"
