"""A strip of film as a timeline, so that the page shows a real possession as it shows a played one."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from scipy.optimize import linear_sum_assignment

from backcut.court.record import Court
from backcut.film.holder import held, holders
from backcut.film.spots import Places, on_spots, title
from backcut.film.strip import Strip
from backcut.motion.timeline import Flight, Floats, Held, Timeline, Track
from backcut.offence.event import EventKind

CHEST_M = 1.2  # estimate: where the ball is drawn when its height is not known
AT_RING_M = 1.0  # estimate: a ball that leaves the last holder and comes so near to the basket was shot

BACK_COURT = "in the back court"


def to_timeline(strip: Strip) -> Timeline:
    """The strip in time: attackers by number, each defender by the number of his man, toward whom he is drawn facing.

    The holder, the passes between holders and the shot at the end are inferred from the places (see `holder`).
    """
    numbers = strip.numbers
    t_s = strip.t_s
    ball_m = strip.ball_m
    if ball_m.shape[1] == 2:
        ball_m = np.column_stack([ball_m, np.full(len(t_s), CHEST_M)])
    stretches = held(t_s, holders(t_s, strip.attackers_m, strip.ball_m), strip.attackers_m, numbers)
    men = guarded(strip)
    defenders, facing = {}, {}
    for defender, man in enumerate(men):
        toward = strip.attackers_m[:, man] - strip.defenders_m[:, defender]
        defenders[numbers[man]] = Track(t_s, strip.defenders_m[:, defender])
        facing[numbers[man]] = Track(t_s, _heading_deg(toward)[:, None])
    return Timeline(
        duration_s=strip.duration_s,
        players={number: Track(t_s, strip.attackers_m[:, i]) for i, number in enumerate(numbers)},
        defenders=dict(sorted(defenders.items())),
        facing_deg=dict(sorted(facing.items())),
        ball=Track(t_s, ball_m),
        held=stretches,
        runs=(),
        flights=_flights(t_s, ball_m, stretches),
    )


def guarded(strip: Strip) -> tuple[int, ...]:
    """Index of the attacker each defender guards: the matching with the smallest distances over the whole strip."""
    away_m = np.linalg.norm(strip.defenders_m[:, :, None] - strip.attackers_m[:, None], axis=-1).mean(axis=0)
    return tuple(int(man) for man in linear_sum_assignment(away_m)[1])


def at_spots(strip: Strip, spots: Places, court: Court) -> list[tuple[float, dict[int, str]]]:
    """Where each attacker is, by number, in a coach's words, at the first moment and whenever that changes.

    An attacker who is not past mid-court yet is said to be in the back court, because a half court does not show him.
    """
    back = strip.attackers_m[:, :, 1] > court.mid_court_y_m
    result: list[tuple[float, dict[int, str]]] = []
    for i, row in enumerate(on_spots(strip.attackers_m, spots)):
        words = [BACK_COURT if back[i, p] else title(spot) for p, spot in enumerate(row)]
        now = dict(zip(strip.numbers, words, strict=True))
        if not result or result[-1][1] != now:
            result.append((float(strip.t_s[i]), now))
    return result


def _heading_deg(toward_m: Floats) -> Floats:
    """Headings (n,): 0 is +y, 90 is +x; unrolled so that no track jumps a full turn."""
    return np.degrees(np.unwrap(np.arctan2(toward_m[:, 0], toward_m[:, 1])))


def _flights(t_s: Floats, ball_m: Floats, stretches: tuple[Held, ...]) -> tuple[Flight, ...]:
    flights = []
    for step, (giver, taker) in enumerate(pairwise(stretches)):
        during = (t_s >= giver.end_s) & (t_s <= taker.start_s)
        flights.append(
            Flight(giver.player, taker.player, EventKind.PASS, step, giver.end_s, taker.start_s, ball_m[during])
        )
    if stretches:
        after = np.flatnonzero(t_s >= stretches[-1].end_s)
        near = np.flatnonzero(np.linalg.norm(ball_m[after, :2], axis=1) <= AT_RING_M)
        if len(near) and near[0] > 0:
            path = after[: near[0] + 1]
            end_s = float(t_s[path[-1]])
            flights.append(
                Flight(
                    stretches[-1].player, None, EventKind.SHOT, len(flights), stretches[-1].end_s, end_s, ball_m[path]
                )
            )
    return tuple(flights)
