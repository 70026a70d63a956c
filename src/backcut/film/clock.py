"""The clock of a film: seconds from a column t, or from frame numbers and a rate; and one stretch of it."""

from __future__ import annotations

import numpy as np

from backcut.errors import FilmError
from backcut.film.rows import Rows
from backcut.motion.timeline import Floats

CLOSE = 0.2  # estimate: a rate stated 20 % off its file is a mistake, not a rounding


def seconds_of(rows: Rows, rate_hz: float | None) -> Floats:
    """Seconds of each row, (n,). Raises: FilmError if frames have no rate, or the rate contradicts the column t."""
    if rows.frame is not None:
        if rate_hz is None:
            raise FilmError(
                f"{rows.file}: time is counted in frames; state how many a second with --rate, such as --rate 25."
            )
        return rows.frame / rate_hz
    assert rows.t_s is not None
    times = np.unique(rows.t_s)
    if rate_hz is not None and len(times) > 1:
        found_hz = 1 / float(np.median(np.diff(times)))
        if abs(found_hz / rate_hz - 1) > CLOSE:
            raise FilmError(
                f"{rows.file}, column t: {rate_hz:g} frames a second are stated, but its steps make {found_hz:.4g}; "
                f"t should be in seconds, and --rate is only needed with a column frame."
            )
    return rows.t_s


def stretch(rows: Rows, seconds: Floats, from_s: float | None, to_s: float | None) -> Rows:
    """The rows from `from_s` to `to_s` on the clock of the file. Raises: FilmError if none is left."""
    first, last = float(seconds.min()), float(seconds.max())
    low, high = first if from_s is None else from_s, last if to_s is None else to_s
    keep = (seconds >= low - 1e-6) & (seconds <= high + 1e-6)
    if not keep.any():
        raise FilmError(
            f"{rows.file}: nothing lies between {low:g} and {high:g} s; its clock runs from {first:g} to {last:g} s."
        )
    return rows.only(keep)
