"""How often everybody decides, and how long anybody waits."""

from __future__ import annotations

from dataclasses import dataclass

#: Nobody stands longer than this (common practice, no source; a federation manual bars a minute for a turn of five
#: seconds).
MOST_WAIT_S = 40.0
#: Back to the spot, ball back to the passer: estimate.
RESET_S = 5.0


def repetitions(block_s: float, decision_s: float, roles: float, groups: int, players: int) -> float:
    """Decisions of one habit for each player in a block.

    `decision_s` is the time from one decision to the next in a group, `roles` how many in it decide each time, `groups`
    how many are at work at once. Common practice, no source: block / seconds a decision x roles x groups / players.
    """
    return block_s / decision_s * roles * groups / players


@dataclass(frozen=True, slots=True)
class Lines:
    """Players in lines: how many stand in each; `share` lines take turns at one place, every `turn_s` one begins.

    `size` of a line are at work in its turn, and then everybody moves one spot round.
    """

    counts: tuple[int, ...]
    size: int
    share: int
    turn_s: float

    @property
    def players(self) -> int:
        """How many there are in all."""
        return sum(self.counts)

    @property
    def at_work(self) -> int:
        """How many groups are at work at once: lines that share a place take turns."""
        return -(-len(self.counts) // self.share)

    @property
    def wait_s(self) -> float:
        """How long whoever waits longest stands before the next turn."""
        return (max(self.counts) - self.size) * self.share * self.turn_s

    def each(self, block_s: float, roles: float = 1.0) -> float:
        """Decisions for each player in a block of so many seconds."""
        return repetitions(block_s, self.turn_s, roles, self.at_work, self.players)


def lines(players: int, size: int, *, places: int, balls: int, run_s: float) -> Lines:
    """Players put into lines at so many `places` (baskets, or spaces where none is needed), each line with a ball.

    Two lines share a place, one from each side, where there are players and balls for both: while one goes back to its
    spots the other runs. Nobody is left out. Raises: ValueError where there are fewer players than `size`, no place or
    no ball.
    """
    if players < size or places < 1 or balls < 1:
        raise ValueError(f"{players} players, {places} places and {balls} balls make no line of {size}.")
    most = min(players // size, balls, 2 * places)
    used = min(places, most)
    share = -(-most // used)
    whole = run_s + RESET_S
    turn = whole if share == 1 else max(run_s, whole / share)
    each, more = divmod(players, most)
    return Lines(tuple(each + (i < more) for i in range(most)), size, share, turn)
