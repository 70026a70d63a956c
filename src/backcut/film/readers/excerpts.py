"""Excerpts at 25 pictures a second with the height of the ball: one row per entity and moment, feet, milliseconds.

The layout is that of the two development excerpts taken from github.com/smeznar/NBA-movement-model (410d533) and
github.com/chuqicc/NBA_Full_Game_Viewer (c50c9f4): columns excerpt, t_ms, team, entity, x_ft, y_ft, z_ft and clocks. Who
attacks is not written there.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np

from backcut.film.clip import pick_clip
from backcut.film.file import open_columns
from backcut.film.reader import Ask, Reader
from backcut.film.rows import Rows
from backcut.film.stated import Origin, Stated, Units


def _recognises(columns: tuple[str, ...]) -> bool:
    return {"excerpt", "t_ms", "x_ft", "y_ft"} <= set(columns)


def _read(path: Path, ask: Ask) -> Rows:
    columns = open_columns(path)
    columns.need("excerpt", "t_ms", "team", "entity", "x_ft", "y_ft", "z_ft")
    rows = Rows(
        file=columns.file,
        t_s=columns.numbers("t_ms") / 1000,
        frame=None,
        entity=columns.words("entity"),
        team=columns.words("team"),
        x=columns.numbers("x_ft"),
        y=columns.numbers("y_ft"),
        z=columns.numbers("z_ft", may_be_empty=True),
        row=np.arange(len(columns.table), dtype=np.intp) + columns.first_row,
        stated=Stated(units=Units.FT, origin=Origin.CORNER, court="NBA"),
    )
    return pick_clip(rows, columns.words("excerpt"), ask)


READER = Reader(
    name="25 Hz excerpts",
    says="one row per entity and moment, columns excerpt, t_ms, team, entity, x_ft, y_ft, z_ft",
    recognises=_recognises,
    read=_read,
)
