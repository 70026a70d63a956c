"""Nobody is sent where somebody stands or is going."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.court.spots import Spot
from backcut.engine.possession import Trouble
from backcut.offence.situation import IN_LANE, Doing, Player
from backcut.prove.property import Always, Breach, Numbers, Seen
from backcut.prove.who import said_by, who


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    if not seen.decision.troubles:
        return
    sent: dict[Spot, list[Trouble]] = {}
    for trouble in seen.decision.troubles:
        if trouble.kind == "clash" and trouble.spot is not None:
            sent.setdefault(trouble.spot, []).append(trouble)
    held = {trouble.player for troubles in sent.values() for trouble in troubles}
    for spot, troubles in sent.items():
        if len(troubles) == 1 and _waits_there(seen, spot, held - {troubles[0].player}):
            continue  # the spot would be free if another clash did not hold the one who stands there
        yield Breach(
            _cause(seen, troubles),
            troubles[0].text,
            tuple(trouble.player for trouble in troubles),
            tuple(dict.fromkeys(trouble.habit for trouble in troubles if trouble.habit is not None)),
            spot,
        )


def _waits_there(seen: Seen, spot: Spot, held: set[int]) -> bool:
    return any(p.number in held and p.at is spot and p.doing not in IN_LANE for p in seen.situation.players)


def _cause(seen: Seen, troubles: list[Trouble]) -> str:
    book, situation = seen.book, seen.situation
    told = sorted((said_by(book, t.habit), _name(seen, situation.player(t.player))) for t in troubles)
    (first, one), (last, other) = told[0], told[-1]
    if len(told) == 1:
        return f"{first} sends {one} to a spot that is taken."
    if first != last:
        return f"{first} sends {one} and {last} sends {other} to one spot."
    if one != other:
        return f"{first} sends {one} and {other} to one spot."
    two = f"two players{one.removeprefix('a player')}" if one.startswith("a player") else f"{one} and another like that"
    return f"{first} sends {two} to one spot."


def _name(seen: Seen, player: Player) -> str:
    # However one came into the lane, the way out is one sentence's to say: one cause.
    return "a player in the lane" if player.doing is Doing.LANE else who(seen.book, seen.situation, player)


PROPERTY = Always(
    name="one to a spot",
    says="Nobody is sent where somebody stands or is going.",
    why="Two on one spot are guarded by one defender, and a spot elsewhere stays empty. Common practice, no source.",
    of_holes=True,
    looks=_looks,
)
