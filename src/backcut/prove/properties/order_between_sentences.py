"""Two sentences never claim one player without an order between them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from backcut.prove.property import Always, Breach, Numbers, Seen
from backcut.prove.who import who


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    for action in seen.decision.actions:
        if not action.beat:
            continue
        ranks = [claim.habit for claim in action.beat]
        if action.habit is not None:
            ranks.insert(0, action.habit)
        if all(above < below for above, below in pairwise(ranks)):
            continue
        name = who(seen.book, seen.situation, seen.situation.player(action.player))
        yield Breach(
            f"Two sentences claim {name}, and neither stands above the other.",
            f"Two sentences claim {action.player}, and neither stands above the other.",
            (action.player,),
            tuple(dict.fromkeys(ranks)),
        )


PROPERTY = Always(
    name="an order between sentences",
    says="Of two sentences that claim one player one stands above the other.",
    why=(
        "A player who is told two things at once does neither. Sentences in a book stand in an order, so no book can "
        "break this: it watches over the rules that ask them. Common practice, no source."
    ),
    of_holes=True,
    looks=_looks,
)
