"""A book's text taken apart for whoever shows it: its sentences in their pieces, and the sentences it could say."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from backcut.offence.book import Book
from backcut.offence.book_text import Entry, place
from backcut.offence.choices import CHOICES
from backcut.offence.edit import said_in
from backcut.offence.phrase import Phrase, phrases
from backcut.offence.places import Block, blocks, ended, line_words
from backcut.offence.problems import Code, Problem
from backcut.offence.reading import book_from_text
from backcut.offence.sentences import CUE, sentence_from_text

_PART = re.compile(r"\[(?P<before>[^\]{]*)\{(?P<may>[^}]+)\}(?P<after>[^\]]*)\]|\{(?P<must>[^}]+)\}")
#: What is missing in the book is said at one of its sentences, or at its beginning, but is wrong with neither.
_OF_THE_BOOK = (Code.MISSING, Code.NOT_COVERED)


@dataclass(frozen=True, slots=True)
class Wave:
    """What is wrong with a sentence: from which letter of "Cue. text" up to which, what, and what would be right."""

    start: int
    end: int
    wrong: str
    right: str


@dataclass(frozen=True, slots=True)
class Written:
    """A sentence of a book's text, on or off, read or not.

    `place` counts from 0 over all of them; `rank` is None where the rules do not ask it. `parts` are runs of words,
    each with the choice it says, if it says one; joined they are `text`. A sentence that can be read has the book's
    words and, where it has no cue of its own, the phrase's; another has the coach's. `line` counts from 1.
    """

    place: int
    rank: int | None
    off: bool
    cue: str
    text: str
    parts: tuple[tuple[str, str | None], ...]
    why: str
    mistake: str
    line: int
    waves: tuple[Wave, ...]


@dataclass(frozen=True, slots=True)
class Listed:
    """A sentence a book could say, with the book's own choices; `said` where it says it already."""

    name: str
    cue: str
    text: str
    why: str
    said: bool


@lru_cache(maxsize=64)
def written(text: str) -> tuple[Written, ...]:
    """Every sentence of a book's text in order, also those that are off or cannot be read."""
    text = ended(text)
    _, problems = book_from_text(text)
    found: list[Written] = []
    rank = 0
    for at, block in enumerate(blocks(text)):
        asked = not block.off and block.entry.read is not None
        found.append(_written(text, at, rank if asked else None, block, problems))
        rank += asked
    return tuple(found)


def phrase_list(book: Book) -> tuple[Listed, ...]:
    """Every phrase as the sentence this book would say, those it says already too."""
    said = book.letters()
    return tuple(
        Listed(phrase.name, phrase.cue, phrase.sentence(said_in(phrase, book.values)), phrase.why, phrase.name in said)
        for phrase in phrases().values()
    )


def parts(phrase: Phrase, values: Mapping[str, str]) -> Iterator[tuple[str, str | None]]:
    """The sentence in runs of words, each with the name of the choice it says; joined they are `phrase.sentence`."""
    at = 0
    for match in _PART.finditer(phrase.says):
        name = match["may"] or match["must"]
        if match["must"] or name in values:
            plain = phrase.says[at : match.start()] + (match["before"] or "")
            choice = CHOICES[name]
            yield plain, None
            yield choice.value(values.get(name, choice.default)).words, name
            at = match.end()
            if match["after"]:
                yield match["after"], None
        else:
            yield phrase.says[at : match.start()], None
            at = match.end()
    yield phrase.says[at:], None


def _written(text: str, at: int, rank: int | None, block: Block, problems: tuple[Problem, ...]) -> Written:
    entry = block.entry
    cue, words, pieces = _words(entry)
    first = entry.at + len(entry.raw) - len(entry.raw.lstrip())
    return Written(
        place=at,
        rank=rank,
        off=block.off,
        cue=cue,
        text=words,
        parts=pieces,
        why=next(map(line_words, block.notes("why")), ""),
        mistake=next(map(line_words, block.notes("mistake")), ""),
        line=place(text, first)[0],
        waves=tuple(_waves(text, entry, cue, words, problems)),
    )


def _words(entry: Entry) -> tuple[str, str, tuple[tuple[str, str | None], ...]]:
    """Cue, text and parts of a sentence."""
    if entry.read is not None:
        phrase, values = entry.read.phrase, entry.read.values
        runs: list[tuple[str, str | None]] = []
        for words, choice in parts(phrase, values):
            if runs and choice is None and runs[-1][1] is None:
                runs[-1] = (runs[-1][0] + words, None)
            elif words:
                runs.append((words, choice))
        return entry.read.cue or phrase.cue, phrase.sentence(values), tuple(runs)
    match = CUE.match(entry.words)
    words = " ".join(entry.words[match.end() if match else 0 :].split())
    return " ".join(match[1].split()) if match else "", words, ((words, None),) if words else ()


def _waves(text: str, entry: Entry, cue: str, words: str, problems: tuple[Problem, ...]) -> Iterator[Wave]:
    lead = len(f"{cue}. ") if cue else 0
    lines = [0, *(found.end() for found in re.finditer("\n", text))]
    for problem in problems:
        at = lines[problem.line - 1] + problem.column - 1
        if not entry.at <= at <= entry.end or problem.code in _OF_THE_BOOK:
            continue
        start, end = (0, len(words)) if entry.unknown is None else _faulty(entry, at - entry.at, words)
        yield Wave(lead + start, lead + end, problem.wrong, problem.right)


def _faulty(entry: Entry, at: int, words: str) -> tuple[int, int]:
    """From where to where the words are wrong: one word, where any sentence has another there, else all the rest."""
    start = max(len(words) - len(" ".join(entry.raw[at:].split())), 0)
    if start >= len(words):  # it ends too early: its last word is marked
        return words.rstrip(" .").rfind(" ") + 1, len(words)
    word = re.compile(r"[\w'-]+").match(words, start)
    if word is not None and entry.unknown is not None:
        for near in entry.unknown.nearest:
            there = re.compile(r"[\w'-]+").match(near, start)
            if there is not None and _is_read(words[:start] + there[0] + words[word.end() :]):
                return start, word.end()
    return start, len(words)


def _is_read(words: str) -> bool:
    try:
        sentence_from_text(words)
    except Exception:
        return False
    return True
