"""An empty spot beside the ball is filled."""

from __future__ import annotations

import math
from collections.abc import Iterator
from enum import IntEnum

from backcut.court.spots import Spot
from backcut.offence.book import Book
from backcut.offence.moment import Moment
from backcut.offence.situation import IN_LANE, Doing, Player, Situation
from backcut.prove.property import Breach, Eventually, Numbers, Seen
from backcut.prove.who import who


class Beside(IntEnum):
    """What is on one side of the ball: nothing to fill, somebody on the way to the empty spot, or a hole."""

    FILLED = 0
    ON_THE_WAY = 1
    HOLE = 2


def beside(book: Book, situation: Situation) -> tuple[Beside, Beside]:
    """What is on the left and on the right of the ball along the ring."""
    rules, holder = book.rules, situation.holder
    if holder.doing in IN_LANE or situation.ended is not None or holder.at not in rules.index:
        return Beside.FILLED, Beside.FILLED
    moment = Moment(rules, situation)
    return _on_side(moment, -1), _on_side(moment, 1)


def _on_side(moment: Moment, side: int) -> Beside:
    place = moment.ball + side
    if not 0 <= place < len(moment.where):
        return Beside.FILLED
    player = moment.where[place]
    if player is not None:
        return Beside.ON_THE_WAY if player.doing in (Doing.FILLING, Doing.OUT) else Beside.FILLED
    return Beside.FILLED if moment.behind(moment.ball, side) is None else Beside.HOLE


def hole(seen: Seen) -> Spot | None:
    """The empty ring spot next to the ball behind which a team-mate stands, farther out on that side; None without.

    Who is on the way to a spot counts there. There is none while the ball is inside or the possession has ended.
    """
    found = _hole(seen)
    return None if found is None else found[0]


def _hole(seen: Seen) -> tuple[Spot, Player] | None:
    situation, rules = seen.situation, seen.book.rules
    holder = situation.holder
    ball = rules.index.get(holder.at, -1)
    if ball < 0 or holder.doing in IN_LANE or situation.ended is not None:
        return None
    # Most situations have no hole: only the others are worth a closer look.
    taken = {rules.index.get(p.at, -1) for p in situation.players if p.doing not in IN_LANE}
    if (ball == 0 or ball - 1 in taken) and (ball + 1 == len(rules.ring) or ball + 1 in taken):
        return None
    moment = Moment(rules, situation)
    for side in (-1, 1):
        place = moment.ball + side
        if 0 <= place < len(rules.ring) and moment.where[place] is None:
            behind = moment.behind(moment.ball, side)
            if behind is not None:
                return rules.ring[place], behind
    return None


def _begins(seen: Seen, numbers: Numbers) -> Iterator[int | None]:
    found = _hole(seen)
    # Who forgets was told to move up: that is no mistake of the book.
    if found is not None and not found[1].forgets:
        yield None


def _ends(seen: Seen, numbers: Numbers, player: int | None) -> bool:
    return hole(seen) is None


def _breach(seen: Seen, numbers: Numbers, player: int | None) -> Breach:
    found = _hole(seen)
    if found is None:
        return Breach("The hole beside the ball stays.", "The hole beside the ball stays.")
    return _stays(seen, *found)


def _stays(seen: Seen, spot: Spot, behind: Player) -> Breach:
    habit = next(action.habit for action in seen.decision.actions if action.player == behind.number)
    return Breach(
        f"The hole beside the ball stays, and {who(seen.book, seen.situation, behind)} is behind it.",
        f"Nobody fills the {spot.title}, next to {seen.situation.ball} with the ball; {behind.number} is behind it.",
        (behind.number,),
        () if habit is None else (habit,),
        spot,
    )


def late(seen: Seen, side: int, after_s: float) -> Breach:
    """The breach of a hole on this side of the ball (-1 or 1) that is filled after so many seconds, or never (inf)."""
    moment = Moment(seen.book.rules, seen.situation)
    spot, behind = seen.book.rules.ring[moment.ball + side], moment.behind(moment.ball, side)
    assert behind is not None
    if math.isinf(after_s):
        return _stays(seen, spot, behind)
    if seen.book.rules.index[behind.at] != moment.ball + 2 * side:
        why = "because nobody is right behind it"
    elif behind.doing in (Doing.FILLING, Doing.OUT):
        why = "because who is right behind it is still on the way"
    else:
        why = "although somebody is right behind it"
    return Breach(
        f"The hole beside the ball is filled late, {why}.",
        f"The {spot.title}, next to {seen.situation.ball} with the ball, is empty for {after_s:.3g} seconds, {why}.",
        (behind.number,),
        tuple(rank for rank, phrase in seen.book.rules.habits if phrase.name == "fill"),
        spot,
    )


PROPERTY = Eventually(
    name="holes are filled",
    says="An empty spot beside the ball is filled within {seconds} seconds of the catch, if a team-mate is behind it.",
    why=(
        "The next pass goes there, and who is closely guarded has five seconds to pass (FIBA Official Basketball "
        "Rules, Art. 27; the number from memory). At once, a fill takes the shipped squads two to three seconds; after "
        "a look or a count of two, about four. Three is what coaches ask for: common practice, no source."
    ),
    numbers={"seconds": 5.0, "whatever": 0.0},
    begins=_begins,
    ends=_ends,
    breach=_breach,
)
