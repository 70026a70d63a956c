"""Tracks as the page carries them: whole centimetres and hundredths of a second, each number the step from the last."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from backcut.motion.timeline import Floats, Timeline, Track

#: A knot is left out when the straight way between its neighbours in time passes this near: a third of a pixel on a
#: floor 600 pixels wide, and a turn no eye sees (own choice).
FLAT_CM = 1.0
FLAT_DEG = 2.0

Knots = list[list[int]]


def thinned(t_s: Floats, values: Floats, flat: float) -> list[int]:
    """Indices of the knots to keep so that linear interpolation in time stays within `flat` of every knot."""
    keep, spans = {0, len(t_s) - 1}, [(0, len(t_s) - 1)]
    while spans:
        a, b = spans.pop()
        if b - a < 2:
            continue
        between = slice(a + 1, b)
        share = ((t_s[between] - t_s[a]) / max(t_s[b] - t_s[a], 1e-9))[:, None]
        off = np.abs(values[a] + (values[b] - values[a]) * share - values[between]).max(axis=1)
        far = int(off.argmax())
        if off[far] > flat:
            keep.add(a + 1 + far)
            spans += [(a, a + 1 + far), (a + 1 + far, b)]
    return sorted(keep)


def steps(whole: list[int]) -> list[int]:
    """The first value, then each value's step from the one before."""
    return [whole[0], *(b - a for a, b in pairwise(whole))]


def packed(track: Track, scale: float = 100.0, flat: float = FLAT_CM) -> Knots:
    """One track: times in hundredths of a second, then one list a column."""
    values = track.place_m[:, :2] * scale
    kept = thinned(track.t_s, values, flat)
    times = [round(float(track.t_s[i]) * 100) for i in kept]
    columns = [[round(float(value)) for value in column[kept]] for column in values.T]
    return [steps(times), *(steps(column) for column in columns)]


def packed_timeline(timeline: Timeline) -> dict[str, object]:
    """All tracks, by what they are: players p, defenders x, their headings f, ball b."""
    return {
        "end": round(timeline.duration_s * 100),
        "p": {str(n): packed(track) for n, track in timeline.players.items()},
        "x": {str(n): packed(track) for n, track in timeline.defenders.items()},
        "f": {str(n): packed(track, 1.0, FLAT_DEG) for n, track in timeline.facing_deg.items()},
        "b": packed(timeline.ball),
    }
