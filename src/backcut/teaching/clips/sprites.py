"""Marks as small pictures, drawn once each and laid over a picture at any fraction of a pixel."""

from __future__ import annotations

import io
import math
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Final

import av
import numpy as np
import resvg_py
from numpy.typing import NDArray

from backcut.page.plain import font_files, plain_style
from backcut.picture.marks import defs
from backcut.picture.scene import Mark, to_svg

Bytes = NDArray[np.uint8]
Pixels = NDArray[np.float32]

#: Half the side of a mark's own picture, in cm before the size factor: the plate with its arms, the ring, the hand.
REACH_CM: Final = 96.0
#: Turned marks are drawn every so many degrees: finer cannot be seen at this size.
TURN_DEG: Final = 4


def decoded(png: bytes) -> Pixels:
    """A PNG as (height, width, 4) numbers from 0 to 255 and 0 to 1 for how solid they are, colours multiplied by it."""
    with av.open(io.BytesIO(png), "r", format="png_pipe") as file:
        rgba = next(file.decode(video=0)).to_ndarray(format="rgba").astype(np.float32)
    rgba[..., 3] /= 255.0
    rgba[..., :3] *= rgba[..., 3:]
    return rgba


def drawn(svg: str) -> Pixels:
    """An SVG as such numbers."""
    return decoded(bytes(resvg_py.svg_to_bytes(svg_string=svg, skip_system_fonts=True, font_files=font_files())))


@dataclass(frozen=True, slots=True)
class Layer:
    """What is drawn on of a picture of this size, and nothing else: most of a layer is clear."""

    at: NDArray[np.int64]
    colour: Pixels
    keeps: Pixels

    @classmethod
    def of(cls, pixels: Pixels) -> Layer:
        """The pixels (height, width, 4) that are drawn on."""
        flat = pixels.reshape(-1, 4)
        at = np.flatnonzero(flat[:, 3])
        return cls(at, flat[at, :3], 1 - flat[at, 3:])

    def over(self, picture: Bytes) -> None:
        """Lay it over a picture (height, width, 3) of its size."""
        flat = picture.reshape(-1, 3)
        flat[self.at] = (flat[self.at] * self.keeps + self.colour + 0.5).astype(np.uint8)


@dataclass(slots=True)
class Sprites:
    """The marks of one clip, at this many pixels to the centimetre, in this light and size."""

    px_cm: float
    light: str
    size: float
    known: dict[Mark, Pixels] = field(default_factory=dict)

    def draw(self, marks: Iterable[Mark]) -> None:
        """Draw those marks that are not known yet, all in one picture: to begin one costs more than to draw a mark."""
        new = sorted({_plain(mark) for mark in marks} - self.known.keys(), key=repr)
        if not new:
            return
        reach = REACH_CM * self.size * self.px_cm
        side = 2 * math.ceil(reach)
        across = math.ceil(math.sqrt(len(new)))
        corners = [(i % across * side, i // across * side) for i in range(len(new))]
        cells = "".join(
            f'<g transform="translate({x + side / 2} {y + side / 2}) scale({self.px_cm:.5f})">{to_svg([mark])}</g>'
            for mark, (x, y) in zip(new, corners, strict=True)
        )
        high = math.ceil(len(new) / across) * side
        whole = drawn(
            f'<svg xmlns="http://www.w3.org/2000/svg" class="half" width="{across * side}" height="{high}">'
            f"<style>{plain_style(self.light, self.size)}</style>{defs()}{cells}</svg>"
        )
        for mark, (x, y) in zip(new, corners, strict=True):
            self.known[mark] = _trimmed(whole[y : y + side, x : x + side])

    def lay(self, picture: Bytes, mark: Mark, x_px: float, y_px: float) -> None:
        """Lay a mark that was drawn over a picture (height, width, 3), its middle at this place in pixels."""
        lay(picture, self.known[_plain(mark)], x_px, y_px)


def _plain(mark: Mark) -> Mark:
    """The mark without its place; a turn that cannot be told from another is the same."""
    turn = float(round(mark.turn_deg / TURN_DEG) * TURN_DEG % 360)
    return replace(mark, x_cm=0.0, y_cm=0.0, turn_deg=turn, shift_cm=(0.0, 0.0), name="", runner=None)


def _trimmed(cell: Pixels) -> Pixels:
    """A cell without the clear edge that is round all of it, so that its middle stays its middle."""
    solid = cell[..., 3] > 0
    clear = min(int(np.argmax(side.any(1))) for side in (solid, solid[::-1], solid.T, solid.T[::-1]))
    return cell[clear : cell.shape[0] - clear, clear : cell.shape[1] - clear].copy()


def lay(picture: Bytes, small: Pixels, x_px: float, y_px: float) -> None:
    """Lay a small picture over another, its middle at this place; between pixels it is shared among the four next.

    What lies outside is cut off.
    """
    high, wide = small.shape[:2]
    left, top = x_px - wide / 2, y_px - high / 2
    column, row = math.floor(left), math.floor(top)
    dx, dy = np.float32(left - column), np.float32(top - row)
    one = np.float32(1)
    across = np.zeros((high, wide + 1, 4), np.float32)
    across[:, :wide] = small * (one - dx)
    across[:, 1:] += small * dx
    moved = np.zeros((high + 1, wide + 1, 4), np.float32)
    moved[:high] = across * (one - dy)
    moved[1:] += across * dy
    y0, x0 = max(row, 0), max(column, 0)
    y1, x1 = min(row + high + 1, picture.shape[0]), min(column + wide + 1, picture.shape[1])
    if y0 < y1 and x0 < x1:
        part = moved[y0 - row : y1 - row, x0 - column : x1 - column]
        below = picture[y0:y1, x0:x1]
        below[:] = (below * (one - part[..., 3:]) + part[..., :3] + np.float32(0.5)).astype(np.uint8)
