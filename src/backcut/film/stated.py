"""What is stated about a film, in the command or in the file's header: units, origin, attack, y axis, rate, court."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, fields
from enum import StrEnum

from backcut.errors import FilmError


class Units(StrEnum):
    """Units of length of the places in a file."""

    M = "m"
    FT = "ft"
    CM = "cm"

    @property
    def in_metres(self) -> float:
        """Metres in one unit."""
        return {Units.M: 1.0, Units.FT: 0.3048, Units.CM: 0.01}[self]  # 1 ft = 0.3048 m exactly, agreement of 1959


class Origin(StrEnum):
    """Where 0, 0 lies: a corner of the court, the point under the attacked basket, or the centre of the court."""

    CORNER = "corner"
    BASKET = "basket"
    CENTRE = "centre"


class Attack(StrEnum):
    """Which basket is attacked: the one at small x (left) or at large x (right)."""

    LEFT = "left"
    RIGHT = "right"


class YAxis(StrEnum):
    """Which way +y points in a drawing seen from above in which +x points to the right."""

    UP = "up"
    DOWN = "down"


@dataclass(frozen=True, slots=True)
class Stated:
    """Everything a command or a header may state; None where it says nothing (or "auto")."""

    units: Units | None = None
    origin: Origin | None = None
    attack: Attack | None = None
    y_axis: YAxis | None = None
    rate_hz: float | None = None
    court: str | None = None
    offence: str | None = None

    def over(self, other: Stated) -> Stated:
        """These statements, and those of `other` where these say nothing."""
        return Stated(
            *(mine if (mine := getattr(self, f.name)) is not None else getattr(other, f.name) for f in fields(self))
        )


KEYS = tuple(f.name for f in fields(Stated))
_CHOICES: dict[str, type[StrEnum]] = {"units": Units, "origin": Origin, "attack": Attack, "y_axis": YAxis}
_ALSO = {"center": "centre", "metres": "m", "meters": "m", "feet": "ft"}


def stated_from_texts(texts: Mapping[str, str], place: str) -> Stated:
    """The statements in `texts`, keyed as in KEYS; "auto" and "" say nothing.

    Raises: FilmError if a key is unknown or a value is none of its words; `place` names where it stands.
    """
    values: dict[str, object] = {}
    for key, text in texts.items():
        if key not in KEYS:
            raise FilmError(f'{place}: nothing is called "{key}" here; what can be stated: {", ".join(KEYS)}.')
        word = text.strip()
        if word.lower() in ("", "auto"):
            continue
        values[key] = _value(key, word, place)
    return Stated(**values)  # type: ignore[arg-type]


def _value(key: str, word: str, place: str) -> object:
    if key in _CHOICES:
        plain = _ALSO.get(word.lower(), word.lower())
        if plain not in list(_CHOICES[key]):
            raise FilmError(f'{place}: {key} cannot be "{word}"; write one of: {", ".join(_CHOICES[key])}, auto.')
        return _CHOICES[key](plain)
    if key == "rate_hz":
        try:
            rate_hz = float(word)
        except ValueError:
            rate_hz = math.nan
        if not 1 <= rate_hz <= 1000:  # common practice, no source: from one picture a second to a high-speed camera
            raise FilmError(f'{place}: rate_hz cannot be "{word}"; write frames per second from 1 to 1000, such as 25.')
        return rate_hz
    return word
