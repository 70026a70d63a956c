"""Squads by age and sex: how fast they run and pass. Presets to start from, not norms to judge a child by.

Sprints come from published split times where there are some, fitted with the 0.3 s start correction; what is from
memory or an estimate says so. Coaches with a stopwatch put their own squad in place: `fit_splits` gives the sprint.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from backcut.errors import MotionError
from backcut.motion.runner import Runner


class PassType(StrEnum):
    """How the ball is thrown."""

    CHEST = "chest"
    OVERHEAD = "overhead"
    SKIP = "skip"
    BOUNCE = "bounce"


@dataclass(frozen=True, slots=True)
class Squad:
    """One squad: a typical runner, ball speeds by type of pass, and the longest pass that is comfortable.

    `run_source` and `pass_source` say where the numbers come from, or that they are estimates.
    """

    name: str
    title: str
    runner: Runner
    chest_m_s: float
    overhead_m_s: float
    skip_m_s: float
    bounce_m_s: float
    longest_pass_m: float
    run_source: str
    pass_source: str

    def ball_speed_m_s(self, kind: PassType) -> float:
        """The mean speed of the ball over the floor, in m/s."""
        return {
            PassType.CHEST: self.chest_m_s,
            PassType.OVERHEAD: self.overhead_m_s,
            PassType.SKIP: self.skip_m_s,
            PassType.BOUNCE: self.bounce_m_s,
        }[kind]


_GRYKO = "fitted to 5, 10 and 20 m split times of Polish girls (Gryko et al. 2022, BMC Sports Sci Med Rehabil 14:21)"
_VESCOVI = "fitted to 5-35 m split times of 35 women's soccer players (repository mladenjovanovic/shorts, vescovi data)"
_COMBINE = "estimate that meets the 75 ft sprint of 446 draft prospects, 3.30 +- 0.13 s (NBA draft combine 2009-17)"
_MEMORY = "fitted to 10 and 20 m times from memory, low confidence"
_PASSES = "from memory, low confidence (chest: adults 8-12 m/s, age 12 about 6-8; bounce two thirds of chest)"
_PROFESSIONALS = "measured median of professional passes of 8 ft or more, 34.8 ft/s; by type an estimate"

#: 15-18 ft for the young and 22 ft for adults: common practice, no source.
YOUNG_PASS_M, ADULT_PASS_M = 18 * 0.3048, 22 * 0.3048


def _runner(top_speed_m_s: float, time_constant_s: float, *, grip_m_s2: float, reaction_s: float) -> Runner:
    # Braking: mean of 4 to 5.5 m/s2 from memory for adults, lower for children an estimate; in curves an estimate.
    # Turning right round 0.2-0.3 s, from memory, low confidence. Reaction: adults 0.20-0.25 s, from memory.
    return Runner(
        top_speed_m_s,
        time_constant_s,
        reaction_s=reaction_s,
        braking_m_s2=grip_m_s2,
        sideways_m_s2=grip_m_s2,
        turn_s=0.25 if grip_m_s2 >= 4.5 else 0.30,
    )


_CHILD = {"grip_m_s2": 4.0, "reaction_s": 0.30}  # estimate
_YOUTH = {"grip_m_s2": 4.5, "reaction_s": 0.25}  # estimate
_ADULT = {"grip_m_s2": 5.0, "reaction_s": 0.25}  # from memory: 4 to 5.5 m/s2; 0.20-0.25 s

_ALL = (
    Squad(
        "girls-u13", "Girls under 13", _runner(6.96, 1.03, **_CHILD), 7.0, 6.5, 7.5, 4.7, YOUNG_PASS_M, _GRYKO, _PASSES
    ),
    Squad(
        "girls-u14", "Girls under 14", _runner(7.07, 1.04, **_CHILD), 7.5, 7.0, 8.0, 5.0, YOUNG_PASS_M, _GRYKO, _PASSES
    ),
    Squad(
        "girls-u15", "Girls under 15", _runner(7.12, 1.06, **_YOUTH), 8.0, 7.5, 8.5, 5.3, YOUNG_PASS_M, _GRYKO, _PASSES
    ),
    Squad("women", "Women", _runner(7.72, 1.19, **_ADULT), 9.5, 9.0, 10.0, 6.3, ADULT_PASS_M, _VESCOVI, _PASSES),
    Squad(
        "boys-u12", "Boys under 12", _runner(6.22, 0.84, **_CHILD), 7.0, 6.5, 7.5, 4.7, YOUNG_PASS_M, _MEMORY, _PASSES
    ),
    Squad(
        "boys-u14", "Boys under 14", _runner(7.27, 0.97, **_CHILD), 8.0, 7.5, 8.5, 5.3, YOUNG_PASS_M, _MEMORY, _PASSES
    ),
    Squad(
        "boys-u16", "Boys under 16", _runner(7.92, 1.01, **_YOUTH), 9.0, 8.5, 9.5, 6.0, ADULT_PASS_M, _MEMORY, _PASSES
    ),
    Squad(
        "boys-u18", "Boys under 18", _runner(8.25, 0.99, **_ADULT), 10.0, 9.5, 10.5, 6.7, ADULT_PASS_M, _MEMORY, _PASSES
    ),
    Squad("men", "Men", _runner(8.53, 0.97, **_ADULT), 10.5, 10.0, 11.0, 7.0, ADULT_PASS_M, _MEMORY, _PASSES),
    Squad(
        "prospects",
        "Prospects",
        _runner(8.70, 1.00, **_ADULT),
        10.6,
        10.0,
        11.5,
        7.1,
        ADULT_PASS_M,
        _COMBINE,
        _PROFESSIONALS,
    ),
)

SQUADS: dict[str, Squad] = {squad.name: squad for squad in _ALL}


def squad_named(name: str) -> Squad:
    """The preset of this name. Raises: MotionError if there is none."""
    try:
        return SQUADS[name]
    except KeyError:
        raise MotionError(f'No squad is called "{name}". The squads are: {", ".join(SQUADS)}.') from None
