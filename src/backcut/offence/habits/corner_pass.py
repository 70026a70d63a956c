"""A pass out of the corner."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.event import EventKind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.rules import CORNERS
from backcut.offence.situation import Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if me.at not in CORNERS or not moment.just_passed(me, EventKind.PASS):
        return None
    if moment.rules.values["corner passer"] == "hold":
        return Answer(Kind.HOLD, me.at)
    return Answer(Kind.CUT, Spot.R, Route.FRONT)


PHRASE = Phrase(
    name="corner pass",
    says="When I pass out of the corner, I {corner passer}.",
    cue="Corner pass",
    why="Nobody stands behind the corner, so nobody can take the spot that is left.",
    mistake="Creeps up after the pass and closes the gap.",
    answer=_answer,
    special_case_of="cut",
    example=Example(
        "five-out", "T>RW, RW>RC, RC>RW", player=4, kind=Kind.HOLD, spot=Spot.RC, choices={"corner passer": "hold"}
    ),
    uses=("corner passer",),
)
