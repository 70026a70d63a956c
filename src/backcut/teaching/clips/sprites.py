"""Marks as small pictures, drawn once each and laid over a picture at any fraction of a pixel."""

from __future__ import annotations

import io
from dataclasses import dataclass, field, replace

import av
import numpy as np
import resvg_py
from numpy.typing import NDArray

from backcut.page.plain import font_files, plain_style
from backcut.picture.marks import defs
from backcut.picture.scene import Mark, to_svg

Pixels = NDArray[np.float32]

#: Half the side of a mark's own picture, in cm before the size factor: the plate with its arms, the ring, the hand.
REACH_CM = 96.0
#: Turned marks are drawn every so many degrees: finer cannot be seen at this size.
TURN_DEG = 5


def drawn(svg: str) -> Pixels:
    """An SVG as (height, width, 4) numbers from 0 to 1, colours multiplied by how solid they are."""
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, skip_system_fonts=True, font_files=font_files()))
    with av.open(io.BytesIO(png), "r", format="png_pipe") as file:
        rgba = next(file.decode(video=0)).to_ndarray(format="rgba").astype(np.float32) / 255.0
    rgba[..., :3] *= rgba[..., 3:]
    return rgba


@dataclass(slots=True)
class Sprites:
    """The marks of one clip, at this many pixels to the centimetre, in this light and size."""

    px_cm: float
    light: str
    size: float
    known: dict[Mark, Pixels] = field(default_factory=dict)

    def lay(self, picture: Pixels, mark: Mark, x_px: float, y_px: float) -> None:
        """Lay a mark over a picture (height, width, 3), its middle at this place in pixels."""
        turn = round(mark.turn_deg / TURN_DEG) * TURN_DEG % 360
        plain = replace(mark, x_cm=0.0, y_cm=0.0, turn_deg=float(turn), name="", runner=None)
        if plain not in self.known:
            self.known[plain] = self._drawn(plain)
        lay(picture, self.known[plain], x_px, y_px)

    def _drawn(self, mark: Mark) -> Pixels:
        reach = REACH_CM * self.size
        side = 2 * round(reach * self.px_cm)
        box = f"{-reach:.2f} {-reach:.2f} {2 * reach:.2f} {2 * reach:.2f}"
        return drawn(
            f'<svg xmlns="http://www.w3.org/2000/svg" class="half" viewBox="{box}" width="{side}" height="{side}">'
            f"<style>{plain_style(self.light, self.size)}</style>{defs()}{to_svg([mark])}</svg>"
        )


def lay(picture: Pixels, small: Pixels, x_px: float, y_px: float) -> None:
    """Lay a small picture over another, its middle at this place; between pixels it is shared among the four next."""
    high, wide = small.shape[:2]
    left, top = x_px - wide / 2, y_px - high / 2
    column, row = int(np.floor(left)), int(np.floor(top))
    dx, dy = left - column, top - row
    moved = np.zeros((high + 1, wide + 1, 4), np.float32)
    for y, x, share in ((0, 0, (1 - dy) * (1 - dx)), (0, 1, (1 - dy) * dx), (1, 0, dy * (1 - dx)), (1, 1, dy * dx)):
        if share:
            moved[y : y + high, x : x + wide] += np.float32(share) * small
    over(picture, moved, column, row)


def over(picture: Pixels, layer: Pixels, column: int, row: int) -> None:
    """A layer laid over a picture with its corner at this pixel; what lies outside is cut off."""
    high, wide = layer.shape[:2]
    y0, x0 = max(row, 0), max(column, 0)
    y1, x1 = min(row + high, picture.shape[0]), min(column + wide, picture.shape[1])
    if y0 >= y1 or x0 >= x1:
        return
    part = layer[y0 - row : y1 - row, x0 - column : x1 - column]
    below = picture[y0:y1, x0:x1]
    below *= 1 - part[..., 3:]
    below += part[..., :3]
