"""The court as it is drawn: hall floor, lane, true painted lines, ring and board, in centimetres."""

from __future__ import annotations

import math
from dataclasses import dataclass
from html import escape

from backcut.court.lines import Arc, Line, LineKind, Straight, areas, lines
from backcut.court.record import Court
from backcut.picture.lettering import Box

#: Teeth of the denial mark stand on the outer edge of the arc, 14 cm long (the look; own design, no source).
TOOTH_CM = 14.0
#: Where along the arc its lettering begins, from its left end, and how far outside it runs (own design, no source).
WORD_START = "29%"
WORD_OUT_CM = 33.0

CLASSES = {LineKind.BOARD: "board", LineKind.RING: "rim"}
AREAS = {"floor": "hall", "lane": "paint"}


@dataclass(frozen=True, slots=True)
class Floor:
    """A drawn court: its SVG, and the room between the outer edges of its boundary, in cm."""

    svg: str
    room: Box


def _cm(metres: float) -> str:
    """Centimetres, as short as they are: half a line is 2.5 cm, so tenths stay."""
    return f"{round(metres * 100, 1) + 0:g}"


def _point(point: tuple[float, float]) -> str:
    return f"{_cm(point[0])} {_cm(point[1])}"


def _arc(arc: Arc) -> str:
    turn = arc.end_deg - arc.start_deg
    sweep = 1 if turn > 0 else 0
    radius = _cm(arc.radius_m)
    if abs(turn) >= 360.0:  # SVG cannot end an arc where it began
        middle = arc.point_m(arc.start_deg + turn / 2)
        half = f"A{radius} {radius} 0 1 {sweep} "
        return f"{half}{_point(middle)}{half}{_point(arc.end_m)}"
    return f"A{radius} {radius} 0 {int(abs(turn) > 180.0)} {sweep} {_point(arc.end_m)}"


def path_data(line: Line) -> str:
    """A painted line as SVG path data."""
    pieces = (f"L{_point(p.end_m)}" if isinstance(p, Straight) else _arc(p) for p in line.pieces)
    return f"M{_point(line.pieces[0].start_m)}{''.join(pieces)}"


def _drawn(line: Line, common_m: float) -> str:
    style = CLASSES.get(line.kind)
    if style:
        return f'<path class="{style}" d="{path_data(line)}"/>'
    wide = "" if math.isclose(line.width_m, common_m) else f' stroke-width="{_cm(line.width_m)}"'
    dash = f' stroke-dasharray="{" ".join(map(_cm, line.dash_m))}"' if line.dash_m else ""
    return f'<path class="line"{wide}{dash} d="{path_data(line)}"/>'


def _teeth(court: Court, word: str) -> str:
    line = next((line for line in lines(court) if line.kind is LineKind.THREE_POINT), None)
    if not word or line is None:
        return ""
    out = line.width_m / 2 + TOOTH_CM / 200
    pieces: list[Straight | Arc] = []
    for piece in line.pieces:
        if isinstance(piece, Arc):
            pieces.append(Arc(piece.centre_m, piece.radius_m + out, piece.start_deg, piece.end_deg))
        else:
            side = math.copysign(out, piece.start_m[0])
            start, end = (piece.start_m[0] + side, piece.start_m[1]), (piece.end_m[0] + side, piece.end_m[1])
            pieces.append(Straight(start, end))
    teeth = "".join(path_data(Line(line.kind, (piece,), line.width_m)) for piece in pieces)
    arc = next(piece for piece in pieces if isinstance(piece, Arc))
    below = Arc(arc.centre_m, arc.radius_m + WORD_OUT_CM / 100, arc.end_deg, arc.start_deg)
    run = path_data(Line(line.kind, (below,), 0.0))
    return (
        f'<path class="teeth" d="{teeth}"/><path id="arc-run" class="guide" d="{run}"/>'
        f'<text class="arcword aside" dy="16"><textPath href="#arc-run" startOffset="{WORD_START}">'
        f"{escape(word)}</textPath></text>"
    )


def floor(court: Court, denial_word: str = "") -> Floor:
    """The attacked half of the court; with a denial word also teeth on the arc and the word along it."""
    width = court.line_width.m
    filled = "".join(
        f'<path class="{AREAS[area.kind]}" d="M{"L".join(map(_point, area.corners_m))}Z"/>' for area in areas(court)
    )
    painted = "".join(_drawn(line, width) for line in lines(court))
    half = (court.half_width_m + width) * 100
    top, bottom = (court.baseline_y_m - width) * 100, (court.mid_court_y_m + width / 2) * 100
    return Floor(
        f'<g stroke-width="{_cm(width)}">{filled}{painted}{_teeth(court, denial_word)}</g>',
        Box(-half, top, half, bottom),
    )
