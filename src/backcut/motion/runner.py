"""A runner: what one body can do on the floor."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace

import numpy as np

from backcut.errors import MotionError
from backcut.motion.sprint import Sprint


@dataclass(frozen=True, slots=True)
class Runner:
    """One body's limits; an attacker and a defender have the same kind.

    `reaction_s` from a cue to the first step; `braking_m_s2` mean slowing into a stop; `sideways_m_s2` the pull a curve
    may ask for; `turn_s` the time to turn right round (180 degrees).
    Raises: MotionError if a value is not a number above zero.
    """

    top_speed_m_s: float
    time_constant_s: float
    reaction_s: float = 0.25
    braking_m_s2: float = 5.0
    sideways_m_s2: float = 5.0
    turn_s: float = 0.25

    def __post_init__(self) -> None:
        for field in fields(self):
            value = getattr(self, field.name)
            if not (np.isfinite(value) and value > 0):
                raise MotionError(f"A runner's {field.name} is {value}; it must be a number above zero.")

    @property
    def sprint(self) -> Sprint:
        """The runner's sprint from standing."""
        return Sprint(self.top_speed_m_s, self.time_constant_s)

    @property
    def first_acceleration_m_s2(self) -> float:
        """The acceleration at the first instant, the most this runner has."""
        return self.top_speed_m_s / self.time_constant_s

    def at_effort(self, effort: float) -> Runner:
        """The same runner going at a share of himself: top speed and accelerations scaled, reaction and turn kept.

        Raises: MotionError if `effort` is not above 0 and at most 1.
        """
        if not 0 < effort <= 1:
            raise MotionError(f"An effort of {effort} cannot be run; give a share above 0 and at most 1.")
        return replace(
            self,
            top_speed_m_s=self.top_speed_m_s * effort,
            braking_m_s2=self.braking_m_s2 * effort,
            sideways_m_s2=self.sideways_m_s2 * effort,
        )
