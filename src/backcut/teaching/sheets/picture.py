"""A moment on paper: ink only, marks large, the letters of the sentences on the moves, at most four arrows."""

from __future__ import annotations

import math
import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from html import escape, unescape
from typing import Final

from backcut.court.record import Court
from backcut.motion.timeline import pose
from backcut.page.plain import plain_style
from backcut.picture import arrows
from backcut.picture.apart import APART_CM, pushed_apart, toward
from backcut.picture.floor import Floor, floor
from backcut.picture.lettering import LARGEST, Box, Crowd, flag_place
from backcut.picture.lines import Place, in_cm, length_cm, simplified, smooth_path, trimmed
from backcut.picture.marks import DISC_CM, HOLDER_CM, PLATE_CM, SPOT_CM, defs
from backcut.picture.moment import LABELLED, bodies, floor_label
from backcut.picture.scene import Line, Mark, Primitive, to_svg
from backcut.picture.show import Arrow, ArrowKind, Moment, Show, Stance
from backcut.picture.still import About

#: The size of marks on a sheet, and on a small picture such as a card or a poster (the look; own design, no source).
SHEET: Final = 1.36
SMALL: Final = 1.75
#: The lettering on a sheet: 56 cm of the floor high with its marks (the look).
SAY: Final = 1.15
#: At most so many arrows a picture: one with twenty cannot be read (common practice, no source; the look says four).
MOST_ARROWS: Final = 4
#: Own design, no source, in cm: air between a mark and a line, round the picture, how far down it reaches at least, and
#: between a mark and the ring round it.
AIR_CM: Final = 10.0
EDGE_CM: Final = 8.0
REACH_CM: Final = 803.0
RING_CM: Final = 18.0
#: A lit move of which less than this is seen, in cm, may not be covered (own design, no source).
SHORT_CM: Final = 150.0
#: Widths in cm at the size of a sheet (the look): a cased line from edge to edge, its white, a cut, a court line.
CASE, ROAD, RUN, PAINT = 46.0, 37.0, 12.0, 4.0

MATTER: Final = frozenset({Stance.DENIES, Stance.SAGS, Stance.JUMPED, Stance.HELPS})
BALL_LINES: Final = frozenset({ArrowKind.PASS, ArrowKind.SHUT})


@dataclass(frozen=True, slots=True)
class Drawn:
    """A drawn picture: its SVG, its width over its height, the picture in words, and how many arrows it has."""

    svg: str
    shape: float
    words: str
    arrows: int

    def data(self) -> dict[str, object]:
        """What a template needs of it."""
        return {"svg": self.svg, "shape": self.shape, "alt": self.words}


@dataclass(frozen=True, slots=True)
class _Room:
    """Where the marks are, in cm: discs with their radii, plates, and the rings of empty spots."""

    discs: Mapping[int, Place]
    radii: Mapping[int, float]
    plates: Mapping[int, Place]
    rings: tuple[Place, ...]


def is_ball(arrow: Arrow) -> bool:
    """Whether an arrow tells what the ball did, and not what a sentence asks for."""
    return arrow.kind in BALL_LINES or (arrow.kind is ArrowKind.DRIBBLE and arrow.letter is None)


def paper_still(
    show: Show,
    moment: Moment,
    *,
    size: float = SHEET,
    names: bool = True,
    tabs: Mapping[int, str] | None = None,
    defenders: Collection[int] = (),
    about: About | None = None,
    reach_cm: float = REACH_CM,
) -> Drawn:
    """The moment in black on white; its lit moves are cased lines, as roads on a map.

    Only the first four arrows are drawn: cut a moment with more by `decisions.parted`. `names` writes the move beside
    its tab, `tabs` puts the letter of a sentence beside a player who stays, `defenders` are drawn besides those whose
    stance says something, and the players and the spot of `about` get the heavy dashed ring of a question.
    """
    ground = _ground(show.court, show.denial_word)
    room = _room(show, moment, size, frozenset(defenders))
    chosen = [arrow for arrow in moment.arrows if len(arrow.path_m) > 1][:MOST_ARROWS]
    room = _aside(chosen, room, size)
    paths = {arrow: path for arrow in chosen if len(path := _path(arrow, room, size)) > 1}
    layered = sorted(
        (line for arrow, path in paths.items() for line in _lines(arrow, path, room)), key=lambda line: line[0]
    )
    rings = [] if about is None else _rings(show, about, room, size)
    under: list[Primitive] = [
        Mark("near" if spot.near else "spot", *_cm(show.spots[spot.spot]))
        for spot in moment.open_spots
        if spot.spot in show.spots and _cm(show.spots[spot.spot]) in room.rings
    ]
    stand = [_moved(mark, room) for mark in bodies(moment, show.timeline) if _seen(mark, room)]
    low = max([reach_cm, *(y + room.radii[n] + EDGE_CM for n, (_, y) in room.discs.items())])
    low = min(low, ground.room.bottom)
    seen = Box(
        min([ground.room.left, *(x - room.radii[n] for n, (x, _) in room.discs.items())]) - EDGE_CM,
        ground.room.top - EDGE_CM,
        max([ground.room.right, *(x + room.radii[n] for n, (x, _) in room.discs.items())]) + EDGE_CM,
        low,
    )
    over = _tabs(paths, room, seen, names, size, tabs or {})
    drawn = [*under, *(line for _, line in layered), *rings, *stand, *over]
    words = floor_label(show, moment)
    return Drawn(_svg(ground, drawn, seen, size, words), _wide(seen) / _high(seen), words, len(paths))


def _wide(box: Box) -> float:
    return box.right - box.left


def _high(box: Box) -> float:
    return box.bottom - box.top


@cache
def _ground(court: Court, denial_word: str) -> Floor:
    return floor(court, denial_word)


def _cm(place: Place) -> Place:
    return place[0] * 100, place[1] * 100


def _room(show: Show, moment: Moment, size: float, defenders: frozenset[int]) -> _Room:
    places = pose(show.timeline, moment.t_s)
    radii = {n: size * (HOLDER_CM if n == places.holder else DISC_CM) for n in places.players}
    shut = {arrow.to_player for arrow in moment.arrows if arrow.kind is ArrowKind.SHUT}
    matter = {n for n in places.defenders if moment.guards.get(n) in MATTER or n in defenders or n in shut}
    at = {("p", n): _cm(place) for n, place in places.players.items()}
    at |= {("x", n): _cm((x, y)) for n, (x, y, _) in places.defenders.items() if n in matter}
    wide = {key: radii[key[1]] if key[0] == "p" else PLATE_CM * size * 0.7 for key in at}
    moved = pushed_apart(at, wide)
    discs = {n: place for (kind, n), place in moved.items() if kind == "p"}
    empty = [_cm(show.spots[spot.spot]) for spot in moment.open_spots if spot.spot in show.spots]
    free = tuple(place for place in empty if all(math.dist(place, disc) > DISC_CM * size for disc in discs.values()))
    return _Room(discs, radii, {n: place for (kind, n), place in moved.items() if kind == "x"}, free)


def _aside(chosen: Sequence[Arrow], room: _Room, size: float) -> _Room:
    """A defender who would cover a short lit move steps aside, square to it, by what a mark on paper may be moved."""
    plates = dict(room.plates)
    for arrow in chosen:
        path = _path(arrow, room, size) if arrow.lit and arrow.player in plates else []
        if len(path) > 1 and length_cm(path) < SHORT_CM:
            (ax, ay), (bx, by), (x, y) = path[0], path[-1], plates[arrow.player]
            dx, dy = toward((ax, ay), (bx, by))
            side = -1.0 if (x - ax) * dy - (y - ay) * dx < 0 else 1.0
            plates[arrow.player] = (x + side * dy * APART_CM, y - side * dx * APART_CM)
    return replace(room, plates=plates)


def _path(arrow: Arrow, room: _Room, size: float) -> list[Place]:
    """The arrow's path in cm, clear of the marks at its ends; empty where nothing of it would be seen."""
    path = in_cm(arrow.path_m)
    if len(path) < 2 or (length_cm(path) < arrows.STEP_CM and not arrow.lit):
        return []

    def clear(end: Place) -> float:
        near = [radius + AIR_CM for n, radius in room.radii.items() if math.dist(end, room.discs[n]) < radius]
        near += [SPOT_CM * size + AIR_CM / 2 for ring in room.rings if math.dist(end, ring) < SPOT_CM * size]
        return max(near, default=0.0)

    start, end = clear(path[0]), clear(path[-1])
    return simplified(trimmed(path, start, end)) if start + end < length_cm(path) * 0.85 else []


def _lines(arrow: Arrow, path: Sequence[Place], room: _Room) -> Iterable[tuple[int, Line]]:
    """The lines of an arrow with their layers; the marker of a lit one becomes the two edges of a road."""
    guard = room.plates.get(arrow.to_player) if arrow.to_player is not None else None
    if arrow.lit:
        way = smooth_path(path)
        yield 0, Line("case", way)
        yield 0, Line("case in", way)
    for layer, line in arrows.under(arrow, path, guard):
        if line.style != "lit":
            yield layer + 1, replace(line, runner=None)


def _seen(mark: Mark, room: _Room) -> bool:
    if mark.name == "ball" or mark.name.startswith("p"):
        return True
    return mark.style != "away" and int(mark.name[1:]) in room.plates


def _rings(show: Show, about: About, room: _Room, size: float) -> list[Line]:
    """The heavy dashed ring round each player a picture is about, and round the spot."""
    at = [(room.discs[n], room.radii[n] + RING_CM * size) for n in about.players if n in room.discs]
    if about.spot is not None and about.spot in show.spots:
        at.append((_cm(show.spots[about.spot]), SPOT_CM * size + RING_CM * size))
    return [Line("hole", _circle(place, radius)) for place, radius in at]


def _moved(mark: Mark, room: _Room) -> Mark:
    """A mark at the place it was pushed to; its name goes, since one sheet holds several pictures."""
    if mark.name == "ball":
        holder = next((n for n, radius in room.radii.items() if radius == max(room.radii.values())), None)
        held = any(mark.shift_cm) and holder is not None
        x, y = room.discs[holder] if held and holder is not None else (mark.x_cm, mark.y_cm)
    else:
        places = room.discs if mark.name.startswith("p") else room.plates
        x, y = places[int(mark.name[1:])]
    return replace(mark, x_cm=x, y_cm=y, name="")


def _tabs(
    paths: Mapping[Arrow, list[Place]], room: _Room, seen: Box, names: bool, size: float, tabs: Mapping[int, str]
) -> list[Primitive]:
    # The finder of places knows tabs of one size: it is asked on a floor that is smaller by as much as ours are larger.
    k = size / LARGEST

    def less(places: Iterable[Place]) -> list[Place]:
        return [(x / k, y / k) for x, y in places]

    crowd = Crowd(
        Box(seen.left / k, seen.top / k, seen.right / k, seen.bottom / k),
        less([*room.discs.values(), *room.rings]),
        less(room.plates.values()),
        [less(path) for path in paths.values()],
    )
    rounds = [
        (_round(room.discs[player], room.radii[player]), letter, "", True)
        for player, letter in sorted(tabs.items())
        if player in room.discs
    ]
    moves = [
        (path, arrow.letter, arrow.label if names else "", arrow.lit)
        for arrow, path in sorted(paths.items(), key=lambda item: not item[0].lit)
        if arrow.letter is not None and arrow.kind in LABELLED
    ]
    out: list[Primitive] = []
    taken: list[Box] = []
    for path, letter, word, lit in [*rounds, *moves]:
        grown = word + "n" * math.ceil(len(word) * (SAY - 1.0))
        (x, y), box = flag_place(less(path), grown, crowd, taken, lit)
        taken.append(box)
        out.append(Mark("flag", x * k, y * k, text=letter, word=word, style="on" if lit else ""))
    return out


def _round(middle: Place, radius: float) -> list[Place]:
    """A path round a disc, so that a tab stands beside it."""
    turns = (math.radians(10 * i) for i in range(37))
    return [(middle[0] + radius * math.sin(t), middle[1] - radius * math.cos(t)) for t in turns]


def _circle(middle: Place, radius: float) -> str:
    x, y, r = round(middle[0]), round(middle[1]), round(radius)
    return f"M{x} {y - r}A{r} {r} 0 1 1 {x} {y + r}A{r} {r} 0 1 1 {x} {y - r}Z"


@cache
def ink(size: float) -> str:
    """The style of marks on paper: black, the lane unfilled, court lines thin, a lit move cased."""
    k = size / SHEET
    return plain_style("print", size, SAY if size < SMALL else 1.0) + (
        "\n.paint{fill:#FFF} .arcword{display:none}"
        f"\n.line{{stroke:#000;stroke-width:{PAINT * k:g}}} .teeth{{stroke:#000;stroke-dasharray:{PAINT:g} 31}}"
        f"\n.run{{stroke-width:{RUN * k:g}}} .pass,.fill,.dribble{{stroke-width:{7 * k:g}}} .shut,.trail{{stroke:#000}}"
        f"\n.case{{fill:none;stroke:#000;stroke-width:{CASE * k:g}}} .case.in{{stroke:#FFF;stroke-width:{ROAD * k:g}}}"
        f"\n.hole{{fill:none;stroke:#000;stroke-width:{9 * k:g};stroke-dasharray:{24 * k:g} {16 * k:g}}}"
    )


def _svg(ground: Floor, drawn: Iterable[Primitive], seen: Box, size: float, words: str) -> str:
    box = f"{seen.left:.0f} {seen.top:.0f} {_wide(seen):.0f} {_high(seen):.0f}"
    return framed(f"{ground.svg}{to_svg(drawn)}", box, size, words)


def framed(inside: str, box: str, size: float, words: str) -> str:
    """A whole SVG round these marks; `box` is its view box in cm."""
    x, y, wide, high = box.split()
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="half" width="{wide}" height="{high}" viewBox="{box}">'
        f"<title>{escape(words)}</title><style>{escape(ink(size), quote=False)}</style>{defs()}"
        f'<clipPath id="cut"><rect x="{x}" y="{y}" width="{wide}" height="{high}"/></clipPath>'
        f'<g clip-path="url(#cut)">{inside}</g></svg>'
    )


def picture_data(svg: str) -> dict[str, object]:
    """What a template needs of a picture that is handed over as SVG: its shape and its words are read from it."""
    box = re.search(r'viewBox="([^"]+)"', svg)
    title = re.search(r"<title>(.*?)</title>", svg, flags=re.S)
    _, _, wide, high = map(float, box[1].split()) if box else (0.0, 0.0, 1.0, 1.0)
    return {"svg": svg, "shape": wide / high, "alt": unescape(title[1]) if title else ""}
