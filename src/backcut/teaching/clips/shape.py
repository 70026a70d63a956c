"""How large a clip is, and where in it the floor and the words lie, in pixels."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Final

from backcut.page.document import AIR_CM, lowest_cm
from backcut.picture.floor import Floor, floor
from backcut.picture.show import Show

#: Own design: paper at the edge, the line of title and part, air between floor and words.
MARGIN_PX, HEAD_PX, AIR_PX = 32, 64, 30
#: At most so much of the height is floor where the words stand under it (own design).
FLOOR_SHARE = 0.58


@dataclass(frozen=True, slots=True)
class Room:
    """A rectangle of the picture."""

    x: float
    y: float
    wide: float
    high: float

    def data(self) -> dict[str, float]:
        """As plain numbers."""
        return asdict(self)


@dataclass(frozen=True, slots=True)
class Shape:
    """The size of a clip, and how wide the floor may be: where it has all the width, the words stand under it."""

    wide_px: int
    high_px: int
    floor_px: int

    @property
    def upright(self) -> bool:
        """Whether the words stand under the floor."""
        return self.floor_px == self.wide_px


UPRIGHT: Final = Shape(720, 1280, 720)
WIDE: Final = Shape(1280, 720, 790)


@dataclass(frozen=True, slots=True)
class Layout:
    """Where everything of a show lies in a clip of this shape."""

    shape: Shape
    ground: Floor
    px_cm: float
    floor: Room

    @classmethod
    def of(cls, show: Show, shape: Shape) -> Layout:
        """All the width of the court, and down to where somebody still goes."""
        ground = floor(show.court, show.denial_word)
        wide_cm = ground.room.right - ground.room.left + 2 * AIR_CM
        high_cm = lowest_cm(show, ground) - ground.room.top + AIR_CM / 2
        most_px = shape.high_px * FLOOR_SHARE if shape.upright else shape.high_px - 2 * MARGIN_PX
        px_cm = min(shape.floor_px / wide_cm, most_px / high_cm)
        wide, high = wide_cm * px_cm, high_cm * px_cm
        top = MARGIN_PX + HEAD_PX if shape.upright else (shape.high_px - high) / 2
        return cls(shape, ground, px_cm, Room((shape.floor_px - wide) / 2, top, wide, high))

    def place(self, x_cm: float, y_cm: float) -> tuple[float, float]:
        """Where a place of the floor is in the picture."""
        room = self.ground.room
        return (
            self.floor.x + (x_cm - room.left + AIR_CM) * self.px_cm,
            self.floor.y + (y_cm - room.top + AIR_CM / 2) * self.px_cm,
        )

    @property
    def head(self) -> Room:
        """Where title and part stand."""
        if self.shape.upright:
            return Room(MARGIN_PX, MARGIN_PX, self.shape.wide_px - 2 * MARGIN_PX, HEAD_PX)
        return Room(self._beside, max(self.floor.y, MARGIN_PX), self._column, HEAD_PX)

    @property
    def body(self) -> Room:
        """Where the sentence stands and what happens."""
        top = (self.floor.y + self.floor.high if self.shape.upright else self.head.y + HEAD_PX) + AIR_PX
        left, wide = (MARGIN_PX, self.head.wide) if self.shape.upright else (self._beside, self._column)
        return Room(left, top, wide, self.shape.high_px - MARGIN_PX - top)

    @property
    def _beside(self) -> float:
        return self.shape.floor_px + MARGIN_PX / 2

    @property
    def _column(self) -> float:
        return self.shape.wide_px - MARGIN_PX - self._beside
