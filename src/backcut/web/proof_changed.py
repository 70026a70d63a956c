"""What a coach changed in a book since its pictures were made: the letters of the sentences, the lines, in words."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher

from backcut.motion.squads import SQUADS
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES
from backcut.offence.reading import book_from_text

#: More changes than this are not listed one by one (own design): nobody reads on.
MOST_SAID = 4

_Said = tuple[str, tuple[tuple[str, str], ...]]


def changed_since(old: str, new: str) -> str:
    """What differs between two texts of a book, as far as a proof can see it; empty where nothing does.

    Titles, comments, cue words, reasons and mistakes are not seen by a proof.
    """
    if old == new:
        return ""
    told = list(_changes(book_from_text(old, SQUADS)[0], book_from_text(new, SQUADS)[0]))
    if len(told) > MOST_SAID:
        return "You changed much in the book after these pictures were made. Look again?"
    return f"You {_list(told)} after these pictures were made. Look again?" if told else ""


def _changes(old: Book, new: Book) -> Iterator[str]:
    yield from _sentences(old, new)
    if lines := list(_lines(old, new)):
        yield f"changed {_list(lines)}"


def _sentences(old: Book, new: Book) -> Iterator[str]:
    before, now = _said(old), _said(new)
    changed: list[str] = []
    moved: list[str] = []
    put_in: list[str] = []
    taken_out: list[str] = []
    for kind, a, b, c, d in SequenceMatcher(None, before, now, autojunk=False).get_opcodes():
        if kind == "equal":
            continue
        names = [name for name, _ in before]
        for place in range(c, d):
            other = names.index(now[place][0]) if now[place][0] in names else None
            if other is None:
                put_in.append(f"{letter(place)}")
            elif before[other] != now[place]:
                changed.append(f"{letter(place)}")
            else:
                moved.append(f"{letter(place)}")
        kept = {name for name, _ in now}
        taken_out += [f"{letter(place)} ({old.cue(place)})" for place in range(a, b) if before[place][0] not in kept]
    for verb, letters in (("changed", changed), ("moved", moved), ("put in", put_in), ("took out", taken_out)):
        if letters:
            yield f"{verb} {_list(letters)}"


def _said(book: Book) -> list[_Said]:
    return [(sentence.phrase.name, tuple(sorted(sentence.values.items()))) for sentence in book.sentences]


def _lines(old: Book, new: Book) -> Iterator[str]:
    if old.formation != new.formation:
        yield "the formation"
    if old.court != new.court:
        yield "the court"
    if old.squad != new.squad:
        yield "the squad"
    if old.begins != new.begins:
        yield "the start"
    if old.mark_m != new.mark_m:
        yield "the denial mark"
    for spot in sorted(set(old.moved) | set(new.moved)):
        if old.moved.get(spot) != new.moved.get(spot):
            yield f"the {spot.title}"
    for name in CHOICES:
        if old.choices.get(name) != new.choices.get(name) and old.values[name] != new.values[name]:
            yield f'the line "{name.capitalize()}"'
    if old.exceptions != new.exceptions:
        yield "who is excepted by number"
    if [(line.text, line.off) for line in old.proofs] != [(line.text, line.off) for line in new.proofs]:
        yield "what has to hold"


def _list(parts: list[str]) -> str:
    return " and ".join([", ".join(parts[:-1]), parts[-1]]) if len(parts) > 1 else "".join(parts)
