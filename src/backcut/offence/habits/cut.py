"""After a pass to the next spot: cut to the rim."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.event import EventKind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.rules import CORNERS
from backcut.offence.situation import Cause, Guard, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if not moment.just_passed(me, EventKind.PASS):
        return moment.comes_out(me, "cut")
    values = moment.rules.values
    if me.at in CORNERS and values["corner passer"] == "hold":
        return None
    if moment.block_taken():
        match values["occupied block"]:
            case "shallow":
                return Answer(Kind.SHALLOW_CUT, Spot.N, Route.FRONT)
            case "screen":
                return Answer(Kind.SCREEN, Spot.R, Route.FAR_SIDE)
            case _:
                return Answer(Kind.CUT, Spot.R, Route.FAR_SIDE)
    side = values["front or rear"]
    rear = side == "rear" or (side == "read" and me.guard is Guard.JUMPED)
    return Answer(Kind.CUT, Spot.R, Route.REAR if rear else Route.FRONT)


PHRASE = Phrase(
    name="cut",
    says="When I pass to the next spot, I cut to the rim[ {front or rear}].",
    cue="Cut",
    why="The pass makes the defender look away; the cut uses that moment.",
    mistake="Passes and stands.",
    answer=_answer,
    example=Example("five-out", "T>RW", player=1, kind=Kind.CUT, spot=Spot.LC),
    uses=("front or rear", "corner passer", "occupied block"),
    ways_out=frozenset({Cause.PASSED, Cause.KICKED_OUT}),
)
