"""Change one sentence of a book's text by its place, on or off, read or not; all else stays as it is written.

Places count from 0, over every sentence of the text. Every function raises NotationError, one clear sentence, where
there is no such place or where the words would be no sentence.
"""

from __future__ import annotations

import unicodedata

from backcut.errors import NotationError
from backcut.offence.book_text import (
    Entry,
    draft_lines,
    entries_from_text,
    goes_on,
    note_lines,
    off_ends,
    sentence_lines,
    sentence_text,
)
from backcut.offence.places import Block, block_at, blocks, ended, joined, line_words, spliced
from backcut.offence.sentences import UnknownSentence, sentence_from_text

_NO_LETTERS = {"Cc", "Cs", "Zl", "Zp"}
NOTES = ("why", "mistake")


def switch_off(text: str, place: int) -> str:
    """The book with this sentence switched off, but kept."""
    text = ended(text)
    block = block_at(text, place)
    if block.off:
        return text
    words = block.entry.at + _indent(block.entry)
    return f"{text[:words]}Off: {text[words:]}"


def switch_on(text: str, place: int) -> str:
    """The book with this sentence on again, as it was written."""
    text = ended(text)
    block = block_at(text, place)
    if not block.off:
        return text
    entry = block.entry
    before, words = text[: entry.at], entry.raw[: _indent(entry)] + entry.words
    if goes_on(before, words):
        words = entry.words
    _check(words.lstrip(), "sentence")
    return before + words + text[entry.end :]


def take_out_at(text: str, place: int) -> str:
    """The book without this sentence, its notes, and the comments set in below it."""
    text = ended(text)
    block = block_at(text, place)
    spans: list[tuple[int, int]] = []
    for entry in (block.entry, *block.own):
        if spans and spans[-1][1] == entry.at:
            spans[-1] = (spans[-1][0], entry.end + 1)
        else:
            spans.append((entry.at, entry.end + 1))
    for start, end in reversed(spans):
        text = spliced(text, start, end, "")
    return text


def move_to(text: str, place: int, to: int) -> str:
    """The book with this sentence at the place `to`, its notes and the comments directly above it with it.

    What stands between the sentences stays where it is; the number of sentences means the end.
    """
    text = ended(text)
    block_at(text, place)
    found = blocks(text)
    to = min(to, len(found) - 1) if to <= len(found) else to
    block_at(text, to)
    starts, ends = [block.start for block in found], [block.end for block in found]
    between = [text[end:start] for end, start in zip([0, *ends], [*starts, len(text)], strict=True)]
    order = list(found)
    order.insert(to, order.pop(place))
    moved = between[0]
    for block, after in zip(order, between[1:], strict=True):
        moved = joined(joined(moved, text[block.start : block.end]), after)
    return moved


def rewrite(text: str, place: int, words: str) -> str:
    """The book with these words as this sentence, on or off as it was; what cannot be read becomes a problem."""
    text = ended(text)
    block = block_at(text, place)
    lines, off = _sentence(words, block.off)
    kind = "off" if off else "sentence"
    (new,) = entries_from_text(lines)
    if (new.kind, _even(new)) == (block.entry.kind, _even(block.entry)):
        return text
    _check(lines, kind)
    return spliced(text, block.entry.at, block.entry.end + 1, lines + "\n")


def put_in_text(text: str, place: int, words: str) -> str:
    """The book with these words as a sentence at this place; the number of sentences means the end."""
    text = ended(text)
    found = blocks(text)
    lines, _ = _sentence(words, off=False)
    if place < len(found):
        at = block_at(text, place).start
        return spliced(text, at, at, _apart(text[:at]) + lines + "\n\n")
    if place > len(found):
        raise NotationError(
            f"There is no place {place + 1} in this book; after its {len(found)} sentences comes the end."
        )
    at = found[-1].end if found else len(text)
    return spliced(text, at, at, _apart(text[:at]) + lines + "\n")


def note(text: str, place: int, which: str, words: str) -> str:
    """The book with these words as the "why" or the "mistake" of this sentence; no words take the note out."""
    if which not in NOTES:
        raise NotationError(f'"{which}" is no note of a sentence. There are: {" and ".join(NOTES)}.')
    text = ended(text)
    block = block_at(text, place)
    words = plain(words)
    there = block.notes(which)
    if not words:
        for entry in reversed(there):
            text = spliced(text, entry.at, entry.end + 1, "")
        return text
    if there and line_words(there[0]) == words:
        return text
    new = "\n".join(note_lines(which, words)) + "\n"
    if there:
        return spliced(text, there[0].at, there[0].end + 1, new)
    at = _note_place(block, which).end + 1
    return spliced(text, at, at, new)


def plain(words: str) -> str:
    """Words as one line: what is no letter, and every run of spaces, is one space."""
    return " ".join("".join(" " if unicodedata.category(c) in _NO_LETTERS else c for c in words).split())


def _note_place(block: Block, which: str) -> Entry:
    """The entry that a new note comes after: the mistake stands below the why."""
    return (block.notes("why") or [block.entry])[0] if which == "mistake" else block.entry


def _indent(entry: Entry) -> int:
    return len(entry.raw) - len(entry.raw.lstrip())


def _apart(before: str) -> str:
    return "\n" if before and not before.endswith("\n\n") and before.strip() else ""


def _even(entry: Entry) -> str:
    """What a sentence says, whatever its spacing."""
    return sentence_text(entry.read) if entry.read else " ".join(entry.words.split())


def _sentence(words: str, off: bool) -> tuple[str, bool]:
    """These words as the lines of one sentence, and whether it is off. Raises: NotationError if they are none."""
    words = plain(words)
    off = off or off_ends(words) > 0
    words = words[off_ends(words) :]
    if not words:
        raise NotationError('A sentence needs words, such as "When I pass to the next spot, I cut to the rim."')
    _check(words, "sentence")
    try:
        lines = sentence_lines(sentence_from_text(words), off)
    except UnknownSentence:
        lines = draft_lines(words, off)
    return "\n".join(lines), off


def _check(words: str, kind: str) -> None:
    """Raises: NotationError where the book would read these words as something else than one sentence."""
    if [entry.kind for entry in entries_from_text(ended(words))] != [kind]:
        raise NotationError(
            f'"{words[:40]}" would be another line of the book, not a sentence. A sentence begins with a word such as '
            '"When" or "Otherwise", with no colon.'
        )
