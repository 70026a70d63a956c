"""Lines of action as they are drawn."""

from __future__ import annotations

import math
import re

import pytest

from backcut.picture.arrows import drawn_path, under
from backcut.picture.lines import along, in_cm, length_cm, simplified, smooth_path, trimmed, zigzag_path
from backcut.picture.show import Arrow, ArrowKind

ROUND = tuple((6.0 * math.cos(a / 20), 6.0 * math.sin(a / 20)) for a in range(31))


def numbers(path: str) -> list[float]:
    return [float(value) for value in re.findall(r"-?\d+", path)]


def test_a_run_begins_outside_its_runner_and_ends_short_of_an_empty_spot() -> None:
    arrow = Arrow(ArrowKind.FILL, 2, ((5.0, 4.0), (0.0, 7.0)))
    path = drawn_path(arrow, discs=[(500.0, 400.0)], open_cm=[(0.0, 700.0)])
    assert math.dist(path[0], (500.0, 400.0)) > 47
    assert math.dist(path[-1], (0.0, 700.0)) > 34


def test_a_pass_ends_clear_of_the_catcher() -> None:
    arrow = Arrow(ArrowKind.PASS, 1, ((0.0, 7.0), (-5.7, 4.2)), to_player=3)
    path = drawn_path(arrow, discs=[(0.0, 700.0), (-570.0, 420.0)], open_cm=[])
    assert math.dist(path[-1], (-570.0, 420.0)) > 47


def test_a_very_short_line_keeps_its_middle_third() -> None:
    assert length_cm(trimmed([(0.0, 0.0), (60.0, 0.0)], 58.0, 57.0)) == pytest.approx(20.0)


def test_a_shut_pass_stops_at_the_hand_before_the_receiver() -> None:
    arrow = Arrow(ArrowKind.SHUT, 3, ((-5.0, 4.0), (2.0, 6.0)), to_player=2)
    path = drawn_path(arrow, discs=[(-500.0, 400.0), (200.0, 600.0)], open_cm=[])
    lane, hand = (line for _, line in under(arrow, path, defender=(90.0, 575.0)))
    assert (lane.style, hand.style) == ("shut", "hand")
    end = numbers(lane.path)[-2:]
    assert math.dist(end, (200.0, 600.0)) > math.dist((90.0, 575.0), (200.0, 600.0))


def test_a_lit_cut_has_the_marker_under_the_ink() -> None:
    arrow = Arrow(ArrowKind.CUT, 2, ((2.0, 6.0), (0.5, 4.0), (0.2, 1.8)), "A", lit=True)
    layers = under(arrow, in_cm(arrow.path_m), None)
    assert [line.style for _, line in sorted(layers, key=lambda item: item[0])] == ["lit", "run hot"]


def test_fewer_points_stay_within_three_centimetres_of_the_run() -> None:
    path = in_cm(ROUND)
    few = simplified(path)
    assert len(few) < len(path) / 2
    whole = length_cm(few)
    dots = [along(few, whole * i / 400)[0] for i in range(401)]
    assert all(min(math.dist(point, dot) for dot in dots) < 3.0 + whole / 800 for point in path)


def test_a_smooth_line_passes_through_every_point_it_was_given() -> None:
    points = [(0.0, 0.0), (100.0, 50.0), (150.0, 200.0), (300.0, 210.0)]
    given = numbers(smooth_path(points))
    ends = [(given[0], given[1]), *((given[i + 4], given[i + 5]) for i in range(2, len(given), 6))]
    assert ends == points


def test_a_dribble_zigzags_and_leaves_both_ends_straight() -> None:
    given = numbers(zigzag_path([(0.0, 0.0), (400.0, 0.0)]))
    heights = given[1::2]
    assert heights[0] == heights[1] == heights[-2] == heights[-1] == 0
    assert {24.0, -24.0} <= set(heights)


def test_a_player_who_stands_still_has_no_line() -> None:
    assert under(Arrow(ArrowKind.CUT, 1, ((0.0, 7.0), (0.0, 7.0))), in_cm(((0.0, 7.0), (0.0, 7.0))), None) == []
