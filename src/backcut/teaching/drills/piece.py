"""The smallest part of the offence that still holds a decision: who has to be there for a player to read it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations

from backcut.engine.play import play
from backcut.engine.possession import Beat, Step
from backcut.errors import BackcutError
from backcut.offence.action import Action
from backcut.offence.book import Book
from backcut.offence.moves import moves_from_text
from backcut.offence.situation import Situation
from backcut.teaching.examples import Example

#: Nobody reads anything alone: whoever decides, and one to read (own design).
FEWEST = 2


@dataclass(frozen=True, slots=True)
class Piece:
    """Some of the five, from `start`, and the `moves` after which the sentence of `rank` tells `player` what to do.

    `at` is the step and the beat that hold the decision.
    """

    book: Book
    rank: int
    start: Situation
    moves: str
    steps: tuple[Step, ...]
    at: tuple[int, int]
    player: int

    @property
    def numbers(self) -> tuple[int, ...]:
        """Who is there, in order of number."""
        return tuple(player.number for player in self.start.players)

    @property
    def size(self) -> int:
        """How many are there."""
        return len(self.start.players)

    @property
    def asked(self) -> Beat:
        """The situation of the decision, and everybody's answers."""
        return self.steps[self.at[0]].beats[self.at[1]]

    @property
    def action(self) -> Action:
        """What the player is told."""
        return answer_of(self.player, self.asked)


def answer_of(player: int, beat: Beat) -> Action:
    """What a player is told in a beat."""
    return next(action for action in beat.decision.actions if action.player == player)


def pieces(shown: Example) -> tuple[Piece, ...]:
    """The example with as few players as can be, then with one more, up to all: one form for each number of players.

    In each the player is told the same by the same sentence, and the book leaves nothing open on the way.
    """
    every = [player.number for player in shown.possession.start.players]
    forms = (next(_forms(shown, every, size), None) for size in range(FEWEST, len(every) + 1))
    return tuple(form for form in forms if form is not None)


def _forms(shown: Example, every: list[int], size: int) -> Iterator[Piece]:
    start, moves = shown.possession.start, shown.possession.moves
    for numbers in combinations(every, size):
        if shown.player not in numbers or start.ball not in numbers:
            continue
        there = replace(start, players=tuple(p for p in start.players if p.number in numbers))
        made = _played(shown, there, moves)
        if made is not None:
            yield made


def _played(shown: Example, start: Situation, moves: str) -> Piece | None:
    try:
        steps = tuple(play(shown.book, start, moves_from_text(moves)))
    except BackcutError:  # somebody who has the ball, or gets it, is not there
        return None
    if any(beat.decision.troubles for step in steps for beat in step.beats):
        return None
    wanted = shown.action
    for place, beat in enumerate(steps[-1].beats):
        told = answer_of(shown.player, beat)
        if (told.habit, told.kind, told.target) == (wanted.habit, wanted.kind, wanted.target):
            return Piece(shown.book, shown.rank, start, moves, steps, (len(steps) - 1, place), shown.player)
    return None
