"""The next spot toward the ball is empty: move up into it."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Player

_PATHS = {
    "along the arc": Route.ALONG_ARC,
    "through the elbow": Route.THROUGH_ELBOW,
    "through the lane": Route.THROUGH_LANE,
}


def _answer(moment: Moment, me: Player) -> Answer | None:
    # A dribble pushes players on: who moves up sees first where they go.
    if moment.dribbled_at() is not None or not moment.could_fill(me) or not moment.time_to_fill():
        return None
    ahead = moment.next_toward_ball(me)
    if ahead is None:
        return None
    return Answer(Kind.FILL, moment.rules.ring[ahead], _PATHS[moment.rules.values["fill path"]])


PHRASE = Phrase(
    name="fill",
    says="When the next spot toward the ball is empty[ {who fills}], I fill it[ {fill path}][ {when to fill}].",
    cue="Fill",
    why="The ball needs a pass on each side; whoever is behind the hole sees it best.",
    mistake="Fills too early, while the catcher still looks at the cutter.",
    answer=_answer,
    example=Example("five-out", "T>RW", player=3, kind=Kind.FILL, spot=Spot.T),
    uses=("who fills", "when to fill", "fill path"),
)
