"""Which seconds of a possession a clip shows, and how: a still picture, the move slowly, the move at game speed.

Still and slow first: in published trials novices learnt more from still pictures and slow animation than from game
speed, in soccer and with basketball students; experts the other way round.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from backcut.picture.show import Show
from backcut.teaching.examples import Example

FPS = 25
#: A clip lasts so long, in seconds (common practice, no source: what is watched to its end in a chat).
SHORTEST_S, LONGEST_S = 6.0, 10.0
#: How long it stands (own design): before it moves, at each decision on the way, and at the end.
STILL_S, STOP_S, END_S = 1.5, 0.5, 0.5
#: Slow is a third of the speed, as on the floor; where a move is long it is shown less slowly, but never faster.
SLOW, LEAST_SLOW = 3.0, 1.2
#: What is shown before the ball moves, and after the last run has ended, in seconds (own design).
BEFORE_S, AFTER_S = 0.3, 0.4


class Part(StrEnum):
    """What a picture of a clip belongs to."""

    STILL = "still"
    SLOW = "slow"
    GAME = "game"


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture: the second of the possession, the moment it belongs to, and the part of the clip."""

    t_s: float
    moment: int
    part: Part


@dataclass(frozen=True, slots=True)
class Cut:
    """The part of a possession from `begins_s` to `ends_s`; `decision` is the moment it is about.

    `whole` is false where the possession goes on beyond it: a clip has no room for more.
    """

    begins_s: float
    ends_s: float
    decision: int
    whole: bool


def cut_of(show: Show, shown: Example) -> Cut:
    """The part of its possession that shows what a sentence says: from the cue to the end of the run it causes."""
    step, beat = shown.beat
    mine = [r for r in show.timeline.runs if (r.step, r.beat, r.player) == (step, beat, shown.player)]
    cue = show.timeline.cues_s[step]
    starts = min((run.start_s for run in mine), default=cue)
    ends = max((run.end_s for run in mine), default=starts + 1.0)
    decision = max((i for i, m in enumerate(show.moments) if m.t_s <= starts + 0.05), default=0)
    begins = max(0.0, min(cue, show.moments[decision].t_s) - BEFORE_S)
    return _bounded(show, begins, ends + AFTER_S, decision)


def cut_whole(show: Show) -> Cut:
    """As much of a possession as a clip has room for, from its beginning."""
    return _bounded(show, 0.0, show.timeline.duration_s, 0)


def _bounded(show: Show, begins: float, ends: float, decision: int) -> Cut:
    """Not past the possession's end, and not longer than can be shown slowly enough."""
    wanted = min(ends, show.timeline.duration_s)
    last = wanted
    while _stood(show, begins, last) + (1 + LEAST_SLOW) * (last - begins) > LONGEST_S - 0.12:
        last -= 0.1
    return Cut(begins, last, decision, last >= wanted)


def _stood(show: Show, begins: float, ends: float) -> float:
    return STILL_S + STOP_S * len(_stops(show, begins, ends)) + END_S


def _stops(show: Show, begins: float, ends: float) -> list[int]:
    """The decisions on the way, at which the slow part stops."""
    return [i for i, moment in enumerate(show.moments) if begins < moment.t_s < ends - 0.05]


def pictures(show: Show, cut: Cut) -> list[Picture]:
    """Every picture of the clip in order, 25 a second; between six and ten seconds in all."""
    length = cut.ends_s - cut.begins_s
    stops = _stops(show, cut.begins_s, cut.ends_s)
    stood = _stood(show, cut.begins_s, cut.ends_s)
    slow = min(SLOW, max(LEAST_SLOW, (LONGEST_S - 0.12 - stood) / length - 1)) if length else SLOW
    made = [Picture(show.moments[cut.decision].t_s, cut.decision, Part.STILL)] * round(STILL_S * FPS)
    made += _slowly(show, cut, stops, slow)
    steps = round(length * FPS)
    made += [_at(show, cut.begins_s + i / FPS, Part.GAME) for i in range(steps)]
    end = _at(show, cut.ends_s, Part.GAME)
    made += [end] * round(END_S * FPS)
    return made + [end] * max(0, round(SHORTEST_S * FPS) - len(made))


def _slowly(show: Show, cut: Cut, stops: list[int], slow: float) -> list[Picture]:
    made: list[Picture] = []
    waiting = list(stops)
    for i in range(round((cut.ends_s - cut.begins_s) * slow * FPS)):
        t_s = cut.begins_s + i / (slow * FPS)
        while waiting and show.moments[waiting[0]].t_s <= t_s:
            stop = waiting.pop(0)
            made += [Picture(show.moments[stop].t_s, stop, Part.SLOW)] * round(STOP_S * FPS)
        made.append(_at(show, t_s, Part.SLOW))
    return made


def _at(show: Show, t_s: float, part: Part) -> Picture:
    moment = max((i for i, m in enumerate(show.moments) if m.t_s <= t_s + 1e-9), default=0)
    return Picture(t_s, moment, part)
