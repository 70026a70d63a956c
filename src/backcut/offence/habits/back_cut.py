"""Denied one pass away: cut behind the defender."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.rules import CORNERS
from backcut.offence.situation import Cause, Doing, Guard, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if me.guard is not Guard.DENIES or not moment.one_pass_away(me):
        return moment.comes_out(me, "back cut")
    values = moment.rules.values
    if me.doing is Doing.FILLING and values["denied filler"] != "back cut":
        return None
    if me.at in CORNERS:
        if values["denied corner"] == "hold":
            return None
        return Answer(Kind.BACK_CUT, Spot.R, Route.BASELINE)
    return Answer(Kind.BACK_CUT, Spot.R, Route.BEHIND_DEFENDER)


PHRASE = Phrase(
    name="back cut",
    says="When I am one pass away and my defender denies me, I back cut[ {signal}].",
    cue="Back",
    why="A defender in the passing lane has nobody behind: the way to the rim is open.",
    mistake="Fights for the ball against the denial.",
    answer=_answer,
    example=Example("five-out", "deny 2", player=2, kind=Kind.BACK_CUT, spot=Spot.RC),
    uses=("signal", "denied corner", "denied filler", "denial"),
    ways_out=frozenset({Cause.DENIED}),
)
