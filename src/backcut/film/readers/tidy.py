"""The tidy table: one row per entity and moment; CSV (also gzipped) or Parquet."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from backcut.film.clip import pick_clip
from backcut.film.file import open_columns
from backcut.film.reader import Ask, Reader
from backcut.film.rows import Rows
from backcut.film.stated import stated_from_texts


def _recognises(columns: tuple[str, ...]) -> bool:
    return {"entity", "team"} <= set(columns) and not {"x", "y"}.isdisjoint(columns)


def _read(path: Path, ask: Ask) -> Rows:
    columns = open_columns(path)
    names = columns.table.column_names
    columns.need("entity", "team", "x", "y")
    if "t" not in names:
        columns.need("frame")
    z = columns.numbers("z", may_be_empty=True) if "z" in names else None
    rows = Rows(
        file=columns.file,
        t_s=columns.numbers("t") if "t" in names else None,
        frame=columns.numbers("frame") if "t" not in names else None,
        entity=columns.words("entity"),
        team=columns.words("team"),
        x=columns.numbers("x"),
        y=columns.numbers("y"),
        z=z,
        row=np.arange(len(columns.table), dtype=np.intp) + columns.first_row,
        stated=stated_from_texts(columns.header, f"{columns.file}, header"),
    )
    return pick_clip(rows, columns.words("clip") if "clip" in names else None, ask)


READER = Reader(
    name="tidy table",
    says="one row per entity and moment, columns t (seconds) or frame, entity, team, x, y, maybe z and clip",
    recognises=_recognises,
    read=_read,
)
