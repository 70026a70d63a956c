"""What a coach asks of his book: its lines "Prove:" and "Do not prove:", read into properties, numbers and problems."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from backcut.offence.book import Book, ProofLine
from backcut.offence.problems import Code, Problem
from backcut.offence.settings import nearest
from backcut.offence.start import lacks
from backcut.prove.chosen import chosen
from backcut.prove.conditions.condition import Leaf
from backcut.prove.conditions.facts import FACTS
from backcut.prove.conditions.grammar import BEGINS
from backcut.prove.conditions.sentence import MOST_LETTERS, NotRead, OwnSentence, own_from_text
from backcut.prove.conditions.subject import COUNTS, SOMEBODY
from backcut.prove.own_property import own_property
from backcut.prove.property import Numbers, Property, properties

__all__ = ["Asked", "asked_of", "chosen", "problems_of"]

#: How many of the nearest sentences are offered, how alike they must be, and from where on it must be the nearest one
#: that was meant (difflib's ratio; estimates).
_OFFERED, _ALIKE, _NEARLY = 3, 0.5, 0.8

_SLOT = re.compile(r"\{(\w+)\}")
_NUMBER = rf"\d+(?:\.\d+)?|{'|'.join(COUNTS)}"
#: A number said at the end: ", with whatever at 1".
_FURTHER = re.compile(rf"[\s,]+(?:with|and)\s+(?P<name>\w+)\s+at\s+(?P<number>{_NUMBER})$", re.I)


@dataclass(frozen=True, slots=True)
class Asked:
    """What has to hold in a book: the properties with their numbers, shipped ones first, then the coach's own.

    `named` are the numbers an own property speaks of: these players have to be told apart. Where one speaks of left or
    right (`sided`), mirror images must not be taken for one.
    """

    properties: tuple[tuple[Property, Numbers], ...]
    problems: tuple[Problem, ...] = ()
    named: frozenset[int] = frozenset()
    sided: bool = False


@dataclass(slots=True)
class _Reading:
    """The lines of a book on the way to being read."""

    book: Book
    known: Mapping[str, Property]
    off: dict[str, ProofLine] = field(default_factory=dict)
    set_: dict[str, tuple[ProofLine, Numbers]] = field(default_factory=dict)
    own: dict[str, Property] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    named: set[int] = field(default_factory=set)
    sided: bool = False

    def problem(self, line: ProofLine, code: Code, wrong: str, right: str, at: int = 0) -> None:
        self.problems.append(Problem(*line.place(at), code, wrong, right))


def asked_of(book: Book, known: Mapping[str, Property] | None = None) -> Asked:
    """What this book has to be proved for. `known` are the shipped properties, by default all that are found."""
    reading = _Reading(book, properties() if known is None else known)
    for line in book.proofs:
        (_off if line.off else _on)(reading, line)
    for name in reading.off.keys() & reading.set_.keys():
        line, first = reading.set_[name][0], reading.off[name].line
        reading.problem(
            line,
            Code.CONTRADICTION,
            f'"{name}" is asked for here and switched off in line {first}.',
            "Keep one of the two lines.",
        )
    shipped = [
        (prop, reading.set_[name][1] if name in reading.set_ else prop.numbers)
        for name, prop in reading.known.items()
        if name not in reading.off
    ]
    return Asked(
        (*shipped, *((prop, prop.numbers) for prop in reading.own.values())),
        tuple(sorted(reading.problems, key=lambda problem: (problem.line, problem.column))),
        frozenset(reading.named),
        reading.sided,
    )


def problems_of(book: Book) -> tuple[Problem, ...]:
    """What is wrong with the lines "Prove:" and "Do not prove:" of a book, in order of place."""
    return asked_of(book).problems


def _said(text: str) -> str:
    return " ".join(text.split()).rstrip(" .")


def _off(reading: _Reading, line: ProofLine) -> None:
    name = _said(line.text).lower()
    if name not in reading.known:
        told = f'No property is called "{_said(line.text)[:40]}".' if name else "This line names no property."
        reading.problem(line, Code.UNKNOWN_VALUE, told, nearest(name, reading.known))
    elif name in reading.off:
        _twice(reading, line, name, reading.off[name])
    else:
        reading.off[name] = line


def _twice(reading: _Reading, line: ProofLine, name: str, first: ProofLine) -> None:
    reading.problem(
        line, Code.SAID_TWICE, f'"{name}" is said twice, first in line {first.line}.', "Keep one of the two lines."
    )


def _on(reading: _Reading, line: ProofLine) -> None:
    said = _said(line.text)
    if (found := _shipped(reading.known, said)) is not None:
        _set(reading, line, *found)
        return
    try:
        sentence = own_from_text(line.text)
    except NotRead as error:
        _not_read(reading, line, error)
        return
    if list(_cannot_be(reading, line, sentence)):
        return
    name = said[:1].upper() + said[1:]
    if name.lower() in (own.lower() for own in reading.own):
        reading.problem(line, Code.SAID_TWICE, "This is said twice.", "Keep one of the two lines.")
        return
    reading.own[name] = own_property(name, sentence)
    for leaf in sentence.leaves():
        reading.named.update(_numbers(leaf))
        reading.sided |= leaf.place is not None and leaf.place.sided


def _set(reading: _Reading, line: ProofLine, prop: Property, numbers: Numbers) -> None:
    """Ask a shipped property with these numbers."""
    if unknown := [name for name in numbers if name not in prop.numbers]:
        there = f"It has: {', '.join(prop.numbers)}." if prop.numbers else "It has none."
        reading.problem(line, Code.UNKNOWN_VALUE, f'"{prop.name}" has no number "{unknown[0]}".', there)
    elif prop.name in reading.set_:
        _twice(reading, line, prop.name, reading.set_[prop.name][0])
    else:
        reading.set_[prop.name] = line, dict(prop.numbers) | dict(numbers)


def _shipped(known: Mapping[str, Property], said: str) -> tuple[Property, Numbers] | None:
    """The shipped property that is called so or says so, with the numbers that were said: in it or "with ... at"."""
    further: dict[str, float] = {}
    while match := _FURTHER.search(said):
        further[match["name"].lower()] = _number(match["number"])
        said = said[: match.start()]
    for prop in known.values():
        if said.lower() == prop.name.lower():
            return prop, further
        if match := re.fullmatch(_pattern(prop.says), said, re.I):
            return prop, further | {name: _number(text) for name, text in match.groupdict().items()}
    return None


@lru_cache(maxsize=256)
def _pattern(says: str) -> str:
    """A property's sentence as a pattern: a number for each slot, "1 second" as well as "3 seconds"."""
    parts = re.split(r"\{\w+\}", says.rstrip(" ."))
    pattern, seen = "", set[str]()
    for name, part in zip([None, *_SLOT.findall(says)], parts, strict=True):
        words = r"[\s,]+".join(map(re.escape, re.split(r"[\s,]+", part)))
        if name is not None:
            pattern += f"(?P={name})" if name in seen else f"(?P<{name}>{_NUMBER})"
            seen.add(name)
            words = re.sub(r"^(\[\\s,\]\+\w+)s\b", r"\1s?", words)
        pattern += words
    return pattern


def _number(text: str) -> float:
    return float(COUNTS.index(text.lower()) + 1) if text.lower() in COUNTS else float(text)


def _not_read(reading: _Reading, line: ProofLine, error: NotRead) -> None:
    said, at = _said(line.text), error.at
    if len(line.text) > MOST_LETTERS:
        reading.problem(line, Code.UNKNOWN_SENTENCE, "This is too long for one property.", "Write two shorter lines.")
        return
    offered = difflib.get_close_matches(said, _sayable(reading.known), _OFFERED, _ALIKE)
    near = "; ".join(f'"{sentence}"' for sentence in offered)
    if at == 0:
        wrong = f'"{said[:40]}" is nothing that can be proved.' if said else "This line says nothing to be proved."
        begin = ", ".join(f'"{word}"' for word in BEGINS)
        right = f"A property of your own begins with {begin}; the others are: {', '.join(reading.known)}."
        if difflib.get_close_matches(said, offered[:1], 1, _NEARLY):
            right = ""
    else:
        rest = " ".join(line.text[at:].split())
        wrong = f'Nothing that can be proved goes on with "{rest[:40]}" here.' if rest else "This ends too early."
        right = f"Here may stand: {', '.join(error.may)}."
    if error.meant is not None:
        right = f'Did you mean "{error.meant}"? {right}'
    elif near:
        right = f"{right} The nearest are: {near}."
    reading.problem(line, Code.UNKNOWN_SENTENCE, wrong, right.strip(), at)


def _sayable(known: Mapping[str, Property]) -> list[str]:
    """Sentences to offer: every shipped one by name and by its sentence, and one for each fact."""
    shipped = [said for prop in known.values() for said in (prop.name, prop.sentence(prop.numbers))]
    return [*shipped, *(f"{way} {fact.shown.says}." for fact in FACTS for way in ("Always", "Sometimes"))]


def _numbers(leaf: Leaf) -> tuple[int, ...]:
    return () if leaf.subject is None else leaf.subject.numbers


def _cannot_be(reading: _Reading, line: ProofLine, sentence: OwnSentence) -> Iterator[bool]:
    """Each thing that a sentence names and this book does not have: told, and True."""
    worn = sorted((reading.book.begins or reading.book.formation.situation()).spots())
    for leaf in sentence.leaves():
        for number in _numbers(leaf):
            if number not in worn:
                right = f"On the floor are {', '.join(map(str, worn))}."
                reading.problem(line, Code.NOBODY, f"Nobody wears {number}.", right)
                yield True
        if leaf.place is not None and not leaf.place.there_are(reading.book):
            reading.problem(line, *lacks(reading.book, min(leaf.place.among)))
            yield True
    if sentence.points:
        names = sentence.names
        count = 0 if names is None else sum(leaf.subject is SOMEBODY for leaf in names.leaves())
        if count != 1:
            reading.problem(
                line,
                Code.UNKNOWN_SENTENCE,
                f'"that player" must point at one "somebody" before it; there {"are two" if count else "is none"}.',
                'Write for example "Whenever somebody is denied, that player cuts."',
            )
            yield True
