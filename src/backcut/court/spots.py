"""The named spots of a half court: their short ids, their names for coaches, their mirror images."""

from __future__ import annotations

from enum import StrEnum

from backcut.errors import NotationError
from backcut.language import say


class Spot(StrEnum):
    """A named place a player occupies; the value is the short id (common practice, no source)."""

    LC = "LC"
    LW = "LW"
    LS = "LS"
    T = "T"
    RS = "RS"
    RW = "RW"
    RC = "RC"
    LSC = "Lsc"
    LB = "Lb"
    LM = "Lm"
    LE = "Le"
    N = "N"
    RE = "Re"
    RM = "Rm"
    RB = "Rb"
    RSC = "Rsc"
    R = "R"

    @property
    def title(self) -> str:  # type: ignore[override]
        """The name a coach says, without an article: "right wing"."""
        return say(TITLES[self])

    @property
    def mirror(self) -> Spot:
        """The same spot on the other side of the floor."""
        return MIRROR[self]

    @property
    def side(self) -> int:
        """-1 on the left of the offence, +1 on its right, 0 on the axis."""
        return {"L": -1, "R": 1}.get(self.value[0], 0) if len(self.value) > 1 else 0


_NAMES = {"C": "corner", "W": "wing", "S": "slot", "sc": "short corner", "b": "block", "m": "mid post", "e": "elbow"}

TITLES: dict[Spot, str] = {Spot.T: "top", Spot.N: "high post", Spot.R: "rim"} | {
    spot: f"{'left' if spot.value[0] == 'L' else 'right'} {_NAMES[spot.value[1:]]}"
    for spot in Spot
    if len(spot.value) > 1
}

MIRROR: dict[Spot, Spot] = {
    spot: Spot({"L": "R", "R": "L"}[spot.value[0]] + spot.value[1:]) if len(spot.value) > 1 else spot for spot in Spot
}

PERIMETER = (Spot.LC, Spot.LW, Spot.LS, Spot.T, Spot.RS, Spot.RW, Spot.RC)
INSIDE = tuple(spot for spot in Spot if spot not in PERIMETER and spot is not Spot.R)

_BY_TEXT = {spot.value.lower(): spot for spot in Spot} | {title: spot for spot, title in TITLES.items()}


def spot_from_text(text: str) -> Spot:
    """The spot named by a short id or a coach's name, in any case, with or without "the".

    Raises: NotationError if no spot is called so.
    """
    words = " ".join(text.lower().split()).removeprefix("the ")
    if words in _BY_TEXT:
        return _BY_TEXT[words]
    known = ", ".join(f"{spot} ({spot.title})" for spot in Spot)
    raise NotationError(f'No spot is called "{text.strip()}". The spots are: {known}.')
