"""Picks one clip out of a file that holds several."""

from __future__ import annotations

import numpy as np

from backcut.errors import FilmError
from backcut.film.reader import Ask
from backcut.film.rows import Rows, Texts

_SHOWN = 8  # estimate: more names than this nobody reads in one line


def pick_clip(rows: Rows, clips: Texts | None, ask: Ask) -> Rows:
    """The rows of the clip that was asked for; `clips`, (n,), names the clip of each row, or None where there are none.

    Raises: FilmError if the file has several and none was asked for, or if the one asked for is not there.
    """
    if clips is None:
        if ask.clip is not None:
            raise FilmError(f"{rows.file}: --clip {ask.clip} was asked for, but there is no column that names clips.")
        return rows
    names = list(dict.fromkeys(clips.tolist()))
    if ask.clip is None and len(names) > 1:
        raise FilmError(f"{rows.file}: {len(names)} clips stand in this file; name one with --clip: {shown(names)}.")
    if ask.clip is not None and ask.clip not in names:
        raise FilmError(f'{rows.file}: no clip is called "{ask.clip}"; the clips are {shown(names)}.')
    return rows if ask.clip is None else rows.only(np.equal(clips, ask.clip))


def shown(names: list[str]) -> str:
    """The first names, and how many more there are."""
    more = f" and {len(names) - _SHOWN} more" if len(names) > _SHOWN else ""
    return ", ".join(names[:_SHOWN]) + more
