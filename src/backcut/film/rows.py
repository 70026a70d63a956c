"""The rows of a film as a reader hands them over: columns still in the frame of the source, checked one by one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
from numpy.typing import NDArray

from backcut.errors import FilmError
from backcut.film.stated import Stated
from backcut.motion.timeline import Floats

Texts = NDArray[np.str_]


@dataclass(frozen=True, slots=True)
class Columns:
    """The columns of one table and where its rows stand: row i of the data is row `first_row` + i of the file.

    `header` is what the file says of itself before its rows, key to text.
    """

    file: str
    table: pa.Table
    first_row: int = 1
    decimal_comma: bool = False
    header: Mapping[str, str] = field(default_factory=dict)

    def need(self, *names: str) -> None:
        """Raises: FilmError if one of the columns is not there."""
        missing = [name for name in names if name not in self.table.column_names]
        if missing:
            raise FilmError(
                f"{self.file}: there is no column {' and no column '.join(missing)}; "
                f"the columns are {', '.join(self.table.column_names)}."
            )

    def numbers(self, name: str, *, may_be_empty: bool = False) -> Floats:
        """The column as floats, (n,); an empty cell is NaN where it may be. Raises: FilmError naming a bad row."""
        column = self.table[name].combine_chunks()
        if pa.types.is_string(column.type) or pa.types.is_large_string(column.type):
            column = self._parsed(name, column, may_be_empty)
        if not (
            pa.types.is_floating(column.type) or pa.types.is_integer(column.type) or pa.types.is_decimal(column.type)
        ):
            raise FilmError(f"{self.file}, column {name}: it holds {column.type}; it should hold numbers.")
        values = np.asarray(column.cast(pa.float64(), safe=False).to_numpy(zero_copy_only=False), dtype=np.float64)
        bad = np.isinf(values) if may_be_empty else ~np.isfinite(values)
        if bad.any():
            self.refuse(
                int(bad.argmax()), name, "is not a finite number; write a number such as 12.4, or leave the moment out"
            )
        return values

    def words(self, name: str) -> Texts:
        """The column as texts without outer spaces, (n,). Raises: FilmError naming the first empty cell."""
        column = self.table[name].combine_chunks().cast(pa.string())
        values = np.array(pc.utf8_trim_whitespace(pc.fill_null(column, "")).to_pylist(), dtype=np.str_)
        if (values == "").any():
            self.refuse(int((values == "").argmax()), name, "is empty; every row needs one")
        return values

    def rows_where(self, name: str, text: str) -> NDArray[np.intp]:
        """The data rows whose cell in column `name` reads `text`."""
        same = pc.equal(self.table[name].cast(pa.string()), text)
        return np.flatnonzero(np.asarray(pc.fill_null(same, False)))

    def part(self, start: int, stop: int) -> Columns:
        """Only the data rows from `start` up to `stop`; they keep their row numbers in the file."""
        return replace(self, table=self.table.slice(start, stop - start), first_row=self.first_row + start)

    def refuse(self, i: int, name: str, what: str) -> None:
        """Raises: FilmError for the cell of column `name` in data row `i`; `what` says what is wrong and right."""
        cell = self.table[name][i].as_py()
        shown = "" if cell is None or cell == "" else f'"{cell}" '
        raise FilmError(f"{self.file}, row {self.first_row + i}, column {name}: {shown}{what}.")

    def _parsed(self, name: str, column: pa.Array, may_be_empty: bool) -> pa.Array:
        text = pc.utf8_trim_whitespace(column)
        if self.decimal_comma:
            text = pc.replace_substring(text, ",", ".")
        text = pc.if_else(pc.equal(text, ""), pa.scalar(None, text.type), text)
        try:
            return text.cast(pa.float64())
        except pa.ArrowInvalid:
            for i, cell in enumerate(text.to_pylist()):
                try:
                    float(cell) if cell is not None else None
                except ValueError:
                    self.refuse(i, name, "is not a number; write a number such as 12.4")
            raise


@dataclass(frozen=True, eq=False)
class Rows:
    """One film as a reader found it. Exactly one of `t_s` and `frame` is given; every array is (n,).

    `x`, `y`, `z` are in the frame and units of the source; `row` is the row of the file; `stated` is what the file or
    its format states; `notes` is what the reader wants to be known.
    """

    file: str
    t_s: Floats | None
    frame: Floats | None
    entity: Texts
    team: Texts
    x: Floats
    y: Floats
    z: Floats | None
    row: NDArray[np.intp]
    stated: Stated = field(default_factory=Stated)
    notes: tuple[str, ...] = ()

    def only(self, keep: NDArray[np.bool_]) -> Rows:
        """The rows where `keep`, (n,), is true."""
        arrays = {name: array[keep] for name in ARRAYS if (array := getattr(self, name)) is not None}
        return replace(self, **arrays)


ARRAYS = ("t_s", "frame", "entity", "team", "x", "y", "z", "row")
