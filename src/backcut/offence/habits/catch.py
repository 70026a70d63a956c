"""What the player with the ball does first."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    return Answer(Kind.BALL, me.at) if me.number == moment.holder.number else None


PHRASE = Phrase(
    name="catch",
    says="When I catch the ball, I face the rim and {hold count}.",
    cue="Catch",
    why="The rim first, then the cutter, then the next pass: one look each.",
    mistake="Passes on without a look.",
    answer=_answer,
    example=Example("five-out", "T>RW", player=2, kind=Kind.BALL, spot=Spot.RW),
    uses=("hold count",),
)
