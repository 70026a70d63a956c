"""Both players beside the ball are denied: somebody comes to the high post."""

from __future__ import annotations

from backcut.court.spots import Spot
from backcut.offence.action import Kind
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer, Example, Phrase
from backcut.offence.situation import Cause, Player


def _answer(moment: Moment, me: Player) -> Answer | None:
    if not moment.both_denied():
        return moment.comes_out(me, "flash")
    far = {
        player.number: steps
        for player in moment.situation.players
        if (steps := moment.steps_from_ball(player)) is not None and steps > 1
    }
    if me.number not in far or far[me.number] < max(far.values()):
        return None
    # Two who are equally far each take the elbow on their own side, so that the picture has no favourite side.
    alone = sum(steps == far[me.number] for steps in far.values()) == 1
    own = Spot.LE if me.at.side < 0 else Spot.RE
    wanted = (Spot.N, own, own.mirror) if alone else (own,)
    taken = {player.at for player in moment.situation.players}
    return next((Answer(Kind.FLASH, spot) for spot in wanted if spot not in taken), None)


PHRASE = Phrase(
    name="flash",
    says="When both players beside the ball are denied and I am farthest from it, I flash to the high post.",
    cue="Flash",
    why="When both passes are shut, the middle is open: the defenders are out on the lanes.",
    mistake="Everybody runs away from the ball and nobody comes to it.",
    answer=_answer,
    example=Example("five-out", "T>RW, deny 3+4", player=1, kind=Kind.FLASH, spot=Spot.N),
    ways_out=frozenset({Cause.FLASHED}),
)
