"""A possession that goes on: what is kept of it is what a possession built from its first step has."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.engine import timeline as kept
from backcut.engine.choose import possession
from backcut.engine.gym import gym, timed
from backcut.engine.possession import Step
from backcut.motion import assemble, shadow
from backcut.motion.run import TICK_S
from backcut.motion.thin import STRETCH_S
from backcut.motion.timeline import Flight, Run, Timeline, Track, pose
from backcut.offence.book import Book
from backcut.offence.library import open_book, presets

from .random_play import Possession, possessions

EVERY_S = 0.1


def from_scratch(book: Book, steps: Sequence[Step]) -> Timeline:
    """The timeline when nothing at all is remembered."""
    kept._begun.cache_clear()
    kept._after.cache_clear()
    assemble.path_between.cache_clear()
    shadow._LATEST.clear()
    return timed(book, steps, gym(book))


def same(a: Timeline, b: Timeline) -> bool:
    """Whether two timelines are the same to the last digit."""

    def tracks(timeline: Timeline) -> list[Track]:
        bodies = (timeline.players, timeline.defenders, timeline.facing_deg)
        return [track for body in bodies for _, track in sorted(body.items())] + [timeline.ball]

    pairs = zip(tracks(a), tracks(b), strict=True)

    def ways(timeline: Timeline) -> list[object]:
        moving: list[Run | Flight] = [*timeline.runs, *timeline.flights]
        return [(way.kind, way.start_s, way.end_s, way.path_m.tolist()) for way in moving]

    return (
        (a.duration_s, a.held, a.cues_s) == (b.duration_s, b.held, b.cues_s)
        and all(np.array_equal(x.t_s, y.t_s) and np.array_equal(x.place_m, y.place_m) for x, y in pairs)
        and ways(a) == ways(b)
    )


@settings(max_examples=25, deadline=None)
@given(possessions(most=4))
def test_a_possession_that_goes_on_is_the_one_played_from_the_start(played: Possession) -> None:
    whole = from_scratch(played.book, played.steps)
    from_scratch(played.book, played.steps[:1])
    here = gym(played.book)
    for count in range(1, len(played.steps) + 1):
        growing = timed(played.book, played.steps[:count], here)
    assert same(growing, whole)


@settings(max_examples=15, deadline=None)
@given(st.sampled_from(presets()), st.integers(0, 10_000), st.integers(0, 10_000))
def test_a_possession_that_goes_another_way_is_not_the_one_before(name: str, one: int, other: int) -> None:
    book, _ = open_book(name)
    first, second = (possession(book, book.start(), seed, most=3) for seed in (one, other))
    whole = from_scratch(book, second)
    from_scratch(book, first)
    assert same(timed(book, second, gym(book)), whole)
    assert same(timed(book, first, gym(book)), from_scratch(book, first))


@settings(max_examples=20, deadline=None)
@given(possessions(most=4))
def test_what_has_been_shown_does_not_move_when_a_step_is_added(played: Possession) -> None:
    here = gym(played.book)
    before, after = (timed(played.book, played.steps[: len(played.steps) - less], here) for less in (1, 0))
    shown_s = before.cues_s[-1] // STRETCH_S * STRETCH_S - TICK_S
    for t_s in np.arange(0.0, shown_s, EVERY_S):
        was, now = pose(before, float(t_s)), pose(after, float(t_s))
        assert (was.players, was.defenders, was.ball[:2]) == (now.players, now.defenders, now.ball[:2])


def test_another_pace_is_not_taken_for_the_same_possession() -> None:
    book, _ = open_book("school-team")
    steps = possession(book, book.start(), 3, most=3)
    timed(book, steps, gym(book))
    for other in (gym(book, squad="girls-u13"), gym(book, court="nba")):
        known = timed(book, steps, other)
        assert not same(known, from_scratch(book, steps))
        kept._after.cache_clear()
        shadow._LATEST.clear()
        assert same(timed(book, steps, other), known)


def test_a_place_asked_for_once_is_the_place_among_many() -> None:
    # numpy.interp is the outside reading of straight pieces between knots.
    track = Track(np.array([0.0, 0.04, 0.5, 2.0]), np.array([[0.0, 1.0], [0.3, 1.1], [2.0, -0.7], [2.0, 5.0]]))
    for t_s in np.linspace(-0.5, 2.5, 301):
        wanted = [np.interp(t_s, track.t_s, column) for column in track.place_m.T]
        assert track.place_at(float(t_s)) == pytest.approx(wanted, abs=1e-12)
