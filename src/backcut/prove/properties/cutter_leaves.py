"""The cutter leaves the lane."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.offence.situation import IN_LANE
from backcut.prove.property import Breach, Eventually, Numbers, Seen
from backcut.prove.who import who


def _begins(seen: Seen, numbers: Numbers) -> Iterator[int | None]:
    if seen.situation.ended is not None:
        return
    for player in seen.situation.players:
        if player.doing in IN_LANE and player.number != seen.situation.ball:
            yield player.number


def _ends(seen: Seen, numbers: Numbers, player: int | None) -> bool:
    # After the end of a possession everybody goes for the rebound.
    if player is None or seen.situation.ended is not None or player == seen.situation.ball:
        return True
    return seen.situation.player(player).doing not in IN_LANE


def _breach(seen: Seen, numbers: Numbers, player: int | None) -> Breach:
    assert player is not None
    habit = next(action.habit for action in seen.decision.actions if action.player == player)
    return Breach(
        f"{who(seen.book, seen.situation, seen.situation.player(player)).capitalize()} never leaves the lane.",
        f"{player} goes into the lane and does not come out.",
        (player,),
        () if habit is None else (habit,),
    )


PROPERTY = Eventually(
    name="the cutter leaves",
    says="Who cuts into the lane gets the ball there or leaves it.",
    why=(
        "The lane belongs to the next cutter. Broken where no pass brings the cutter out; with whatever at 1, also "
        "where the same passes can go round without it. Common practice, no source."
    ),
    numbers={"whatever": 0.0},
    begins=_begins,
    ends=_ends,
    breach=_breach,
)
