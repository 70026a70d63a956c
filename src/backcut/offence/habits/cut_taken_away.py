"""A defender stands in the cut."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Doing, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    for cutter in moment.situation.players:
        spot = cutter.origin
        if not cutter.jammed or spot is None or spot not in moment.rules.index or cutter.doing is not Doing.CUTTING:
            continue
        place = moment.rules.index[spot]
        free = moment.where[place] is None
        how = moment.rules.values["cut taken away"]
        partner = moment.behind(place, cutter.side) if how == "screen away" and free else None
        if partner is not None and not moment.may_stand(cutter, partner.at):
            partner = None
        if partner is not None and partner.number == me.number:
            return Answer(Kind.USE_SCREEN, spot)
        if me.number != cutter.number:
            continue
        if partner is not None:
            return Answer(Kind.SCREEN, partner.at)
        if how == "replace" and free:
            return Answer(Kind.REPLACE, spot)
        return Answer(Kind.CUT, me.at, Route.REAR)
    return None


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
