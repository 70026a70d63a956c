"""Change one thing in a book's text: a choice, a sentence out, in, or to another place; all else stays as written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from backcut.offence.book import Book
from backcut.offence.book_text import Entry, entries_from_text, sentence_lines
from backcut.offence.choices import CHOICES
from backcut.offence.edit_lines import set_line, set_role, set_spot
from backcut.offence.edit_places import move_to, note, put_in_text, rewrite, switch_off, switch_on, take_out_at
from backcut.offence.phrase import Phrase, phrases
from backcut.offence.places import ended, line_key, spliced
from backcut.offence.sentences import Read

__all__ = [
    "choose",
    "move",
    "move_to",
    "note",
    "put_in",
    "put_in_text",
    "rewrite",
    "said_in",
    "set_line",
    "set_role",
    "set_spot",
    "switch_off",
    "switch_on",
    "take_out",
    "take_out_at",
    "text_of",
]


def choose(text: str, name: str, value: str) -> str:
    """The book with this value of a choice: said in every sentence that can say it, else on a line of its own.

    Raises: KeyError if there is no such choice or value.
    """
    text = ended(text)
    words = CHOICES[name].value(value).words
    entries = entries_from_text(text)
    able = [(entry, read) for entry in entries if (read := _read(entry)) is not None and name in read.phrase.slots]
    said = [(entry, read) for entry, read in able if name in read.values]
    lines = any(entry.kind == "setting" and line_key(entry) == name for entry in entries)
    for entry, read in reversed(said or able[:1]):
        new = "\n".join(sentence_lines(replace(read, values=read.values | {name: value})))
        text = spliced(text, entry.at, entry.end + 1, f"{new}\n")
    return set_line(text, name, words) if lines or not able else text


def take_out(text: str, rank: int) -> str:
    """The book without the sentence at this rank and its notes. Raises: IndexError if there is none."""
    before, _, after = _parted(text, rank)
    return _text([*before, *after])


def said_in(phrase: Phrase, values: Mapping[str, str]) -> dict[str, str]:
    """Of these values those that the phrase cannot leave unsaid; the default of a choice where there is none."""
    must = (slot for slot in phrase.slots if f"[ {{{slot}}}]" not in phrase.says)
    return {slot: values.get(slot, CHOICES[slot].default) for slot in must}


def put_in(text: str, name: str, rank: int, values: Mapping[str, str] | None = None) -> str:
    """The book with the phrase of this name as the sentence at this rank.

    `values` are the book's, so that what the sentence must say does not contradict them. Raises: KeyError for an
    unknown phrase.
    """
    phrase = phrases()[name]
    new = [_written(Read(phrase, said_in(phrase, values or {}), phrase.cue)), Entry("blank", "", 0)]
    if rank >= _sentences(text):
        return _text([*entries_from_text(text), Entry("blank", "", 0), *new[:1]])
    before, block, after = _parted(text, rank)
    return _text([*before, *new, *block, *after])


def move(text: str, rank: int, to: int) -> str:
    """The book with the sentence at `rank` at the rank `to`, its notes with it. Raises: IndexError."""
    before, block, after = _parted(text, rank)
    rest = _text([*before, *after])
    if block[-1].kind != "blank":
        block = [*block, Entry("blank", "", 0)]
    if to >= _sentences(rest):
        return _text([*entries_from_text(rest), Entry("blank", "", 0), *block])
    head, next_, tail = _parted(rest, to)
    return _text([*head, *block, *next_, *tail])


def text_of(book: Book) -> str:
    """A book that was never written, such as a formation's plain one, as text: title, formation and sentences."""
    head = [f"Title: {book.title}", f"Formation: {book.formation.name}"]
    said = (Read(s.phrase, dict(s.values), s.cue) for s in book.sentences)
    return "\n".join([*head, *("\n" + "\n".join(sentence_lines(read)) for read in said)]) + "\n"


def _read(entry: Entry) -> Read | None:
    """What a sentence says that is not switched off."""
    return entry.read if entry.kind == "sentence" else None


def _written(read: Read) -> Entry:
    return Entry("sentence", "\n".join(sentence_lines(read)), 0, read)


def _text(entries: Sequence[Entry]) -> str:
    """The text of these pieces, never more than one blank line between two."""
    lines: list[str] = []
    for entry in entries:
        if entry.kind == "blank" and (not lines or lines[-1] == ""):
            continue
        lines.append("" if entry.kind == "blank" else entry.raw)
    while lines and lines[-1] == "":
        lines.pop()
    return "\n".join(lines) + "\n"


def _sentences(text: str) -> int:
    return sum(_read(entry) is not None for entry in entries_from_text(text))


def _parted(text: str, rank: int) -> tuple[list[Entry], list[Entry], list[Entry]]:
    """What stands before a sentence, the sentence with its notes and the blank line after it, and what stands after."""
    entries = list(entries_from_text(text))
    first = [i for i, entry in enumerate(entries) if _read(entry) is not None][rank]
    last = first + 1 + sum(1 for _ in _notes(entries[first + 1 :]))
    if last < len(entries) and entries[last].kind == "blank":
        last += 1
    return entries[:first], entries[first:last], entries[last:]


def _notes(entries: Sequence[Entry]) -> Iterator[Entry]:
    for entry in entries:
        if entry.kind != "note" and not (entry.kind == "comment" and entry.raw[:1] in " \t"):
            return
        yield entry
