"""Three on one side spread again."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.offence.situation import IN_LANE
from backcut.prove.property import Breach, Eventually, Numbers, Seen

_MANY = 3  # three on one side and one on the other: common practice, no source
_MORE = 2  # so that three and two of five on a ring of six spots are no crowd


def crowded(seen: Seen) -> int:
    """The side, -1 or 1, on which three or more stand on the ring, at least two more than on the other; 0 without.

    The holder counts, and who is on the way to a spot counts there; top and inside count for no side.
    """
    if seen.situation.ended is not None:
        return 0
    index = seen.book.rules.index
    sides = [p.at.side for p in seen.situation.players if p.at in index and p.doing not in IN_LANE]
    left, right = sides.count(-1), sides.count(1)
    if max(left, right) < _MANY or abs(left - right) < _MORE:
        return 0
    return -1 if left > right else 1


def _begins(seen: Seen, numbers: Numbers) -> Iterator[int | None]:
    if crowded(seen):
        yield None


def _ends(seen: Seen, numbers: Numbers, player: int | None) -> bool:
    return not crowded(seen)


def _breach(seen: Seen, numbers: Numbers, player: int | None) -> Breach:
    side = crowded(seen)
    index = seen.book.rules.index
    there = [p.number for p in seen.situation.players if p.at in index and p.doing not in IN_LANE and p.at.side == side]
    ball = "on" if seen.situation.holder.at.side == side else "off"
    named = f"{', '.join(map(str, there[:-1]))} and {there[-1]}" if there else "Three"
    return Breach(
        f"Three stay on one side, with the ball {ball} that side.",
        f"{named} stay on one side.",
        tuple(there),
    )


PROPERTY = Eventually(
    name="three on one side",
    says="Three on one side, with at least two fewer on the other, spread again.",
    why=(
        "Three on one side are good for a pass, then they stand in one another's way. Broken where no pass spreads "
        "them; with whatever at 1, also where the same passes can go round without it. Common practice, no source."
    ),
    numbers={"whatever": 0.0},
    begins=_begins,
    ends=_ends,
    breach=_breach,
)
