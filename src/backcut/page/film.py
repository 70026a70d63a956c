"""A possession read from real tracking: the same floor without a book."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from backcut.court.record import Court
from backcut.court.spots import Spot
from backcut.motion.timeline import Timeline, pose
from backcut.page.document import page
from backcut.picture.show import Answer, Moment, Place, Show


def film_page(
    timeline: Timeline,
    spots: Mapping[Spot, Place],
    court: Court,
    *,
    title: str,
    notes: Sequence[str] = (),
    at_spots: Sequence[tuple[float, Mapping[int, str]]] = (),
    subtitle: str = "",
) -> str:
    """A tracked possession as one HTML file that fetches nothing.

    `at_spots` names, at some times (seconds), where each player is in a coach's words ("left wing", "between spots");
    each becomes a stop of the time line. `spots` are metres of the house frame.
    """
    stops = [(0.0, {}), *at_spots] if not at_spots or at_spots[0][0] > 0.0 else list(at_spots)
    moments = tuple(_moment(timeline, t_s, named) for t_s, named in stops)
    return page(Show(title, subtitle, court, spots, (), moments, timeline, tuple(notes)), kind="film")


def _moment(timeline: Timeline, t_s: float, named: Mapping[int, str]) -> Moment:
    holder = pose(timeline, t_s).holder
    answers = tuple(Answer(player, "hold", None, text, moves=False) for player, text in sorted(named.items()))
    if holder is None:
        said = "The ball is in the air."
    else:
        said = f"{holder} has the ball{f', {named[holder]}' if named.get(holder) else ''}."
    return Moment(t_s, None, said, answers)
