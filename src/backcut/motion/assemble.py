"""From finished tracks to a timeline: the ball with its holders, the defenders with their men, all thinned."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.motion.ball import DRIBBLE_S, FLOOR_M, HELD_M
from backcut.motion.defender import GUARDS, Watched, shadow
from backcut.motion.floor import FIBA_FLOOR, Floor
from backcut.motion.run import ticks
from backcut.motion.runner import Runner
from backcut.motion.timeline import Flight, Held, Run, Timeline, Track
from backcut.motion.trail import places, thinned
from backcut.offence.situation import Guard

Floats = NDArray[np.float64]

ATTACKER_M = 0.01  # thinning: a centimetre, half a pixel of a court drawn 700 pixels wide
DEFENDER_M = 0.03  # thinning: a pixel and a half
HEADING_DEG = 6.0  # thinning
BALL_M = 0.01  # thinning


@dataclass(frozen=True, slots=True)
class Posture:
    """From `from_s` on, the defender of `player` does this."""

    from_s: float
    player: int
    guard: Guard


@dataclass(frozen=True, eq=False)
class Score:
    """A possession ready to be assembled: attackers' tracks, who held the ball, its flights, the defenders' orders.

    `air` holds the ball's track (n, 3) of each flight.
    """

    duration_s: float
    players: Mapping[int, Track]
    held: Sequence[Held]
    flights: Sequence[Flight]
    air: Sequence[Track]
    runs: Sequence[Run]
    postures: Sequence[Posture]
    cues_s: Sequence[float] = ()


def watched(score: Score) -> Watched:
    """What the defenders see of a score, tick by tick, in the order of `score.players`."""
    numbers, t = tuple(score.players), ticks(score.duration_s)
    return Watched(
        men_m=np.stack([places(score.players[n], t) for n in numbers], axis=1),
        ball_m=places(_ball(score), t),
        on_ball=_on_ball(score, numbers, t),
        guards=_guards(score, numbers, t),
    )


def assemble(score: Score, defender: Runner, floor: Floor = FIBA_FLOOR) -> Timeline:
    """The timeline of a score, every defender moving within the limits of `defender`, on the floor."""
    ball = _ball(score)
    numbers = tuple(score.players)
    t = ticks(score.duration_s)
    where, heading = shadow(watched(score), defender, floor)
    return Timeline(
        duration_s=score.duration_s,
        players={n: thinned(track, ATTACKER_M) for n, track in score.players.items()},
        defenders={n: thinned(Track(t, where[:, i]), DEFENDER_M) for i, n in enumerate(numbers)},
        facing_deg={n: thinned(Track(t, heading[:, i, None]), HEADING_DEG) for i, n in enumerate(numbers)},
        ball=ball,
        held=tuple(score.held),
        runs=tuple(score.runs),
        flights=tuple(score.flights),
        cues_s=tuple(score.cues_s),
    )


def path_between(track: Track, start_s: float, end_s: float) -> Floats:
    """The path (n, 2) that a track takes between two moments."""
    inner = (track.t_s > start_s) & (track.t_s < end_s)
    t = np.concatenate(([start_s], track.t_s[inner], [end_s]))
    return thinned(Track(t, places(track, t)), ATTACKER_M).place_m


def _ball(score: Score) -> Track:
    pieces = [(held.start_s, _held_ball(held, score.players[held.player])) for held in score.held]
    pieces += [(float(track.t_s[0]), track) for track in score.air]
    pieces.sort(key=lambda piece: piece[0])
    t = np.concatenate([track.t_s for _, track in pieces])
    place = np.vstack([track.place_m for _, track in pieces])
    rising = np.concatenate(([True], np.diff(np.maximum.accumulate(t)) > 1e-9))
    return thinned(Track(t[rising], place[rising]), BALL_M)


def _held_ball(held: Held, holder: Track) -> Track:
    inner = holder.t_s[(holder.t_s > held.start_s) & (holder.t_s < held.end_s)]
    if held.dribbled:
        inner = np.union1d(inner, np.arange(held.start_s, held.end_s, DRIBBLE_S / 2)[1:])
    t = np.concatenate(([held.start_s], inner, [held.end_s]))
    height = np.full(len(t), HELD_M)
    if held.dribbled:
        beat = np.abs((t - held.start_s) / DRIBBLE_S % 1.0 - 0.5) * 2.0
        height = FLOOR_M + (HELD_M - FLOOR_M) * beat
        height[-1] = HELD_M
    return Track(t, np.column_stack([places(holder, t), height]))


def _on_ball(score: Score, numbers: tuple[int, ...], t: Floats) -> NDArray[np.int64]:
    """Whose defender guards the ball at each tick: the holder's, and from the release on the receiver's."""
    who = np.full(len(t), -1, dtype=np.int64)
    for held in score.held:
        who[(t >= held.start_s) & (t <= held.end_s)] = numbers.index(held.player)
    for flight in score.flights:
        index = -1 if flight.to_player is None else numbers.index(flight.to_player)
        who[(t >= flight.start_s) & (t < flight.end_s)] = index
    return who


def _guards(score: Score, numbers: tuple[int, ...], t: Floats) -> NDArray[np.int64]:
    guards = np.full((len(t), len(numbers)), GUARDS.index(Guard.PLAIN), dtype=np.int64)
    for posture in sorted(score.postures, key=lambda p: p.from_s):
        guards[t >= posture.from_s, numbers.index(posture.player)] = GUARDS.index(posture.guard)
    return guards
