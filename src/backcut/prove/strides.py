"""How long runs and passes take in a book's gym, in seconds, each pair of spots computed once.

Every run begins standing on one spot and ends standing on another, with the runner's reaction before it, past a
defender who stands as he always does. Cuts end at the rim's spot. Left out are the room team-mates leave one another,
the side step of who finds a spot still held, a signal before a back cut, and the look at the rim before coming out.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

import numpy as np

from backcut.court.spots import Spot
from backcut.engine.gym import Gym
from backcut.motion.ball import throw
from backcut.motion.defender import defender_place
from backcut.motion.floor import Floor
from backcut.motion.pace import effort_of
from backcut.motion.path import Floats, Place, lengths_m
from backcut.motion.routes import ELBOW_M, Scene, path_of
from backcut.motion.run import quickest_run
from backcut.offence.action import Kind, Route
from backcut.offence.event import EventKind
from backcut.offence.situation import Guard

#: Routes whose shape depends on where the ball is: they pass a defender, who looks at it, or begin with a step to it.
LOOKS_AT_BALL = frozenset({Route.FRONT, Route.REAR, Route.BEHIND_DEFENDER, Route.BASELINE, Route.FAR_SIDE})
SAME_M = 0.05  # estimate: nearer than this to where he is, nobody runs
_ALONG_ARC = frozenset({Kind.DRIBBLE, Kind.HAND_OFF})


class Strides:
    """The seconds of every run and pass in one gym.

    Where the spots lie evenly on both sides, a run and its mirror image take the same time to the last bit.
    """

    def __init__(self, gym: Gym) -> None:
        self.gym = gym
        court = gym.court
        self._places: dict[Spot, Place] = {spot: (float(x), float(y)) for spot, (x, y) in gym.placing.spots.items()}
        self._floor = Floor(court.half_width_m, court.basket_from_baseline.m, court.mid_court_y_m)
        self._even = all(
            abs(x + self._places[spot.mirror][0]) < 1e-9 and abs(y - self._places[spot.mirror][1]) < 1e-9
            for spot, (x, y) in self._places.items()
        )
        self._run: Callable[[Kind, Spot, Spot, Route, Spot], float] = cache(self._run_s)
        self._on: Callable[[Kind, Spot, Spot], float] = cache(self._on_s)
        self._longest: Callable[[Kind, Spot], float] = cache(self._longest_s)

    def run_s(self, kind: Kind, origin: Spot, target: Spot, route: Route = Route.PLAIN, ball: Spot = Spot.T) -> float:
        """From the cue to standing at `target`: reaction and run, with the ball at the spot `ball`.

        Only cuts look at the ball; for other routes, and where no ball is named, it is at the top, a neutral spot.
        """
        if route is Route.PLAIN and kind in _ALONG_ARC:
            route = Route.ALONG_ARC
        if route not in LOOKS_AT_BALL:
            ball = Spot.T
        sides = (origin.side, ball.side, target.side)
        if self._even and next((side for side in sides if side), -1) > 0:
            origin, target, ball = origin.mirror, target.mirror, ball.mirror
        return self._run(kind, origin, target, route, ball)

    def on_s(self, kind: Kind, origin: Spot, target: Spot) -> float:
        """What the way from `origin` to `target` adds to a run that goes on through `origin` without stopping there.

        Measured on the straight: twice the way at one go, less the way once.
        """
        return self._on(kind, origin, target)

    def longest_s(self, kind: Kind, target: Spot) -> float:
        """The longest straight run of this kind to `target` from any spot of the ring or the rim, reaction included."""
        return self._longest(kind, target)

    def pass_s(self, kind: EventKind, origin: Spot, target: Spot) -> float:
        """The flight of a pass of this kind from hand to hand."""
        return throw(kind, self._places[origin], self._places[target], self.gym.squad).flight_s

    def throw_in_s(self, spot: Spot) -> float:
        """From behind the nearer sideline straight to `spot`: who has thrown the ball in comes on."""
        x, y = self._places[spot]
        line = self._floor.half_width_m
        return self._timed(Kind.EXIT, np.array([(line if x > 0 else -line, y), (x, y)]))

    def _run_s(self, kind: Kind, origin: Spot, target: Spot, route: Route, ball: Spot) -> float:
        here, there, ball_m = self._places[origin], self._places[target], self._places[ball]
        defender_m = defender_place(Guard.PLAIN, here, ball_m)
        scene = Scene(ball_m, defender_m, self._floor, self._places.get(Spot.RE, ELBOW_M))
        return self._timed(kind, path_of(route, here, there, scene))

    def _on_s(self, kind: Kind, origin: Spot, target: Spot) -> float:
        far = float(np.hypot(*np.subtract(self._places[target], self._places[origin])))
        once, twice = (np.array([(0.0, 0.0), (times * far, 0.0)]) for times in (1, 2))
        return self._timed(kind, twice) - self._timed(kind, once)

    def _longest_s(self, kind: Kind, target: Spot) -> float:
        return max(self.run_s(kind, spot, target) for spot in (*self.gym.placing.ring, Spot.R))

    def _timed(self, kind: Kind, path: Floats) -> float:
        runner = self.gym.squad.runner
        if lengths_m(path)[-1] < SAME_M:
            return runner.reaction_s
        run = quickest_run(path, runner.at_effort(effort_of(kind)))
        return run.end_s - run.start_s + runner.reaction_s
