"""Every player has an answer."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.offence.situation import Doing
from backcut.prove.property import Always, Breach, Numbers, Seen
from backcut.prove.who import said_by, way_out_of, who


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    for trouble in seen.decision.troubles:
        if trouble.kind == "silent":
            cause, habits = _cause(seen, trouble.player)
            yield Breach(cause, trouble.text, (trouble.player,), habits)


def _cause(seen: Seen, number: int) -> tuple[str, tuple[int, ...]]:
    player = seen.situation.player(number)
    claims = next(action.beat for action in seen.decision.actions if action.player == number)
    habits = tuple(claim.habit for claim in claims)
    if player.doing is not Doing.LANE:
        return f"No sentence says what {who(seen.book, seen.situation, player)} does.", habits
    owner = way_out_of(seen.book, player)
    if owner is None:
        return "No sentence says where a player in the lane comes out.", habits
    return f"{said_by(seen.book, owner)} names no spot to come out to.", (owner,)


PROPERTY = Always(
    name="an answer for everybody",
    says="Every player has an answer, and to hold is one.",
    why="A player whom no sentence covers stops and looks at the bench. Common practice, no source.",
    of_holes=True,
    looks=_looks,
)
