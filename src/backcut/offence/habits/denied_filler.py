"""Denied on the way to a spot."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Doing, Guard, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if me.guard is not Guard.DENIES or me.doing is not Doing.FILLING or not moment.one_pass_away(me):
        return None
    match moment.rules.values["denied filler"]:
        case "hold":
            return Answer(Kind.HOLD, me.at)
        case "come to the ball":
            return Answer(Kind.COME_TO_BALL, me.at)
        case _:
            return Answer(Kind.BACK_CUT, Spot.R, Route.BEHIND_DEFENDER)


PHRASE = Phrase(
    name="denied filler",
    says="When I am denied on my way to fill, I {denied filler}.",
    cue="Shut",
    why="A filler who is met on the way answers as everybody does who is denied.",
    mistake="Runs into the defender and stops between two spots.",
    answer=_answer,
    special_case_of="back cut",
    example=Example(
        "five-out",
        "T>RW, early deny 3",
        player=3,
        kind=Kind.COME_TO_BALL,
        spot=Spot.T,
        choices={"denied filler": "come to the ball", "when to fill": "at once"},
    ),
    uses=("denied filler",),
)
