"""The ball gets from one side of the floor to the other."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.prove.property import Breach, Numbers, Sometimes
from backcut.prove.walk import Walk
from backcut.prove.whole import Whole

#: A folded situation as it lies on the floor: its place in the walk, and whether left and right are changed.
_Lying = tuple[int, bool]


def _looks(whole: Whole, numbers: Numbers) -> Iterator[Breach]:
    stuck: list[str] = []
    for depth in whole.asked:
        stuck = _stuck(whole.walk(depth))
        if not stuck:
            return
    if stuck:
        yield Breach(
            "The ball never gets to the other side.",
            f"Beginning with {stuck[0]}, the ball never gets to the other side of the floor.",
        )


def _stuck(walk: Walk) -> list[str]:
    """The starts after which the ball stays away from one side for ever."""
    before: dict[_Lying, list[_Lying]] = {}
    on: dict[int, list[_Lying]] = {-1: [], 1: []}
    for node, situation in enumerate(walk.situations):
        holder = situation.holder
        side = holder.at.side if holder.at in walk.book.rules.index else 0
        for flipped in (False, True):
            if side:
                on[-side if flipped else side].append((node, flipped))
            for edge in walk.edges[node]:
                before.setdefault((edge.target, flipped != edge.turn.flipped), []).append((node, flipped))
    left, right = (_from_where(before, on[side]) for side in (-1, 1))
    return [
        start.said
        for node, begun in walk.begun.items()
        for start, turn in begun
        if (node, turn.flipped) not in left or (node, turn.flipped) not in right
    ]


def _from_where(before: dict[_Lying, list[_Lying]], goal: list[_Lying]) -> set[_Lying]:
    found, waiting = set(goal), list(goal)
    while waiting:
        for lying in before.get(waiting.pop(), ()):
            if lying not in found:
                found.add(lying)
                waiting.append(lying)
    return found


PROPERTY = Sometimes(
    name="both sides",
    says="From every start the ball can get to both sides of the floor.",
    why=(
        "A defence that never has to turn is never late; a federation clinic names ball reversals among the four keys "
        "of an offence (Basketball New South Wales clinic, Building your team offence)."
    ),
    looks=_looks,
)
