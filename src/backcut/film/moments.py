"""From rows to moments: at each one the ball, five attackers and five defenders, or one clear error why not."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from backcut.errors import FilmError
from backcut.film.rows import Rows, Texts
from backcut.motion.timeline import Floats

BALL, OFFENCE, DEFENCE = "ball", "offence", "defence"
_ALSO = {"offense": OFFENCE, "defense": DEFENCE}  # the other spelling, accepted
GAP_STEPS = 3  # estimate: two lost pictures in a row are a stutter, more is a jump of the clock
GAP_S = 0.5  # estimate: at any rate nobody moves far within so short a gap
SAME_S = 0.001  # times are compared to the millisecond, the finest unit the known formats write


@dataclass(frozen=True, eq=False)
class Moments:
    """n moments in the frame and units of the source.

    `t_s` (n,) seconds from the first one; `places` (n, 11, 2): ball, five attackers, five defenders; `height` (n,) of
    the ball or None; `row` (n, 11) the rows of the file; `start_s` the clock of the source at the first moment.
    """

    file: str
    t_s: Floats
    start_s: float
    entities: tuple[str, ...]
    places: Floats
    height: Floats | None
    row: NDArray[np.intp]


def gather(rows: Rows, seconds: Floats, team: Texts, *, offence: str = OFFENCE, defence: str = DEFENCE) -> Moments:
    """The moments of `rows`; `seconds` and `team`, (n,), are their clock and side, `offence` and `defence` its names.

    Raises: FilmError for a row twice, a missing or extra player, a clock that jumps, a ball height that comes and goes.
    """
    entities = _line_up(rows, team, offence, defence)
    clock_ms, moment = np.unique(np.round(seconds / SAME_S).astype(np.int64), return_inverse=True)
    slot = np.searchsorted(np.sort(entities), rows.entity)
    slot = np.argsort(entities)[slot]
    count = np.zeros((len(clock_ms), len(entities)), dtype=np.intp)
    np.add.at(count, (moment, slot), 1)
    t_s: Floats = clock_ms * np.float64(SAME_S)
    _each_once(rows, entities, t_s, moment, slot, count)
    order = np.empty_like(count)
    order[moment, slot] = np.arange(len(rows.entity))
    _steady(rows, t_s, order)
    return Moments(
        rows.file,
        np.round(t_s - t_s[0], 3),
        float(t_s[0]),
        tuple(entities.tolist()),
        np.stack([rows.x[order], rows.y[order]], axis=-1),
        _height(rows, order[:, 0], t_s),
        rows.row[order],
    )


def sides(rows: Rows) -> Texts:
    """The words of the column team in one spelling. Raises: FilmError if an entity changes sides."""
    team = np.array([_ALSO.get(word.lower(), word.lower()) for word in rows.team.tolist()])
    for entity in np.unique(rows.entity):
        mine = np.flatnonzero(rows.entity == entity)
        words, counts = np.unique(team[mine], return_counts=True)
        if len(words) > 1:
            usual = words[counts.argmax()]
            i = int(mine[(team[mine] != usual).argmax()])
            raise FilmError(
                f"{rows.file}, row {rows.row[i]}, column team: {entity} is {team[i]} here and {usual} elsewhere; "
                f"one entity belongs to one side throughout."
            )
    return team


def _line_up(rows: Rows, team: Texts, offence: str, defence: str) -> Texts:
    lists = {side: sorted(set(rows.entity[team == side].tolist()), key=_natural) for side in (BALL, offence, defence)}
    for side, need, what in ((BALL, 1, "ball"), (offence, 5, "attackers"), (defence, 5, "defenders")):
        found = lists[side]
        if len(found) != need:
            names = f" ({', '.join(found[:8])})" if found else ""
            raise FilmError(
                f'{rows.file}, columns entity and team: {len(found)} entities have the team "{side}"{names}; '
                f"a possession needs {need} {what}, the same from its first to its last moment."
            )
    return np.array(lists[BALL] + lists[offence] + lists[defence])


def _natural(text: str) -> tuple[int, int, str]:
    return (0, int(text), text) if text.isdigit() else (1, 0, text)


def _each_once(
    rows: Rows,
    entities: Texts,
    clock_s: Floats,
    moment: NDArray[np.intp],
    slot: NDArray[np.intp],
    count: NDArray[np.intp],
) -> None:
    if (count > 1).any():
        at, who = np.argwhere(count > 1)[0]
        both = np.flatnonzero((moment == at) & (slot == who))
        raise FilmError(
            f"{rows.file}, row {rows.row[both[1]]}: {entities[who]} stands at {clock_s[at]:.3f} s already in row "
            f"{rows.row[both[0]]}; each entity has one row a moment."
        )
    if (count == 0).any():
        at, who = np.argwhere(count == 0)[0]
        lost = np.flatnonzero((count == 0).any(axis=1))
        raise FilmError(
            f"{rows.file}: {entities[who]} has no row at {clock_s[at]:.3f} s; all eleven need one at every moment. "
            f"{len(lost)} of {len(clock_s)} moments are not complete, from {clock_s[lost[0]]:.3f} to "
            f"{clock_s[lost[-1]]:.3f} s: fill them, or name a stretch without them with --from and --to."
        )


def _steady(rows: Rows, t_s: Floats, order: NDArray[np.intp]) -> None:
    if len(t_s) < 2:
        raise FilmError(f"{rows.file}: there is {len(t_s)} moment; a film needs two or more.")
    for who in range(order.shape[1]):
        back = np.flatnonzero(np.diff(order[:, who]) < 0)
        if len(back):
            later, earlier = order[back[0] + 1, who], order[back[0], who]
            raise FilmError(
                f"{rows.file}, row {rows.row[earlier]}: the clock goes back from {t_s[back[0] + 1]:.3f} s in row "
                f"{rows.row[later]} to {t_s[back[0]]:.3f} s; the rows of {rows.entity[earlier]} should be in "
                f"order of time."
            )
    step_s = np.diff(t_s)
    jump = np.flatnonzero(step_s > max(GAP_STEPS * float(np.median(step_s)), GAP_S))
    if len(jump):
        i = int(jump[0])
        raise FilmError(
            f"{rows.file}, row {rows.row[order[i + 1]].min()}: the clock jumps from {t_s[i]:.3f} to {t_s[i + 1]:.3f} s "
            f"where a step is {np.median(step_s):.3f} s; one film has no gap: name the part before or after it with "
            f"--to or --from."
        )


def _height(rows: Rows, ball: NDArray[np.intp], t_s: Floats) -> Floats | None:
    if rows.z is None:
        return None
    height = rows.z[ball]
    unknown = np.isnan(height)
    if unknown.all():
        return None
    if unknown.any():
        i = int(unknown.argmax())
        raise FilmError(
            f"{rows.file}, row {rows.row[ball[i]]}, column z: the height of the ball is missing at {t_s[i]:.3f} s but "
            f"given elsewhere; give it at every moment or at none."
        )
    return height
