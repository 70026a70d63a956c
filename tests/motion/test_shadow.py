"""Defenders are followed on from where they are known, and nobody can tell."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.motion.defender import GUARDS
from backcut.motion.run import TICK_S
from backcut.motion.shadow import Watched, followed, shadow
from backcut.motion.squads import SQUADS

RUNNER, SLOWER = SQUADS["boys-u16"].runner, SQUADS["girls-u13"].runner


def walked(seed: int, ticks: int, men: int = 3) -> Watched:
    """Men who wander over the floor at up to 4 m/s, a ball that jumps from one to another, orders that change."""
    chance = np.random.default_rng(seed)
    steps = chance.uniform(-4.0, 4.0, (ticks, men, 2)) * TICK_S
    men_m = np.cumsum(steps, axis=0) + chance.uniform(-3.0, 6.0, (men, 2))
    on_ball = np.repeat(chance.integers(-1, men, ticks // 10 + 1), 10)[:ticks]
    guards = np.repeat(chance.integers(0, len(GUARDS), (ticks // 20 + 1, men)), 20, axis=0)[:ticks]
    return Watched(men_m, men_m[np.arange(ticks), np.maximum(on_ball, 0)], on_ball, guards)


def cut_to(seen: Watched, ticks: int) -> Watched:
    return Watched(seen.men_m[:ticks], seen.ball_m[:ticks], seen.on_ball[:ticks], seen.guards[:ticks])


def joined(first: Watched, then: Watched, at: int) -> Watched:
    """What was watched first up to a tick, and something else from there on."""
    parts = ("men_m", "ball_m", "on_ball", "guards")
    return Watched(*(np.concatenate([getattr(first, part)[:at], getattr(then, part)[at:]]) for part in parts))


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000), st.integers(1, 59), st.integers(1, 60))
def test_going_on_from_what_is_known_is_the_same_as_from_the_start(one: int, other: int, at: int, end: int) -> None:
    first = walked(one, 60)
    second = cut_to(joined(first, walked(other, 60), at), end)
    followed(first, RUNNER)
    known, fresh = followed(second, RUNNER), shadow(second, RUNNER)
    for part in ("place_m", "speed_m_s", "heading_deg"):
        assert np.array_equal(getattr(known, part), getattr(fresh, part))


def test_what_a_quicker_runner_did_is_not_taken_for_a_slower_one() -> None:
    seen = walked(1, 60)
    quick, slow = followed(seen, RUNNER), followed(seen, SLOWER)
    assert not np.array_equal(quick.place_m, slow.place_m)
    assert np.array_equal(slow.place_m, shadow(seen, SLOWER).place_m)


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 59), st.sampled_from(["men_m", "ball_m", "on_ball", "guards"]))
def test_what_is_watched_is_the_same_up_to_the_first_thing_that_is_not(seed: int, at: int, part: str) -> None:
    first, changed = walked(seed, 60), walked(seed, 60)
    getattr(changed, part)[at] += 1
    assert first.same_ticks(changed) == changed.same_ticks(first) == at
    assert first.same_ticks(cut_to(first, 20)) == 20
