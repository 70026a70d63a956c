"""What the tests of the engine share: a book with choices, a possession played from notation, what each player did."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import cache

from backcut.court.spots import Spot
from backcut.engine.play import play
from backcut.engine.possession import Step
from backcut.offence.action import Action, Kind
from backcut.offence.book import Book, Exceptions, Sentence, plain_book
from backcut.offence.formation import formation
from backcut.offence.library import open_book
from backcut.offence.moves import moves_from_text
from backcut.offence.phrase import phrases
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_from_text

FIVE = "1:T* 2:RW 3:LW 4:RC 5:LC"
FOUR = "1:LS* 2:RS 3:LW 4:RW 5:Rb"
THREE = "1:T* 2:RW 3:LW 4:Rb 5:Le"

#: Rings of trade tables without free corners (common practice, no source).
FOUR_SPOTS = (Spot.LW, Spot.LS, Spot.RS, Spot.RW)
THREE_SPOTS = (Spot.LW, Spot.T, Spot.RW)


@cache
def opened(name: str) -> Book:
    """A preset or plain book, without a problem in it, read once."""
    found, problems = open_book(name)
    assert problems == ()
    return found


def book(name: str = "five-out", *first: str, without: Iterable[str] = (), **choices: str) -> Book:
    """A plain book or a preset, `first` phrases put in front, some left out, and choices made (`skip_passer="cut"`)."""
    found = opened(name)
    kept = [s for s in found.sentences if s.phrase.name not in (*first, *without)]
    front = tuple(Sentence(phrases()[phrase]) for phrase in first)
    said = {key.replace("_", " "): value for key, value in choices.items()}
    return replace(found, sentences=(*front, *kept), choices=dict(found.choices) | said)


def on_ring(name: str, ring: tuple[Spot, ...], **choices: str) -> Book:
    """The plain book of a formation on another ring, as many players as the ring has spots, nobody inside."""
    shrunk = replace(formation(name).on_ring(ring, len(ring)), inside=())
    return replace(plain_book(shrunk), choices={key.replace("_", " "): value for key, value in choices.items()})


def excepting(base: Book, stays_inside: int = 0, never_corner: int = 0, never_cuts: int = 0) -> Book:
    """The same book with one number excepted from a rule."""
    roles = [frozenset({number} - {0}) for number in (stays_inside, never_corner, never_cuts)]
    return replace(base, exceptions=Exceptions(*roles))


def full_ring(ring: tuple[Spot, ...], ball: str) -> Situation:
    """Players 1, 2, 3, ... on the ring from the left, the ball on a spot."""
    return situation_from_text(" ".join(f"{n}:{spot}{'*' * (spot == ball)}" for n, spot in enumerate(ring, 1)))


def played(book: Book, moves: str, start: str | Situation | None = None) -> list[Step]:
    """A move list played from a situation, from the book's start when none is given."""
    begin = situation_from_text(start) if isinstance(start, str) else start or book.start()
    return play(book, begin, moves_from_text(moves))


def ran(step: Step) -> dict[int, list[str]]:
    """Every run of the step, by player, in order: {1: ["cut R", "come out LC"]}; players who stayed are left out."""
    runs: dict[int, list[str]] = {}
    for beat in step.beats:
        for action in beat.decision.actions:
            if action.moves:
                runs.setdefault(action.player, []).append(f"{action.kind} {action.target}")
    return runs


def answer(step: Step, player: int, beat: int = 0) -> Action:
    """One player's answer in one beat of the step."""
    return next(action for action in step.beats[beat].decision.actions if action.player == player)


def stands(step: Step) -> dict[int, str]:
    """Where each number is once the step is over."""
    return {number: str(spot) for number, spot in step.after.spots().items()}


def troubles(step: Step) -> set[tuple[str, int]]:
    """What the book left open in the step: kind and player."""
    return {(trouble.kind, trouble.player) for beat in step.beats for trouble in beat.decision.troubles}


def letter_of(book: Book, phrase: str) -> int:
    """The rank of a phrase in the book."""
    return next(rank for rank, sentence in enumerate(book.sentences) if sentence.phrase.name == phrase)


def fills(step: Step) -> set[str]:
    """Everybody who moved up in the step, as "LW>T"."""
    return {
        f"{action.origin}>{action.target}"
        for beat in step.beats
        for action in beat.decision.actions
        if action.kind is Kind.FILL and action.moves
    }
