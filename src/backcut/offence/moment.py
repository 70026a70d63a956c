"""One moment as the sentences read it: the facts about ring, ball and players that a "when" asks for."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.event import EventKind
from backcut.offence.phrase import Answer
from backcut.offence.rules import CORNERS, Rules
from backcut.offence.situation import IN_LANE, Doing, Guard, Last, Player, Situation
from backcut.offence.ways_out import ways_out

#: Counts after the catch that "after a count of two" waits for.
COUNT_OF_TWO = 2

_BLOCKS = {-1: (Spot.LB, Spot.LM), 1: (Spot.RB, Spot.RM)}


class Moment:
    """A situation with what can be read off it once for all five players.

    `where` holds, per ring spot, the player who stands there or is going there; `ball` is the holder's place on the
    ring, -1 while the ball is inside.
    """

    __slots__ = (
        *("rules", "situation", "where", "lane", "cutting", "holder"),
        *("ball", "out_from", "fresh", "pending", "_exits"),
    )

    def __init__(self, rules: Rules, situation: Situation) -> None:
        self.rules = rules
        self.situation = situation
        index = rules.index
        where: list[Player | None] = [None] * len(rules.ring)
        lane: list[Player] = []
        self.cutting = False
        for player in situation.players:
            if player.number == situation.ball:
                self.holder = player
            if player.doing is Doing.LANE:
                lane.append(player)
            elif player.doing is Doing.CUTTING:
                self.cutting = True
            elif (place := index.get(player.at)) is not None:
                where[place] = player
        self.where = where
        self.lane = lane
        self.ball = -1 if self.holder.doing in IN_LANE else index.get(self.holder.at, -1)
        last = situation.last
        self.fresh = last if last is not None and last.fresh else None
        if self.fresh is not None and (aim := self.fresh.target) is not None and where[index[aim]] is None:
            # A dribble takes the empty spot it goes to.
            where[index[aim]] = self.holder
        # While the ball is inside, cutters come out as seen from where it went in.
        self.out_from = self._came_in_from(last) if self.ball < 0 and last is not None else self.ball
        self.pending = (
            self.ball >= 0
            and "fill" in rules.names
            and None in where
            and any(self.could_fill(player) and not player.forgets for player in situation.players)
        )
        self._exits: dict[int, int | None] | None = None

    def _came_in_from(self, last: Last) -> int:
        """The place from which the ball went in; of a pass out of the lane, the place the passer had come from."""
        index = self.rules.index
        if (place := index.get(last.origin)) is not None:
            return place
        came = self.situation.player(last.player).origin
        return -1 if came is None else index.get(came, -1)

    # ── places ──────────────────────────────────────────────────────────

    def place(self, player: Player) -> int | None:
        """The player's place on the ring, None when inside, in the lane or cutting."""
        if player.doing is Doing.LANE or player.doing is Doing.CUTTING:
            return None
        return self.rules.index.get(player.at)

    def steps_from_ball(self, player: Player) -> int | None:
        """How many ring spots lie between: 1 is one pass away; None when either is not on the ring."""
        place = self.place(player)
        return None if place is None or self.ball < 0 else abs(place - self.ball)

    def one_pass_away(self, player: Player) -> bool:
        """Whether the player stands on the very next spot of the ring from the ball."""
        return self.steps_from_ball(player) == 1

    def behind(self, place: int, side: int) -> Player | None:
        """The next player on the ring from `place` toward `side`, over empty spots."""
        if side == 0:
            return None
        place += side
        while 0 <= place < len(self.where):
            if (player := self.where[place]) is not None:
                return player
            place += side
        return None

    # ── what just happened ──────────────────────────────────────────────

    def just_passed(self, player: Player, kind: EventKind) -> bool:
        """Whether this player threw the pass of this kind that nobody has answered yet."""
        return self.fresh is not None and self.fresh.player == player.number and self.fresh.kind is kind

    def dribbled_at(self) -> Spot | None:
        """The spot the ball is being dribbled to and nobody has answered yet."""
        return self.fresh.target if self.fresh is not None and self.fresh.kind is EventKind.DRIBBLE else None

    def both_denied(self) -> bool:
        """Whether a player stands on either side of the ball, one pass away, and both are denied."""
        if self.ball < 0:
            return False
        near = [self.where[i] for i in (self.ball - 1, self.ball + 1) if 0 <= i < len(self.where)]
        denied = [player for player in near if player is not None and player.guard is Guard.DENIES]
        return len(denied) == 2

    def block_taken(self) -> bool:
        """Whether an inside player holds the block or mid post on the ball's side."""
        if self.ball < 0:
            return False
        blocks = _BLOCKS.get(self.rules.ring[self.ball].side)
        return blocks is not None and any(
            player.at in blocks and player.doing is Doing.STANDING for player in self.situation.players
        )

    # ── filling ─────────────────────────────────────────────────────────

    def next_toward_ball(self, player: Player) -> int | None:
        """The neighbouring place on the ball's side; None for the holder and for players off the ring."""
        place = self.place(player)
        if place is None or self.ball < 0 or place == self.ball:
            return None
        return place + 1 if place < self.ball else place - 1

    def could_fill(self, player: Player) -> bool:
        """Whether the next spot toward the ball is empty for this player, whatever the time."""
        ahead = self.next_toward_ball(player)
        if ahead is None or self.where[ahead] is not None:
            return False
        if self.rules.values["who fills"] == "nearest only" and abs(ahead - self.ball) != 1:
            return False
        never_corner = self.rules.never_corner
        if never_corner and player.at in CORNERS:
            # Who never fills a corner must find another spot: the player in the corner stays there.
            return not any(
                cutter.number in never_corner and cutter.doing in IN_LANE for cutter in self.situation.players
            )
        return True

    def time_to_fill(self) -> bool:
        """Whether the book's time for filling has come."""
        when = self.rules.values["when to fill"]
        if when == "looked":
            return not self.cutting
        if when == "count of two":
            return self.situation.count >= COUNT_OF_TWO
        return True

    def may_stand(self, player: Player, spot: Spot) -> bool:
        """Whether the book lets this number stand there."""
        return spot not in CORNERS or player.number not in self.rules.never_corner

    # ── coming out ──────────────────────────────────────────────────────

    def way_out(self, player: Player) -> int | None:
        """The place where a cutter comes out; None where the book's exit names none. May be a taken place."""
        if self._exits is None:
            self._exits = ways_out(self.rules, self.where, self.out_from, self.lane)
        return self._exits[player.number]

    def may_come_out(self, player: Player) -> bool:
        """Whether the time has come for this cutter: nobody still wants to move up, and the ball is on the ring."""
        return (
            player.doing is Doing.LANE
            and player.number != self.situation.ball
            and self.out_from >= 0
            and self.fresh is None
            and not self.pending
        )

    def comes_out(self, player: Player, phrase: str) -> Answer | None:
        """The way out as this phrase's answer, when it is this phrase's to say and the exit names a place."""
        if player.doing is not Doing.LANE or player.cause is None or self.rules.owner.get(player.cause) != phrase:
            return None
        if not self.may_come_out(player) or (place := self.way_out(player)) is None:
            return None
        return Answer(Kind.EXIT, self.rules.ring[place])
