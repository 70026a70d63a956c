"""In which order the answers of one beat are put in time."""

from __future__ import annotations

from collections.abc import Sequence

from backcut.offence.action import Action, Kind


def leavers_first(asked: Sequence[Action]) -> list[Action]:
    """The answers in such an order that a spot is left before somebody sets off for it; screeners before users."""
    waiting, order = sorted(asked, key=lambda a: (a.kind is not Kind.SCREEN, a.player)), []
    while waiting:
        origins = {action.origin for action in waiting}
        free = (a for a in waiting if a.kind is Kind.SCREEN or a.target is a.origin or a.target not in origins)
        # Where all wait for one another, as in a swap, the lowest number goes first.
        chosen = next(free, waiting[0])
        waiting.remove(chosen)
        order.append(chosen)
    return order
