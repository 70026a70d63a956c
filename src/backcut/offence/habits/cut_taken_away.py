"""A defender stands in the cut."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Doing, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    cutter = next((player for player in moment.situation.players if player.jammed), None)
    if cutter is None or cutter.origin is None or cutter.doing is not Doing.CUTTING:
        return None
    place = moment.rules.index[cutter.origin]
    free = moment.where[place] is None
    how = moment.rules.values["cut taken away"]
    partner = moment.behind(place, cutter.side) if how == "screen away" and free else None
    if partner is not None and partner.number == me.number:
        return Answer(Kind.USE_SCREEN, cutter.origin)
    if me.number != cutter.number:
        return None
    if partner is not None:
        return Answer(Kind.SCREEN, partner.at)
    if how == "replace" and free:
        return Answer(Kind.REPLACE, cutter.origin)
    return Answer(Kind.CUT, me.at, Route.REAR)


PHRASE = Phrase(
    name="cut taken away",
    says="When my cut is taken away, I {cut taken away}.",
    cue="Jammed",
    why="A cut that is stopped must not stop the line behind it.",
    mistake="Stops in the lane and looks for the ball.",
    answer=_answer,
    example=Example(
        "five-out", "T>RW, jam 1", player=1, kind=Kind.REPLACE, spot=Spot.T, choices={"cut taken away": "replace"}
    ),
    uses=("cut taken away",),
)
