"""Somebody stands above the free-throw line when it counts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.offence.action import Action, Kind
from backcut.offence.event import EventKind
from backcut.offence.inside import height
from backcut.offence.situation import IN_LANE
from backcut.prove.property import Always, Breach, Numbers, Seen

#: Slots and top lie above the free-throw line, wings beside it (common practice, no source).
_BACK = height(Spot.LS)


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    situation = seen.situation
    if situation.ended in (EventKind.SHOT, EventKind.LAY_UP):
        if not any(_gets_back(seen, action) for action in _told(seen)):
            what = "a shot" if situation.ended is EventKind.SHOT else "a lay-up"
            yield Breach(
                f"Nobody gets back when {what} goes up.",
                f"{situation.ball} ends it with {what}, and nobody else is above the free-throw line or told to go.",
                (situation.ball,),
                tuple({a.habit: None for a in seen.decision.actions if a.habit is not None}),
            )
        return
    last = situation.last
    kicked = last is not None and last.fresh and last.kind is EventKind.KICK_OUT
    if not (kicked or seen.settled) or situation.holder.at not in seen.book.rules.index:
        return
    if any(height(player.at) >= _BACK for player in situation.players if player.doing not in IN_LANE):
        return
    if any(action.moves and height(action.target) >= _BACK for action in _told(seen)):
        return
    if kicked:
        yield Breach(
            "Nobody is back at a kick-out, and nobody is told to go.",
            f"The ball is kicked out to {situation.ball}, and nobody is above the free-throw line or told to go.",
            (situation.ball,),
        )
    else:
        yield Breach("Nobody is back when all stand.", "All stand, and nobody is above the free-throw line.")


def _told(seen: Seen) -> tuple[Action, ...]:
    """What the book tells everybody. Who forgets was told too: that is no mistake of the book."""
    forgot = [replace(player, forgets=False) for player in seen.situation.players if player.forgets]
    return (decide(seen.book, seen.situation.with_players(*forgot)) if forgot else seen.decision).actions


def _gets_back(seen: Seen, action: Action) -> bool:
    """Whether this is somebody other than the shooter who stays or goes above the free-throw line."""
    in_lane = seen.situation.player(action.player).doing in IN_LANE
    back = action.kind is not Kind.REBOUND and height(action.target) >= _BACK
    return back and action.player != seen.situation.ball and (not in_lane or action.kind is Kind.GET_BACK)


PROPERTY = Always(
    name="somebody back",
    says="Somebody is above the free-throw line when all stand, at a kick-out, and when a shot goes up.",
    why=(
        "Somebody must be between their fast break and our basket, and the ball needs a place to swing through. "
        "Who is told to go there counts at a kick-out and at a shot. Common practice, no source."
    ),
    looks=_looks,
)
