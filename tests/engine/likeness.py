"""The same situation with other numbers, and decisions made comparable: mirrored, renumbered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from backcut.court.spots import Spot
from backcut.engine.possession import Decision
from backcut.offence.situation import Situation


def renumbered(situation: Situation, numbers: Mapping[int, int]) -> Situation:
    """The same situation with other numbers on the shirts."""
    players = (replace(player, number=numbers[player.number]) for player in situation.players)
    last = situation.last and replace(situation.last, player=numbers[situation.last.player])
    by_number = tuple(sorted(players, key=lambda player: player.number))
    return replace(situation, players=by_number, ball=numbers[situation.ball], last=last)


def decision_likeness(decision: Decision, mirrored: bool = False, numbers: Mapping[int, int] | None = None) -> Any:
    """A decision as plain data in order of number, seen from the other side of the floor or under other numbers."""

    def spot(there: Spot) -> Spot:
        return there.mirror if mirrored else there

    def number(player: int) -> int:
        return numbers[player] if numbers else player

    actions = sorted(
        (
            number(action.player),
            str(action.kind),
            spot(action.origin),
            spot(action.target),
            action.habit,
            str(action.route),
            tuple((claim.habit, str(claim.kind), spot(claim.target)) for claim in action.beat),
        )
        for action in decision.actions
    )
    open_ = sorted(
        (number(trouble.player), trouble.kind, str(trouble.spot and spot(trouble.spot)), str(trouble.habit))
        for trouble in decision.troubles
    )
    return actions, open_
