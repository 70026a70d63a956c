"""A book as a text file: its pieces in order, and the same text made even, comments and order kept."""

from __future__ import annotations

import re
import textwrap
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from lark import Lark

from backcut.errors import BookFileError
from backcut.offence.sentences import Read, UnknownSentence, sentence_from_text

#: A page of text is about 3 kB; a book is a few pages. Bigger files are not books.
MOST_BYTES = 64_000
_WIDTH = 96
_OWN_LINE = re.compile(r"\s*(#|(why|mistake|off|(do\s+not\s+)?prove)\s*:)", re.I)
_PROOF_ENDS = re.compile(r"\s*(#|[a-z][a-z ]*:)", re.I)

_PROVE = r"(do[^\S\n]+not[^\S\n]+)?prove"
#: A line set in that goes on with the sentence or note above it.
_GOES_ON = rf"[^\S\n]+(?!(why|mistake|off|{_PROVE})[^\S\n]*:)[^\s#]"
_SET_IN = re.compile(_GOES_ON, re.I)
_OFF = re.compile(r"\s*off\s*:\s*", re.I)
_GRAMMAR = rf"""
start: (_NL | COMMENT | NOTE | OFF | PROOF | ROLE | SETTING | SENTENCE | OTHER)*
COMMENT.9: /[^\S\n]*#[^\n]*/
NOTE.8: /[^\S\n]*(why|mistake)[^\S\n]*:[^\n]*(\n{_GOES_ON}[^\n]*)*/i
OFF.8: /[^\S\n]*off[^\S\n]*:[^\n]*(\n{_GOES_ON}[^\n]*)*/i
PROOF.8: /[^\S\n]*{_PROVE}[^\S\n]*:[^\n]*(\n[^\S\n]+(?![a-z][a-z ]*:)[^\s#][^\n]*)*/i
ROLE.7: /[^\S\n]*\d+[^\S\n]+[^\n]*/
SETTING.6: /[^\S\n]*[A-Za-z][A-Za-z ]*:[^\n]*/
SENTENCE.5: /[^\S\n]*[A-Za-z"(][^\n]*(\n{_GOES_ON}[^\n]*)*/i
OTHER.1: /[^\S\n]*[^\s][^\n]*/
_NL: /[^\S\n]*\n/
"""


@dataclass(frozen=True, slots=True)
class Entry:
    """One piece of a book's text: what kind, the raw text, and where it starts (offset into the file).

    A sentence, on or off, also holds what was read, or why it could not be.
    """

    kind: str
    raw: str
    at: int
    read: Read | None = None
    unknown: UnknownSentence | None = None

    @property
    def end(self) -> int:
        """The offset behind the piece: the end of its last line, before the line break."""
        return self.at + len(self.raw)

    @property
    def words(self) -> str:
        """What a sentence that is switched off, or any other piece, says: the raw text without "Off:"."""
        return self.raw[off_ends(self.raw) :] if self.kind == "off" else self.raw


@cache
def _parser() -> Lark:
    return Lark(_GRAMMAR, parser="lalr", lexer="basic")


def entries_from_text(text: str) -> tuple[Entry, ...]:
    """The pieces of a book's text, in order: blank, comment, setting, sentence, off, note, proof, role, other.

    An "off" is a sentence that is kept, but switched off.
    """
    entries: list[Entry] = []
    for token in _parser().lex(text):
        start = token.start_pos or 0
        if token.type == "_NL":
            if start == 0 or text[start - 1] == "\n":
                entries.append(Entry("blank", "", start))
            continue
        entries.append(Entry(token.type.lower(), str(token), start))
    return tuple(_read_sentence(entry) if entry.kind in ("sentence", "off") else entry for entry in entries)


def _read_sentence(entry: Entry) -> Entry:
    words = entry.words
    try:
        return replace(entry, read=sentence_from_text(words))
    except UnknownSentence as unknown:
        before = len(entry.raw) - len(words)
        return replace(entry, unknown=UnknownSentence(before + unknown.at, unknown.nearest))


def off_ends(text: str) -> int:
    """Where "Off:" at the beginning of a text ends; 0 where there is none."""
    off = _OFF.match(text)
    return off.end() if off else 0


def goes_on(before: str, after: str) -> bool:
    """Whether the line that begins `after`, whole lines both, would be read as more of the last piece of `before`."""
    if not _SET_IN.match(after):
        return False
    last = entries_from_text(before)[-1:]
    return bool(last) and last[0].kind in ("sentence", "off", "note", "proof")


def place(text: str, offset: int) -> tuple[int, int]:
    """Line and column, both from 1, of an offset into the text."""
    before = text[:offset]
    return before.count("\n") + 1, offset - (before.rfind("\n") + 1) + 1


def text_from_file(path: Path) -> str:
    """The text of a book file. Raises: BookFileError if it is missing, empty, too big or not UTF-8 text."""
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)  # a pipe or a device never says how much there is
        size = max(path.stat().st_size, len(data))
    except OSError as error:
        raise BookFileError(
            f"{path}: this file cannot be read ({error.strerror}). Name a book file or a shipped book."
        ) from None
    if size > MOST_BYTES:
        raise BookFileError(
            f"{path}: {size / 1e6:.1f} MB is too big for a book; a book is a few pages of text, "
            f"{MOST_BYTES // 1000} kB at most."
        )
    try:
        text = data.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        raise BookFileError(
            f"{path}, line {line}: this is not UTF-8 text. Save the file as plain text, UTF-8."
        ) from None
    if not text.strip():
        raise BookFileError(f"{path}: the file is empty. Start a book with: backcut book new my-book.txt")
    if "\x00" in text:
        raise BookFileError(f"{path}: this is not a text file. Save the book as plain text, UTF-8.")
    return text if text.endswith("\n") else text + "\n"


def canonical(text: str) -> str:
    """The same book in canonical text: spacing, wrapping and wording made even; comments, order and meaning kept."""
    lines: list[str] = []
    for entry in entries_from_text(text if text.endswith("\n") else text + "\n"):
        if entry.kind == "blank":
            if lines and lines[-1] != "":
                lines.append("")
            continue
        lines += _lines(entry)
    while lines and lines[-1] == "":
        lines.pop()
    return "\n".join(lines) + "\n"


def _lines(entry: Entry) -> list[str]:
    words = " ".join(entry.raw.split())
    match entry.kind:
        case "comment":
            indent = "  " if entry.raw[:1] in " \t" else ""
            return [indent + entry.raw.strip()]
        case "setting":
            key, _, value = words.partition(":")
            return [f"{key.strip()[:1].upper()}{key.strip()[1:]}: {value.strip()}"]
        case "note":
            key, _, value = words.partition(":")
            return note_lines(key.strip(), value.strip())
        case "proof":
            key, _, value = words.partition(":")
            return _wrap(f"{key.strip().capitalize()}: {value.strip()}", "", "  ", _PROOF_ENDS)
        case "sentence" | "off" if entry.read is not None:
            return sentence_lines(entry.read, off=entry.kind == "off")
        case "role":
            return [words if words.endswith(".") else words + "."]
        case _:
            return [entry.raw.rstrip()] if "\n" not in entry.raw else entry.raw.rstrip().split("\n")


def sentence_lines(read: Read, off: bool = False) -> list[str]:
    """A sentence as it stands in a book, wrapped; `off` where it is switched off."""
    return draft_lines(sentence_text(read), off)


def draft_lines(words: str, off: bool = False) -> list[str]:
    """A sentence in a coach's own words as it stands in a book, wrapped; it need not be one that can be read."""
    return _wrap(f"Off: {words}" if off else words, "", "  ")


def note_lines(key: str, words: str) -> list[str]:
    """A note, "why" or "mistake", as it stands under its sentence, wrapped."""
    return _wrap(f"{key.capitalize()}: {words}", "  ", "    ")


def sentence_text(read: Read) -> str:
    """A sentence as the book writes it, its cue word in front."""
    cue = read.cue or read.phrase.cue
    return f"{cue}. {read.phrase.sentence(read.values)}"


def _wrap(text: str, first: str, later: str, own_line: re.Pattern[str] = _OWN_LINE) -> list[str]:
    lines = textwrap.wrap(
        text,
        _WIDTH,
        initial_indent=first,
        subsequent_indent=later,
        break_long_words=False,
        break_on_hyphens=False,
    )
    # A line that begins like a comment or a note would be read as one.
    return [first + text] if any(own_line.match(line) for line in lines[1:]) else lines
