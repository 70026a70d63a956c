"""Every situation the second reading can reach from a start, one move at a time, the nearest first."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from .floor import Where, is_one_pass_away
from .moves import Choices, Outcome, after_denial, after_denials, after_pass

ALL_MOVES = ("pass", "skip", "deny")
WITH_PAIRS = (*ALL_MOVES, "deny pair")


def possible_moves(ring: Sequence[str], where: Where, ball: int, moves: Collection[str]) -> list[tuple[str, int]]:
    """List every (move, other player).

    "pass" goes to the player on the very next spot, "skip" to anybody else, "deny" is each player on the very next
    spot, one at a time. "deny pair" is both of them at once, where there are two; it names the one with the ball.
    """
    found = []
    if "deny pair" in moves and len(beside_the_ball(ring, where, ball)) == 2:
        found.append(("deny pair", ball))
    for player in sorted(where):
        if player == ball:
            continue
        beside = is_one_pass_away(ring, where[player], where[ball])
        if "pass" in moves and beside:
            found.append(("pass", player))
        if "skip" in moves and not beside:
            found.append(("skip", player))
        if "deny" in moves and beside:
            found.append(("deny", player))
    return found


def beside_the_ball(ring: Sequence[str], where: Where, ball: int) -> list[int]:
    """List the players one pass away from the ball, by number."""
    return [player for player in sorted(where) if is_one_pass_away(ring, where[player], where[ball])]


def after_move(
    ring: Sequence[str], where: Where, ball: int, move: str, player: int, choices: Choices | None = None
) -> Outcome:
    """Play a move of `possible_moves`."""
    if move == "deny":
        return after_denial(ring, where, ball, player, choices)
    if move == "deny pair":
        return after_denials(ring, where, ball, beside_the_ball(ring, where, ball), choices)
    return after_pass(ring, where, ball, player, choices)


def reach(
    ring: Sequence[str], start: Where, ball: int, moves: Collection[str] = ALL_MOVES, choices: Choices | None = None
) -> tuple[list[tuple[Where, int]], int, int]:
    """List the situations reached, nearest first, with the number of (situation, move) pairs and the longest way.

    A move that leaves somebody without an answer is counted as a move; what it leads to is not a situation.
    """
    seen = {(tuple(sorted(start.items())), ball)}
    waiting = [(dict(start), ball)]
    reached: list[tuple[Where, int]] = []
    pairs = 0
    depth = -1
    while waiting:
        depth += 1
        found = []
        for where, holder in waiting:
            reached.append((where, holder))
            for move, player in possible_moves(ring, where, holder, moves):
                pairs += 1
                outcome = after_move(ring, where, holder, move, player, choices)
                key = (tuple(sorted(outcome.where.items())), outcome.ball)
                if not outcome.unanswered and key not in seen:
                    seen.add(key)
                    found.append((outcome.where, outcome.ball))
        waiting = found
    return reached, pairs, depth


def explore(
    ring: Sequence[str], start: Where, ball: int, moves: Collection[str] = ALL_MOVES, choices: Choices | None = None
) -> tuple[int, int, int]:
    """Count the situations reached, their (situation, move) pairs, and the longest shortest way from the start."""
    reached, pairs, depth = reach(ring, start, ball, moves, choices)
    return len(reached), pairs, depth
