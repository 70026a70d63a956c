"""Read a book's text into a `Book`, with every problem at once; what can be read is read."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass, field, replace
from typing import Any

from backcut.court.spots import Spot
from backcut.court.written import court_from_text
from backcut.errors import BackcutError, NotationError
from backcut.offence.book import Book, Exceptions, ProofLine, Sentence
from backcut.offence.book_text import Entry, entries_from_text, place
from backcut.offence.checks import checks
from backcut.offence.choices import CHOICES
from backcut.offence.formation import Formation, formation, formations
from backcut.offence.problems import Code, Problem
from backcut.offence.settings import (
    KEYS,
    SPOT_KEYS,
    choice_value,
    mark_from_text,
    nearest,
    place_from_text,
    spots_from_text,
)
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_from_text

#: An exception by number as it is written, and the exceptions there are.
ROLE = re.compile(r"(?P<number>\d{1,3})\s+(?P<what>.+?)\.?\s*$", re.S)
ROLES = {
    "stays inside": "stays_inside",
    "never fills a corner": "never_corner",
    "never cuts": "never_cuts",
}


@dataclass(frozen=True, slots=True)
class Where:
    """Where things stand in the text, as offsets: what a later check points at."""

    sentences: tuple[int, ...] = ()
    settings: dict[str, int] = field(default_factory=dict)
    roles: tuple[tuple[str, int, int], ...] = ()


@dataclass(slots=True)
class _Draft:
    """A book on the way to being read. `above` is the sentence that a note would explain.

    `unread` says that a sentence that is not switched off could not be read.
    """

    text: str
    squads: Collection[str] | None
    settings: dict[str, tuple[str, int]] = field(default_factory=dict)
    sentences: list[tuple[Sentence, int]] = field(default_factory=list)
    roles: list[tuple[str, int, int]] = field(default_factory=list)
    proofs: list[ProofLine] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    above: Entry | None = None
    unread: bool = False

    def problem(self, at: int, code: Code, wrong: str, right: str) -> None:
        line, column = place(self.text, at)
        self.problems.append(Problem(line, column, code, wrong, right))


def book_from_text(text: str, squads: Collection[str] | None = None) -> tuple[Book, tuple[Problem, ...]]:
    """The book in a text, and every problem in it, in order of place.

    `squads` names the known squad presets; None leaves the squad unchecked. Never raises for what a coach wrote.
    """
    text = text if text.endswith("\n") else text + "\n"
    draft = _Draft(text, squads)
    for entry in entries_from_text(text):
        _READ.get(entry.kind, _skip)(draft, entry)
        if entry.kind not in ("blank", "comment", "note"):
            draft.above = entry if entry.kind in ("sentence", "off") else None
    book = _book(draft)
    where = Where(
        tuple(at for _, at in draft.sentences),
        {key: at for key, (_, at) in draft.settings.items()},
        tuple(draft.roles),
    )
    for at, code, wrong, right in checks(book, where.sentences, where.settings, where.roles):
        # A sentence that could not be read may be the very one that is missed.
        if not (draft.unread and code in (Code.NOT_COVERED, Code.UNUSED_CHOICE, Code.MISSING)):
            draft.problem(at, code, wrong, right)
    return book, tuple(sorted(draft.problems, key=lambda problem: (problem.line, problem.column)))


def _skip(draft: _Draft, entry: Entry) -> None:
    """Blank lines and comments say nothing to the rules."""


def _indent(entry: Entry) -> int:
    return entry.at + len(entry.raw) - len(entry.raw.lstrip())


def _sentence(draft: _Draft, entry: Entry) -> None:
    if entry.read is not None:
        draft.sentences.append((Sentence(entry.read.phrase, entry.read.values, entry.read.cue), _indent(entry)))
    draft.unread = draft.unread or entry.read is None
    _off(draft, entry)


def _off(draft: _Draft, entry: Entry) -> None:
    """A sentence that is switched off says nothing to the rules, but it has to be one."""
    if entry.unknown is not None:
        near = "; ".join(f'"{sentence}"' for sentence in entry.unknown.nearest)
        rest = " ".join(entry.raw[entry.unknown.at :].split())
        wrong = f'No sentence of a book goes on with "{rest[:40]}" here.' if rest else "The sentence ends too early."
        draft.problem(
            entry.at + entry.unknown.at,
            Code.UNKNOWN_SENTENCE,
            wrong,
            f"The nearest sentences are: {near}.",
        )


def _note(draft: _Draft, entry: Entry) -> None:
    at = _indent(entry)
    if draft.above is None:
        draft.problem(
            at, Code.NOTE_ALONE, "This note belongs to no sentence.", "Write it under the sentence it explains."
        )
        return
    if draft.above.read is None or draft.above.kind == "off":
        return
    key, _, words = " ".join(entry.raw.split()).partition(":")
    key = key.strip().lower()
    sentence, start = draft.sentences[-1]
    if getattr(sentence, key) is not None:
        draft.problem(at, Code.SAID_TWICE, f'This sentence has a "{key}" already.', "Keep one of the two notes.")
        return
    draft.sentences[-1] = (replace(sentence, **{key: words.strip()}), start)  # type: ignore[arg-type]


def _role(draft: _Draft, entry: Entry) -> None:
    match = ROLE.match(entry.raw.strip())
    what = " ".join(match["what"].lower().split()) if match else ""
    if match is None or what not in ROLES:
        options = ", ".join(f'"5 {role}"' for role in ROLES)
        draft.problem(
            _indent(entry),
            Code.UNKNOWN_WORD,
            f'"{" ".join(entry.raw.split())}" is no exception.',
            f"Known are: {options}.",
        )
        return
    draft.roles.append((ROLES[what], int(match["number"]), _indent(entry)))


def _setting(draft: _Draft, entry: Entry) -> None:
    key, _, value = entry.raw.partition(":")
    key = " ".join(key.lower().split())
    at = _indent(entry)
    if key not in KEYS:
        draft.problem(at, Code.UNKNOWN_WORD, f'"{key}" is no word of a book.', nearest(key, KEYS))
    elif key in draft.settings:
        first = place(draft.text, draft.settings[key][1])[0]
        draft.problem(
            at, Code.SAID_TWICE, f'"{key}" is said twice, first in line {first}.', "Keep one of the two lines."
        )
    else:
        draft.settings[key] = (" ".join(value.split()), at)


def _proof(draft: _Draft, entry: Entry) -> None:
    key, _, value = entry.raw.partition(":")
    at = entry.at + len(key) + 1 + len(value) - len(value.lstrip())
    draft.proofs.append(ProofLine(value.strip(), *place(draft.text, at), off=key.strip().lower() != "prove"))


def _other(draft: _Draft, entry: Entry) -> None:
    draft.problem(
        _indent(entry),
        Code.UNKNOWN_WORD,
        f'"{" ".join(entry.raw.split())[:40]}" is neither a sentence nor a line of the book.',
        'A sentence begins with "When" or "Otherwise", a line with a word and a colon, a comment with #.',
    )


_READ = {
    "sentence": _sentence,
    "off": _off,
    "note": _note,
    "proof": _proof,
    "role": _role,
    "setting": _setting,
    "other": _other,
}


def _book(draft: _Draft) -> Book:
    settings = draft.settings
    title = settings["title"][0] if "title" in settings else ""
    if not title:
        draft.problem(0, Code.MISSING, "The book has no title.", 'Write "Title: School team" in its first line.')
    base = formation("five-out")
    if "formation" not in settings:
        names = ", ".join(formations())
        draft.problem(
            0, Code.MISSING, "The book names no formation.", f'Write "Formation: five-out"; there are {names}.'
        )
    else:
        base = _read(draft, "formation", formation, base)
    ring = _read(draft, "ring", spots_from_text, base.ring)
    players = _read(draft, "players", _whole, len(base.start) if ring == base.ring else min(len(base.start), len(ring)))
    try:
        key = "ring"
        base.on_ring(ring, len(ring))
        key = "players" if "players" in settings else "ring"
        base = base.on_ring(ring, players)
    except BackcutError as error:
        at = settings.get(key, ("", 0))[1]
        draft.problem(at, Code.IMPOSSIBLE, str(error), "Change the ring or the number of players.")
    inside = _read(draft, "inside players", lambda text: _inside(base, text), len(base.inside))
    base = replace(base, inside=base.inside[:inside])
    court = _read(draft, "court", _court, "fiba")
    squad = _read(draft, "squad", lambda text: _squad(draft, text), None)
    choices = {
        name: value
        for name, choice in CHOICES.items()
        if (value := _read(draft, name, lambda text, choice=choice: choice_value(choice, text), None)) is not None
    }
    moved: dict[Spot, tuple[float, float]] = {
        spot: there
        for key, spot in SPOT_KEYS.items()
        if (there := _read(draft, key, place_from_text, None)) is not None
    }
    begins: Situation | None = _read(draft, "start", situation_from_text, None)
    worn = (begins or base.situation()).spots()
    roles = {
        role: frozenset(number for kind, number, _ in draft.roles if kind == role and number in worn)
        for role in ROLES.values()
    }
    return Book(
        title=title or "A book without a title",
        formation=base,
        sentences=tuple(sentence for sentence, _ in draft.sentences),
        choices=choices,
        exceptions=Exceptions(**roles),
        court=court,
        squad=squad,
        begins=begins,
        moved=moved,
        mark_m=_read(draft, "denial mark", mark_from_text, 0.0),
        proofs=tuple(draft.proofs),
    )


def _read(draft: _Draft, key: str, reader: Any, otherwise: Any) -> Any:
    """The value of a line, or `otherwise` where the line is missing or cannot be read (which is a problem)."""
    if key not in draft.settings:
        return otherwise
    value, at = draft.settings[key]
    try:
        return reader(value)
    except BackcutError as error:
        draft.problem(at, Code.UNKNOWN_VALUE, str(error), _right(key))
        return otherwise


def _right(key: str) -> str:
    if key in CHOICES:
        return f"Known are: {', '.join(value.name for value in CHOICES[key].values)}."
    if key in SPOT_KEYS:
        return f'Write for example "{key.capitalize()}: 6.40 m left, 3.10 m out" (from the basket).'
    return {
        "denial mark": 'Write "Denial mark: the arc" or "Denial mark: 0.5 m inside the arc".',
        "players": "Write a whole number.",
        "inside players": "Write a whole number; the formation says how many there may be.",
        "start": 'Write "Start: 1 top, ball; 2 right wing; ...".',
        "ring": 'Write for example "Ring: LW LS RS RW".',
        "formation": f"Write one of them: {', '.join(formations())}.",
        "court": 'Write for example "Court: FIBA" or "Court: mini, 22 m x 12 m".',
        "squad": "Write one of them, or leave the line out.",
    }.get(key, "")


def _inside(base: Formation, text: str) -> int:
    inside = _whole(text)
    if inside > len(base.inside):
        raise NotationError(f"{base.title} has {len(base.inside)} inside, not {inside}.")
    return inside


def _court(text: str) -> str:
    court_from_text(text)
    return text


def _whole(text: str) -> int:
    if not re.fullmatch(r"\d{1,3}", text):
        raise NotationError(f'"{text}" is no number of players.')
    return int(text)


def _squad(draft: _Draft, text: str) -> str:
    name = "-".join(text.lower().split())
    if draft.squads is not None and name not in draft.squads:
        raise NotationError(f'No squad is called "{text}". {nearest(name, draft.squads)}')
    return name
