"""Tracks lose nothing that can be seen when they are packed for the page."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from backcut.motion.timeline import Track
from backcut.page.tracks import packed, packed_timeline

from .demo import timeline


def unpacked(knots: list[list[int]]) -> Track:
    times, *columns = (np.cumsum(column) / 100 for column in knots)
    return Track(times, np.column_stack(columns))


@given(
    st.lists(
        st.tuples(st.floats(0.02, 1.0), st.floats(-7.5, 7.5), st.floats(-1.5, 12.5)),
        min_size=2,
        max_size=30,
    )
)
def test_a_packed_track_is_within_two_centimetres_at_every_knot(steps: list[tuple[float, float, float]]) -> None:
    table = np.array(steps)
    times = np.round(np.cumsum(table[:, 0]), 2)
    track = Track(times, table[:, 1:])
    again = unpacked(packed(track))
    for t in times:
        assert np.abs(again.at(float(t)) - track.at(float(t))).max() < 0.02


def test_a_straight_run_at_an_even_pace_needs_two_knots() -> None:
    times = np.linspace(0.0, 2.0, 51)
    track = Track(times, np.column_stack([times * 3.0, 5.0 - times]))
    assert packed(track) == [[0, 200], [0, 600], [500, -200]]


def test_a_whole_possession_is_whole_numbers_for_everybody() -> None:
    pages = packed_timeline(timeline())
    assert pages["end"] == 600
    assert set(pages) == {"end", "p", "x", "f", "b"}
    assert isinstance(pages["p"], dict)
    assert list(pages["p"]) == ["1", "2", "3", "4", "5"]
    assert all(isinstance(value, int) for track in pages["p"].values() for column in track for value in column)


def test_a_player_who_stands_all_game_is_two_knots() -> None:
    assert packed(timeline().players[5])[0] == [0, 600]


def test_the_height_of_the_ball_is_not_carried() -> None:
    assert len(packed(timeline().ball)) == 3
    assert timeline().ball.at(0.0)[2] == pytest.approx(1.5)
