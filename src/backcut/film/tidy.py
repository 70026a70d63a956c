"""Writes a film as a tidy table, in the frame of its source, so that reading it again gives the same strip."""

from __future__ import annotations

from dataclasses import fields
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.csv
import pyarrow.parquet

from backcut.errors import FilmError
from backcut.film.moments import OFFENCE
from backcut.film.rows import Rows
from backcut.film.stated import Stated
from backcut.film.strip import Strip

ENDINGS = (".csv", ".csv.gz", ".parquet")


def write_tidy(rows: Rows, stated: Stated, path: Path) -> None:
    """Writes `rows`, with `stated` as the header. The ending of `path` chooses the form: .csv, .csv.gz or .parquet.

    Raises: FilmError if the ending is another, or if the file cannot be written.
    """
    if not path.name.endswith(ENDINGS):
        raise FilmError(f"{path}: the tidy table is written as {', '.join(ENDINGS)}; end the name with one of them.")
    header = {f.name: f"{value}" for f in fields(Stated) if (value := getattr(stated, f.name)) is not None}
    clock = {"t": rows.t_s} if rows.frame is None else {"frame": rows.frame}
    height = {} if rows.z is None else {"z": pa.array(rows.z, mask=np.isnan(rows.z))}
    named = {**clock, "entity": rows.entity, "team": rows.team, "x": rows.x, "y": rows.y, **height}
    table = pa.table(named)
    try:
        if path.suffix == ".parquet":
            meta = {f"backcut.{key}": value for key, value in header.items()}
            pa.parquet.write_table(table.replace_schema_metadata(meta), path)
            return
        with pa.output_stream(path, compression="gzip" if path.suffix == ".gz" else None) as out:
            out.write("".join(f"# {key}: {value}\n" for key, value in header.items()).encode())
            pa.csv.write_csv(table, out, pa.csv.WriteOptions(quoting_style="needed"))
    except OSError as problem:
        raise FilmError(f"{path}: the file cannot be written ({problem.strerror or problem}).") from problem


def header_of(strip: Strip, stated: Stated) -> Stated:
    """The header that lets a tidy table be read without any option: what is stated, and what was detected."""
    facts = strip.facts
    found = Stated(
        units=facts.units.value,
        origin=facts.origin.value,
        attack=facts.attack.value if facts.attack else None,
        court=strip.court,
        offence=None if strip.offence.value == OFFENCE else strip.offence.value,
    )
    return stated.over(found)
