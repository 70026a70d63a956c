"""Possessions that ended in a made basket: one row a moment, ten players and the ball in hundredths of a foot.

The layout is that of the development clips taken from github.com/xupei0610/SocialVAE (eb23cba, data/nba/score): columns
clip, frame, ball_x, ball_y, h1_x .. v5_y, a moment every 0.12 s, court 94 x 50 ft, origin in a corner. A second table,
one row a clip, says who attacks which basket and how far the clip can be trusted.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np

from backcut.errors import FilmError
from backcut.film.file import open_columns
from backcut.film.reader import Ask, Reader
from backcut.film.rows import Columns, Rows
from backcut.film.stated import Attack, Origin, Stated, Units
from backcut.motion.timeline import Floats

STEP_S = 0.12  # as the source states it
PER_FOOT = 100  # int16 hundredths of a foot, as the source states it
SIDES = {"home": "h", "visitor": "v"}
ATTACKS = {"low_x": Attack.LEFT, "high_x": Attack.RIGHT}
ENTITIES = ("ball", *(f"{side}{i}" for side in "hv" for i in range(1, 6)))


def _recognises(columns: tuple[str, ...]) -> bool:
    return {"clip", "frame", "ball_x", "h1_x", "v5_y"} <= set(columns)


def _read(path: Path, ask: Ask) -> Rows:
    if ask.clip is None:
        raise FilmError(
            f"{path.name}: this file holds many clips; name one with --clip, as it stands in the column clip."
        )
    columns = open_columns(path)
    columns.need("clip", "frame", *(f"{entity}_{axis}" for entity in ENTITIES for axis in "xy"))
    clip = _explained(ask, path)
    columns = _part(columns, ask.clip)
    n = len(columns.table)
    offence = SIDES[clip["offence"]]
    team = ["ball", *("offence" if entity[0] == offence else "defence" for entity in ENTITIES[1:])]
    quality = clip.get("quality", "ok")
    return Rows(
        file=path.name,
        t_s=np.repeat(np.round(columns.numbers("frame") * STEP_S, 2), len(ENTITIES)),
        frame=None,
        entity=np.array(ENTITIES * n),
        team=np.array(team * n),
        x=_places(columns, "x"),
        y=_places(columns, "y"),
        z=None,
        row=np.repeat(np.arange(n) + columns.first_row, len(ENTITIES)),
        stated=Stated(units=Units.FT, origin=Origin.CORNER, attack=ATTACKS[clip["attack"]], court="NBA"),
        notes=() if quality == "ok" else (f'The second table marks clip {ask.clip} "{quality}" instead of "ok".',),
    )


def _part(columns: Columns, clip: str) -> Columns:
    rows = columns.rows_where("clip", clip)
    if len(rows) == 0:
        raise FilmError(f'{columns.file}: no clip is called "{clip}".')
    if rows[-1] - rows[0] + 1 != len(rows):
        raise FilmError(
            f"{columns.file}: the rows of clip {clip} do not stand together; sort the table by clip and frame."
        )
    return columns.part(int(rows[0]), int(rows[-1]) + 1)


def _places(columns: Columns, axis: str) -> Floats:
    return np.stack([columns.numbers(f"{entity}_{axis}") for entity in ENTITIES], axis=1).ravel() / PER_FOOT


def meta_beside(path: Path) -> Path:
    """Where the second table lies if --meta does not say: beside the clips, "clips" in its name read as "meta"."""
    return path.with_name(path.stem.replace("clips", "meta") + ".csv.gz")


def _explained(ask: Ask, path: Path) -> dict[str, str]:
    meta = ask.meta or meta_beside(path)
    if not meta.exists():
        raise FilmError(
            f"{path.name}: who attacks stands in a second table, {meta.name}, which is not there; name it with --meta."
        )
    columns = open_columns(meta)
    columns.need("clip", "offence", "attack")
    found = columns.rows_where("clip", ask.clip or "")
    if len(found) != 1:
        raise FilmError(f'{meta.name}: clip "{ask.clip}" stands there {len(found)} times; it should stand there once.')
    i = int(found[0])
    row = {name: str(columns.table[name][i].as_py()) for name in columns.table.column_names}
    if row["offence"] not in SIDES:
        columns.refuse(i, "offence", f"is no side; write {' or '.join(SIDES)}")
    if row["attack"] not in ATTACKS:
        columns.refuse(i, "attack", f"is no basket; write {' or '.join(ATTACKS)}")
    return row


READER = Reader(
    name="made-basket clips",
    says="one row a moment, columns clip, frame, ball_x, ball_y, h1_x to v5_y",
    recognises=_recognises,
    read=_read,
)
