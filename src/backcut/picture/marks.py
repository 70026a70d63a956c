"""The marks of the floor as SVG symbols, in centimetres of the house frame, drawn round 0 0 and pointing up the page.

Ink without colour: every difference is one of shape, weight or filling. The circle with the number is the federation
manuals' attacker; the second ring with the ball on it is ours. Colours and strokes are classes of the style sheet.
"""

from __future__ import annotations

from typing import Final

#: Radii and reaches in cm, as the look prescribes (own design, no source).
DISC_CM: Final = 47
HOLDER_CM: Final = 60
BALL_CM: Final = 17
PLATE_CM: Final = 60
SPOT_CM: Final = 34
GLOW_CM: Final = 74
FLAG_LEFT_CM: Final = 24
FLAG_RIGHT_CM: Final = 33
FLAG_HALF_CM: Final = 25

_PLATE = "M0-60L35-27V34H-35V-27Z"
_ARMS = "M-50-8C-56-30-44-50-28-60M50-8C56-30 44-50 28-60"

SYMBOLS: Final[dict[str, str]] = {
    "attacker": f'<circle class="disc" r="{DISC_CM}"/>',
    "holder": f'<circle class="knock" r="63"/><circle class="ring" r="{HOLDER_CM}"/><circle class="disc" r="45"/>',
    "ball": f'<circle class="ball" r="{BALL_CM}"/>',
    "glow": f'<circle class="glow" r="{GLOW_CM}"/>',
    "plain": f'<path class="plate" d="{_PLATE}"/>',
    "denies": f'<path class="plate full" d="{_PLATE}"/>',
    "arms": f'<path class="plate" d="{_PLATE}"/><path class="arm" d="{_ARMS}"/>',
    "hand-free": '<path class="solid" d="M0-79L-15-58H15Z"/>',
    "spot": f'<circle class="spot" r="{SPOT_CM}"/>',
    "near": f'<circle class="spot near" r="{SPOT_CM}"/>',
    "flag": f'<path d="M-24-25H8A{FLAG_HALF_CM} {FLAG_HALF_CM} 0 0 1 8 25H-24Z"/>',
}

#: Where the text of a mark sits: class and offset in cm, so that figures and capitals stand in the middle by eye.
LETTERING: Final[dict[str, tuple[str, int, int]]] = {
    "attacker": ("no", 0, 19),
    "holder": ("no", 0, 19),
    "plain": ("x", 0, 13),
    "denies": ("x rev", 0, 13),
    "arms": ("x", 0, 13),
    "flag": ("letter", -5, 13),
}

#: Heads of lines: (view box, width, height, drawing); sizes are multiples of the stroke, so they grow with it.
HEADS: Final[dict[str, tuple[str, float, float, str]]] = {
    "run": ("-10 -6 12 12", 4.6, 4.6, '<path class="solid" d="M-9-5.4L2 0L-9 5.4Z"/>'),
    "hot": ("-10 -6 12 12", 4.6, 4.6, '<path class="dark" d="M-9-5.4L2 0L-9 5.4Z"/>'),
    "fill": ("-10 -7 12 14", 7.5, 8.5, '<path class="open" d="M-7.5-5.5L0 0L-7.5 5.5"/>'),
    "hotfill": ("-10 -7 12 14", 7.5, 8.5, '<path class="open dark" d="M-7.5-5.5L0 0L-7.5 5.5"/>'),
    "pass": ("-10 -6 12 12", 6.2, 6.2, '<path class="solid" d="M-9-4.6L1 0L-9 4.6Z"/>'),
    "screen": ("-4 -10 8 20", 5, 10, '<path class="bar" d="M0-9V9"/>'),
    "lit": ("-70 -50 110 100", 3.44, 3.13, '<path class="wash" d="M-40-27L16 0L-40 27Z"/>'),
}


def defs() -> str:
    """The symbols and heads as one `<defs>` element; a page holds it once. Ids begin with "m-" and "head-"."""
    symbols = "".join(f'<g id="m-{name}">{drawing}</g>' for name, drawing in SYMBOLS.items())
    heads = "".join(
        f'<marker id="head-{name}" viewBox="{box}" markerWidth="{width}" markerHeight="{height}" orient="auto">'
        f"{drawing}</marker>"
        for name, (box, width, height, drawing) in HEADS.items()
    )
    return f"<defs>{symbols}{heads}</defs>"
