"""Plain defenders: where they stand, how late they are, and that they are runners too."""

from __future__ import annotations

import numpy as np
import pytest

from backcut.motion.defender import GUARDS, defender_place
from backcut.motion.run import TICK_S, quickest_run
from backcut.motion.shadow import Watched, shadow
from backcut.motion.squads import SQUADS
from backcut.offence.situation import Guard

MEN = SQUADS["men"].runner
WING, TOP, CORNER = (5.74, 4.2), (0.0, 7.1), (6.95, -0.3)


def test_he_stands_at_the_published_mix_of_man_ball_and_hoop() -> None:
    # Franks et al. 2015, Annals of Applied Statistics: 0.62 / 0.11 / 0.27; the hoop is the origin.
    wanted = 0.62 * np.array(WING) + 0.11 * np.array(TOP)
    assert defender_place(Guard.PLAIN, WING, TOP) == pytest.approx(tuple(wanted))


def test_a_sagging_defender_is_nearer_the_hoop_and_one_who_jumped_nearer_the_ball() -> None:
    plain, sags, jumped = (np.array(defender_place(g, WING, TOP)) for g in (Guard.PLAIN, Guard.SAGS, Guard.JUMPED))
    assert np.hypot(*sags) < np.hypot(*plain) - 0.8
    assert np.hypot(*(jumped - TOP)) < np.hypot(*(plain - TOP)) - 0.3


@pytest.mark.parametrize("man", [WING, CORNER])
def test_a_denier_stands_in_the_lane_within_reach_of_his_man(man: tuple[float, float]) -> None:
    # Denied receivers were counted on tracking data so: within 3 ft of the lane, past 40 % of it, 7 ft of the man.
    ball = TOP if man == WING else WING
    x, y = defender_place(Guard.DENIES, man, ball)
    lane = np.array(man) - ball
    length = float(np.hypot(*lane))
    along = float((np.array([x, y]) - ball) @ lane) / length
    across = abs(float((np.array([x, y]) - ball) @ np.array([-lane[1], lane[0]]))) / length
    assert across < 3 * 0.3048
    assert along > 0.4 * length
    assert np.hypot(x - man[0], y - man[1]) < 7 * 0.3048


def test_on_the_ball_he_stands_between_it_and_the_hoop() -> None:
    x, y = defender_place(Guard.DENIES, TOP, TOP, on_ball=True)
    assert x == pytest.approx(0.0)
    # Measured median of professionals: 5.0 ft from the holder, quartiles 3.0 and 7.3 ft.
    assert 3.0 * 0.3048 < TOP[1] - y < 7.3 * 0.3048


def _watch(man_m: np.ndarray, ball: tuple[float, float], guard: Guard) -> Watched:
    n = len(man_m)
    return Watched(
        men_m=man_m[:, None, :],
        ball_m=np.tile(ball, (n, 1)),
        on_ball=np.full(n, -1),
        guards=np.full((n, 1), GUARDS.index(guard)),
    )


def _fill(seconds: float = 6.0) -> np.ndarray:
    run = quickest_run([WING, (2.9, 6.4), TOP], MEN, start_s=1.0)
    t = np.arange(0.0, seconds, TICK_S)
    return np.column_stack([np.interp(t, run.t_s, column) for column in run.place_m.T])


def test_he_copies_his_man_half_a_second_late() -> None:
    # Measured on professional half courts: an off-ball defender copies his man after 0.48-0.60 s; a tick either way.
    man = _fill()
    place = shadow(_watch(man, (-5.7, 4.2), Guard.PLAIN), MEN).place_m
    his, own = np.diff(man, axis=0), np.diff(place[:, 0], axis=0)
    alike = [float((his[: len(his) - late] * own[late:]).sum()) for late in range(30)]
    assert 0.48 - TICK_S <= int(np.argmax(alike)) * TICK_S <= 0.60 + TICK_S


@pytest.mark.parametrize("guard", GUARDS)
def test_a_defender_runs_no_faster_and_turns_no_quicker_than_a_runner_can(guard: Guard) -> None:
    shade = shadow(_watch(_fill(), (-5.7, 4.2), guard), MEN)
    speed = np.hypot(*np.diff(shade.place_m[:, 0], axis=0).T) / TICK_S
    assert speed.max() <= MEN.top_speed_m_s
    assert np.abs(np.diff(shade.heading_deg[:, 0])).max() <= 180.0 / MEN.turn_s * TICK_S + 1e-9


def test_nobody_is_stood_in() -> None:
    straight = quickest_run([(4.0, 2.7), (0.5, 0.3)], MEN, start_s=0.5)
    t = np.arange(0.0, 3.0, TICK_S)
    man = np.column_stack([np.interp(t, straight.t_s, column) for column in straight.place_m.T])
    place = shadow(_watch(man, TOP, Guard.PLAIN), MEN).place_m
    assert np.hypot(*(place[:, 0] - man).T).min() > 0.7


def test_a_denier_has_his_chest_to_his_man() -> None:
    man = np.tile(WING, (20, 1))
    shade = shadow(_watch(man, TOP, Guard.DENIES), MEN)
    to_man = np.degrees(np.arctan2(*(man[-1] - shade.place_m[-1, 0])))
    assert shade.heading_deg[-1, 0] % 360 == pytest.approx(to_man % 360, abs=1.0)


def test_the_same_possession_is_defended_the_same_way_twice() -> None:
    first, second = (shadow(_watch(_fill(), TOP, Guard.PLAIN), MEN) for _ in range(2))
    assert (first.place_m == second.place_m).all()
    assert (first.heading_deg == second.heading_deg).all()
