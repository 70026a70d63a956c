"""The rest: holding is an answer too."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    return Answer(Kind.BALL if me.number == moment.holder.number else Kind.HOLD, me.at)


PHRASE = Phrase(
    name="hold",
    says="Otherwise I hold, wide, feet set.",
    cue="Wide",
    why="A player who stands wide keeps a defender out of the lane.",
    mistake="Creeps toward the ball without a reason.",
    answer=_answer,
    example=Example("five-out", "T>RW", player=4, kind=Kind.HOLD, spot=Spot.RC),
    covers_rest=True,
)
