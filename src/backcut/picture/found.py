"""The show of a finding: its possession, with the moment at which it shows as a stop of its own."""

from __future__ import annotations

import bisect
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from backcut.engine.gym import Gym, gym
from backcut.engine.possession import Step
from backcut.motion.timeline import Held, Timeline, Track
from backcut.offence.book import Book
from backcut.offence.situation import Situation
from backcut.picture.action_lines import open_spots
from backcut.picture.show import Moment, Show
from backcut.picture.story import show
from backcut.picture.telling import moment_at

#: Two moments within this are one stop: no eye tells them apart on the time line (estimate).
SAME_S = 0.05


def show_at(
    book: Book,
    steps: Sequence[Step],
    at: tuple[int, int],
    said: str = "",
    *,
    court_name: str | None = None,
    squad_name: str | None = None,
) -> tuple[Show, int]:
    """The show of a possession and the place of the moment at which the finding shows; `at` is step and beat.

    `said` is the caption of that moment; a moment that says itself what the book leaves open may do without.

    Raises: CourtError or MotionError for a court or squad that is not known, or steps that cannot be timed.
    """
    told = show(book, steps, court_name=court_name, squad_name=squad_name)
    here = gym(book, court_name, squad_name)
    found = moment_at(book, steps, told.timeline, here, at, said)
    moments = list(told.moments)
    for place, moment in enumerate(moments):
        if abs(moment.t_s - found.t_s) < SAME_S:
            known = not said or said in moment.caption
            caption = moment.caption if known else f"{moment.caption} {said}"
            moments[place] = replace(moment, caption=caption)
            return replace(told, moments=tuple(moments)), place
    place = bisect.bisect([moment.t_s for moment in moments], found.t_s)
    moments.insert(place, found)
    return replace(told, moments=tuple(moments)), place


def show_of_start(
    book: Book, start: Situation, *, court_name: str | None = None, squad_name: str | None = None
) -> Show:
    """The show of a start in which the finding shows already: everybody stands, nothing has happened."""
    here = gym(book, court_name, squad_name)
    players = {player.number: _stands(here, start, player.number) for player in start.players}
    ball = Track(np.zeros(1), np.append(players[start.ball].place_m, [[1.0]], axis=1))
    line = Timeline(0.0, players, {}, {}, ball, (Held(start.ball, 0.0, 0.0),), (), ())
    moment = Moment(0.0, None, "", open_spots=open_spots(book, start))
    return Show(book.title, "", here.court, here.placing.spots, (), (moment,), line)


def _stands(here: Gym, start: Situation, number: int) -> Track:
    return Track(np.zeros(1), np.array([here.placing.spots[start.player(number).at]]))
