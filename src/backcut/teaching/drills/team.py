"""The whole-team form: no defence, the ball moves, everybody answers by the book; teams take turns in short bursts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backcut.engine.choose import possession
from backcut.engine.gym import gym, timed
from backcut.engine.possession import Step
from backcut.errors import BackcutError
from backcut.offence.book import Book
from backcut.offence.event import PASSES
from backcut.teaching.drills.drill import Hall, ShortError
from backcut.teaching.drills.reps import MOST_WAIT_S, repetitions

#: Fewer than three have nothing to pass round; more than five are no team.
FEWEST, MOST = 3, 5
#: A team moves the ball for so long, then the next (common practice, no source), and never shorter than a few passes.
BURST_S, SHORTEST_S = 30.0, 10.0
#: Possessions that are drawn to see how often a sentence speaks and how fast the ball moves (own choice).
DRAWN = 12


@dataclass(frozen=True, slots=True)
class Ball:
    """How a book moves the ball: seconds from pass to pass, and how often each sentence moves somebody per pass."""

    pass_s: float
    answers: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Teams:
    """Teams of so many players, `active` of them at once, for `burst_s` seconds each; four play the ring with a gap."""

    counts: tuple[int, ...]
    active: int
    burst_s: float
    ball: Ball

    @property
    def players(self) -> int:
        """How many there are in all."""
        return sum(self.counts)

    @property
    def wait_s(self) -> float:
        """How long a team stands before it is its turn again."""
        return (-(-len(self.counts) // self.active) - 1) * self.burst_s

    def each(self, block_s: float, rank: int) -> float:
        """How often each player is moved by a sentence in a block of so many seconds."""
        return repetitions(block_s, self.ball.pass_s, self.ball.answers[rank], self.active, self.players)


def teams(book: Book, hall: Hall) -> Teams:
    """Everybody in teams of three to five, as even as can be. Raises: ShortError for fewer than three, or no ball."""
    if hall.players < FEWEST or hall.balls < 1:
        raise ShortError(
            f"{hall.players} players and {hall.balls} balls are too few to move a ball as a team. "
            "Take a drill for two, or let coaches and parents stand on spots."
        )
    number = -(-hall.players // MOST)
    each, more = divmod(hall.players, number)
    counts = tuple(each + (i < more) for i in range(number))
    active = min(max(hall.baskets, 1), hall.balls, number)
    rounds = -(-number // active)
    burst = BURST_S if rounds == 1 else max(min(BURST_S, MOST_WAIT_S / (rounds - 1)), SHORTEST_S)
    return Teams(counts, active, burst, ball(book))


def ball(book: Book) -> Ball:
    """How the book moves the ball, measured on possessions drawn by seed."""
    ground, passes, seconds = gym(book), 0, 0.0
    moved = [0] * len(book.sentences)
    for seed in range(1, DRAWN + 1):
        steps = _passed(book, seed)
        if not steps:
            continue
        passes += len(steps)
        seconds += float(timed(book, steps, ground).duration_s)
        for step in steps:
            for action in {(a.habit, a.player) for beat in step.beats for a in beat.decision.actions if a.moves}:
                if action[0] is not None:
                    moved[action[0]] += 1
    if not passes:
        raise BackcutError("Under this book no pass can be played from the start. `backcut prove` says why.")
    return Ball(seconds / passes, tuple(count / passes for count in moved))


def _passed(book: Book, seed: int) -> Sequence[Step]:
    """The passes a drawn possession begins with, until something else happens or the book leaves something open."""
    steps: list[Step] = []
    try:
        drawn = possession(book, book.start(), seed)
    except BackcutError:
        return ()
    for step in drawn:
        if step.event.kind not in PASSES or any(beat.decision.troubles for beat in step.beats):
            break
        steps.append(step)
    return steps
