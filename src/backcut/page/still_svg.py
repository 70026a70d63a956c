"""A still of a moment as markup; the court under it is defined once on the page, with the id "ground"."""

from __future__ import annotations

from html import escape

from backcut.picture.lettering import Box
from backcut.picture.scene import to_svg
from backcut.picture.still import SIDE_CM, Still


def still_svg(drawn: Still, room: Box, reach_cm: float) -> str:
    """The still on the court whose boundary is `room`, cut `reach_cm` down the floor."""
    corner = f"{room.left - SIDE_CM:.0f} {room.top - SIDE_CM:.0f}"
    size = f"{room.right - room.left + 2 * SIDE_CM:.0f} {reach_cm - room.top + SIDE_CM:.0f}"
    return (
        f'<svg class="half still" viewBox="{corner} {size}" role="img" aria-label="{escape(drawn.words)}">'
        f'<use href="#ground"/>{to_svg(drawn.drawn)}</svg>'
    )
