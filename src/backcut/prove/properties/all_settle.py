"""When the ball waits, the players come to rest."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.prove.property import Breach, Eventually, Numbers, Seen


def _begins(seen: Seen, numbers: Numbers) -> Iterator[int | None]:
    if not seen.settled and seen.situation.ended is None:
        yield None


def _ends(seen: Seen, numbers: Numbers, player: int | None) -> bool:
    return seen.settled


def _breach(seen: Seen, numbers: Numbers, player: int | None) -> Breach:
    said = "The players never come to rest: two sentences send one player back and forth."
    habits = {action.habit for action in seen.decision.actions if action.moves and action.habit is not None}
    return Breach(said, said, habits=tuple(sorted(habits)))


PROPERTY = Eventually(
    name="everybody settles",
    says="Once the ball waits, everybody comes to rest.",
    why="Players who are sent back and forth are guarded by standing still. Common practice, no source.",
    begins=_begins,
    ends=_ends,
    breach=_breach,
)
