"""The way out of the lane, where the book says it in a sentence of its own."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Cause, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    return moment.comes_out(me, "come out")


PHRASE = Phrase(
    name="come out",
    says="When my cut is over, I come out to {exit}.",
    cue="Out",
    why="Nobody stands in the lane: it belongs to the next cutter.",
    mistake="Stays in the lane and waits for the ball.",
    answer=_answer,
    example=Example("five-out", "T>RW, RW>T", player=2, kind=Kind.EXIT, spot=Spot.RC),
    uses=("exit",),
    ways_out=frozenset(Cause),
)
