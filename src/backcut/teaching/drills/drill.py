"""A drill for one sentence: the smallest piece that holds its decision, for those who are there and what there is."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from backcut.court.spots import Spot
from backcut.engine.gym import Gym, gym, timed
from backcut.errors import BackcutError
from backcut.language import say, say_many
from backcut.offence.action import CUTS, Kind, letter
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.teaching.drills.cues import Cue, cues, is_a_pass, is_read_off_a_defender
from backcut.teaching.drills.piece import Piece, pieces
from backcut.teaching.drills.places import places
from backcut.teaching.drills.reps import MOST_WAIT_S, Lines, lines
from backcut.teaching.drills.rotation import false_turns
from backcut.teaching.drills.stages import Stage, defenders, one_in
from backcut.teaching.examples import Example, example

#: Runs that need a ring, or something that stands for it, at their end.
_TO_THE_RIM = CUTS | {Kind.REBOUND}
#: Where no basket is needed a group needs room: so many in the half court of each basket, and in a hall without one.
ROOMS = 2
#: The longest form that can be run by a parent with a card: with five it is the whole team (own design).
MOST = 4
#: A block is as long as an activity may be (federation manual: 7 to 10 minutes before a change).
BLOCK_MIN = 8


class ShortError(BackcutError):
    """There are too few players, balls or baskets for this drill; the sentence says what can be done instead."""


@dataclass(frozen=True, slots=True)
class Hall:
    """What there is tonight."""

    players: int
    baskets: int = 1
    balls: int = 2

    def __post_init__(self) -> None:
        for name, value, least in (
            ("players", self.players, 1),
            ("baskets", self.baskets, 0),
            ("balls", self.balls, 0),
        ):
            if value < least:
                raise BackcutError(f"--{name} {value}: there cannot be fewer than {least}.")


@dataclass(frozen=True)
class Drill:
    """One drill at one stage. `cue` is the true one, `false` the ones that only look like it; `spots` all it is run on.

    `lines` says who stands where, `false_turns` in which turns of a line of this length the cue is false (from 0).
    `minutes` is the length of the block.
    """

    piece: Piece
    stage: Stage
    cue: Cue
    false: tuple[Cue, ...]
    spots: tuple[Spot, ...]
    hall: Hall
    lines: Lines
    minutes: float
    seed: int

    @property
    def book(self) -> Book:
        """The book it is made from."""
        return self.piece.book

    @property
    def letter(self) -> str:
        """The letter of its sentence."""
        return str(letter(self.piece.rank))

    @property
    def decider(self) -> int:
        """The spot of whoever reads the cue, from 0 in order of number."""
        return self.piece.numbers.index(self.piece.player)

    @property
    def needs_ring(self) -> bool:
        """Whether somebody runs to the rim or shoots."""
        return needs_ring(self.piece)

    @property
    def defenders(self) -> int:
        """How many defenders a group has."""
        return defenders(self.stage, self.piece.size)

    @property
    def coach_defends(self) -> bool:
        """Whether there are too few players for these defenders too, so that a coach or a chair stands for them."""
        return self.lines.size < self.piece.size + self.defenders

    @cached_property
    def false_turns(self) -> tuple[int, ...]:
        """The turns of the longest line in which the cue is false, counted from 0."""
        return false_turns(max(self.lines.counts), self.decider, one_in(self.stage), self.seed)

    @property
    def each(self) -> float:
        """Decisions for each player in the block."""
        return self.lines.each(self.minutes * 60)


def drills(
    shown: Example, hall: Hall, *, stages: Iterable[Stage] = tuple(Stage), minutes: float = BLOCK_MIN, seed: int = 1
) -> tuple[Drill, ...]:
    """The drill of an example at these stages: few in a group, so that everybody decides often, but nobody waits long.

    Raises: ShortError where there are too few players, balls or baskets.
    """
    forms = _with_a_false_cue(pieces(shown))
    ground = gym(shown.book)
    return tuple(_for(shown, forms, hall, ground, stage, minutes, seed) for stage in stages)


def drill(book: Book, rank: int, hall: Hall, stage: Stage = Stage.GUIDED, *, minutes: float = BLOCK_MIN) -> Drill:
    """One drill for a sentence. Raises: NoExampleError where it never speaks, ShortError where too little is there."""
    return drills(example(book, rank), hall, stages=[stage], minutes=minutes)[0]


def needs_ring(piece: Piece) -> bool:
    """Whether somebody in it runs to the rim or shoots."""
    told = (action for step in piece.steps for beat in step.beats for action in beat.decision.actions)
    shot = any(step.event.kind in (EventKind.SHOT, EventKind.LAY_UP) for step in piece.steps)
    return shot or any(action.kind in _TO_THE_RIM and action.moves for action in told)


def _with_a_false_cue(forms: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """The forms in which ball or defender can be the false cue, the whole team left out; the least one if none."""
    good = tuple(f for f in forms if f.size <= MOST and any(cue.kind is not None for cue in cues(f)[1:]))
    return good or forms[:1]


def _for(
    shown: Example, forms: tuple[Piece, ...], hall: Hall, ground: Gym, stage: Stage, minutes: float, seed: int
) -> Drill:
    """The smallest form in which nobody waits too long; where there is none, the one in which the wait is shortest."""
    possible = [(form, arranged) for form in forms if (arranged := _arranged(form, hall, ground, stage)) is not None]
    if not possible:
        raise ShortError(_what_instead(forms[0], hall))
    in_time = next((made for made in possible if made[1].wait_s <= MOST_WAIT_S), None)
    piece, arranged = in_time or min(possible, key=lambda made: made[1].wait_s)
    true, *false = cues(piece)
    return Drill(piece, stage, true, _chosen(tuple(false)), places(piece), hall, arranged, minutes, seed)


def _chosen(false: tuple[Cue, ...]) -> tuple[Cue, ...]:
    """One false cue off a defender, one off the ball, and where there is neither, that nothing comes."""
    by_defender = next((cue for cue in false if is_read_off_a_defender(cue)), None)
    by_ball = next((cue for cue in false if is_a_pass(cue)), None)
    chosen = tuple(cue for cue in (by_defender, by_ball) if cue is not None)
    return chosen or false[:1]


def _arranged(piece: Piece, hall: Hall, ground: Gym, stage: Stage) -> Lines | None:
    """Everybody in lines; None where it cannot be. Those who defend stand in line too, where there are enough."""
    ring = needs_ring(piece)
    if hall.players < piece.size or hall.balls < 1 or (ring and not hall.baskets):
        return None
    group = piece.size + defenders(stage, piece.size)
    size = group if group <= hall.players else piece.size
    spaces = hall.baskets if ring else max(hall.baskets, 1) * ROOMS
    return lines(hall.players, size, places=spaces, balls=hall.balls, run_s=run_s(piece, ground))


def _what_instead(piece: Piece, hall: Hall) -> str:
    size, cue = piece.size, f"{letter(piece.rank)} {piece.book.cue(piece.rank)}"
    if hall.players < size:
        return say_many(
            "{cue} takes {size} players, and there is {n}. Let a coach, a parent or a chair with a ball on it be the "
            "passer, or walk through it with cones.",
            "{cue} takes {size} players, and there are {n}. Let a coach, a parent or a chair with a ball on it be the "
            "passer, or walk through it with cones.",
            hall.players,
            cue=cue,
            size=size,
        )
    if hall.balls < 1:
        return say("{cue} takes a ball, and there is none. Walk through it: who has the ball says so aloud.", cue=cue)
    return say(
        "{cue} ends at a rim, and there is no basket. Lay a hoop or a cone where the rim would be, run to it, and give "
        "--baskets 1.",
        cue=cue,
    )


def run_s(piece: Piece, ground: Gym) -> float:
    """How long one turn takes, from the cue to the end of the runs, in seconds."""
    return float(timed(piece.book, piece.steps, ground).duration_s)
