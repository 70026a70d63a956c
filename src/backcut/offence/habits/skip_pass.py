"""After a pass over one spot or more."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind, Route
from backcut.offence.event import EventKind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.rules import CORNERS
from backcut.offence.situation import Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if not moment.just_passed(me, EventKind.SKIP):
        return None
    values = moment.rules.values
    stays = me.at in CORNERS and values["corner passer"] == "hold"
    if values["skip passer"] == "cut" and not stays:
        return Answer(Kind.CUT, Spot.R, Route.FRONT)
    return Answer(Kind.HOLD, me.at)


PHRASE = Phrase(
    name="skip pass",
    says="When I skip the ball, I {skip passer}.",
    cue="Skip",
    why="The long pass already moves the defence; a cut would come late.",
    mistake="Drifts toward the ball after the skip.",
    answer=_answer,
    example=Example("five-out", "T>RC", player=1, kind=Kind.HOLD, spot=Spot.T),
    uses=("skip passer", "corner passer"),
)
