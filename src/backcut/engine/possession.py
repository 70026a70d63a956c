"""A possession as the rules tell it: steps, each one event and the beats of answers that followed."""

from __future__ import annotations

from dataclasses import dataclass

from backcut.court.spots import Spot
from backcut.offence.action import Action
from backcut.offence.event import Event
from backcut.offence.situation import Situation


@dataclass(frozen=True, slots=True)
class Trouble:
    """Something the book leaves open: `kind` is "clash" (two sent to one spot) or "silent" (no answer)."""

    kind: str
    player: int
    habit: int | None
    spot: Spot | None
    text: str


@dataclass(frozen=True, slots=True)
class Decision:
    """Everybody's answer at one moment, in order of number, and what the book left open."""

    actions: tuple[Action, ...]
    troubles: tuple[Trouble, ...] = ()

    @property
    def moves(self) -> bool:
        """Whether anybody is asked to move."""
        return any(action.moves for action in self.actions)


@dataclass(frozen=True, slots=True)
class Beat:
    """One round of answers: the situation it was asked in, and what everybody was told."""

    before: Situation
    decision: Decision


@dataclass(frozen=True, slots=True)
class Step:
    """One event, the situation right before it, the beats that followed, and the situation after them.

    `wait_s` says how many seconds after the event before it this one comes, None where it comes as soon as it can.
    """

    event: Event
    text: str
    before: Situation
    beats: tuple[Beat, ...]
    after: Situation
    wait_s: float | None = None
