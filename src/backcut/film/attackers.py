"""Which side attacks, where a file names its teams otherwise than offence and defence."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from backcut.errors import FilmError
from backcut.film.detect import NEAREST, How, Known
from backcut.film.moments import BALL, DEFENCE, OFFENCE, Moments, gather, sides
from backcut.film.rows import Rows
from backcut.motion.timeline import Floats


def with_attackers(rows: Rows, seconds: Floats, stated: str | None) -> tuple[Moments, Known[str]]:
    """The moments with the attackers in their place, and how the attacking side is known.

    `stated` is the side of `rows` that attacks, or None. Raises: FilmError as `gather` does, or if the side is unknown.
    """
    team = sides(rows)
    names = sorted(set(team.tolist()) - {BALL})
    if set(names) <= {OFFENCE, DEFENCE}:
        return gather(rows, seconds, team), Known(OFFENCE, How.STATED)
    if len(names) != 2:
        i = int(np.argmax([word not in (BALL, OFFENCE, DEFENCE) for word in team.tolist()]))
        raise FilmError(
            f'{rows.file}, row {rows.row[i]}, column team: "{rows.team[i]}"; it should hold offence, defence and '
            f"ball, or ball and the names of two teams, and holds {', '.join([BALL, *names])}."
        )
    if stated is not None:
        if stated.lower() not in names:
            raise FilmError(
                f'{rows.file}, column team: no side is called "{stated}"; --offence can be {" or ".join(names)}.'
            )
        names.sort(key=lambda name: name != stated.lower())
    moments = gather(rows, seconds, team, offence=names[0], defence=names[1])
    if stated is not None:
        return moments, Known(names[0], How.STATED)
    away = np.linalg.norm(moments.places[:, 1:] - moments.places[:, :1], axis=-1)
    share = float((away[:, :5].min(axis=1) < away[:, 5:].min(axis=1)).mean())
    first, percent = share > 0.5, max(share, 1 - share)
    said = f"{names[0] if first else names[1]} is nearest to the ball in {percent:.0%} of the moments"
    if percent < NEAREST:
        raise FilmError(f"{rows.file}, column team: {said}, which does not decide who attacks: state --offence.")
    return (moments if first else _swapped(moments)), Known(names[0] if first else names[1], How.DETECTED, said)


def _swapped(moments: Moments) -> Moments:
    order = [0, *range(6, 11), *range(1, 6)]
    entities = tuple(moments.entities[i] for i in order)
    return replace(moments, entities=entities, places=moments.places[:, order], row=moments.row[:, order])
