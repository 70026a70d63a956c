"""The lines "Key: value" of a book: which keys there are, and how each value is read."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable

from backcut.court.spots import TITLES, Spot, spot_from_text
from backcut.court.units import metres_from_text
from backcut.errors import BackcutError, NotationError
from backcut.offence.choices import CHOICES, Choice

HEADERS = ("title", "court", "formation", "ring", "players", "inside players", "squad", "start", "denial mark")
#: What has to hold in a book, and what need not: any number of lines each.
PROOFS = ("prove", "do not prove")
SPOT_KEYS = {title: spot for spot, title in TITLES.items()}
KEYS = (*HEADERS, *PROOFS, *CHOICES, *SPOT_KEYS)

_PLACE = re.compile(r"^\s*(?P<x>.+?)\s+(?P<side>left|right|off)\s*,\s*(?P<y>.+?)\s+(?P<way>out|back)\s*\.?\s*$", re.I)
_MARK = re.compile(r"^\s*(?:the arc|(?P<far>.+?)\s+(?P<way>inside|outside)\s+(?:the\s+)?arc)\s*\.?\s*$", re.I)


def nearest(word: str, known: Iterable[str], most: int = 3) -> str:
    """The nearest known words, as the end of a sentence: "Did you mean exit?"."""
    names = list(known)
    near = difflib.get_close_matches(word.lower(), names, most, 0.5)
    if not near:
        return f"Known are: {', '.join(names)}."
    return f"Did you mean {' or '.join(near)}?"


def choice_value(choice: Choice, text: str) -> str:
    """The name of the value said by its name or by its words. Raises: NotationError with the values there are."""
    said = " ".join(text.lower().rstrip(".").split())
    for value in choice.values:
        if said in (value.name.lower(), value.words.lower()):
            return value.name
    raise NotationError(f'"{text}" is no answer to "{choice.asks}"')


def place_from_text(text: str) -> tuple[float, float]:
    """A spot's place: "6.40 m left, 3.10 m out" is 6.40 m to the left of the basket and 3.10 m toward mid-court.

    "out" is toward mid-court, "back" toward the baseline; "0 m off" is on the axis. Feet are read too.
    Raises: NotationError.
    """
    match = _PLACE.match(text)
    if not match:
        raise NotationError(f'"{text}" is no place.')
    try:
        x, y = metres_from_text(match["x"]), metres_from_text(match["y"])
    except BackcutError as error:
        raise NotationError(str(error)) from None
    side = {"left": -1, "right": 1, "off": 0}[match["side"].lower()]
    return x * side, y if match["way"].lower() == "out" else -y


def mark_from_text(text: str) -> float:
    """The denial mark in metres outside the arc: "the arc", "0.5 m inside the arc". Raises: NotationError."""
    match = _MARK.match(text)
    if not match:
        raise NotationError(f'"{text}" is no denial mark.')
    if match["far"] is None:
        return 0.0
    try:
        far = metres_from_text(match["far"])
    except BackcutError as error:
        raise NotationError(str(error)) from None
    return far if match["way"].lower() == "outside" else -far


def spots_from_text(text: str) -> tuple[Spot, ...]:
    """A row of spots: "LW LS RS RW", or by name with commas between. Raises: NotationError for what is no spot."""
    words = text.rstrip(" .").split("," if "," in text else None)
    return tuple(spot_from_text(word) for word in words if word.strip())
