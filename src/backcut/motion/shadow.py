"""Defenders in time: each gets late to where he wants to stand, within the limits of a runner, through nobody.

A tick is worked out with complex numbers, x + iy: for five bodies that is several times quicker than small arrays.
"""

from __future__ import annotations

import math
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.motion.defender import DENYING, wanted_m
from backcut.motion.floor import FIBA_FLOOR, Floor
from backcut.motion.run import TICK_S
from backcut.motion.runner import Runner

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

SEES_S = 0.40  # estimate: with the following below he copies his man after 0.5-0.6 s (measured: 0.48-0.60 s)
FOLLOWS_S = 0.30  # estimate: how fast he closes what he is short of
ELBOW_ROOM_M = 0.75  # estimate: nobody is run through
BACKWARD = 0.7  # from memory: backward and sideways running stays near 70 % of the forward maximum

#: One defender: his place, his speed, his heading in degrees.
_Body = tuple[complex, complex, float]


@dataclass(frozen=True, eq=False)
class Watched:
    """What the defenders see, at every tick of 0.04 s: n ticks, k attackers.

    `men_m` (n, k, 2), `ball_m` (n, 2), `on_ball` (n,) the attacker being guarded on the ball (-1 for none), `guards`
    (n, k) as places in `GUARDS`.
    """

    men_m: Floats
    ball_m: Floats
    on_ball: Ints
    guards: Ints

    def same_ticks(self, other: Watched) -> int:
        """How many ticks from the first on are the same in both."""
        if self.men_m.shape[1:] != other.men_m.shape[1:]:
            return 0
        n = min(len(self.on_ball), len(other.on_ball))
        same = (self.on_ball[:n] == other.on_ball[:n]) & (self.ball_m[:n] == other.ball_m[:n]).all(axis=1)
        same &= (self.guards[:n] == other.guards[:n]).all(axis=1)
        same &= (self.men_m[:n] == other.men_m[:n]).all(axis=(1, 2))
        return n if same.all() else int(same.argmin())


@dataclass(frozen=True, eq=False)
class Shadow:
    """The defenders at every tick: places (n, k, 2) in metres, speeds (n, k, 2) in m/s, headings (n, k) in degrees.

    Headings are unwrapped: 0 is +y, 90 is +x.
    """

    place_m: Floats
    speed_m_s: Floats
    heading_deg: Floats


def shadow(
    watched: Watched, runner: Runner, floor: Floor = FIBA_FLOOR, known: Shadow | None = None, known_ticks: int = 0
) -> Shadow:
    """Every defender tick by tick, from the first moment on, in which everybody is in place; no chance in it.

    `known` gives the first `known_ticks` ticks, in which the same was watched.
    """
    n, k = watched.men_m.shape[:2]
    seen = np.maximum(np.arange(n) - round(SEES_S / TICK_S), 0)
    men_m, ball_m, guards = watched.men_m[seen], watched.ball_m[seen, None], watched.guards[seen]
    on_ball = np.arange(k) == watched.on_ball[:, None]
    wanted = _complex(wanted_m(men_m, ball_m, guards, on_ball))
    at, men, ball = _complex(watched.men_m), _complex(men_m), np.repeat(_complex(ball_m), k, axis=1)
    square = on_ball | (guards == DENYING)
    place, speed, heading = np.empty((n, k), np.complex128), np.zeros((n, k), np.complex128), np.empty((n, k))
    done = min(known_ticks, n) if known is not None else 0
    if known is not None and done:
        place[:done], speed[:done] = _complex(known.place_m[:done]), _complex(known.speed_m_s[:done])
        heading[:done] = known.heading_deg[:done]
    else:
        done = 1
        there = at[0].tolist()
        place[0] = [_apart(aim, there) for aim in wanted[0].tolist()]
        heading[0] = list(map(_faces, place[0].tolist(), men[0].tolist(), ball[0].tolist(), square[0].tolist()))
    tick = _ticking(runner, floor)
    bodies: list[_Body] = list(zip(*(one[done - 1].tolist() for one in (place, speed, heading)), strict=True))
    rows = zip(*(one[done:].tolist() for one in (at, wanted, men, ball, square)), strict=True)
    for i, (there, *asked) in enumerate(rows, done):
        bodies = [tick(body, there, *his) for body, *his in zip(bodies, *asked, strict=True)]
        place[i], speed[i], heading[i] = zip(*bodies, strict=True)
    return Shadow(_planar(place), _planar(speed), heading)


#: The possessions that were followed last. Sixteen (own choice) are a floor, what it was before, and their denials.
_LATEST: deque[tuple[Watched, Runner, Floor, Shadow]] = deque(maxlen=16)


def followed(watched: Watched, runner: Runner, floor: Floor = FIBA_FLOOR) -> Shadow:
    """The same as `shadow`, going on from the latest in which the same was watched for longest."""
    ticks, known = 0, None
    for seen, who, where, shade in list(_LATEST):
        if (who, where) == (runner, floor) and watched.same_ticks(seen) > ticks:
            ticks, known = watched.same_ticks(seen), shade
    found = shadow(watched, runner, floor, known, ticks)
    _LATEST.append((watched, runner, floor, found))
    return found


def _complex(places: Floats) -> NDArray[np.complex128]:
    return np.ascontiguousarray(places).view(np.complex128)[..., 0]


def _planar(numbers: NDArray[np.complex128]) -> Floats:
    return numbers[..., None].view(np.float64)


def _ticking(runner: Runner, floor: Floor) -> Callable[[_Body, list[complex], complex, complex, complex, bool], _Body]:
    """How a defender gets from one tick to the next."""
    top, first, braking = runner.top_speed_m_s, runner.first_acceleration_m_s2, runner.braking_m_s2
    most_turn = 180.0 / runner.turn_s * TICK_S
    (left, low), (right, high) = floor.edges_m

    def tick(body: _Body, there: list[complex], wanted: complex, man: complex, ball: complex, square: bool) -> _Body:
        place, speed, heading = body
        short = wanted - place
        distance = abs(short)
        direction = short / (distance if distance > 1e-9 else 1e-9)
        chest = math.radians(heading)
        ahead = math.sin(chest) * direction.real + math.cos(chest) * direction.imag
        fastest = top * (BACKWARD + (1 - BACKWARD) * (0.0 if ahead < 0.0 else min(ahead, 1.0)))
        # Slow enough to stop at the place he wants.
        change = direction * min(distance / FOLLOWS_S, math.sqrt(2 * braking * distance), fastest) - speed
        spare = 1 - abs(speed) / top
        most = max(braking, first * spare) * TICK_S
        size = abs(change)
        if size > most:
            change *= most / size
        # What a shoulder or a line takes away is speed he no longer has; nobody is pushed faster than he runs.
        aim = _apart(place + (speed + change) * TICK_S, there)
        if not (left <= aim.real <= right and low <= aim.imag <= high):
            aim = complex(min(max(aim.real, left), right), min(max(aim.imag, low), high))
        speed = (aim - place) / TICK_S
        size = abs(speed)
        if size > top:
            speed *= top / size
        place += speed * TICK_S
        turn = (_faces(place, man, ball, square) - heading + 180.0) % 360.0 - 180.0
        return place, speed, heading + min(max(turn, -most_turn), most_turn)

    return tick


def _apart(place: complex, men: list[complex]) -> complex:
    """A defender's place, pushed off any attacker he would stand in."""
    push = 0j
    for man in men:
        gap = place - man
        if abs(gap.real) < ELBOW_ROOM_M and abs(gap.imag) < ELBOW_ROOM_M:
            distance = abs(gap)
            push += gap / max(distance, 1e-6) * max(ELBOW_ROOM_M - distance, 0.0)
    return place + push


def _faces(place: complex, man: complex, ball: complex, square: bool) -> float:
    """Chest to man when denying or on the ball; otherwise open, half way between man and ball. Degrees."""
    look = man - place
    look /= max(abs(look), 1e-9)
    if not square:
        to_ball = ball - place
        look += to_ball / max(abs(to_ball), 1e-9)
    return math.degrees(math.atan2(look.real, look.imag))
