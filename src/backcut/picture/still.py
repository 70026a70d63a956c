"""A still of one moment for a small picture: what just happened, who stands where, and what the moment is about.

Marks are larger than on the floor, names and letters are left out, and only the defenders that matter are drawn.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from backcut.court.spots import Spot
from backcut.engine.possession import Beat, Step
from backcut.motion.timeline import Pose, pose
from backcut.offence.action import Kind
from backcut.picture import arrows
from backcut.picture.action_lines import ball_lines
from backcut.picture.apart import pushed_apart, question, toward
from backcut.picture.lines import Place, in_cm, length_cm, simplified, smooth_path, trimmed
from backcut.picture.marks import DISC_CM, HOLDER_CM, PLATE_CM, SPOT_CM
from backcut.picture.moment import FREE_HAND, PLATES, floor_label, look_of_the_ball, turn_deg
from backcut.picture.scene import Line, Mark, Primitive
from backcut.picture.show import Arrow, ArrowKind, Moment, Show, Stance

#: The size of marks on a small picture; the style sheet says the same (the look; own design, no source).
SIZE = 1.75
#: How far a small picture reaches down the floor at least, the floor kept below the lowest mark, and the air at the
#: sides for a player in the corner (the look; own design, no source).
REACH_CM = 830.0
BELOW_CM = 22.0
SIDE_CM = 44.0
#: Air between a disc and a line; radius of a hole; the ring round a player it is about; how far the second ring of a
#: clash stands off (own design, no source).
AIR_CM = 18.0
HOLE_CM = 72.0
ABOUT_CM = 26.0
CLASH_CM = 75.0

MATTER = frozenset({Stance.DENIES, Stance.SAGS, Stance.JUMPED, Stance.HELPS})

_Marks = Mapping[int, Place]


@dataclass(frozen=True, slots=True)
class About:
    """What a still is about: the place of the step and of the beat, and the players and the spot to mark."""

    at: tuple[int, int]
    players: tuple[int, ...] = ()
    spot: Spot | None = None


@dataclass(frozen=True, slots=True)
class Still:
    """A drawn still: its primitives from the lowest layer up, the picture in words, how far down it reaches in cm."""

    drawn: tuple[Primitive, ...]
    words: str
    reach_cm: float


@dataclass(frozen=True, slots=True)
class _Room:
    """Where the marks of a still are, in cm: discs with their radii, plates, and the rings of empty spots."""

    discs: _Marks
    radii: Mapping[int, float]
    plates: _Marks
    rings: tuple[Place, ...]


def still(show: Show, moment: Moment, steps: Sequence[Step], about: About) -> Still:
    """The still of a moment of the show. Without steps it is just everybody in his place."""
    places = pose(show.timeline, moment.t_s)
    room = _room(show, moment, places)
    beat = _beat(steps, about)
    clashes = [t for t in beat.decision.troubles if t.kind == "clash" and t.spot in show.spots] if beat else []
    lost = {a.player for a in moment.answers if a.kind == Kind.NO_ANSWER} - {trouble.player for trouble in clashes}

    under: list[Primitive] = [
        Mark("near" if spot.near else "spot", *_cm(show.spots[spot.spot]))
        for spot in moment.open_spots
        if spot.spot is not about.spot and _cm(show.spots[spot.spot]) in room.rings
    ]
    layered = _behind(show, steps, about, moment.t_s) if steps else []
    arrows_ = _arrows(show, moment, steps, about) if steps else []
    layered += [line for arrow in arrows_ for line in _drawn(arrow, room)]
    twins: dict[Spot, tuple[Place, Place]] = {}
    for trouble in clashes:
        if trouble.spot is not None and trouble.player in room.discs:
            there, comer = _cm(show.spots[trouble.spot]), room.discs[trouble.player]
            pair = twins.setdefault(trouble.spot, _twins(there, comer, list(room.discs.values())))
            sent = Arrow(ArrowKind.FILL, trouble.player, (_metres(comer), _metres(there)))
            layered += _drawn(sent, room, pair)
    stands = list(room.discs.values())
    under += [
        Line("twin", _circle(ring, DISC_CM * SIZE)) for pair in twins.values() for ring in pair if ring not in stands
    ]
    if not clashes:
        under += _rings(show, about, room, lost)
    layered.sort(key=lambda item: item[0])

    over = [*_bodies(show, moment, places, room)]
    others = [*room.discs.values(), *room.plates.values()]
    for player in sorted(lost & room.discs.keys()):
        disc = room.discs[player]
        over.append(question(disc, room.radii[player], [other for other in others if other != disc]))
    words = " ".join([floor_label(show, moment), *(trouble.text for trouble in clashes)])
    low = max((y + room.radii[n] for n, (_, y) in room.discs.items()), default=0.0)
    return Still((*under, *(line for _, line in layered), *over), words, max(low + BELOW_CM, REACH_CM))


def _room(show: Show, moment: Moment, places: Pose) -> _Room:
    radii = {n: SIZE * (HOLDER_CM if n == places.holder else DISC_CM) for n in places.players}
    at = {("p", n): _cm(place) for n, place in places.players.items()}
    at |= {("x", n): _cm((x, y)) for n, (x, y, _) in places.defenders.items() if moment.guards.get(n) in MATTER}
    wide = {key: radii[key[1]] if key[0] == "p" else PLATE_CM * SIZE * 0.75 for key in at}
    moved = pushed_apart(at, wide)
    discs = {n: place for (kind, n), place in moved.items() if kind == "p"}
    empty = [_cm(show.spots[spot.spot]) for spot in moment.open_spots if spot.spot in show.spots]
    free = [place for place in empty if all(math.dist(place, disc) > DISC_CM * SIZE for disc in discs.values())]
    return _Room(discs, radii, {n: place for (kind, n), place in moved.items() if kind == "x"}, tuple(free))


def _beat(steps: Sequence[Step], about: About) -> Beat | None:
    number, beat = about.at
    beats = steps[number].beats if steps else ()
    return beats[beat] if beat < len(beats) else None


def _behind(show: Show, steps: Sequence[Step], about: About, t_s: float) -> list[tuple[int, Line]]:
    """Where those who ran since the ball moved came from: history is lighter than what is meant."""
    number, beat = about.at
    over = [r for r in show.timeline.runs if r.step == number and r.beat <= beat and r.end_s <= t_s + 0.05]
    paths = [in_cm([(float(x), float(y)) for x, y in run.path_m[:, :2]]) for run in over]
    return [(0, Line("trail", smooth_path(simplified(path)))) for path in paths if len(path) > 1]


def _arrows(show: Show, moment: Moment, steps: Sequence[Step], about: About) -> list[Arrow]:
    """What moved the ball, and the runs that go on."""
    step = steps[about.at[0]]
    ball = [
        arrow
        for arrow in ball_lines(show.timeline, step, about.at[0], moment.t_s, step.before)
        if arrow.kind is ArrowKind.PASS or moment.guards.get(arrow.to_player or 0) is Stance.DENIES
    ]
    runs = [arrow for arrow in moment.arrows if arrow.kind not in (ArrowKind.PASS, ArrowKind.SHUT)]
    return [replace(arrow, lit=False) for arrow in (*ball, *runs)]


def _drawn(arrow: Arrow, room: _Room, twins: Sequence[Place] = ()) -> list[tuple[int, Line]]:
    """An arrow's lines with their layers, clear of the marks at its ends; before the two rings of a clash it stops."""
    path = in_cm(arrow.path_m)
    if len(path) < 2 or length_cm(path) < arrows.STEP_CM:
        return []

    def clear(end: Place) -> float:
        near = [room.radii[n] + AIR_CM for n, disc in room.discs.items() if math.dist(end, disc) < room.radii[n]]
        near += [SPOT_CM * SIZE + AIR_CM / 2 for ring in room.rings if math.dist(end, ring) < SPOT_CM * SIZE]
        return max(near, default=0.0)

    start, end = clear(path[0]), clear(path[-1])
    if twins:
        end = max(math.dist(path[-1], ring) for ring in twins) + DISC_CM * SIZE + AIR_CM / 2
    if start + end > length_cm(path) * 0.8:
        return []
    guard = room.plates.get(arrow.to_player) if arrow.to_player is not None else None
    return arrows.under(arrow, simplified(trimmed(path, start, end)), guard)


def _rings(show: Show, about: About, room: _Room, lost: set[int]) -> list[Primitive]:
    """The heavy dashed ring of a hole, and one round each player it is about; a question mark needs no ring."""
    rings = [(_cm(show.spots[about.spot]), HOLE_CM)] if about.spot in show.spots and about.spot is not None else []
    rings += [(room.discs[n], room.radii[n] + ABOUT_CM) for n in about.players if n in room.discs and n not in lost]
    return [Line("hole", _circle(place, radius)) for place, radius in rings]


def _twins(target: Place, comer: Place, discs: Sequence[Place]) -> tuple[Place, Place]:
    """The two of a clash: whoever stands on the spot and a ring that overlaps him, or two rings for two to come."""
    stands = min(discs, key=lambda disc: math.dist(disc, target))
    dx, dy = toward(target, comer)
    if math.dist(stands, target) < DISC_CM * SIZE:
        return stands, (stands[0] + dx * CLASH_CM, stands[1] + dy * CLASH_CM)
    half = CLASH_CM / 2
    return (target[0] + dy * half, target[1] - dx * half), (target[0] - dy * half, target[1] + dx * half)


def _bodies(show: Show, moment: Moment, places: Pose, room: _Room) -> list[Primitive]:
    out: list[Primitive] = []
    for n, (x, y) in room.plates.items():
        if moment.guards.get(n) in FREE_HAND:
            to_ball = math.degrees(math.atan2(places.ball[0] * 100 - x, y - places.ball[1] * 100))
            out.append(Mark("hand-free", x, y, to_ball))
        out.append(Mark(PLATES.get(moment.guards[n], "plain"), x, y, turn_deg(places.defenders[n][2]), f"X{n}"))
    for n, disc in room.discs.items():
        out.append(Mark("holder" if n == places.holder else "attacker", *disc, text=str(n)))
    if places.holder is None:
        out.append(Mark("ball", *_cm((places.ball[0], places.ball[1]))))
    else:
        dx, dy = look_of_the_ball(show.timeline, moment.t_s)
        out.append(Mark("ball", *room.discs[places.holder], shift_cm=(dx * HOLDER_CM, dy * HOLDER_CM)))
    return out


def _circle(middle: Place, radius: float) -> str:
    x, y, r = round(middle[0]), round(middle[1]), round(radius)
    return f"M{x} {y - r}A{r} {r} 0 1 1 {x} {y + r}A{r} {r} 0 1 1 {x} {y - r}Z"


def _cm(place: Place) -> Place:
    return place[0] * 100, place[1] * 100


def _metres(place: Place) -> Place:
    return place[0] / 100, place[1] / 100
