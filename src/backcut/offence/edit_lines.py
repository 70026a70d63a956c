"""Change one line of a book's text that is no sentence: "Key: value", a moved spot, an exception by number."""

from __future__ import annotations

import math
import re

from backcut.court.spots import Spot
from backcut.errors import NotationError
from backcut.offence.book_text import Entry, entries_from_text
from backcut.offence.choices import CHOICES
from backcut.offence.edit_places import plain
from backcut.offence.places import ended, line_key, line_words, spliced
from backcut.offence.reading import ROLE, ROLES
from backcut.offence.settings import HEADERS, SPOT_KEYS, nearest

#: The lines a book has at most once, in the order in which they are written.
_KEYS = (*HEADERS, *CHOICES, *SPOT_KEYS)
_VALUE = re.compile(r"(?P<key>[^:]*:[^\S\n]*)(?P<value>.*)")


def set_line(text: str, key: str, value: str | None) -> str:
    """The book with this value on its line "Key: value"; None takes the line out. A value that is none is a problem.

    Raises: NotationError for a key no book has, no words, or a line break in them.
    """
    text = ended(text)
    name = " ".join(key.lower().split())
    if name not in _KEYS:
        raise NotationError(f'"{key}" is no line of a book. {nearest(name, _KEYS)}')
    lines = [entry for entry in entries_from_text(text) if entry.kind == "setting" and line_key(entry) == name]
    if value is None:
        for entry in reversed(lines):
            text = spliced(text, entry.at, entry.end + 1, "")
        return text
    words = plain(value)
    if not words or len(value.strip().splitlines()) > 1:
        raise NotationError(f'The line "{name.capitalize()}:" needs words, all on one line.')
    if not lines:
        at = _place(text, name)
        return spliced(text, at, at, f"{name.capitalize()}: {words}\n")
    if line_words(lines[0]) == words:
        return text
    written = _VALUE.match(lines[0].raw)
    before = written["key"] if written else f"{name.capitalize()}:"
    before = before if before[-1:].isspace() else f"{before} "
    return spliced(text, lines[0].at, lines[0].end + 1, f"{before}{words}\n")


def set_spot(text: str, spot: Spot, at_m: tuple[float, float] | None) -> str:
    """The book with this spot in another place, metres of the house frame; None puts it back where the court has it.

    Raises: NotationError for a place that is no number.
    """
    if at_m is None:
        return set_line(text, spot.title, None)
    x_m, y_m = at_m
    if not (math.isfinite(x_m) and math.isfinite(y_m)):
        raise NotationError(f"The {spot.title} needs a place in metres.")
    across = f"{abs(x_m):.2f} m"
    side = "0 m off" if across == "0.00 m" else f"{across} {'left' if x_m < 0 else 'right'}"
    return set_line(text, spot.title, f"{side}, {abs(y_m):.2f} m {'back' if y_m <= -0.005 else 'out'}")


def set_role(text: str, role: str, on: bool) -> str:
    """The book with or without an exception by number, such as "4 never cuts".

    Raises: NotationError for what is no exception.
    """
    text = ended(text)
    wanted = _role(role)
    if wanted is None:
        known = ", ".join(f'"5 {what}"' for what in ROLES)
        raise NotationError(f'"{role}" is no exception. Known are: {known}.')
    roles = [entry for entry in entries_from_text(text) if entry.kind == "role"]
    lines = [entry for entry in roles if _role(entry.raw) == wanted]
    if not on:
        for entry in reversed(lines):
            text = spliced(text, entry.at, entry.end + 1, "")
        return text
    if lines:
        return text
    number, what = wanted
    new = f"{number} {what}.\n"
    if roles:
        return spliced(text, roles[-1].end + 1, roles[-1].end + 1, new)
    return text + ("\n" if text.strip() and not text.endswith("\n\n") else "") + new


def _role(text: str) -> tuple[int, str] | None:
    match = ROLE.match(text.strip())
    what = " ".join(match["what"].lower().split()) if match else ""
    return (int(match["number"]), what) if match and what in ROLES else None


def _place(text: str, key: str) -> int:
    """Where a new line comes: after the lines that books write before it, else before the others, else on top."""
    lines = [entry for entry in entries_from_text(text) if entry.kind == "setting" and line_key(entry) in _KEYS]
    before = [entry for entry in lines if _KEYS.index(line_key(entry)) < _KEYS.index(key)]
    if before:
        return max(entry.end for entry in before) + 1
    return lines[0].at if lines else _top(entries_from_text(text))


def _top(entries: tuple[Entry, ...]) -> int:
    """Below the comments that a book begins with."""
    at = 0
    for entry in entries:
        if entry.kind not in ("comment", "blank"):
            break
        at = entry.end + 1
    return at
