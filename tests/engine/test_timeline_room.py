"""Nobody runs through a team-mate: over possessions made up at random, and over shipped books played at random."""

from __future__ import annotations

import random
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest

from backcut.court.courts import COURTS
from backcut.court.placing import place_spots
from backcut.court.spots import PERIMETER, Spot
from backcut.engine.play import Stage, one_step
from backcut.engine.possession import Beat, Decision, Step
from backcut.engine.timeline import TIMINGS, build
from backcut.errors import MoveError
from backcut.motion.floor import FIBA_FLOOR
from backcut.motion.run import TICK_S
from backcut.motion.squads import SQUADS
from backcut.motion.timeline import Timeline
from backcut.motion.trail import places
from backcut.offence.action import Action, Kind, Route
from backcut.offence.event import Event, EventKind
from backcut.offence.library import open_book, presets
from backcut.offence.situation import Player, Situation

NEAREST_M = 0.5  # estimate: two pairs of shoulders
SPOTS = place_spots(COURTS["fiba"])
CUTS = (Route.FRONT, Route.REAR, Route.BEHIND_DEFENDER, Route.FAR_SIDE)
FILLS = (Route.ALONG_ARC, Route.THROUGH_ELBOW, Route.THROUGH_LANE)


def made_up(chance: random.Random, passes: int) -> list[Step]:
    """Steps that no book would ask for: anybody passes to anybody, cuts, and the others change places at random."""
    at = dict(zip(range(1, 6), chance.sample((*PERIMETER, Spot.RB, Spot.N), 5), strict=True))
    ball, steps = 1, []
    for _ in range(passes):
        now = Situation(tuple(Player(n, s) for n, s in at.items()), ball)
        receiver = chance.choice([n for n in at if n != ball])
        caught = replace(now, ball=receiver)
        first = [Action(ball, Kind.CUT, at[ball], Spot.R, 0, route=chance.choice(CUTS))]
        free = [s for s in PERIMETER if s not in at.values()] + [at[ball]]
        for mover in chance.sample([n for n in at if n not in (ball, receiver)], 2):
            target = free.pop(chance.randrange(len(free)))
            first.append(Action(mover, Kind.FILL, at[mover], target, 1, route=chance.choice(FILLS)))
            free.append(at[mover])
            at[mover] = target
        out = chance.choice([s for s in free if s is not Spot.N])
        beats = (
            Beat(caught, Decision(tuple(first))),
            Beat(caught, Decision((Action(ball, Kind.EXIT, Spot.R, out, 2),))),
        )
        at[ball] = out
        after = Situation(tuple(Player(n, s) for n, s in at.items()), receiver)
        steps.append(Step(Event(EventKind.PASS, ball, receiver), "", now, beats, after))
        ball = receiver
    return steps


def from_a_book(chance: random.Random, moves: int) -> list[Step]:
    """Steps of a shipped book, every event at random, many of them early."""
    book, _ = open_book(chance.choice(presets()))
    situation = book.start()
    steps: list[Step] = []
    while len(steps) < moves:
        holder, player = (
            situation.ball,
            chance.choice([p.number for p in situation.players if p.number != situation.ball]),
        )
        event = chance.choice(
            [Event(EventKind.PASS, holder, player, early=chance.random() < 0.5)] * 5
            + [Event(kind, player) for kind in (EventKind.DENY, EventKind.JAM, EventKind.SAG, EventKind.FREE)]
        )
        try:
            steps.append(one_step(book, situation, event, chance.choice((None, Stage.LANE, Stage.CUTTING))))
        except MoveError:
            continue
        situation = steps[-1].after
    return steps


def timed(steps: list[Step], chance: random.Random) -> Timeline:
    squad = SQUADS[chance.choice(sorted(SQUADS))]
    hold_s, timing = chance.choice((0.0, 1.0, 2.0)), chance.choice(TIMINGS)
    return build(steps, SPOTS, squad, hold_s=hold_s, fill_timing=timing)


def nearest_m(timeline: Timeline) -> float:
    t = np.arange(0.0, timeline.duration_s, TICK_S / 2)
    ways = [places(track, t) for track in timeline.players.values()]
    return min(float(np.hypot(*(a - b).T).min()) for a, b in combinations(ways, 2))


@pytest.mark.parametrize("seed", range(20))
def test_nobody_runs_through_a_team_mate_however_wild_the_steps(seed: int) -> None:
    chance = random.Random(seed)
    assert nearest_m(timed(made_up(chance, 5), chance)) >= NEAREST_M


@pytest.mark.parametrize("seed", range(20))
def test_nobody_runs_through_a_team_mate_in_a_shipped_book(seed: int) -> None:
    chance = random.Random(seed)
    assert nearest_m(timed(from_a_book(chance, 6), chance)) >= NEAREST_M


@pytest.mark.parametrize("seed", range(8))
def test_a_timeline_is_small_in_bounds_and_without_jumps(seed: int) -> None:
    chance = random.Random(seed)
    timeline = timed(made_up(chance, 20), chance)
    knots = 0
    for track in (*timeline.players.values(), *timeline.defenders.values(), timeline.ball):
        assert (np.diff(track.t_s) > 0).all()
        knots += len(track.t_s)
    for track in timeline.players.values():
        assert np.abs(track.place_m[:, 0]).max() < FIBA_FLOOR.half_width_m
        assert track.place_m[:, 1].min() > -FIBA_FLOOR.baseline_m
        pace = np.hypot(*np.diff(track.place_m, axis=0).T) / np.diff(track.t_s)
        assert pace.max(initial=0.0) <= max(squad.runner.top_speed_m_s for squad in SQUADS.values())
    # Eleven bodies at 25 Hz would be 275 knots a second.
    assert knots / timeline.duration_s < 60
