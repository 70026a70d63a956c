"""An invented possession for the tests of the page: five-out, two passes, one denial. No real team plays it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from backcut.court.courts import court
from backcut.court.spots import Spot
from backcut.motion.timeline import Flight, Held, Run, Timeline, Track
from backcut.picture.show import (
    Answer,
    Arrow,
    ArrowKind,
    Beaten,
    Moment,
    OpenSpot,
    Place,
    Sentence,
    Show,
    Stance,
)

SPOTS: dict[Spot, Place] = {
    Spot.LC: (-6.95, -0.3),
    Spot.LW: (-5.71, 4.23),
    Spot.T: (0.0, 7.1),
    Spot.RW: (5.71, 4.23),
    Spot.RC: (6.95, -0.3),
    Spot.R: (0.3, 0.9),
}

SENTENCES = (
    Sentence(
        "A",
        "Back",
        "When I am one pass away and my defender denies me, I back cut at once.",
        "My defender has to turn first. I am already running.",
        "Fights for the ball, shut out for two seconds.",
    ),
    Sentence(
        "B",
        "Cut",
        "When I pass to the next spot, I cut all the way to the rim.",
        "The pass is the moment my defender looks away.",
        "Passes and watches.",
    ),
    Sentence(
        "C",
        "Fill",
        "When the next spot toward the ball is empty, I fill it once the catcher has looked.",
        "The passer needs somebody one pass away.",
        "Waits until the ball calls.",
    ),
    Sentence(
        "D",
        "Out",
        "When my cut is over, I come out to the first open spot.",
        "The lane must be free for the next cutter.",
        "Stays under the rim.",
    ),
    Sentence("E", "Wide", "Otherwise I hold, wide, feet set.", "Wide players keep the lane empty.", ""),
)


def track(*knots: tuple[float, float, float]) -> Track:
    """A track through knots (t, x, y)."""
    table = np.array(knots, dtype=float)
    return Track(table[:, 0], table[:, 1:])


def bend(a: Place, b: Place, by: float, count: int = 9) -> tuple[Place, ...]:
    """An arc from a to b that swings `by` metres to the left of the way."""
    (ax, ay), (bx, by_) = a, b
    nx, ny = -(by_ - ay), bx - ax
    far = math.hypot(nx, ny) or 1.0
    out = []
    for i in range(count):
        s = i / (count - 1)
        lift = 4 * s * (1 - s) * by / far
        out.append((ax + (bx - ax) * s + nx * lift, ay + (by_ - ay) * s + ny * lift))
    return tuple(out)


def over(start_s: float, end_s: float, path: Sequence[Place]) -> list[tuple[float, float, float]]:
    """Knots along a path, evenly in time."""
    last = len(path) - 1
    return [(start_s + (end_s - start_s) * i / last, x, y) for i, (x, y) in enumerate(path)]


def facing(defender: Track, target: Track) -> Track:
    """Headings that look from one track to another."""
    times = np.linspace(0.0, 6.0, 61)
    look = np.array([target.at(t)[:2] - defender.at(t)[:2] for t in times])
    return Track(times, np.degrees(np.unwrap(np.arctan2(look[:, 0], look[:, 1])))[:, None])


CUT_1 = bend(SPOTS[Spot.T], (0.0, 1.1), 0.9)
OUT_1 = bend((0.0, 1.1), SPOTS[Spot.RC], 0.5)
FILL_2 = bend(SPOTS[Spot.RW], (2.28, 6.72), -0.5)
BACK_2 = bend((2.28, 6.72), (0.2, 1.8), 0.7)
FILL_4 = bend(SPOTS[Spot.RC], SPOTS[Spot.RW], 0.5)
TOP_4 = bend(SPOTS[Spot.RW], (0.0, 7.1), -1.6)


def timeline() -> Timeline:
    """Six seconds: 1 passes to 3 and cuts, 2 fills the top, X2 denies, 2 back cuts, 4 goes on to the top."""
    players = {
        1: track((0, *SPOTS[Spot.T]), *over(0.7, 2.2, CUT_1), *over(2.5, 5.0, OUT_1)[1:], (6, *SPOTS[Spot.RC])),
        2: track((0, *SPOTS[Spot.RW]), *over(1.2, 2.7, FILL_2), *over(2.9, 4.4, BACK_2)[1:], (6, 0.2, 1.8)),
        3: track((0, *SPOTS[Spot.LW]), (6, *SPOTS[Spot.LW])),
        4: track((0, *SPOTS[Spot.RC]), *over(1.6, 2.8, FILL_4), *over(3.1, 5.2, TOP_4)[1:], (6, 0.0, 7.1)),
        5: track((0, *SPOTS[Spot.LC]), (6, *SPOTS[Spot.LC])),
    }
    ball = Track(
        np.array([0, 0.6, 1.3, 4.0, 4.6, 6.0]),
        np.array([[0, 7.1, 1.5], [0, 7.1, 1.5], [-5.71, 4.23, 1.3], [-5.71, 4.23, 1.3], [0.2, 1.8, 2], [0.2, 1.8, 2]]),
    )
    defenders = {}
    for number, man in players.items():
        times = np.unique(np.concatenate([man.t_s, ball.t_s, np.arange(0, 6.01, 0.4)]))
        share = np.array([0.72, 0.1, 0.0])
        places = [man.at(max(t - 0.35, 0)) * share[0] + ball.at(t)[:2] * share[1] for t in times]
        if number == 2:
            for i, t in enumerate(times):
                deny = min(max((t - 1.6) / 1.0, 0), 1) * min(max((3.4 - t) / 0.8, 0), 1)
                places[i] = places[i] * (1 - deny) + np.array([1.1, 7.06]) * deny
        if number == 3:
            places = [np.array([-4.88, 3.14]) for _ in times]
        defenders[number] = Track(times, np.array(places))
    return Timeline(
        duration_s=6.0,
        players=players,
        defenders=defenders,
        facing_deg={n: facing(d, ball if n == 3 else players[n]) for n, d in defenders.items()},
        ball=ball,
        held=(Held(1, 0.0, 0.6), Held(3, 1.3, 4.0), Held(2, 4.6, 6.0)),
        runs=(Run(2, "back cut", 0, 1, 0, 2.9, 4.4, np.array(BACK_2)),),
        flights=(
            Flight(1, 3, "pass", 0, 0.6, 1.3, np.array([SPOTS[Spot.T], SPOTS[Spot.LW]])),
            Flight(3, 2, "pass", 1, 4.0, 4.6, np.array([SPOTS[Spot.LW], (0.2, 1.8)])),
        ),
    )


def arrow(
    kind: ArrowKind,
    player: int,
    path: Sequence[Place],
    letter: str | None = None,
    label: str = "",
    lit: bool = False,
    to: int | None = None,
) -> Arrow:
    """An arrow, written short."""
    return Arrow(kind, player, tuple(path), letter, label, lit, to)


def moments() -> tuple[Moment, ...]:
    """Six decisions."""
    hold5 = Answer(5, "hold", "E", "holds, left corner", moves=False)
    has3 = Answer(3, "have the ball", None, "has the ball, left wing", moves=False)
    return (
        Moment(
            0.0,
            None,
            "1 has the ball at the top. Five players, five spots, nobody in the lane.",
            (
                Answer(1, "have the ball", None, "has the ball, top", moves=False),
                *(
                    Answer(n, "hold", "E", f"holds, {s}", moves=False)
                    for n, s in ((2, "right wing"), (3, "left wing"), (4, "right corner"), (5, "left corner"))
                ),
            ),
            (arrow(ArrowKind.PASS, 1, (SPOTS[Spot.T], SPOTS[Spot.LW]), to=3),),
            {1: Stance.ON_BALL, 4: Stance.SAGS, 5: Stance.SAGS},
        ),
        Moment(
            0.7,
            "1 passes to 3",
            "1 passed to the next spot, so 1 cuts to the rim.",
            (
                Answer(
                    1,
                    "cut",
                    "B",
                    "cuts to the rim",
                    lit=True,
                    beat=(Beaten("E", "Wide", "", "It speaks only when nothing else does"),),
                    note="1 cuts to the rim. The left wing is the next spot.",
                ),
                Answer(2, "hold", "E", "holds, right wing", moves=False),
                has3,
                Answer(4, "hold", "E", "holds, right corner", moves=False),
                hold5,
            ),
            (arrow(ArrowKind.CUT, 1, CUT_1, "B", "cut", True),),
            {1: Stance.JUMPED, 4: Stance.SAGS, 5: Stance.SAGS},
        ),
        Moment(
            1.4,
            None,
            "The top is empty and the passer has looked, so 2 fills the top and 4 fills the right wing.",
            (
                Answer(1, "cut", "B", "cuts to the rim"),
                Answer(2, "fill", "C", "fills the top", lit=True),
                has3,
                Answer(4, "fill", "C", "fills the right wing", lit=True, beat=(Beaten("E", "Wide"),)),
                hold5,
            ),
            (
                arrow(ArrowKind.FILL, 2, bend(SPOTS[Spot.RW], SPOTS[Spot.T], -0.7), "C", "fill the top", True),
                arrow(ArrowKind.FILL, 4, FILL_4, "C", "fill the wing", True),
                arrow(ArrowKind.CUT, 1, CUT_1[5:], "B", "cut"),
            ),
            {3: Stance.ON_BALL, 4: Stance.SAGS, 5: Stance.SAGS},
            (OpenSpot(Spot.T, True),),
        ),
        Moment(
            2.8,
            "X2 denies 2",
            "X2 denies 2 while 2 fills the top, so 2 back cuts and 4 goes on to the top. 3 can pass to the rim.",
            (
                Answer(1, "come out", "D", "comes out to the right corner"),
                Answer(
                    2,
                    "back cut",
                    "A",
                    "back cuts",
                    lit=True,
                    beat=(
                        Beaten("C", "Fill", "which wanted 2 at the top", "A stands above C"),
                        Beaten("E", "Wide", "", "It speaks only when nothing else does"),
                    ),
                    note="2 cuts to the rim. The top is one pass from 3, and X2 is 0.4\u00a0m past the mark.",
                ),
                has3,
                Answer(4, "fill", "C", "fills the top"),
                hold5,
            ),
            (
                arrow(ArrowKind.CUT, 2, BACK_2, "A", "back cut", True),
                arrow(ArrowKind.FILL, 4, TOP_4, "C", "fill the top"),
                arrow(ArrowKind.FILL, 1, OUT_1, "D", "out"),
                arrow(ArrowKind.PASS, 3, (SPOTS[Spot.LW], (0.2, 1.8))),
                arrow(ArrowKind.SHUT, 3, (SPOTS[Spot.LW], (2.28, 6.72)), to=2),
            ),
            {2: Stance.DENIES, 3: Stance.ON_BALL, 4: Stance.HELPS, 5: Stance.SAGS},
            (OpenSpot(Spot.T, True), OpenSpot(Spot.RC, False)),
        ),
        Moment(
            4.0,
            "3 passes to 2",
            "2 is open behind X2. 3 passes, and 2 finishes at the rim.",
            (
                Answer(1, "come out", "D", "comes out to the right corner"),
                Answer(2, "back cut", "A", "back cuts"),
                has3,
                Answer(4, "fill", "C", "fills the top"),
                hold5,
            ),
            (arrow(ArrowKind.PASS, 3, (SPOTS[Spot.LW], (0.2, 1.8)), to=2),),
            {3: Stance.ON_BALL},
            (OpenSpot(Spot.RW, False),),
        ),
    )


def demo() -> Show:
    """The whole show."""
    return Show(
        title="School team",
        subtitle="Five-out. Five sentences, the first one that fits wins.",
        court=court("fiba"),
        spots=SPOTS,
        sentences=SENTENCES,
        moments=moments(),
        timeline=timeline(),
        notes=("An invented possession.",),
        denial_word="denied from 6.75 m",
    )


def twenty_passes() -> Show:
    """A long show for the size and the time line: the demo ten times over, two passes each, all five decisions."""
    once = timeline()
    times = 10

    def again(track_: Track) -> Track:
        t_s = np.concatenate([track_.t_s + 6.01 * i for i in range(times)])
        return Track(t_s, np.concatenate([track_.place_m] * times))

    def later(moment: Moment, i: int) -> Moment:
        return replace(moment, t_s=moment.t_s + 6.01 * i)

    line = replace(
        once,
        duration_s=6.01 * times,
        players={n: again(t) for n, t in once.players.items()},
        defenders={n: again(t) for n, t in once.defenders.items()},
        facing_deg={n: again(t) for n, t in once.facing_deg.items()},
        ball=again(once.ball),
        held=tuple(
            replace(h, start_s=h.start_s + 6.01 * i, end_s=h.end_s + 6.01 * i) for i in range(times) for h in once.held
        ),
        flights=tuple(
            replace(f, start_s=f.start_s + 6.01 * i, end_s=f.end_s + 6.01 * i)
            for i in range(times)
            for f in once.flights
        ),
    )
    return replace(demo(), timeline=line, moments=tuple(later(m, i) for i in range(times) for m in moments()))
