"""Tracks as the page carries them: whole centimetres and hundredths of a second, each number the step from the last."""

from __future__ import annotations

from itertools import pairwise

from backcut.motion.thin import kept_knots
from backcut.motion.timeline import Timeline, Track

#: A knot is left out when the straight way between its neighbours in time passes this near: a third of a pixel on a
#: floor 600 pixels wide, and a turn no eye sees (own choice).
FLAT_CM = 1.0
FLAT_DEG = 2.0

Knots = list[list[int]]


def steps(whole: list[int]) -> list[int]:
    """The first value, then each value's step from the one before."""
    return [whole[0], *(b - a for a, b in pairwise(whole))]


def packed(track: Track, scale: float = 100.0, flat: float = FLAT_CM) -> Knots:
    """One track: times in hundredths of a second, then one list a column."""
    return _packed([Track(track.t_s, track.place_m[:, :2] * scale)], [flat])[0]


def packed_timeline(timeline: Timeline) -> dict[str, object]:
    """All tracks, by what they are: players p, defenders x, their headings f, ball b."""
    kinds = {"p": timeline.players, "x": timeline.defenders, "f": timeline.facing_deg}
    scaled = [
        Track(track.t_s, track.place_m * (1.0 if kind == "f" else 100.0))
        for kind, tracks in kinds.items()
        for track in tracks.values()
    ]
    flats = [FLAT_DEG if kind == "f" else FLAT_CM for kind, tracks in kinds.items() for _ in tracks]
    ball = Track(timeline.ball.t_s, timeline.ball.place_m[:, :2] * 100.0)
    *knots, ball_knots = _packed([*scaled, ball], [*flats, FLAT_CM])
    rest = iter(knots)
    return {
        "end": round(timeline.duration_s * 100),
        **{kind: {str(n): next(rest) for n in tracks} for kind, tracks in kinds.items()},
        "b": ball_knots,
    }


def _packed(tracks: list[Track], flats: list[float]) -> list[Knots]:
    """Tracks in the page's own units, each without the knots that lie within its `flat`."""
    return [
        [
            steps([round(t * 100) for t in track.t_s[keep].tolist()]),
            *(steps([round(value) for value in column]) for column in track.place_m[keep].T.tolist()),
        ]
        for track, keep in zip(tracks, kept_knots(tracks, flats, by_axis=True), strict=True)
    ]
