"""Tracks with fewer knots: those that straight pieces between the others tell well enough are left out.

The way of Ramer (1972) and Douglas and Peucker (1973), with the gap measured at equal times; all tracks at once.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from backcut.motion.run import TICK_S
from backcut.motion.timeline import Track

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Bools = NDArray[np.bool_]

#: In a possession that goes on, the last knot of every stretch of this length stays, so that what has been shown does
#: not move when a step is added (own choice: a few knots more, and little is drawn twice).
STRETCH_S = 2.0


def thinned(track: Track, tolerance: float) -> Track:
    """The track without the knots that straight pieces between the others tell within `tolerance` (its own unit)."""
    return all_thinned([track], [tolerance])[0]


def all_thinned(tracks: Sequence[Track], tolerances: Sequence[float], stretch_s: float = np.inf) -> list[Track]:
    """Each track thinned to its own tolerance; with `stretch_s`, each stretch of that many seconds by itself."""
    kept = kept_knots(tracks, tolerances, stretch_s)
    return [Track(track.t_s[keep], track.place_m[keep]) for track, keep in zip(tracks, kept, strict=True)]


def kept_knots(
    tracks: Sequence[Track], tolerances: Sequence[float], stretch_s: float = np.inf, *, by_axis: bool = False
) -> list[Bools]:
    """For each track of n knots which of them stay, (n,); `by_axis` measures the gap along each axis, not across."""
    counts = np.array([len(track.t_s) for track in tracks])
    ends = np.cumsum(counts)
    t = np.concatenate([track.t_s for track in tracks])
    axes = np.zeros((3, len(t)))
    for track, end in zip(tracks, ends, strict=True):
        axes[: track.place_m.shape[1], end - len(track.t_s) : end] = track.place_m.T
    keep = np.zeros(len(t), dtype=np.bool_)
    keep[ends - 1] = keep[ends - counts] = True
    if np.isfinite(stretch_s):
        crosses = np.diff(t // stretch_s) > 0
        keep[:-1] |= crosses
        # Who stands there keeps the knot at which he sets off too: his next one may lie far ahead.
        keep[1:] |= crosses & (np.diff(t) > 2 * TICK_S)
    edges = np.flatnonzero(keep)
    # From the last knot of one track to the first of the next there is no knot between, so nothing is measured there.
    _keep_between(t, axes, np.repeat(tolerances, counts), keep, edges[:-1], edges[1:], by_axis)
    return np.split(keep, ends[:-1])


def _keep_between(
    t: Floats, axes: Floats, tolerances: Floats, keep: Bools, first: Ints, last: Ints, by_axis: bool
) -> None:
    """Mark in `keep` what has to stay between knots `first` (m,) and `last` (m,): all pairs at once, then each half."""
    while len(first):
        going = (last - first > 1) & (t[last] > t[first])
        first, last = first[going], last[going]
        inside = last - first - 1
        if not len(first):
            return
        begins = np.cumsum(inside) - inside
        pair = np.repeat(np.arange(len(first)), inside)
        at = np.arange(len(pair)) + (first + 1 - begins)[pair]
        share = (t[at] - t[first][pair]) / (t[last] - t[first])[pair]
        off = [axis[at] - (axis[first][pair] + share * (axis[last] - axis[first])[pair]) for axis in axes]
        gap = np.abs(off).max(axis=0) if by_axis else np.sqrt(off[0] ** 2 + off[1] ** 2 + off[2] ** 2)
        widest = np.maximum.reduceat(gap, begins)
        hits = np.flatnonzero(gap == widest[pair])
        worst = at[hits[np.searchsorted(hits, begins)]]
        split = widest > tolerances[first]
        first, worst, last = first[split], worst[split], last[split]
        keep[worst] = True
        first, last = np.concatenate([first, worst]), np.concatenate([worst, last])
