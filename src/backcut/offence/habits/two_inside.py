"""How two inside players stand to each other."""

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
    if moment.ball < 0 or me.at.side == 0:
        return None
    ball_side = moment.rules.ring[moment.ball].side
    if moment.rules.values["two inside"] == "opposite sides":
        home = LOW[me.at.side]
    elif ball_side == 0:
        home = STEPPED_OUT.get(me.at, me.at)
    else:
        home = LOW[me.at.side] if me.at.side == ball_side else HIGH[me.at.side]
    return Answer(Kind.INSIDE, home) if home is not me.at else None


PHRASE = Phrase(
    name="two inside",
    says="When two of us play inside, we keep {two inside}.",
    cue="Two inside",
    why="Two on one level are guarded by one and a half.",
    mistake="Both go to the ball-side block.",
    answer=_answer,
    example=Example("three-out", "T>LW", player=4, kind=Kind.INSIDE, spot=Spot.RE),
    uses=("two inside",),
)
