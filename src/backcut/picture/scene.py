"""A scene: simple primitives in layers, in centimetres of the house frame, and their SVG.

Whatever draws (the page, a sheet, a clip) draws these, so a mark looks the same everywhere.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape

from backcut.picture.marks import FLAG_RIGHT_CM, LETTERING


@dataclass(frozen=True, slots=True)
class Mark:
    """A symbol of `marks.SYMBOLS` at a place; only the symbol turns, its `text` stays upright.

    `word` is the italic name after a flag; `style` are classes of the symbol and its text ("on", "aside"). `shift_cm`
    moves the symbol off its place and grows with the marks: the ball on its holder's ring. `name` is the element's id;
    `runner` is the player whose way a flag names.
    """

    symbol: str
    x_cm: float
    y_cm: float
    turn_deg: float = 0.0
    text: str = ""
    word: str = ""
    style: str = ""
    shift_cm: tuple[float, float] = (0.0, 0.0)
    name: str = ""
    runner: int | None = None


@dataclass(frozen=True, slots=True)
class Line:
    """A line of action or a trail: a class of the style sheet and SVG path data.

    `runner` is the player who runs along it; a moving picture then wipes the line away behind him.
    """

    style: str
    path: str
    runner: int | None = None


@dataclass(frozen=True, slots=True)
class Word:
    """A word on the floor, set in the middle of its place."""

    style: str
    x_cm: float
    y_cm: float
    text: str


Primitive = Mark | Line | Word


@dataclass(frozen=True, slots=True)
class Scene:
    """One moment's drawing: what lies under the players, the players themselves, and the lettering over them."""

    under: tuple[Primitive, ...] = ()
    bodies: tuple[Primitive, ...] = ()
    over: tuple[Primitive, ...] = ()


def number(value: float) -> str:
    """A coordinate as short as it can be: whole centimetres, no minus zero."""
    return str(round(value) + 0)


def _mark(mark: Mark) -> str:
    style = f' class="{mark.style}"' if mark.style else ""
    turn = f' transform="rotate({number(mark.turn_deg)})"' if round(mark.turn_deg) else ""
    off = f' x="{number(mark.shift_cm[0])}" y="{number(mark.shift_cm[1])}"' if any(mark.shift_cm) else ""
    inner = f'<use href="#m-{mark.symbol}"{off}{turn}{style}/>'
    if mark.text:
        kind, dx, dy = LETTERING[mark.symbol]
        kind = f"{kind} {mark.style}".strip()
        shift = f' x="{dx}"' if dx else ""
        inner += f'<text class="{kind}"{shift} y="{dy}">{escape(mark.text)}</text>'
    if mark.word:
        aside = "say" if "on" in mark.style.split() else "say aside"
        inner += f'<text class="{aside}" x="{FLAG_RIGHT_CM + 13}" y="13">{escape(mark.word)}</text>'
    place = f"{number(mark.x_cm)} {number(mark.y_cm)}"
    name = f' id="{mark.name}"' if mark.name else ""
    runs = f' data-runner="{mark.runner}"' if mark.runner is not None else ""
    return f'<g{name}{runs} transform="translate({place})"><g class="m">{inner}</g></g>'


def element(primitive: Primitive) -> str:
    """One primitive as an SVG element."""
    if isinstance(primitive, Mark):
        return _mark(primitive)
    if isinstance(primitive, Line):
        run = f' pathLength="1" data-runner="{primitive.runner}"' if primitive.runner is not None else ""
        return f'<path class="{primitive.style}"{run} d="{primitive.path}"/>'
    place = f'x="{number(primitive.x_cm)}" y="{number(primitive.y_cm)}"'
    return f'<text class="{primitive.style}" {place}>{escape(primitive.text)}</text>'


def to_svg(primitives: Iterable[Primitive]) -> str:
    """These primitives as SVG elements, in order."""
    return "".join(element(primitive) for primitive in primitives)
