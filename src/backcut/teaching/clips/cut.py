"""Which seconds of a possession a clip shows, and how: a still picture, the move slowly, the move at game speed.

Still and slow first: in published trials novices learnt more from still pictures and slow animation, experts from game
speed, in soccer and with basketball students.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

from backcut.picture.show import Show
from backcut.teaching.clips.told import Told

FPS: Final = 25
#: A clip lasts so long, in seconds (common practice, no source: what is watched to its end in a chat).
SHORTEST_S, LONGEST_S = 6.0, 10.0
#: How many times longer the slow part takes: the slowest speed of the floor (own design, no source).
SLOW: Final = 3
#: How long it stands, in pictures (own design): still before it moves, longest; at a decision; after slow; at the end.
STILL, LONGEST_STILL, STOP, PAUSE, END = 38, 50, 11, 6, 10
#: Seconds before the cue, from a decision back, and after the last run, that are shown at game speed (own design).
BEFORE_S, LEAD_S, AFTER_S = 0.2, 1.0, 0.3
#: Of those at most so many (own design: the rest is needed for the slow part).
GAME_S: Final = 3.2
#: The slow part begins so long before the decision (own design).
SLOW_BEFORE_S: Final = 0.3
#: Who is told to stay is watched so long (own design).
STAYS_S: Final = 1.6
#: Decisions nearer than this to one another are one stop (own design).
APART_S: Final = 0.3


class Part(StrEnum):
    """What a picture of a clip belongs to."""

    STILL = "still"
    SLOW = "slow"
    GAME = "game"


class Lines(StrEnum):
    """Which lines of action are shown: all where it stands, those of runs where it moves slowly, none at game speed."""

    ALL = "all"
    RUNS = "runs"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture: the second of the possession, the moment that counts then, the moment whose sentence is read."""

    t_s: float
    moment: int
    spoken: int
    part: Part
    lines: Lines


@dataclass(frozen=True, slots=True)
class Cut:
    """The seconds of a possession shown slowly and at game speed, each from and to; `decision` is what it is about.

    `whole` is false where the move, or the possession that was asked for, does not fit in and goes on beyond.
    """

    slow_s: tuple[float, float]
    game_s: tuple[float, float]
    decision: int
    whole: bool


def cut(told: Told) -> Cut:
    """The part that shows what a sentence says: from the cue to the end of the run it causes, as far as there is room.

    Of a possession that is shown for itself: all of it where there is room, else the part round its decision.
    """
    show, about = told.show, told.about
    at_s, duration_s = show.moments[told.decision].t_s, show.timeline.duration_s
    runs = [r for r in show.timeline.runs if (r.step, r.beat, r.player) == (about.step, about.beat, about.player)]
    over_s = min(max((run.end_s for run in runs), default=at_s + STAYS_S), duration_s)
    begins_s = max(min(show.timeline.cues_s[about.step], at_s) - BEFORE_S, at_s - LEAD_S, 0.0)
    if told.all_of_it and duration_s <= GAME_S:
        begins_s, over_s = 0.0, duration_s
    begins_s = max(begins_s, min(over_s - GAME_S, at_s - SLOW_BEFORE_S))  # rather the end of the run than its approach
    game_s = begins_s, min(over_s + AFTER_S, begins_s + GAME_S, duration_s)
    whole = game_s == (0.0, duration_s) if told.all_of_it else over_s <= game_s[1]
    slow_s = max(begins_s, at_s - SLOW_BEFORE_S), game_s[1]
    made = Cut(slow_s, game_s, told.decision, whole)
    while len(pictures(show, made)) > LONGEST_S * FPS:
        made = replace(made, slow_s=(slow_s[0], made.slow_s[1] - 1 / FPS))
    return made


def stops(show: Show, cut: Cut) -> list[int]:
    """The decisions at which the slow part stands, in order of time."""
    found: list[int] = []
    lit = [i for i, m in enumerate(show.moments) if i == cut.decision or any(answer.lit for answer in m.answers)]
    for i in sorted(lit, key=lambda i: i != cut.decision):  # the one it is about keeps its stop
        t_s = show.moments[i].t_s
        if cut.slow_s[0] <= t_s <= cut.slow_s[1] and all(abs(show.moments[j].t_s - t_s) > APART_S for j in found):
            found.append(i)
    return sorted(found)


def pictures(show: Show, cut: Cut) -> list[Picture]:
    """Every picture of the clip in order, 25 a second; six seconds at least."""
    moved = [*_slowly(show, cut), *_played(show, cut)]
    short = max(0, round(SHORTEST_S * FPS) - STILL - len(moved))
    still = STILL + min(short, LONGEST_STILL - STILL)
    at_s = show.moments[cut.decision].t_s
    first = Picture(at_s, cut.decision, cut.decision, Part.STILL, Lines.ALL)
    return [first] * still + moved + moved[-1:] * (short - (still - STILL))


def _slowly(show: Show, cut: Cut) -> list[Picture]:
    begins_s, ends_s = cut.slow_s
    waiting = stops(show, cut)
    # Before the first decision its words are read already; its lines come with it.
    now = Picture(begins_s, _moment_at(show, begins_s), waiting[0], Part.SLOW, Lines.NONE)
    made: list[Picture] = []
    for i in range(round((ends_s - begins_s) * SLOW * FPS)):
        t_s = begins_s + i / (SLOW * FPS)
        while waiting and show.moments[waiting[0]].t_s <= t_s:
            stop = waiting.pop(0)
            now = replace(now, moment=stop, spoken=stop, lines=Lines.RUNS)
            made += [replace(now, t_s=show.moments[stop].t_s, lines=Lines.ALL)] * STOP
        made.append(replace(now, t_s=t_s))
    return made + made[-1:] * PAUSE


def _played(show: Show, cut: Cut) -> list[Picture]:
    begins_s, ends_s = cut.game_s
    times = [begins_s + i / FPS for i in range(round((ends_s - begins_s) * FPS))] + [ends_s] * END
    return [Picture(t_s, _moment_at(show, t_s), cut.decision, Part.GAME, Lines.NONE) for t_s in times]


def _moment_at(show: Show, t_s: float) -> int:
    return max((i for i, m in enumerate(show.moments) if m.t_s <= t_s + 1e-9), default=0)
