"""When a question comes back: the numbers of the `fsrs` library that the page's script computes with.

The script has the update rule of FSRS-6 (open spaced repetition, the library's version 6.3); the tests hold it against
the library itself. No learning steps and no chance: a wrong answer comes back tomorrow.
"""

from __future__ import annotations

from functools import cache

from fsrs import Scheduler

#: Nothing is put off beyond a season of four months (common practice, no source).
SEASON_DAYS = 120


def scheduler() -> Scheduler:
    """The library's scheduler as the page has it."""
    return Scheduler(learning_steps=(), relearning_steps=(), maximum_interval=SEASON_DAYS, enable_fuzzing=False)


@cache
def numbers() -> tuple[tuple[float, ...], float, int]:
    """The weights, the wanted retention, and the longest interval in days."""
    made = scheduler()
    return tuple(made.parameters), made.desired_retention, made.maximum_interval
