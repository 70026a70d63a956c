"""A worked example for a sentence of a book: the shortest possession in which it tells somebody what to do."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass

from backcut.engine.possession import Beat
from backcut.errors import BackcutError
from backcut.offence.action import Action, Kind, letter
from backcut.offence.book import Book
from backcut.prove.depth import Depth
from backcut.prove.possession import Possession, possession
from backcut.prove.walk import MOST, Walk, walk

#: How many situations are looked through for an example before the book is walked through whole (own choice).
NEAR = 300
#: Settled first: an example with no denial and no early pass is the easiest to follow.
_DEPTHS = (Depth.SETTLED, Depth.DENIED, Depth.DISTURBED, Depth.OVERLAPPED)


class NoExampleError(BackcutError):
    """A sentence that never tells anybody anything cannot be taught."""


@dataclass(frozen=True, slots=True)
class Example:
    """A possession in which the sentence of this `rank` tells `player` what to do.

    It does so in the beat `beat` (step and place among its beats).
    """

    book: Book
    rank: int
    possession: Possession
    beat: tuple[int, int]
    player: int

    @property
    def asked(self) -> Beat:
        """The situation it is asked in, and everybody's answers."""
        step, beat = self.beat
        return self.possession.steps[step].beats[beat]

    @property
    def action(self) -> Action:
        """What the sentence tells the player."""
        return next(a for a in self.asked.decision.actions if a.player == self.player)


def rank_of(book: Book, habit: str) -> int:
    """The rank of a sentence, named by its letter, its cue word or its phrase. Raises: BackcutError."""
    wanted = habit.strip().rstrip(".").casefold()
    for rank, sentence in enumerate(book.sentences):
        if wanted in (str(letter(rank)).casefold(), book.cue(rank).casefold(), sentence.phrase.name.casefold()):
            return rank
    known = ", ".join(f"{letter(rank)} {book.cue(rank)}" for rank in range(len(book.sentences)))
    raise BackcutError(f'"{habit}" is no sentence of this book. Name one by its letter or its cue word: {known}.')


def examples(book: Book, ranks: Collection[int] | None = None) -> dict[int, Example]:
    """The nearest example of each sentence (or of these), by rank; a sentence that never speaks has none."""
    wanted = set(range(len(book.sentences)) if ranks is None else ranks)
    found: dict[int, Example] = {}
    for most in (NEAR, MOST):
        for depth in _DEPTHS:
            if wanted > found.keys():
                found |= _first_in(walk(book, depth, most=most), wanted - found.keys())
    return {rank: found[rank] for rank in sorted(found)}


def example(book: Book, rank: int) -> Example:
    """The nearest example of one sentence. Raises: NoExampleError where it never speaks."""
    found = examples(book, [rank])
    if rank not in found:
        raise NoExampleError(
            f"{letter(rank)} {book.cue(rank)} never tells anybody what to do in this book, so it cannot be taught. "
            "Move it up, or take it out; `backcut prove` says which sentence speaks before it."
        )
    return found[rank]


#: What an example shows best, in this order: a run, then somebody who holds without the ball, then whoever has it.
_SHOWS: tuple[Callable[[Action], bool], ...] = (
    lambda action: action.moves,
    lambda action: not action.moves and action.kind is not Kind.BALL,
    lambda action: action.kind is Kind.BALL,
)


def _first_in(through: Walk, wanted: set[int]) -> dict[int, Example]:
    found: dict[int, Example] = {}
    for shows in _SHOWS:
        for node in range(len(through.situations)):
            if wanted <= found.keys():
                return found
            decision = through.decisions[node]
            new = {a.habit for a in decision.actions if a.habit in wanted and shows(a)} - found.keys()
            if not new or decision.troubles or through.parent[node] is None:  # before the first event nobody asks
                continue
            played = possession(through, node)
            if not played.steps or not all(step.beats for step in played.steps):
                continue
            for rank in new:
                if (made := _made(through.book, rank, played, shows)) is not None:
                    found[rank] = made
    return found


def _made(book: Book, rank: int | None, played: Possession, shows: Callable[[Action], bool]) -> Example | None:
    at = (len(played.steps) - 1, played.beat)
    beats = played.steps[-1].beats
    if rank is None or played.beat >= len(beats) or any(b.decision.troubles for s in played.steps for b in s.beats):
        return None
    for action in beats[played.beat].decision.actions:
        if action.habit == rank and shows(action) and (action.moves or not _moves_later(action.player, beats)):
            return Example(book, rank, played, at, action.player)
    return None


def _moves_later(player: int, beats: tuple[Beat, ...]) -> bool:
    """Whether somebody moves after all: who holds only until the others are gone shows no holding."""
    return any(a.player == player and a.moves for beat in beats for a in beat.decision.actions)
