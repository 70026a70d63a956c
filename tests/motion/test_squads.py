"""Presets of squads against measured group times."""

from __future__ import annotations

from pathlib import Path

import pytest

from backcut.errors import MotionError
from backcut.motion.fit import START_CORRECTION_S
from backcut.motion.runner import Runner
from backcut.motion.squads import SQUADS, PassType, squad_named


def _split_s(name: str, distance_m: float) -> float:
    """What photocells would read for a preset."""
    return float(SQUADS[name].runner.sprint.time_s(distance_m)) - START_CORRECTION_S


@pytest.mark.parametrize(
    ("name", "distance_m", "time_s", "spread_s"),
    [
        # NBA draft combine 2009-17 (n 446): 75 ft in 3.30 +- 0.13 s.
        ("prospects", 22.86, 3.30, 0.13),
        # Vescovi data in github.com/mladenjovanovic/shorts, women's soccer (n 35), means.
        ("women", 10.0, 2.015, 0.02),
        ("women", 30.0, 4.754, 0.02),
        # Gryko et al. 2022, BMC Sports Sci Med Rehabil 14:21; the fit leaves up to 0.04 s at under 13.
        ("girls-u13", 10.0, 2.021, 0.05),
        ("girls-u13", 20.0, 3.585, 0.05),
        ("girls-u14", 20.0, 3.551, 0.05),
        ("girls-u15", 20.0, 3.539, 0.05),
    ],
)
def test_a_preset_runs_its_groups_time(name: str, distance_m: float, time_s: float, spread_s: float) -> None:
    assert _split_s(name, distance_m) == pytest.approx(time_s, abs=spread_s)


def test_women_run_25_yards_in_the_time_of_college_players_when_the_clock_starts_with_them() -> None:
    # Reliability of 25-yard sprints, src.truman.edu 2023, college basketball (n 12): 4.06 +- 0.23 s. How the clock was
    # started is not told; behind photocells the preset would read 3.81 s, 0.02 s outside one standard deviation.
    assert float(SQUADS["women"].runner.sprint.time_s(22.86)) == pytest.approx(4.06, abs=0.23)


def test_older_squads_run_20_metres_no_slower() -> None:
    # Causevic et al. 2023, Appl. Sci. 13:7796: under 14, 15 and 16, the older the faster.
    boys = [_split_s(name, 20.0) for name in ("boys-u12", "boys-u14", "boys-u16", "boys-u18", "men")]
    girls = [_split_s(name, 20.0) for name in ("girls-u13", "girls-u14", "girls-u15", "women")]
    assert boys == sorted(boys, reverse=True)
    assert girls == sorted(girls, reverse=True)


@pytest.mark.parametrize("name", SQUADS)
def test_every_preset_says_where_its_numbers_come_from(name: str) -> None:
    squad = squad_named(name)
    assert squad.name == name
    assert any(word in squad.run_source for word in ("fitted to", "estimate", "memory"))
    assert any(word in squad.pass_source for word in ("estimate", "memory"))


@pytest.mark.parametrize("name", SQUADS)
def test_a_bounce_pass_takes_about_two_thirds_of_a_chest_passes_speed(name: str) -> None:
    # From memory, low confidence; as the presets say of themselves.
    squad = SQUADS[name]
    ratio = squad.ball_speed_m_s(PassType.BOUNCE) / squad.ball_speed_m_s(PassType.CHEST)
    assert ratio == pytest.approx(2 / 3, abs=0.02)


def test_an_unknown_squad_is_answered_with_the_known_ones() -> None:
    with pytest.raises(MotionError, match="girls-u13"):
        squad_named("dream team")


@pytest.mark.parametrize("effort", [0.0, -0.5, 1.2])
def test_an_effort_that_cannot_be_run_is_refused(effort: float) -> None:
    with pytest.raises(MotionError, match="above 0 and at most 1"):
        SQUADS["men"].runner.at_effort(effort)


def test_half_an_effort_halves_speed_and_acceleration() -> None:
    runner = SQUADS["men"].runner
    half = runner.at_effort(0.5)
    assert half.top_speed_m_s == pytest.approx(runner.top_speed_m_s / 2)
    assert half.first_acceleration_m_s2 == pytest.approx(runner.first_acceleration_m_s2 / 2)


def test_a_runner_without_brakes_is_refused() -> None:
    with pytest.raises(MotionError, match="braking_m_s2"):
        Runner(8.0, 1.0, braking_m_s2=0.0)


@pytest.mark.parametrize("name", SQUADS)
def test_the_page_on_motion_tells_a_presets_numbers(name: str) -> None:
    squad = SQUADS[name]
    page = (Path(__file__).parents[2] / "docs" / "motion.md").read_text("utf-8")
    (row,) = [line for line in page.splitlines() if line.startswith(f"| {name} |")]
    runner = squad.runner
    assert f"| {runner.top_speed_m_s:.2f} | {runner.time_constant_s:.2f} | {runner.reaction_s:.2f} |" in row
    assert f"{squad.chest_m_s:.1f} / {squad.overhead_m_s:.1f} / {squad.skip_m_s:.1f} / {squad.bounce_m_s:.1f}" in row
    assert squad.run_source in row
