"""Where and with whom a book is played: court, squad and the places of the spots; and a possession in time there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from backcut.court.placing import Placing, place
from backcut.court.record import Court
from backcut.court.written import court_from_text
from backcut.engine.possession import Step
from backcut.motion.squads import Squad, squad_named
from backcut.offence.book import Book

if TYPE_CHECKING:
    from backcut.motion.timeline import Timeline

#: The squad that runs when neither book nor command names one.
USUAL_SQUAD = "boys-u16"
#: Seconds of a spoken count (common practice, no source).
COUNT_S = 1.0

#: How many spoken counts a catcher holds the ball, by the value of "hold count".
HOLDS = {"none": 0, "one": 1, "two": 2}


@dataclass(frozen=True)
class Gym:
    """A court with the ring placed on it, shrunk where it is too long for the squad's passes."""

    court: Court
    squad: Squad
    placing: Placing

    @property
    def said(self) -> tuple[str, ...]:
        """What has to be said aloud: the model behind the runs, a stand-in ring, a shrunk ring, pairs that miss."""
        model = f"{self.squad.title}. Runs and passes are computed from a model of this squad, not filmed."
        return tuple(line for line in (model, self.placing.said) if line)


def gym(book: Book, court: str | None = None, squad: str | None = None) -> Gym:
    """The book's own court and squad, or others in their place.

    Raises: CourtError or MotionError for a court or a squad that is not known, or a ring that cannot be placed.
    """
    ground = court_from_text(court or book.court)
    runners = squad_named(squad or book.squad or USUAL_SQUAD)
    return Gym(
        ground,
        runners,
        place(ground, book.formation.ring, moved=book.moved, longest_pass_m=runners.longest_pass_m),
    )


def timed(book: Book, steps: Sequence[Step], gym: Gym) -> Timeline:
    """A played possession in time, by the book's choices. Raises: MotionError for steps that cannot be timed."""
    # Arrays are loaded only where a possession is really put in time.
    from backcut.engine.setting import Denial
    from backcut.engine.timeline import build
    from backcut.motion.floor import Floor

    values, court = book.values, gym.court
    return build(
        steps,
        gym.placing.spots,
        gym.squad,
        hold_s=HOLDS[values["hold count"]] * COUNT_S,
        fill_timing=values["when to fill"],
        signal=values["signal"],
        denies=Denial(court, values["denial"], book.mark_m),
        floor=Floor(court.half_width_m, court.basket_from_baseline.m, court.mid_court_y_m),
    )
