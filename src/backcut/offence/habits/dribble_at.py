"""The ball is dribbled at my spot."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Cause, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    spot = moment.dribbled_at()
    if spot is None:
        return moment.comes_out(me, "dribble at")
    if moment.ball < 0 or me.number == moment.holder.number:
        return None
    place, aim = moment.place(me), moment.rules.index[spot]
    if place is None:
        return None
    how = moment.rules.values["dribble at"]
    if how != "slide on":
        if place != aim:
            return None
        return (
            Answer(Kind.HAND_OFF, moment.holder.at)
            if how == "hand-off"
            else Answer(Kind.BACK_CUT, Spot.R, Route.BEHIND_DEFENDER)
        )
    # Each pushes the next one on; the last of an unbroken line that has no spot left goes through the lane.
    side = 1 if aim > moment.ball else -1
    if (place - aim) * side < 0 or any(moment.where[i] is None for i in range(aim, place, side)):
        return None
    onward = place + side
    if 0 <= onward < len(moment.where) and moment.may_stand(me, moment.rules.ring[onward]):
        return Answer(Kind.SLIDE, moment.rules.ring[onward], Route.ALONG_ARC)
    return Answer(Kind.BACK_CUT, Spot.R, Route.BASELINE)


PHRASE = Phrase(
    name="dribble at",
    says="When the ball is dribbled at me, I {dribble at}.",
    cue="Dribble",
    why="Two players on one spot are guarded by one; the dribble is a call to go.",
    mistake="Waits for the ball and is run into.",
    answer=_answer,
    example=Example("five-out", "dribble 1>RW", player=2, kind=Kind.BACK_CUT, spot=Spot.LC),
    uses=("dribble at",),
    ways_out=frozenset({Cause.DRIBBLED_AT}),
)
