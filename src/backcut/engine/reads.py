"""Where geometry meets rules: places on the floor become reads. One function for one moment and for a batch.

All places are metres of the house frame, arrays of shape (..., 2); results have the shape of the leading axes.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from backcut.court.record import Court
from backcut.court.usual import stand_in_ring_m
from backcut.offence.situation import Guard

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]

FOOT_M = 0.3  # estimate: from the middle of a body in a stance to its front foot
HAND_IN_LANE_M = 0.75  # 2.5 ft from the lane: common practice, no source; about half a grown player's arm span
LANE_SHARE = 0.4  # a hand before 40 % of the lane threatens the passer, not the receiver: common practice, no source
AT_HIS_MAN_M = 2.13  # 7 ft: farther off, a body in the lane helps but does not deny: common practice, no source
SAG_M = 2.5  # 8.2 ft: the upper quartile of off-ball defenders near the ball, measured on professional tracking data
JUMP_M = 0.6  # estimate: a step toward the ball while it flies


def past_mark_m(places: Floats, court: Court, mark_m: float = 0.0) -> Floats:
    """How far places (..., 2) lie outside the denial mark, in metres; negative is inside.

    The mark lies `mark_m` outside the arc's outer edge; on a court without an arc the stand-in ring takes its place.
    """
    x, y = np.abs(places[..., 0]), places[..., 1]
    if court.junction_m is None:
        return np.hypot(x, y) - (stand_in_ring_m(court) + mark_m)
    corner, level = court.junction_m
    round_ = np.hypot(x, y) - court.arc_radius.m
    return np.where(y < level, x - corner, round_) - mark_m


def lane(ball: Floats, man: Floats, defender: Floats) -> tuple[Floats, Floats]:
    """Where a defender stands in a passing lane: distance from it in metres, and the share of it behind, 0 to 1."""
    way = man - ball
    length = np.maximum((way**2).sum(-1), 1e-9)
    share = np.clip(((defender - ball) * way).sum(-1) / length, 0.0, 1.0)
    foot = ball + share[..., None] * way
    return np.hypot(*np.moveaxis(defender - foot, -1, 0)), share


def foot_past_mark(man: Floats, defender: Floats, court: Court, mark_m: float = 0.0) -> Bools:
    """Whether the defender's front foot is past the denial mark, at his own man."""
    near = np.hypot(*np.moveaxis(man - defender, -1, 0)) <= AT_HIS_MAN_M
    return np.asarray(near & (past_mark_m(defender, court, mark_m) + FOOT_M > 0), dtype=np.bool_)


def hand_in_lane(ball: Floats, man: Floats, defender: Floats) -> Bools:
    """Whether the defender has a hand in the passing lane to his own man."""
    off, share = lane(ball, man, defender)
    near = np.hypot(*np.moveaxis(man - defender, -1, 0)) <= AT_HIS_MAN_M
    return np.asarray(near & (off <= HAND_IN_LANE_M) & (share >= LANE_SHARE), dtype=np.bool_)


def denied(ball: Floats, man: Floats, defender: Floats, court: Court, how: str = "foot", mark_m: float = 0.0) -> Bools:
    """Whether each man is denied by the book's choice "denial": "foot", "hand" or "either". Raises: ValueError."""
    match how:
        case "foot":
            return foot_past_mark(man, defender, court, mark_m)
        case "hand":
            return hand_in_lane(ball, man, defender)
        case "either":
            return foot_past_mark(man, defender, court, mark_m) | hand_in_lane(ball, man, defender)
        case _:
            raise ValueError(f'"{how}" is no way to see a denial: foot, hand or either.')


def jumped(defender_before: Floats, defender_after: Floats, ball_after: Floats) -> Bools:
    """Whether the defender stepped toward the ball between two moments, at least `JUMP_M`."""
    before = np.hypot(*np.moveaxis(ball_after - defender_before, -1, 0))
    after = np.hypot(*np.moveaxis(ball_after - defender_after, -1, 0))
    return np.asarray(before - after >= JUMP_M, dtype=np.bool_)


def guard(ball: Floats, man: Floats, defender: Floats, court: Court, how: str = "foot", mark_m: float = 0.0) -> Guard:
    """What one defender does, read from one moment: denies, sags, or neither."""
    if bool(denied(ball, man, defender, court, how, mark_m)):
        return Guard.DENIES
    return Guard.SAGS if float(np.hypot(*(man - defender))) > SAG_M else Guard.PLAIN
