"""A plain defender for each attacker, so that a cut can be read: he stands, denies, sags or jumps to the ball.

Where he stands is a fixed mix of his man, the ball and the hoop, 0.62 / 0.11 / 0.27 (Franks et al. 2015, Annals of
Applied Statistics), and he gets there late. He is no coverage: he does not help, switch or rotate.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.motion.floor import FIBA_FLOOR, HOOP_M, Floor
from backcut.motion.path import unit
from backcut.motion.run import TICK_S
from backcut.motion.runner import Runner
from backcut.offence.situation import Guard

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

#: Weights of man, ball, hoop. Plain: Franks et al. 2015; the others are estimates around it.
MIX: dict[Guard, tuple[float, float, float]] = {
    Guard.PLAIN: (0.62, 0.11, 0.27),
    Guard.SAGS: (0.42, 0.13, 0.45),
    Guard.JUMPED: (0.55, 0.25, 0.20),
}
GUARDS = (Guard.PLAIN, Guard.SAGS, Guard.JUMPED, Guard.DENIES)
DENIES_M = 0.85  # estimate: an arm's length up the lane to the ball, chest to man: a hand in it, a foot past the arc
ON_BALL_M = 1.3  # an arm and a half; measured median of professionals 5.0 ft (1.5 m) from the holder
SEES_S = 0.40  # estimate: with the following below he copies his man after 0.5-0.6 s (measured: 0.48-0.60 s)
FOLLOWS_S = 0.30  # estimate: how fast he closes what he is short of
ELBOW_ROOM_M = 0.75  # estimate: nobody is run through
BACKWARD = 0.7  # from memory: backward and sideways running stays near 70 % of the forward maximum


def defender_place(
    guard: Guard, man_m: tuple[float, float], ball_m: tuple[float, float], *, on_ball: bool = False
) -> tuple[float, float]:
    """Where a defender wants to stand, in metres, given his man and the ball."""
    man, ball = np.asarray(man_m, dtype=np.float64), np.asarray(ball_m, dtype=np.float64)
    x, y = _wanted(man[None], ball, np.array([GUARDS.index(guard)]), np.array([on_ball]))[0]
    return float(x), float(y)


def _wanted(men: Floats, ball: Floats, guards: Ints, on_ball: NDArray[np.bool_]) -> Floats:
    mix = np.array([MIX.get(guard, MIX[Guard.PLAIN]) for guard in GUARDS])[guards]
    place = mix[:, :1] * men + mix[:, 1:2] * ball + mix[:, 2:] * HOOP_M
    for i in np.flatnonzero((guards == GUARDS.index(Guard.DENIES)) & ~on_ball):
        place[i] = men[i] + DENIES_M * unit(ball - men[i])
    for i in np.flatnonzero(on_ball):
        reach = min(ON_BALL_M, 0.6 * float(np.hypot(*men[i])))
        place[i] = men[i] + reach * unit(HOOP_M - men[i])
    return np.asarray(place)


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


def shadow(watched: Watched, runner: Runner, floor: Floor = FIBA_FLOOR) -> tuple[Floats, Floats]:
    """Every defender's place (n, k, 2) in metres and heading (n, k) in degrees, unwrapped: 0 is +y, 90 is +x.

    Simulated tick by tick from the first moment, in which everybody is in place; no chance in it.
    """
    n, k = watched.men_m.shape[:2]
    places, headings = np.empty((n, k, 2)), np.empty((n, k))
    late = round(SEES_S / TICK_S)
    who = np.arange(k)
    place = _wanted(watched.men_m[0], watched.ball_m[0], watched.guards[0], who == watched.on_ball[0])
    place = _apart(place, watched.men_m[0])
    heading = _faces(place, watched.men_m[0], watched.ball_m[0], watched.guards[0], who == watched.on_ball[0])
    speed = np.zeros((k, 2))
    places[0], headings[0] = place, heading
    for i in range(1, n):
        seen = max(0, i - late)
        on_ball = who == watched.on_ball[i]
        wanted = _wanted(watched.men_m[seen], watched.ball_m[seen], watched.guards[seen], on_ball)
        speed = _steered(speed, place, heading, wanted, runner)
        # What a shoulder or a line takes away is speed he no longer has; nobody is pushed faster than he runs.
        aim = floor.inside(_apart(place + speed * TICK_S, watched.men_m[i]))
        speed = _capped((aim - place) / TICK_S, runner.top_speed_m_s)
        place = place + speed * TICK_S
        turn = _faces(place, watched.men_m[seen], watched.ball_m[seen], watched.guards[seen], on_ball) - heading
        most = 180.0 / runner.turn_s * TICK_S
        heading = heading + np.clip((turn + 180.0) % 360.0 - 180.0, -most, most)
        places[i], headings[i] = place, heading
    return places, headings


def _steered(speed: Floats, place: Floats, heading: Floats, wanted: Floats, runner: Runner) -> Floats:
    short = wanted - place
    distance = np.hypot(short[:, 0], short[:, 1])
    direction = short / np.maximum(distance, 1e-9)[:, None]
    chest = np.column_stack([np.sin(np.radians(heading)), np.cos(np.radians(heading))])
    ahead = np.einsum("ij,ij->i", chest, direction)
    top = runner.top_speed_m_s * (BACKWARD + (1 - BACKWARD) * np.clip(ahead, 0.0, 1.0))
    # Slow enough to stop at the place he wants.
    brake = np.sqrt(2 * runner.braking_m_s2 * distance)
    asked = direction * np.minimum.reduce([distance / FOLLOWS_S, brake, top])[:, None]
    change = asked - speed
    size = np.hypot(change[:, 0], change[:, 1])
    now = np.hypot(speed[:, 0], speed[:, 1])
    most = np.maximum(
        runner.braking_m_s2, runner.first_acceleration_m_s2 * np.clip(1 - now / runner.top_speed_m_s, 0.0, 1.0)
    )
    share = np.minimum(1.0, most * TICK_S / np.maximum(size, 1e-9))
    return np.asarray(speed + change * share[:, None])


def _capped(speed: Floats, top_m_s: float) -> Floats:
    size = np.hypot(speed[:, 0], speed[:, 1])
    return np.asarray(speed * np.minimum(1.0, top_m_s / np.maximum(size, 1e-9))[:, None])


def _apart(place: Floats, men: Floats) -> Floats:
    """The defenders pushed off any attacker they would stand in."""
    gap = place[:, None, :] - men[None, :, :]
    distance = np.hypot(gap[..., 0], gap[..., 1])
    short = np.clip(ELBOW_ROOM_M - distance, 0.0, None)
    push = gap / np.maximum(distance, 1e-6)[..., None] * short[..., None]
    return np.asarray(place + push.sum(axis=1))


def _faces(place: Floats, men: Floats, ball: Floats, guards: Ints, on_ball: NDArray[np.bool_]) -> Floats:
    """Chest to man when denying or on the ball; otherwise open, half way between man and ball."""
    to_man = men - place
    to_man = to_man / np.maximum(np.hypot(to_man[:, 0], to_man[:, 1]), 1e-9)[:, None]
    to_ball = ball - place
    to_ball = to_ball / np.maximum(np.hypot(to_ball[:, 0], to_ball[:, 1]), 1e-9)[:, None]
    open_stance = (~on_ball & (guards != GUARDS.index(Guard.DENIES))).astype(np.float64)[:, None]
    look = to_man + open_stance * to_ball
    return np.asarray(np.degrees(np.arctan2(look[:, 0], look[:, 1])))
