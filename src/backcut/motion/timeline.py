"""A possession in time: where everybody is at every moment, in metres of the house frame and seconds.

`pose(timeline, t)` is pure. A track is a chain of knots with straight pieces between them, so that Python, the page
and a clip read the same place from the same numbers.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Track:
    """Where one body is: `t_s` (n,) seconds, rising; `place_m` (n, 2) metres, or (n, 3) for the ball (z is height)."""

    t_s: Floats
    place_m: Floats

    def at(self, t_s: float) -> Floats:
        """The place at time `t_s`; before the first knot the first place, after the last the last."""
        return np.array(self.place_at(t_s))

    def place_at(self, t_s: float) -> list[float]:
        """The same as `at`, as plain numbers: one place is asked for far more often than many."""
        times, places = self._knots
        after = bisect_right(times, t_s)
        if after in (0, len(times)):
            return list(places[max(after - 1, 0)])
        begins, span = times[after - 1], times[after] - times[after - 1]
        gone = t_s - begins
        return [(b - a) / span * gone + a for a, b in zip(places[after - 1], places[after], strict=True)]

    @cached_property
    def _knots(self) -> tuple[list[float], list[list[float]]]:
        return self.t_s.tolist(), self.place_m.tolist()


@dataclass(frozen=True, eq=False)
class Run:
    """One player's way through one answer. `kind` is the action kind; `habit` the rank of its sentence (0 is A)."""

    player: int
    kind: str
    habit: int | None
    step: int
    beat: int
    start_s: float
    end_s: float
    path_m: Floats


@dataclass(frozen=True, eq=False)
class Flight:
    """One flight of the ball from one player to another (`to_player` is None for a shot)."""

    from_player: int
    to_player: int | None
    kind: str
    step: int
    start_s: float
    end_s: float
    path_m: Floats


@dataclass(frozen=True)
class Held:
    """A stretch of time in which one player has the ball; `dribbled` while it is moved on the dribble."""

    player: int
    start_s: float
    end_s: float
    dribbled: bool = False


@dataclass(frozen=True, eq=False)
class Timeline:
    """A whole possession in time.

    `facing_deg` gives, per defender, a track of headings: 0 is +y, 90 is +x. `cues_s` gives, per step, when its event
    can be seen and the answers to it may begin.
    """

    duration_s: float
    players: dict[int, Track]
    defenders: dict[int, Track]
    facing_deg: dict[int, Track]
    ball: Track
    held: tuple[Held, ...]
    runs: tuple[Run, ...]
    flights: tuple[Flight, ...]
    cues_s: tuple[float, ...] = ()


@dataclass(frozen=True)
class Pose:
    """One moment: places in metres, headings in degrees, the holder or None while the ball is in the air."""

    players: dict[int, tuple[float, float]]
    defenders: dict[int, tuple[float, float, float]]
    ball: tuple[float, float, float]
    holder: int | None


def pose(timeline: Timeline, t_s: float) -> Pose:
    """Where everybody is at time `t_s`. Pure: the same timeline and time give the same pose."""
    t = min(max(t_s, 0.0), timeline.duration_s)

    def two(track: Track) -> tuple[float, float]:
        x, y = track.place_at(t)[:2]
        return x, y

    x, y, z = timeline.ball.place_at(t)
    return Pose(
        players={number: two(track) for number, track in timeline.players.items()},
        defenders={
            number: (*two(track), timeline.facing_deg[number].place_at(t)[0])
            for number, track in timeline.defenders.items()
        },
        ball=(x, y, z),
        holder=holder_at(timeline, t),
    )


def holder_at(timeline: Timeline, t_s: float) -> int | None:
    """Who has the ball at time `t_s`; None while it is in the air."""
    return next((held.player for held in timeline.held if held.start_s <= t_s <= held.end_s), None)
