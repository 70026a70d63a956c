"""A possession in time: the steps that the rules tell become runs, flights and tracks, and none is worked out twice."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

import numpy as np

from backcut.court.spots import Spot
from backcut.engine.clock import Clock
from backcut.engine.possession import Step
from backcut.engine.setting import Denies, Setting
from backcut.errors import MotionError
from backcut.motion.floor import FIBA_FLOOR, Floor
from backcut.motion.path import Place
from backcut.motion.squads import Squad
from backcut.motion.timeline import Timeline
from backcut.offence.situation import Situation

TIMINGS = ("at once", "looked", "count of two")
#: How many possessions, each a step longer than another, are kept (own choice: some floors' worth, tens of megabytes).
MOST_KEPT = 256


def build(
    steps: Sequence[Step],
    spots: Mapping[Spot, Place],
    squad: Squad,
    *,
    hold_s: float,
    fill_timing: str = "looked",
    signal: str = "none",
    denies: Denies | None = None,
    floor: Floor = FIBA_FLOOR,
) -> Timeline:
    """The timeline of a possession.

    `spots` are places in metres of the house frame; `hold_s` the seconds a catcher keeps the ball; `fill_timing` is
    "at once", "looked" or "count of two"; `signal` is "none", "fist" or "eyes"; `denies` reads a denial from places,
    without it a denial takes a fixed time; `floor` is the edges to stay inside.
    Raises: MotionError if there is no step, a spot has no place, the timing is unknown or the hold is below zero.
    """
    if not steps:
        raise MotionError("A possession without a step has no time in it; give one step or more.")
    if fill_timing not in TIMINGS:
        raise MotionError(f'A fill is timed "{fill_timing}"; the timings are: {", ".join(TIMINGS)}.')
    if not (np.isfinite(hold_s) and hold_s >= 0):
        raise MotionError(f"A hold of {hold_s} s cannot be kept; give zero or more seconds.")
    places = tuple((spot, (float(x), float(y))) for spot, (x, y) in spots.items())
    clock = _begun(Setting(places, squad, hold_s, fill_timing, signal, denies, floor), steps[0].before)
    for step in steps:
        clock = _after(clock, step)
    return clock.timeline()


@lru_cache(maxsize=32)
def _begun(setting: Setting, start: Situation) -> Clock:
    return Clock.begun(setting, start)


@lru_cache(maxsize=MOST_KEPT)
def _after(before: Clock, step: Step) -> Clock:
    """One step on: the same step after the same steps is taken from memory, so a possession that goes on goes on."""
    clock = before.copied()
    clock.play(step)
    return clock
