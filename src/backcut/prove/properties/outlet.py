"""The player with the ball can always give it to somebody."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.offence.action import Kind
from backcut.offence.inside import INSIDE_PLACES
from backcut.offence.moment import Moment
from backcut.offence.situation import IN_LANE, Doing, Guard, Player
from backcut.prove.property import Always, Breach, Numbers, Seen
from backcut.prove.who import who


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    if not seen.settled:
        return
    moment = Moment(seen.book.rules, seen.situation)
    if moment.ball < 0:
        return
    if all(player.guard is not Guard.DENIES for player in seen.situation.players):
        if not numbers["skips"]:
            yield from _gaps(seen, moment)
    elif not _other(seen, moment, bool(numbers["skips"])):
        denied = [player for player in _near(moment) if player.guard is Guard.DENIES]
        if denied and len(denied) == len(_near(moment)):
            names = " and ".join(str(player.number) for player in denied)
            one = "the only player" if len(denied) == 1 else "both players"
            yield Breach(
                f"With {one} one pass away denied, the ball has no other way on.",
                f"{seen.situation.ball} can pass to nobody: {names} {'is' if len(denied) == 1 else 'are'} denied, "
                "nobody cuts and nobody is inside.",
                (seen.situation.ball, *(player.number for player in denied)),
                _told(seen, denied),
            )


def _near(moment: Moment) -> list[Player]:
    """The players on the spots next to the ball."""
    beside = (moment.ball - 1, moment.ball + 1)
    places = (moment.where[place] for place in beside if 0 <= place < len(moment.where))
    return [player for player in places if player is not None]


def _gaps(seen: Seen, moment: Moment) -> Iterator[Breach]:
    """The sides on which a team-mate stands, but not on the spot next to the ball."""
    for side in (-1, 1):
        behind = moment.behind(moment.ball, side)
        # Who forgets was told to move up: that is no mistake of the book.
        if behind is None or behind.forgets or moment.one_pass_away(behind):
            continue
        spot = moment.rules.ring[moment.ball + side]
        yield Breach(
            f"The spot next to the ball stays empty, and {who(seen.book, seen.situation, behind)} stays behind it.",
            f"All stand, and nobody is at the {spot.title}, next to {seen.situation.ball} with the ball; "
            f"{behind.number} stands behind it.",
            (behind.number,),
            _told(seen, [behind]),
            spot,
        )


def _told(seen: Seen, players: list[Player]) -> tuple[int, ...]:
    """The sentences by which these players stand where they stand."""
    numbers = {player.number for player in players}
    return tuple({a.habit: None for a in seen.decision.actions if a.player in numbers and a.habit is not None})


def _other(seen: Seen, moment: Moment, skips: bool) -> bool:
    """Whether there is a way on that is no pass to the next spot: a cutter, somebody inside, a dribble, a skip."""
    if any(a.player == seen.situation.ball and a.kind is Kind.LOOK_TO_DRIBBLE for a in seen.decision.actions):
        return True
    for player in seen.situation.players:
        if player.number == seen.situation.ball or player.guard is Guard.DENIES:
            continue
        inside = player.at in INSIDE_PLACES and player.doing in (Doing.STANDING, Doing.FLASHED)
        if inside or player.doing in IN_LANE or (skips and moment.place(player) is not None):
            return True
    return False


PROPERTY = Always(
    name="an outlet for the ball",
    says="Once all stand, the ball has an outlet.",
    why=(
        "An outlet is a player one pass away, on each side where a team-mate stands; where all of them are denied, a "
        "cutter, somebody inside or a dribble at one of them. With skips at 1 a pass over an empty spot counts too. "
        "Who has no outlet dribbles into the defence. Common practice, no source."
    ),
    numbers={"skips": 0.0},
    looks=_looks,
)
