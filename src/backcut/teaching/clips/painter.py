"""The pictures of one clip: what stands still is drawn once a moment, every mark once, and they are laid together."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Final

import numpy as np

from backcut.page.plain import plain_style, tokens
from backcut.picture.marks import defs
from backcut.picture.moment import bodies, glows, scene
from backcut.picture.scene import Line, Mark, Primitive, Scene, to_svg
from backcut.picture.show import Show
from backcut.teaching.clips.cut import Lines, Part, Picture
from backcut.teaching.clips.shape import Layout, Shape
from backcut.teaching.clips.sprites import Bytes, Layer, Sprites, decoded, drawn
from backcut.teaching.clips.words import set_words, words

#: Marks on a phone (the look).
SIZE: Final = 1.22
#: Lines that are true only where it stands: a lane that is shut, and the hand in it.
_STANDING: Final = frozenset({"shut", "hand"})


class Painter:
    """Paints pictures of a show in one shape and light."""

    def __init__(self, show: Show, shape: Shape, light: str) -> None:
        self.show, self.light = show, light
        self.layout = Layout.of(show, shape)
        self.sprites = Sprites(self.layout.px_cm, light, SIZE)
        paper = f'<rect width="{shape.wide_px}" height="{shape.high_px}" fill="{tokens(light)["page"]}"/>'
        self._floor = (drawn(self._svg(self.layout.ground.svg, paper))[..., :3] + 0.5).astype(np.uint8)
        # What was drawn for one moment is used again, and not kept when the clip is made.
        self._paper = lru_cache(self._paper_of)
        self._scene = lru_cache(self._scene_of)
        self._under = lru_cache(self._under_of)
        self._over = lru_cache(self._over_of)

    def prepare(self, pictures: Iterable[Picture]) -> None:
        """Draw every mark of these pictures at once."""
        self.sprites.draw(mark for picture in dict.fromkeys(pictures) for mark in self._marks(picture))

    def paint(self, picture: Picture) -> Bytes:
        """One picture as (height, width, 3) bytes. Layers as on the page: marker, lines, everybody, lettering."""
        made = self._paper(picture.spoken, picture.part).copy()
        marks = self._marks(picture)
        self.sprites.draw(marks)
        self._lay(made, [mark for mark in marks if mark.symbol == "glow"])
        self._under(picture.moment, picture.lines).over(made)
        self._lay(made, [mark for mark in marks if mark.symbol != "glow"])
        if picture.lines is not Lines.NONE:
            self._over(picture.moment).over(made)
        return made

    def _marks(self, picture: Picture) -> list[Mark]:
        """Everybody where the pose has them, the marker under whoever the spoken sentence moves."""
        timeline = self.show.timeline
        now = replace(self.show.moments[picture.moment], t_s=picture.t_s)
        spoken = replace(self.show.moments[picture.spoken], t_s=picture.t_s)
        return [mark for mark in (*glows(spoken, timeline), *bodies(now, timeline)) if mark.style != "away"]

    def _lay(self, picture: Bytes, marks: Sequence[Mark]) -> None:
        for mark in marks:
            dx, dy = mark.shift_cm
            self.sprites.lay(picture, mark, *self.layout.place(mark.x_cm + dx * SIZE, mark.y_cm + dy * SIZE))

    def _paper_of(self, spoken: int, part: Part) -> Bytes:
        """Paper, floor and words."""
        said = words(self.show, self.show.moments[spoken], part)
        made = self._floor.copy()
        here = self.layout
        Layer.of(decoded(set_words(said, here.shape, here.head, here.body, self.light))).over(made)
        return made

    def _scene_of(self, moment: int) -> Scene:
        return scene(self.show, self.show.moments[moment], self.layout.ground.room)

    def _under_of(self, moment: int, lines: Lines) -> Layer:
        """Empty spots, and the lines of action as far as they are shown."""

        def seen(one: Primitive) -> bool:
            if not isinstance(one, Line):
                return True
            return lines is Lines.ALL or (lines is Lines.RUNS and one.style not in _STANDING)

        return Layer.of(drawn(self._svg(to_svg(filter(seen, self._scene(moment).under)))))

    def _over_of(self, moment: int) -> Layer:
        """The lettering above everybody."""
        return Layer.of(drawn(self._svg(to_svg(self._scene(moment).over))))

    def _svg(self, marks: str, paper: str = "") -> str:
        shape, room = self.layout.shape, self.layout.floor
        x, y = self.layout.place(0.0, 0.0)
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{shape.wide_px}" height="{shape.high_px}">'
            f"<style>{plain_style(self.light, SIZE, SIZE)}</style>{defs()}{paper}"
            f'<clipPath id="seen"><rect x="{room.x:.2f}" y="{room.y:.2f}" width="{room.wide:.2f}" '
            f'height="{room.high:.2f}"/></clipPath><g clip-path="url(#seen)"><g class="half" '
            f'transform="translate({x:.3f} {y:.3f}) scale({self.layout.px_cm:.5f})">{marks}</g></g></svg>'
        )
