"""A court as a coach writes it in one line: a rule book's name, and what the tape says is different in this gym."""

from __future__ import annotations

import re
from typing import Any

from backcut.court.courts import COURTS, court
from backcut.court.record import Court
from backcut.court.tape import from_tape, scaled
from backcut.court.units import floor_from_text, metres_from_text
from backcut.errors import CourtError

_WORDS = {
    "arc": "arc_m",
    "corner": "corner_m",
    "ring": "basket_height_m",
    "lane": "lane_width_m",
    "free-throw line": "free_throw_line_m",
}
_PART = re.compile(rf"(?P<word>{'|'.join(_WORDS)})\s+(?P<length>.+)")


def court_from_text(text: str) -> Court:
    """The court written "FIBA", "mini, 26 m x 14 m" (scaled), or "FIBA, 84 ft x 50 ft, no arc, ring 9 ft" (a gym).

    A floor alone scales the paint; with any other measure the rest stays as the rule book paints it.
    Raises: CourtError for a name, a measure or a contradiction, saying what would be right.
    """
    name, *parts = [part.strip().lower() for part in text.split(",")]
    try:
        base = court(name)
    except CourtError as error:
        raise CourtError(f'{error} A gym is written after one of them: "{next(iter(COURTS))}, 26 m x 14 m".') from None
    floor: tuple[float, float] | None = None
    tape: dict[str, Any] = {}
    for part in parts:
        match = _PART.fullmatch(part)
        if part == "no arc":
            tape["arc_m"] = None
        elif match:
            tape[_WORDS[match["word"]]] = metres_from_text(match["length"])
        elif re.search(r"\d.*[x\u00d7].*\d", part):
            floor = floor_from_text(part)
        else:
            raise CourtError(
                f'"{part}" is no measure of a court. After the name ({", ".join(COURTS)}) write for example '
                '"84 ft x 50 ft", "arc 6.25 m", "no arc", "ring 9 ft", "lane 3.6 m", each after a comma.'
            )
    if not tape:
        return scaled(base, *floor) if floor else base
    length_m, width_m = floor or (None, None)
    arc = tape.pop("arc_m", "like")
    return from_tape(text.strip(), length_m=length_m, width_m=width_m, arc_m=arc, like=base, **tape)
