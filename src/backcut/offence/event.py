"""What happens to a possession from outside the rules: the ball moves, a defender does something, somebody forgets."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from backcut.court.spots import Spot


class EventKind(StrEnum):
    """Every kind of event; the value is what JSON and the tables say."""

    PASS = "pass"
    SKIP = "skip"
    TO_CUTTER = "pass to the cutter"
    INSIDE = "pass inside"
    KICK_OUT = "kick out"
    DENY = "deny"
    SAG = "sag"
    JUMP = "jump"
    FREE = "free"
    JAM = "jam"
    DRIBBLE = "dribble"
    FORGET = "forget"
    LAY_UP = "lay-up"
    SHOT = "shot"
    TURNOVER = "turnover"


PASSES = frozenset({EventKind.PASS, EventKind.SKIP, EventKind.TO_CUTTER, EventKind.INSIDE, EventKind.KICK_OUT})
#: Events that belong to the pass before them: nobody has answered it yet.
WITH_THE_PASS = frozenset({EventKind.JUMP, EventKind.FORGET})
ENDS = frozenset({EventKind.LAY_UP, EventKind.SHOT, EventKind.TURNOVER})

#: More beats of answers than any book needs (estimate): a chain of seven spots, three cutters, two counts each.
MOST_BEATS = 60


@dataclass(frozen=True, slots=True)
class Event:
    """One event. `player` passes, dribbles, shoots, forgets, or is the one whose defender acts.

    `players` names more than one where several defenders act at once; `receiver` catches a pass;
    `spot` is where a dribble ends; `early` means before the cutter has come out. `after` says exactly when: after so
    many beats of answers to the event before it, 0 before anybody has answered; it goes before `early`. None: when all
    have settled, or as `early` and the kind say.
    """

    kind: EventKind
    player: int
    receiver: int | None = None
    spot: Spot | None = None
    early: bool = False
    also: tuple[int, ...] = ()
    after: int | None = None

    @property
    def players(self) -> tuple[int, ...]:
        """Everybody the event is about, `player` first."""
        return (self.player, *self.also)
