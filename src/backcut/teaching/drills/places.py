"""Where on the floor a sentence speaks: every spot from which somebody is told to do this, and to where."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Action
from backcut.offence.situation import Situation
from backcut.prove.depth import Depth
from backcut.prove.walk import walk
from backcut.teaching.drills.piece import Piece

#: Situations that are looked through for other spots (own choice): every spot of a ring comes up in far fewer.
NEAR = 600


def places(piece: Piece) -> tuple[Spot, ...]:
    """The spots on which the sentence tells somebody what it tells the player of this piece, both sides, in order."""
    book, wanted = piece.book, piece.action
    spots: set[Spot] = set()
    for depth in (Depth.SETTLED, Depth.DENIED, Depth.DISTURBED):
        through = walk(book, depth, most=NEAR)
        for situation, decision in zip(through.situations, through.decisions, strict=True):
            if decision.troubles:
                continue
            for action in decision.actions:
                if action.habit == piece.rank and action.kind is wanted.kind and action.moves is wanted.moves:
                    spot = _seen_from(situation, action)
                    spots |= {spot, spot.mirror}
    return tuple(spot for spot in Spot if spot in spots)


def _seen_from(situation: Situation, action: Action) -> Spot:
    """Where somebody is when he is told; of who is at the rim, where he came from, or else goes to."""
    if action.origin is not Spot.R:
        return action.origin
    return situation.player(action.player).origin or action.target
