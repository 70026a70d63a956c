"""The picture that only looks like it: what the same player does when the own defender does something else."""

from __future__ import annotations

from backcut.language import say
from backcut.offence.event import EventKind
from backcut.teaching.drills.cues import cues
from backcut.teaching.drills.piece import pieces
from backcut.teaching.examples import Example


def contrast(example: Example) -> str:
    """One sentence, or nothing where there is no such picture to tell apart.

    Beside a denial stands the defender who sags off; beside anything else, the denial that makes the player move.
    """
    event = example.possession.steps[example.beat[0]].event
    denied = event.kind is EventKind.DENY
    if denied and example.player not in event.players:
        return ""
    whole = next(
        (piece for piece in reversed(pieces(example)) if piece.size == len(example.asked.before.players)), None
    )
    if whole is None:
        return ""
    for cue in cues(whole):
        mine = cue.action.player == example.player and cue.moves.endswith(f" {example.player}")
        other = (cue.action.kind, cue.action.target) != (example.action.kind, example.action.target)
        fits = cue.kind is EventKind.SAG if denied else cue.kind is EventKind.DENY and cue.action.moves
        if mine and other and fits and not cue.true:
            return say("But when {cue}: {player} {answer}.", cue=cue.words, player=example.player, answer=cue.answer)
    return ""
