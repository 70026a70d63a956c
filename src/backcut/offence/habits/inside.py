"""Where one inside player goes."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.inside import HIGH, INSIDE_PLACES, LOW, STEPPED_OUT, out_of_the_way
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Doing, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if me.at not in INSIDE_PLACES or me.doing is not Doing.STANDING or me.number == moment.holder.number:
        return None
    if (clear := out_of_the_way(moment, me)) is not None:
        return Answer(Kind.CLEAR, clear)
    if moment.ball < 0:
        return None
    side = moment.rules.ring[moment.ball].side
    match moment.rules.values["inside"]:
        case "follow":
            home = LOW.get(side, me.at)
        case "opposite":
            home = LOW.get(-side, me.at)
        case "high":
            home = HIGH[side]
        case _:
            home = STEPPED_OUT.get(me.at, me.at)
    return Answer(Kind.INSIDE, home) if home is not me.at else None


PHRASE = Phrase(
    name="inside",
    says="When I play inside, I {inside}.",
    cue="Inside",
    why="The perimeter plays as if nobody were inside; the inside player reads the ball.",
    mistake="Stands in a cutter's path.",
    answer=_answer,
    example=Example("four-out", "LS>RS", player=5, kind=Kind.INSIDE, spot=Spot.LB),
    uses=("inside",),
)
