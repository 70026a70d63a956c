"""Where, with whom and at what pace a possession is run. Alike settings are equal, so what was run in one is known."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from backcut.court.record import Court
from backcut.court.spots import Spot
from backcut.engine.reads import Bools, Floats, denied
from backcut.motion.floor import Floor
from backcut.motion.path import Place
from backcut.motion.squads import Squad

#: Whether each man (k, 2) is denied, given the ball (1, 2) and his defender (k, 2): metres, house frame.
Denies = Callable[[Floats, Floats, Floats], Bools]


@dataclass(frozen=True, slots=True)
class Denial:
    """How a book sees a denial on a court: by `how` ("foot", "hand", "either"), its mark `mark_m` outside the arc."""

    court: Court
    how: str
    mark_m: float

    def __call__(self, ball: Floats, man: Floats, defender: Floats) -> Bools:
        """Whether each man (k, 2) is denied. Raises: ValueError if `how` is no way to see a denial."""
        return denied(ball, man, defender, self.court, self.how, self.mark_m)


@dataclass(frozen=True, slots=True)
class Setting:
    """What a possession is run in; the meanings are those of `timeline.build`."""

    spots: tuple[tuple[Spot, Place], ...]
    squad: Squad
    hold_s: float
    fill_timing: str
    signal: str
    denies: Denies | None
    floor: Floor
