"""Reads a film: from a file and what is stated to one strip in the house frame."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from backcut.court.courts import COURTS, court
from backcut.court.record import Court
from backcut.errors import CourtError, FilmError
from backcut.film.attackers import with_attackers
from backcut.film.checks import check_places
from backcut.film.clock import seconds_of, stretch
from backcut.film.detect import find_facts
from backcut.film.frame import to_house
from backcut.film.reader import Ask, reader_of
from backcut.film.rows import Rows
from backcut.film.stated import Stated
from backcut.film.strip import Strip


def read_rows(
    path: Path, ask: Ask, *, from_s: float | None = None, to_s: float | None = None, rate_hz: float | None = None
) -> Rows:
    """The rows of one film, still in the frame of the source, from `from_s` to `to_s` on its clock.

    Raises: FilmError if no reader knows the file, or if a cell, the clip or the clock is wrong.
    """
    rows = reader_of(path).read(path, ask)
    return stretch(rows, seconds_of(rows, rate_hz or rows.stated.rate_hz), from_s, to_s)


def read_film(
    path: Path,
    stated: Stated | None = None,
    ask: Ask | None = None,
    *,
    from_s: float | None = None,
    to_s: float | None = None,
) -> Strip:
    """The possession in a file, in the house frame.

    `stated` goes before what the file states; the rest is detected. Raises: FilmError naming the file, the row and the
    column, what is wrong and what would be right.
    """
    ask = ask or Ask()
    reader = reader_of(path)
    command = stated or Stated()
    rows = read_rows(path, ask, from_s=from_s, to_s=to_s, rate_hz=command.rate_hz)
    known = command.over(rows.stated)
    floor = court_of(known, rows.file)
    moments, offence = with_attackers(rows, seconds_of(rows, known.rate_hz), known.offence)
    facts = find_facts(moments, known, floor)
    house_m = to_house(moments.places, facts.frame, floor)
    height_m = None if moments.height is None else moments.height * facts.units.value.in_metres
    check_places(moments, house_m, height_m, floor)
    ball_m = house_m[:, 0] if height_m is None else np.column_stack([house_m[:, 0], np.maximum(height_m, 0.0)])
    return Strip(
        file=rows.file,
        reader=reader.name,
        court=floor.name,
        t_s=moments.t_s,
        start_s=moments.start_s,
        attackers_m=house_m[:, 1:6],
        defenders_m=house_m[:, 6:],
        ball_m=ball_m,
        attackers=moments.entities[1:6],
        defenders=moments.entities[6:],
        facts=facts,
        offence=offence,
        notes=(*rows.notes, *_overruled(command, rows.stated)),
    )


def court_of(known: Stated, file: str) -> Court:
    """The court a film was played on. Raises: FilmError if nobody states it, or if there is no such court."""
    if known.court is None:
        raise FilmError(f"{file}: nobody states the court; add --court with one of {', '.join(COURTS)}.")
    try:
        return court(known.court)
    except CourtError as problem:
        raise FilmError(f"{file}: {problem}") from problem


def _overruled(command: Stated, file: Stated) -> tuple[str, ...]:
    pairs = {name: (getattr(command, name), getattr(file, name)) for name in Stated.__slots__}
    return tuple(
        f"The command states {name} {mine}, the file {theirs}; the command holds."
        for name, (mine, theirs) in pairs.items()
        if mine is not None and theirs is not None and str(mine).lower() != str(theirs).lower()
    )
