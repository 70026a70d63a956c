"""What tells a player what to do, and what only looks like it: the true cue of a piece, and the false ones."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.engine.play import play, settled, stand
from backcut.engine.possession import Beat
from backcut.engine.words import action_words, event_words
from backcut.errors import BackcutError
from backcut.language import say
from backcut.offence.action import Action, Kind
from backcut.offence.event import PASSES, EventKind
from backcut.offence.moves import moves_from_text
from backcut.teaching.drills.piece import Piece, answer_of

#: Cues that a defender gives: they are read off a body, not off the ball.
BY_A_DEFENDER = frozenset({EventKind.DENY, EventKind.SAG, EventKind.JUMP, EventKind.JAM})
#: In which order false cues are worth drilling (own design): the defender's, the ball's, and then none at all.
_ORDER = (EventKind.DENY, EventKind.JAM, EventKind.SAG, EventKind.PASS, EventKind.SKIP, EventKind.DRIBBLE)


@dataclass(frozen=True, slots=True)
class Cue:
    """What happens ("X2 denies 2"), what the player who reads it then does, and which sentence says so.

    `true` where it is the answer the piece is about; `kind` is None where nothing happens. `moves` plays it.
    """

    words: str
    action: Action
    answer: str
    true: bool
    kind: EventKind | None
    moves: str


def cues(piece: Piece) -> tuple[Cue, ...]:
    """The true cue first, then every false one, those by a defender before those by the ball. Each has its answer."""
    found: dict[tuple[str, Kind, Spot], Cue] = {}
    for moves in (piece.moves, *_others(piece)):
        cue = _cue(piece, moves)
        if cue is not None:
            found.setdefault((cue.words, cue.action.kind, cue.action.target), cue)
    first, *others = found.values()
    false = [cue for cue in others if not cue.true and cue.action.kind is not Kind.NO_ANSWER]
    return (first, *sorted(false, key=_worth))


def _worth(cue: Cue) -> int:
    return _ORDER.index(cue.kind) if cue.kind in _ORDER else len(_ORDER)


def _others(piece: Piece) -> Iterator[str]:
    """Move lists that begin as the piece does and end otherwise."""
    last = piece.steps[-1]
    before = [step.text for step in piece.steps[:-1]]
    holder = last.before.ball
    index, ring = piece.book.rules.index, piece.book.rules.ring
    ends: list[str] = []
    if last.event.kind is not EventKind.DENY and piece.player != holder:
        ends.append(f"deny {piece.player}")
    ends += [f"deny {p.number}" for p in last.before.players if p.number not in (holder, piece.player)]
    ends += [f"sag {piece.player}"] if piece.player != holder else []
    ends += [f"{holder}>{p.number}" for p in last.before.players if p.number != holder]
    at = index.get(last.before.holder.at)
    if at is not None and "dribble at" in piece.book.rules.names:
        ends += [f"dribble {holder}>{ring[i]}" for i in (at - 1, at + 1) if 0 <= i < len(ring)]
    yield from (", ".join([*before, end]) for end in ends)
    yield ", ".join(before)


def _cue(piece: Piece, moves: str) -> Cue | None:
    """The cue these moves give the player of the piece; None where they cannot be made with those who are there."""
    try:
        steps = play(piece.book, piece.start, moves_from_text(moves)) if moves else []
    except BackcutError:
        return None
    wanted = piece.action
    if moves == piece.moves:
        action, asked, kind, words = wanted, piece.asked.before, steps[-1].event.kind, event_words(steps[-1])
    elif len(steps) == len(piece.steps):
        beat = _first_told(piece.player, steps[-1].beats)
        action, asked, kind = answer_of(piece.player, beat), beat.before, steps[-1].event.kind
        words = event_words(steps[-1])
    else:
        asked = stand(steps[-1].after if steps else piece.start)
        decision = decide(piece.book, asked)
        if not settled(piece.book, asked, decision):
            return None
        action, kind = answer_of(piece.player, Beat(asked, decision)), None
        words = say("{player} keeps the ball", player=asked.ball)
    same = (action.habit, action.kind, action.target) == (wanted.habit, wanted.kind, wanted.target)
    return Cue(words, action, action_words(action, asked), same, kind, moves)


def _first_told(player: int, beats: tuple[Beat, ...]) -> Beat:
    """The beat in which a player is first told to move; where nobody tells him to, the first of all."""
    return next((beat for beat in beats if answer_of(player, beat).moves), beats[0])


def is_read_off_a_defender(cue: Cue) -> bool:
    """Whether the cue is what a defender does; without one it cannot be drilled."""
    return cue.kind in BY_A_DEFENDER


def is_a_pass(cue: Cue) -> bool:
    """Whether the cue is where the ball goes."""
    return cue.kind in PASSES
