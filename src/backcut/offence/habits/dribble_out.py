"""Both players beside the ball are denied: what the player with the ball does."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if me.number != moment.holder.number or not moment.both_denied():
        return None
    return Answer(Kind.LOOK_TO_DRIBBLE, me.at)


PHRASE = Phrase(
    name="dribble out",
    says="When I have the ball and both players beside me are denied, I dribble at one of them.",
    cue="Dribble out",
    why="A dribble moves the defence when no pass can.",
    mistake="Holds the ball over the head and waits.",
    answer=_answer,
    special_case_of="catch",
    example=Example("five-out", "deny 2+3", player=1, kind=Kind.LOOK_TO_DRIBBLE, spot=Spot.T),
)
