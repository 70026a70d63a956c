"""How long everything takes in ticks: runs, passes, the catcher's hold, a spoken count, the time in the lane."""

from __future__ import annotations

import math
from dataclasses import dataclass

from backcut.engine.gym import COUNT_S, HOLDS, Gym
from backcut.motion.pace import GATHER_S, LOOKED_SHARE
from backcut.offence.action import Action, Kind
from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.situation import Doing, Player, Situation
from backcut.prove.packed import MOST_TICKS
from backcut.prove.strides import Strides

#: An off-ball defender copies his man after 0.48-0.60 s, measured on professional tracking data: what is shorter no
#: defence can use. Half a spoken count.
TICK_S = 0.5
#: FIBA Art. 26 (the number from memory): nobody stays in the restricted area for more than three seconds.
LANE_LIMIT_S = 3.0

#: The clock of a cutter is two numbers in one: so often this, the ticks until the catcher has looked, and added to it
#: the ticks he needs from there to the rim. Both are counted below this only: enough for the slowest cut of any shipped
#: squad on any shipped court (3.34 s) in ticks of a quarter second.
LOOKS = 8
_RUNS = {Doing.CUTTING: Kind.CUT, Doing.OUT: Kind.EXIT, Doing.FILLING: Kind.FILL}


@dataclass(frozen=True, slots=True)
class Timing:
    """Durations in ticks, all rounded up: nobody is there before he can be.

    `hold` is how long a catcher keeps the ball, `gather` how long before a kick-out, `count` a spoken count, and
    `lane` where the wait in the lane stops being counted, one tick over the limit: the clock of who is in the lane
    runs down from what is left of his way there, and `lane` more. Without `strides` a tick is a beat:
    every run takes one, passes and holds none, and no wait is counted.
    """

    strides: Strides | None = None
    tick_s: float = TICK_S
    hold: int = 0
    gather: int = 0
    count: int = 1
    lane: int = 0

    def run(self, situation: Situation, action: Action) -> int:
        """A run from standing, answered in this situation."""
        if self.strides is None:
            return 1
        return self._ticks(
            self.strides.run_s(action.kind, action.origin, action.target, action.route, situation.holder.at)
        )

    def cut(self, situation: Situation, action: Action) -> int:
        """The clock of a cutter one tick after he was told to go, see `LOOKS`."""
        if self.strides is None:
            return 0
        run_s = self.strides.run_s(action.kind, action.origin, action.target, action.route, situation.holder.at)
        return self._cut(run_s, gone=1)

    def on(self, action: Action) -> int:
        """What a new spot adds for somebody who is told to run on while he is on the way."""
        if self.strides is None:
            return 1
        return self._ticks(self.strides.on_s(action.kind, action.origin, action.target))

    def longest(self, action: Action) -> int:
        """The longest run to this spot; also whoever turns back on the way needs no more."""
        return 1 if self.strides is None else self._ticks(self.strides.longest_s(action.kind, action.target))

    def flight(self, situation: Situation, event: Event) -> int:
        """The flight of a pass."""
        if self.strides is None or event.receiver is None:
            return 0
        return self._ticks(self.strides.pass_s(event.kind, situation.holder.at, situation.player(event.receiver).at))

    def begun(self, situation: Situation, player: Player) -> int:
        """The clock of a player when a possession begins: who is on the way sets out now."""
        if player.doing is Doing.LANE:
            return self.lane
        if player.doing not in _RUNS or self.strides is None:
            return 0
        if player.origin is None:
            return self._ticks(self.strides.throw_in_s(player.at)) - 1
        run_s = self.strides.run_s(_RUNS[player.doing], player.origin, player.at, ball=situation.holder.at)
        return self._cut(run_s, gone=0) if player.doing is Doing.CUTTING else self._ticks(run_s) - 1

    def _cut(self, run_s: float, gone: int) -> int:
        assert self.strides is not None
        reaction_s = self.strides.gym.squad.runner.reaction_s
        # As where a possession is put in time: a share of the run, which begins when he has reacted.
        looked = max(self._ticks(reaction_s + LOOKED_SHARE * (run_s - reaction_s)), 1 + gone)
        rest = max(self._ticks(run_s) - looked, 0)
        return LOOKS * min(looked - 1 - gone, LOOKS - 1) + min(rest, LOOKS - 1)

    def _ticks(self, seconds: float) -> int:
        return in_ticks(seconds, self.tick_s)


def in_ticks(seconds: float, tick_s: float = TICK_S) -> int:
    """Whole ticks, rounded up, at least one."""
    return max(1, math.ceil(seconds / tick_s - 1e-9))


def timing(book: Book, gym: Gym, *, tick_s: float = TICK_S, lane_limit_s: float = LANE_LIMIT_S) -> Timing:
    """The book's timing in a gym."""
    hold_s = HOLDS[book.values["hold count"]] * COUNT_S
    return Timing(
        Strides(gym),
        tick_s,
        hold=in_ticks(hold_s, tick_s) if hold_s else 0,
        gather=in_ticks(min(GATHER_S, hold_s), tick_s) if hold_s else 0,
        count=in_ticks(COUNT_S, tick_s),
        lane=min(in_ticks(lane_limit_s, tick_s) + 1, MOST_TICKS - LOOKS),
    )


#: A tick is a beat: the rules alone, without a clock.
BEATS = Timing()
