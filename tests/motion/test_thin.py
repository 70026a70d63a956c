"""Thinning: no more is left out than may be, and each stretch is thinned by itself."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.motion.thin import all_thinned, kept_knots, thinned
from backcut.motion.timeline import Track
from backcut.motion.trail import places


def wandering(seed: int, knots: int, axes: int = 2) -> Track:
    chance = np.random.default_rng(seed)
    return Track(np.cumsum(chance.uniform(0.02, 0.2, knots)), np.cumsum(chance.normal(0, 0.1, (knots, axes)), axis=0))


def by_the_book(track: Track, tolerance: float, first: int, last: int) -> set[int]:
    """Ramer (1972), Douglas and Peucker (1973), as they say it: one piece after the other."""
    share = (track.t_s[first : last + 1] - track.t_s[first]) / (track.t_s[last] - track.t_s[first])
    straight = track.place_m[first] + share[:, None] * (track.place_m[last] - track.place_m[first])
    gap = np.linalg.norm(track.place_m[first : last + 1] - straight, axis=1)
    worst = first + int(gap.argmax())
    if gap.max() <= tolerance or worst in (first, last):
        return {first, last}
    return by_the_book(track, tolerance, first, worst) | by_the_book(track, tolerance, worst, last)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(0, 9999), st.integers(2, 80), st.integers(1, 3)), min_size=1, max_size=4))
def test_many_tracks_at_once_keep_the_knots_that_each_keeps_by_itself(drawn: list[tuple[int, int, int]]) -> None:
    tracks = [wandering(*one) for one in drawn]
    tolerances = [0.02 * (i + 1) for i in range(len(tracks))]
    for track, tolerance, keep in zip(tracks, tolerances, kept_knots(tracks, tolerances), strict=True):
        assert set(np.flatnonzero(keep)) == by_the_book(track, tolerance, 0, len(track.t_s) - 1)


def test_one_knot_stays_one_knot() -> None:
    alone = Track(np.zeros(1), np.array([[1.0, 2.0]]))
    assert len(thinned(alone, 0.1).t_s) == 1
    assert [len(t.t_s) for t in all_thinned([alone, wandering(1, 30), alone], [0.1] * 3, 2.0)][::2] == [1, 1]


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 9999), st.integers(20, 120), st.floats(0.5, 3.0))
def test_a_track_that_goes_on_keeps_what_was_thinned_of_it(seed: int, cut: int, stretch_s: float) -> None:
    whole = wandering(seed, 150)
    (before,) = all_thinned([Track(whole.t_s[:cut], whole.place_m[:cut])], [0.05], stretch_s)
    (after,) = all_thinned([whole], [0.05], stretch_s)
    known_s = whole.t_s[cut - 1] // stretch_s * stretch_s
    assert np.array_equal(before.t_s[before.t_s < known_s], after.t_s[after.t_s < known_s])
    assert np.abs(places(after, whole.t_s) - whole.place_m).max() <= 0.05
