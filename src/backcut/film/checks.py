"""Checks a film against what bodies and balls can do: mixed units, swapped players and slips show here."""

from __future__ import annotations

import numpy as np

from backcut.court.record import Court
from backcut.errors import FilmError
from backcut.film.moments import Moments
from backcut.motion.timeline import Floats

PLAYER_M_S = 12.3  # nobody runs faster: peak of the 9.58 s race, federation biomechanics project 2009
BALL_M_S = 40.0  # estimate; measured: 99 % of 2,925 real clips stay below 19 m/s
NOISE_M = 0.5  # estimate: two places a picture apart may each be a foot off
OFF_COURT_M = 5.0  # estimate: no player of a possession is farther off the court
FAR_M = 8.0  # measured: real defenders' median distance to an attacker is at most 5.9 m, 99.9 % at most 4.4 m


def check_places(moments: Moments, house_m: Floats, height_m: Floats | None, court: Court) -> None:
    """Checks the places, (n, 11, 2) metres of the house frame; `height_m` (n,) of the ball or None.

    Raises: FilmError if a side stands in another frame than the rest, somebody is off the court, a player or the ball
    covers more than possible from one moment to the next, or the ball is below the floor.
    """
    _one_frame(moments, house_m)
    _on_court(moments, house_m, court)
    _possible(moments, house_m)
    if height_m is not None and (height_m < -NOISE_M).any():
        i = int((height_m < -NOISE_M).argmax())
        raise FilmError(
            f"{moments.file}, row {moments.row[i, 0]}, column z: the ball is {-height_m[i]:.1f} m below the floor; "
            f"z is its height above it."
        )


def _one_frame(moments: Moments, house_m: Floats) -> None:
    attackers = house_m[:, None, 1:6]
    for what, others in (("defenders", house_m[:, 6:, None]), ("ball", house_m[:, :1, None])):
        away_m = float(np.median(np.linalg.norm(others - attackers, axis=-1).min(axis=2)))
        if away_m > FAR_M:
            raise FilmError(
                f"{moments.file}, columns x and y: in the middle of the film the nearest attacker is "
                f"{away_m:.1f} m from the {what}; all eleven should be in the same units and frame."
            )


def _on_court(moments: Moments, house_m: Floats, court: Court) -> None:
    least = np.array([-court.width.m / 2, -court.basket_from_baseline.m]) - OFF_COURT_M
    most = np.array([court.width.m / 2, court.length.m - court.basket_from_baseline.m]) + OFF_COURT_M
    off = ((house_m[:, 1:] < least) | (house_m[:, 1:] > most)).any(axis=-1)
    if off.any():
        i, who = np.argwhere(off)[0] + (0, 1)
        raise FilmError(
            f"{_where(moments, i, who)}, columns x and y: {moments.entities[who]} stands {_at(moments, i, who)}, more "
            f"than {OFF_COURT_M:g} m off a {court.title} court; the units, the origin or the row should be another."
        )


def _possible(moments: Moments, house_m: Floats) -> None:
    step_m = np.linalg.norm(np.diff(house_m, axis=0), axis=-1)
    limit_m = np.full(house_m.shape[1], PLAYER_M_S)
    limit_m[0] = BALL_M_S
    too_far = step_m > limit_m * np.diff(moments.t_s)[:, None] + NOISE_M
    if too_far.any():
        i, who = np.argwhere(too_far)[0]
        body = "player" if who else "ball"
        seconds = moments.t_s[i + 1] - moments.t_s[i]
        raise FilmError(
            f"{_where(moments, i + 1, who)}, columns x and y: {moments.entities[who]} goes from {_at(moments, i, who)} "
            f"to {_at(moments, i + 1, who)}, {step_m[i, who]:.1f} m in {seconds:.2f} s, faster than any "
            f"{body}; the units should not change, nor names swap; mend a slip, or leave it out with --from and --to."
        )


def _where(moments: Moments, i: int, who: int) -> str:
    return f"{moments.file}, row {moments.row[i, who]}"


def _at(moments: Moments, i: int, who: int) -> str:
    x, y = moments.places[i, who]
    return f"({x:g}, {y:g})"
