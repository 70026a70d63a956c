"""A shot goes up: somebody gets back, the others rebound."""

from __future__ import annotations

from backcut.court.spots import PERIMETER, Spot
from backcut.offence.action import Kind
from backcut.offence.event import EventKind
from backcut.offence.inside import height
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import IN_LANE, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    situation = moment.situation
    if situation.ended not in (EventKind.SHOT, EventKind.LAY_UP):
        return None
    others = [player for player in situation.players if player.number != situation.ball and player.doing not in IN_LANE]
    # Who plays outside gets back before who plays inside, so that no two go to one spot.
    others = [player for player in others if player.at in PERIMETER] or others
    top = max((height(player.at) for player in others), default=None)
    highest = [player for player in others if height(player.at) == top]
    if me not in highest:
        return Answer(Kind.REBOUND, me.at)
    if height(me.at) >= height(Spot.LS):
        return Answer(Kind.GET_BACK, me.at)
    own = {-1: Spot.LS, 0: Spot.T, 1: Spot.RS}[me.at.side]
    # The middle is for one alone; where the shooter stands nobody goes.
    homes = (own, Spot.T) if len(highest) > 1 else (Spot.T, own)
    home = next((spot for spot in homes if spot is not situation.holder.at), me.at)
    return Answer(Kind.GET_BACK, home)


PHRASE = Phrase(
    name="shot",
    says="When a shot goes up, the highest of us gets back and the rest rebound.",
    cue="Back home",
    why="Somebody must be between their fast break and our basket.",
    mistake="All five go to the rim.",
    answer=_answer,
    after_end=True,
    example=Example("five-out", "T>RW, RW>RC, shot", player=2, kind=Kind.REBOUND, spot=Spot.LC),
)
