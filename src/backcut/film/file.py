"""Opens a table on disk, CSV (also gzipped) or Parquet, whatever its columns mean."""

from __future__ import annotations

import gzip
import io
import zlib
from pathlib import Path
from typing import Any

import pyarrow as pa
import pyarrow.csv
import pyarrow.parquet

from backcut.errors import FilmError
from backcut.film.rows import Columns

LIMIT_BYTES = 512 * 1024 * 1024  # estimate: ten times the text of a whole game at 25 pictures a second
_PEEK_BYTES = 64 * 1024  # estimate: more than any header with its column names


def is_parquet(path: Path) -> bool:
    """Whether the file begins as a Parquet file does. Raises: FilmError if it cannot be opened."""
    return _bytes(path, 4) == b"PAR1"  # magic number, Apache Parquet format


def column_names(path: Path) -> tuple[str, ...]:
    """The names of the columns, without reading the rows; empty if this is no table. Raises: FilmError."""
    if is_parquet(path):
        return tuple(_parquet(path).schema_arrow.names)
    try:
        return tuple(_split(_text(path, _PEEK_BYTES))[1])
    except UnicodeDecodeError:
        return ()


def open_columns(path: Path) -> Columns:
    """All columns of the table, with what its header states.

    Raises: FilmError if the file is not UTF-8 text or Parquet, is empty or too large, or if a row has too many cells.
    """
    if is_parquet(path):
        file = _parquet(path)
        meta = {k.decode(): v.decode(errors="replace") for k, v in (file.schema_arrow.metadata or {}).items()}
        header = {k.removeprefix("backcut."): v for k, v in meta.items() if k.startswith("backcut.")}
        return Columns(path.name, file.read(), header=header)
    return _csv(path)


def _parquet(path: Path) -> Any:
    try:
        return pa.parquet.ParquetFile(path)
    except (pa.ArrowInvalid, OSError) as problem:
        raise FilmError(f"{path.name}: the Parquet file is damaged ({problem}); export it again.") from problem


def _csv(path: Path) -> Columns:
    try:
        text = _text(path, LIMIT_BYTES + 1)
    except UnicodeDecodeError as problem:
        raise FilmError(
            f"{path.name}: this is not UTF-8 text (byte {problem.start}); save it as CSV in UTF-8."
        ) from problem
    if len(text) > LIMIT_BYTES:
        raise FilmError(
            f"{path.name}: more than {LIMIT_BYTES // 2**20} MB of text; cut out the possession you want to see."
        )
    header, names, delimiter, lines_before = _split(text)
    if not names:
        raise FilmError(f"{path.name}: the file is empty; it should begin with the names of its columns.")
    if len(set(names)) < len(names):
        twice = next(name for name in names if names.count(name) > 1)
        raise FilmError(f"{path.name}, row {lines_before + 1}: two columns are called {twice}; name each column once.")
    first_row = lines_before + 2
    body = "\n".join(text.splitlines()[first_row - 1 :]).rstrip()
    wrong: list[pa.csv.InvalidRow] = []

    def remember(row: pa.csv.InvalidRow) -> str:
        wrong.append(row)
        return "skip"

    if not body:
        raise FilmError(f"{path.name}: there are column names but no rows.")
    table = pa.csv.read_csv(
        io.BytesIO(body.encode()),
        pa.csv.ReadOptions(column_names=names, use_threads=False, block_size=len(body.encode()) + 1),
        pa.csv.ParseOptions(delimiter=delimiter, invalid_row_handler=remember, ignore_empty_lines=False),
        pa.csv.ConvertOptions(column_types=dict.fromkeys(names, pa.string()), strings_can_be_null=False),
    )
    if wrong:
        raise FilmError(
            f"{path.name}, row {first_row + wrong[0].number - 1}: {wrong[0].actual_columns} cells "
            f'where the columns are {wrong[0].expected_columns} ("{wrong[0].text[:60]}").'
        )
    return Columns(path.name, table, first_row, decimal_comma=delimiter == ";", header=header)


def _split(text: str) -> tuple[dict[str, str], list[str], str, int]:
    """The "# key: value" lines on top, the column names, the delimiter, and how many lines stand before the names."""
    header: dict[str, str] = {}
    for i, line in enumerate(text.splitlines()):
        if line.startswith("#"):
            key, colon, value = line.lstrip("# ").partition(":")
            if colon and key.strip().replace("_", "").isalpha():
                header[key.strip().lower()] = value
        elif line.strip():
            delimiter = max(",;\t", key=line.count)
            return header, [name.strip().strip('"').lower() for name in line.split(delimiter)], delimiter, i
    return header, [], ",", 0


def _text(path: Path, limit: int) -> str:
    data = _bytes(path, limit)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        if problem.start > len(data) - 4 and len(data) == limit:  # a letter cut in two by the limit
            return data[: problem.start].decode("utf-8-sig")
        raise


def _bytes(path: Path, limit: int) -> bytes:
    try:
        with path.open("rb") as plain:
            zipped = plain.read(2) == b"\x1f\x8b"  # magic number, RFC 1952
        with gzip.open(path) if zipped else path.open("rb") as file:
            return file.read(limit)
    except (OSError, EOFError, zlib.error) as problem:
        raise FilmError(
            f"{path}: the file cannot be read ({getattr(problem, 'strerror', None) or problem})."
        ) from problem
