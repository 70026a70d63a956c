"""Denied in the corner."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.rules import CORNERS
from backcut.offence.situation import Guard, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if me.guard is not Guard.DENIES or me.at not in CORNERS or not moment.one_pass_away(me):
        return None
    if moment.rules.values["denied corner"] == "hold":
        return Answer(Kind.HOLD, me.at)
    return Answer(Kind.BACK_CUT, Spot.R, Route.BASELINE)


PHRASE = Phrase(
    name="denied corner",
    says="When I am denied in the corner, I {denied corner}.",
    cue="Corner",
    why="The defender's back is to the baseline, so the way along it is short.",
    mistake="Stands and waits behind the denial.",
    answer=_answer,
    special_case_of="back cut",
    example=Example(
        "five-out", "T>RW, deny 4", player=4, kind=Kind.HOLD, spot=Spot.RC, choices={"denied corner": "hold"}
    ),
    uses=("denied corner",),
)
