"""Nobody is told to stay in the lane for too long."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.offence.moment import Moment
from backcut.offence.situation import Doing, Player
from backcut.prove.property import Always, Breach, Numbers, Seen
from backcut.prove.who import who


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    for player in seen.situation.players:
        if player.doing is not Doing.LANE or player.number == seen.situation.ball or player.forgets:
            continue
        # Where all have settled nobody is told to go any more: the wait has no end.
        waited_s = seen.waited_s.get(player.number, 0.0)
        if seen.situation.ended is None and (seen.settled or waited_s > numbers["seconds"]):
            yield _breach(seen, player, waited_s)


def _breach(seen: Seen, player: Player, waited_s: float) -> Breach:
    moment = Moment(seen.book.rules, seen.situation)
    action = next(action for action in seen.decision.actions if action.player == player.number)
    if moment.out_from < 0:
        why = "while the ball is inside"
    elif moment.pending or action.moves or moment.fresh is not None:
        # Who is told to go only now has waited for the others until now; after a new pass they move up again.
        why = "until the others have moved up"
    else:
        why = "though nobody moves up any more"
    waits = f"has been in the lane for {waited_s:.3g} seconds" if waited_s else "is told to stay in the lane"
    return Breach(
        f"{who(seen.book, seen.situation, player).capitalize()} waits in the lane {why}.",
        f"{player.number} {waits}, {why}.",
        (player.number,),
        () if action.habit is None else (action.habit,),
    )


PROPERTY = Always(
    name="three seconds",
    says="Nobody without the ball is told to stay in the lane longer than {seconds} seconds.",
    why=(
        "The rule books give the ball to the others for it: FIBA Official Basketball Rules, Art. 26, three seconds; "
        "the NBA, WNBA, NCAA and NFHS books have a rule of the same name (from memory)."
    ),
    numbers={"seconds": 3.0},
    timed=True,
    looks=_looks,
)
