"""From finished tracks to a timeline: the ball with its holders, the defenders with their men, all thinned."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from backcut.motion.ball import DRIBBLE_S, FLOOR_M, HELD_M
from backcut.motion.defender import GUARDS
from backcut.motion.floor import FIBA_FLOOR, Floor
from backcut.motion.run import ticks
from backcut.motion.runner import Runner
from backcut.motion.shadow import Watched, followed
from backcut.motion.thin import STRETCH_S, all_thinned, thinned
from backcut.motion.timeline import Flight, Held, Run, Timeline, Track
from backcut.motion.trail import places
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

    @cached_property
    def ball(self) -> Track:
        """The ball (n, 3), held and in the air."""
        pieces = [(held.start_s, _held_ball(held, self.players[held.player])) for held in self.held]
        pieces += [(float(track.t_s[0]), track) for track in self.air]
        pieces.sort(key=lambda piece: piece[0])
        t = np.concatenate([track.t_s for _, track in pieces])
        place = np.vstack([track.place_m for _, track in pieces])
        rising = np.concatenate(([True], np.diff(np.maximum.accumulate(t)) > 1e-9))
        return all_thinned([Track(t[rising], place[rising])], [BALL_M], STRETCH_S)[0]


def watched(score: Score) -> Watched:
    """What the defenders see of a score, tick by tick, in the order of `score.players`."""
    numbers, t = tuple(score.players), ticks(score.duration_s)
    return Watched(
        men_m=np.stack([places(score.players[n], t) for n in numbers], axis=1),
        ball_m=places(score.ball, t),
        on_ball=_on_ball(score, numbers, t),
        guards=_guards(score, numbers, t),
    )


def assemble(score: Score, defender: Runner, floor: Floor = FIBA_FLOOR) -> Timeline:
    """The timeline of a score, every defender moving within the limits of `defender`, on the floor."""
    numbers, t = tuple(score.players), ticks(score.duration_s)
    shade = followed(watched(score), defender, floor)
    k = len(numbers)
    tracks = all_thinned(
        [
            *score.players.values(),
            *(Track(t, shade.place_m[:, i]) for i in range(k)),
            *(Track(t, shade.heading_deg[:, i, None]) for i in range(k)),
        ],
        [ATTACKER_M] * k + [DEFENDER_M] * k + [HEADING_DEG] * k,
        STRETCH_S,
    )
    players, defenders, facing = tracks[:k], tracks[k : 2 * k], tracks[2 * k :]
    return Timeline(
        duration_s=score.duration_s,
        players=dict(zip(numbers, players, strict=True)),
        defenders=dict(zip(numbers, defenders, strict=True)),
        facing_deg=dict(zip(numbers, facing, strict=True)),
        ball=score.ball,
        held=tuple(score.held),
        runs=tuple(score.runs),
        flights=tuple(score.flights),
        cues_s=tuple(score.cues_s),
    )


@lru_cache(maxsize=512)
def path_between(track: Track, start_s: float, end_s: float) -> Floats:
    """The path (n, 2) that a track takes between two moments; the same question has the same answer."""
    inner = (track.t_s > start_s) & (track.t_s < end_s)
    t = np.concatenate(([start_s], track.t_s[inner], [end_s]))
    return thinned(Track(t, places(track, t)), ATTACKER_M).place_m


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
