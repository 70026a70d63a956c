"""The rules of pass and cut, read a second time: slow, plain, and without a look at how the project plays them.

A settled situation is who stands where on the ring and the number of the player with the ball; one move is played until
all have settled again. All rules are common practice, no source; what coaches disagree about is named in CHOICES.
"""

from __future__ import annotations

from collections.abc import Mapping

from .everywhere import ALL_MOVES, WITH_PAIRS, after_move, beside_the_ball, explore, possible_moves, reach
from .floor import RIM, Where, line_up, mirror_spot
from .moves import CHOICES, Choices, Did, Outcome, after_denial, after_denials, after_dribble, after_pass

__all__ = [
    "ALL_MOVES",
    "CHOICES",
    "RIM",
    "WITH_PAIRS",
    "Choices",
    "Did",
    "Outcome",
    "Where",
    "after_denial",
    "after_denials",
    "after_dribble",
    "after_move",
    "after_pass",
    "beside_the_ball",
    "explore",
    "line_up",
    "mirror",
    "mirror_spot",
    "possible_moves",
    "reach",
    "renumber",
]


def mirror(outcome: Outcome) -> Outcome:
    """Give the same outcome seen from the other side of the floor."""
    where = {player: mirror_spot(spot) for player, spot in outcome.where.items()}
    did = {
        player: [(kind, mirror_spot(begin), mirror_spot(end)) for kind, begin, end in runs]
        for player, runs in outcome.did.items()
    }
    return Outcome(where, outcome.ball, did, set(outcome.unanswered))


def renumber(outcome: Outcome, numbers: Mapping[int, int]) -> Outcome:
    """Give the same outcome with other numbers on the shirts."""
    where = {numbers[player]: spot for player, spot in outcome.where.items()}
    did = {numbers[player]: list(runs) for player, runs in outcome.did.items()}
    return Outcome(where, numbers[outcome.ball], did, {numbers[player] for player in outcome.unanswered})
