"""Room to run: nobody runs through a team-mate. A run that would is bent aside, ended beside, or begun later."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from backcut.motion.run import TICK_S
from backcut.motion.timeline import Track
from backcut.motion.trail import Answer, places

ROOM_M = 0.9  # estimate: two shoulders and a hand
TIGHT_M = 0.7  # estimate: shoulder to hip, as at a screen or a hand-off (common practice, no source)

#: Asides in metres, delays in seconds, steps beside the end in metres; estimates, tried in the order of their cost.
_ASIDES_M = (0.0, 0.6, -0.6, 0.9, -0.9, 1.3, -1.3, 1.8, -1.8, 2.6, -2.6)
_DELAYS_S = (0.0, 0.2, 0.4, 0.7, 1.0, 1.4, 1.9, 2.5)
_BESIDE_M = ((0.0, 0.0), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (1.0, 1.0), (-1.0, 1.0), (2.0, 0.0), (-2.0, 0.0))


@dataclass(frozen=True, slots=True)
class Way:
    """One way to run the same answer: how far bent aside, how much later, how far beside the end.

    Plus is away from the ball, so that the mirrored moment is resolved by the mirrored way; minus is toward it.
    """

    aside_m: float = 0.0
    delay_s: float = 0.0
    beside_m: tuple[float, float] = (0.0, 0.0)


def clearance_m(track: Track, others: Sequence[Track], from_s: float) -> float:
    """The smallest distance between a track and any other from `from_s` on, in metres."""
    if not others:
        return float("inf")
    end_s = max(float(t.t_s[-1]) for t in (track, *others))
    t = np.arange(from_s, max(end_s, from_s) + TICK_S, TICK_S)
    mine = places(track, t)
    return min(float(np.hypot(*(places(other, t) - mine).T).min()) for other in others)


def end_clearance_m(track: Track, others: Sequence[Track]) -> float:
    """How far the end of a track is from where the others will end, in metres."""
    if not others:
        return float("inf")
    return min(float(np.hypot(*(track.place_m[-1] - other.place_m[-1])[:2])) for other in others)


def find_room(
    run: Callable[[Way], Answer], others: Sequence[Track], from_s: float, room_m: float = ROOM_M, spare_end: bool = True
) -> Answer:
    """The cheapest way of running an answer that keeps `room_m` metres off every team-mate.

    If no way has that much room, the roomiest one. The same tracks give the same way. With `spare_end` the end may move
    aside too where somebody else stands there for good.
    """
    best = run(Way())
    best_room_m = clearance_m(best.track, others, from_s)
    taken = spare_end and end_clearance_m(best.track, others) < room_m
    for way in _ways(taken):
        if best_room_m >= room_m:
            break
        answer = run(way)
        found_m = clearance_m(answer.track, others, from_s)
        if found_m > best_room_m + 1e-9:
            best, best_room_m = answer, found_m
    return best


@cache
def _ways(beside: bool) -> tuple[Way, ...]:
    ends, asides_m = (_BESIDE_M[1:], (0.0, 1.3, -1.3)) if beside else (_BESIDE_M[:1], _ASIDES_M)
    ways = [Way(aside, delay, end) for end in ends for aside in asides_m for delay in _DELAYS_S]
    # A second of waiting costs as much as a bend of one metre, a step beside the end half of that.
    return tuple(sorted(ways, key=lambda w: abs(w.aside_m) + w.delay_s + 0.5 * float(np.hypot(*w.beside_m))))
