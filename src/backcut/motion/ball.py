"""The ball in the air: straight over the floor at the speed of its pass, a parabola in height."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.motion.floor import HOOP_M
from backcut.motion.squads import PassType, Squad
from backcut.motion.timeline import Track
from backcut.offence.event import EventKind

Floats = NDArray[np.float64]
Place = tuple[float, float]

GRAVITY_M_S2 = 9.80665  # standard gravity
RING_M = 3.05  # FIBA Art. 2: ring height
FLOOR_M = 0.12  # half a ball (size 7: 24.5 cm across, from memory): its centre when it bounces
HELD_M = 1.1  # estimate: the ball at the waist of a player in stance
BOUNCE_AT = 0.62  # common practice, no source: a bounce pass hits the floor about two thirds of the way
DRIBBLE_S = 0.5  # estimate: two dribbles a second
SHOT_ANGLE_RAD = np.radians(52)  # from memory, low confidence: common release angles 48-55 degrees
LAY_UP_ANGLE_RAD = np.radians(68)  # estimate

#: Height at release and at the catch, metres: estimates for a player of about 1.8 m.
HEIGHTS_M: dict[PassType, tuple[float, float]] = {
    PassType.CHEST: (1.30, 1.30),
    PassType.OVERHEAD: (2.00, 1.50),
    PassType.SKIP: (2.00, 1.50),
    PassType.BOUNCE: (1.10, 0.95),
}

#: How each passing event is thrown: common practice, no source.
THROWN: dict[EventKind, PassType] = {
    EventKind.PASS: PassType.CHEST,
    EventKind.SKIP: PassType.SKIP,
    EventKind.TO_CUTTER: PassType.BOUNCE,
    EventKind.INSIDE: PassType.OVERHEAD,
    EventKind.KICK_OUT: PassType.CHEST,
}


@dataclass(frozen=True, slots=True)
class Throw:
    """One pass to be thrown: how, from where, to where (metres), and how fast over the floor."""

    kind: PassType
    start_m: Place
    end_m: Place
    speed_m_s: float

    @property
    def flight_s(self) -> float:
        """How long it is in the air; a hand-over takes a tenth of a second."""
        return max(
            float(np.hypot(self.end_m[0] - self.start_m[0], self.end_m[1] - self.start_m[1])) / self.speed_m_s, 0.1
        )


def throw(event: EventKind, start_m: Place, end_m: Place, squad: Squad) -> Throw:
    """The pass that an event asks for, at the squad's ball speed."""
    kind = THROWN[event]
    return Throw(kind, start_m, end_m, squad.ball_speed_m_s(kind))


def pass_track(pass_: Throw, start_s: float) -> Track:
    """The ball's way from release at `start_s` to the catch: knots (n, 3)."""
    release, catch = HEIGHTS_M[pass_.kind]
    if pass_.kind is not PassType.BOUNCE:
        return _arc(pass_.start_m, pass_.end_m, release, catch, start_s, pass_.flight_s)
    start, end = np.asarray(pass_.start_m), np.asarray(pass_.end_m)
    floor = start + BOUNCE_AT * (end - start)
    bounce = (float(floor[0]), float(floor[1]))
    first_s = BOUNCE_AT * pass_.flight_s
    down = _arc(pass_.start_m, bounce, release, FLOOR_M, start_s, first_s, knots=5)
    up = _arc(bounce, pass_.end_m, FLOOR_M, catch, start_s + first_s, pass_.flight_s - first_s, knots=5)
    return Track(np.concatenate([down.t_s, up.t_s[1:]]), np.vstack([down.place_m, up.place_m[1:]]))


def shot_track(start_m: Place, start_s: float, *, lay_up: bool = False) -> Track:
    """The ball's way from a shooter's hand at `start_s` to the middle of the ring: knots (n, 3)."""
    angle, hand_m = (LAY_UP_ANGLE_RAD, 2.4) if lay_up else (SHOT_ANGLE_RAD, 2.1)  # heights: estimates
    distance = max(float(np.hypot(*start_m)), 0.6)
    rise = RING_M - hand_m
    # A shot from close by goes up steeper: it has to come down into the ring.
    climb = max(distance * float(np.tan(angle)), 2 * rise + 0.5)
    flight_s = float(np.sqrt(2 * (climb - rise) / GRAVITY_M_S2))
    return _arc(start_m, (float(HOOP_M[0]), float(HOOP_M[1])), hand_m, RING_M, start_s, flight_s, knots=13)


def drop_track(start_s: float) -> Track:
    """The ball's fall from the ring at `start_s` to the floor: knots (n, 3)."""
    fall_s = float(np.sqrt(2 * (RING_M - FLOOR_M) / GRAVITY_M_S2))
    share = np.linspace(0.0, 1.0, 7)
    height = RING_M - GRAVITY_M_S2 * (share * fall_s) ** 2 / 2
    return Track(start_s + share * fall_s, np.column_stack([np.tile(HOOP_M, (7, 1)), height]))


def loose_track(start_m: Place, toward_m: Place, start_s: float) -> Track:
    """The ball knocked loose at `start_s`: it bounces two metres toward `toward_m` and lies there."""
    start, toward = np.asarray(start_m), np.asarray(toward_m)
    gap = toward - start
    end = start + gap / max(float(np.hypot(*gap)), 1e-6) * 2.0
    return _arc(start_m, (float(end[0]), float(end[1])), HELD_M, FLOOR_M, start_s, 0.6)


def _arc(
    start: Place, end: Place, low_m: float, high_m: float, start_s: float, flight_s: float, knots: int = 9
) -> Track:
    share = np.linspace(0.0, 1.0, knots)
    over = np.outer(1 - share, start) + np.outer(share, end)
    # Under gravity alone the ball stands above the straight line by g T^2 u (1 - u) / 2.
    height = low_m + (high_m - low_m) * share + GRAVITY_M_S2 * flight_s**2 * share * (1 - share) / 2
    return Track(start_s + share * flight_s, np.column_stack([over, height]))
