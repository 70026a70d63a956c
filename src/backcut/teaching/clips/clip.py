"""A clip as an MP4 file that plays in a phone's chat: H.264, no sound, drawn from `pose` without a browser."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from tempfile import TemporaryDirectory

import av
import numpy as np
from av.video.stream import VideoStream
from numpy.typing import NDArray

from backcut.picture.moment import bodies
from backcut.picture.show import Show
from backcut.teaching.clips.cut import FPS, Cut, Part, Picture, pictures
from backcut.teaching.clips.sheet import SIZE, UPRIGHT, Lines, Shape, Sheet, in_words
from backcut.teaching.clips.sprites import Pixels, Sprites, drawn, over

#: Constant quality of the coder (its own scale): flat drawings stay sharp at this.
QUALITY = 24

Bytes = NDArray[np.uint8]
#: Told how many pictures are done, of how many.
Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Clip:
    """A clip: the MP4, a poster picture (PNG), the clip in words, how long it is, and whether it shows all of it."""

    mp4: bytes
    poster: bytes
    words: str
    seconds: float
    whole: bool


def clip(show: Show, cut: Cut, *, shape: Shape = UPRIGHT, light: str = "day", progress: Progress | None = None) -> Clip:
    """The clip of a part of a show. Raises: KeyError for a light there is not."""
    painter = Painter(show, shape, light)
    wanted = pictures(show, cut)
    # What a phone reads first is moved to the front when all is written, for which the coder needs a file of its own.
    with TemporaryDirectory() as folder:
        place = Path(folder) / "clip.mp4"
        _write(place, painter, wanted, shape, progress)
        mp4 = place.read_bytes()
    shown = sorted({picture.moment for picture in wanted})
    words = in_words(show, shown[0], shown[-1])
    return Clip(mp4, _png(painter.paint(wanted[0])), words, len(wanted) / FPS, cut.whole)


def _write(place: Path, painter: Painter, wanted: list[Picture], shape: Shape, progress: Progress | None) -> None:
    with av.open(str(place), "w", format="mp4", options={"movflags": "+faststart"}) as file:
        stream = file.add_stream("libx264", rate=FPS, options={"crf": str(QUALITY), "preset": "veryfast"})
        assert isinstance(stream, VideoStream)
        stream.width, stream.height, stream.pix_fmt = shape.wide_px, shape.high_px, "yuv420p"
        stream.codec_context.thread_count = 1
        last: Picture | None = None
        frame: Bytes | None = None
        for number, picture in enumerate(wanted):
            if frame is None or picture != last:
                frame, last = painter.paint(picture), picture
            file.mux(stream.encode(av.VideoFrame.from_ndarray(frame, format="rgb24")))
            if progress is not None:
                progress(number + 1, len(wanted))
        file.mux(stream.encode(None))


class Painter:
    """Paints the pictures of one clip: what stands still once a moment, every mark once, and both laid together."""

    def __init__(self, show: Show, shape: Shape, light: str) -> None:
        self.show = show
        self.sheet = Sheet.of(show, shape, light)
        self.sprites = Sprites(self.sheet.px_cm, light, SIZE)
        self._under: dict[tuple[int, Lines], tuple[Bytes, Pixels]] = {}
        self._over: dict[int, tuple[Pixels, int, int]] = {}

    def paint(self, picture: Picture) -> Bytes:
        """One picture as (height, width, 3) bytes. At game speed there are no lines of action: they were seen."""
        moment = self.show.moments[picture.moment]
        standing = picture.t_s == moment.t_s
        lines = Lines.NONE if picture.part is Part.GAME else Lines.ALL if standing else Lines.RUNS
        top, foot = self.sheet.rows
        paper, floor = self._standing(picture.moment, lines)
        made = floor.copy()  # nobody ever stands outside the floor: the rest is laid down as it is
        for mark in bodies(replace(moment, t_s=picture.t_s), self.show.timeline):
            if mark.style != "away":
                dx, dy = mark.shift_cm
                x, y = self.sheet.place(mark.x_cm + dx * SIZE, mark.y_cm + dy * SIZE)
                self.sprites.lay(made, replace(mark, shift_cm=(0.0, 0.0)), x, y - top)
        if lines is not Lines.NONE:
            over(made, *self._lettering(picture.moment))
        whole = paper.copy()
        whole[top:foot] = (made * 255 + 0.5).astype(np.uint8)
        return whole

    def _standing(self, moment: int, lines: Lines) -> tuple[Bytes, Pixels]:
        """All of it as bytes, and the rows of the floor as numbers to lay marks on."""
        if (moment, lines) not in self._under:
            made = drawn(self.sheet.under(self.show.moments[moment], lines))[..., :3]
            top, foot = self.sheet.rows
            self._under[moment, lines] = (made * 255 + 0.5).astype(np.uint8), made[top:foot].copy()
        return self._under[moment, lines]

    def _lettering(self, moment: int) -> tuple[Pixels, int, int]:
        """The lettering of a moment, no more of it than is drawn on, and where its corner is: column and row."""
        if moment not in self._over:
            top, foot = self.sheet.rows
            whole = drawn(self.sheet.over(self.show.moments[moment]))[top:foot]
            rows, columns = np.flatnonzero(whole[..., 3].any(1)), np.flatnonzero(whole[..., 3].any(0))
            row, below = (int(rows[0]), int(rows[-1]) + 1) if len(rows) else (0, 0)
            column, after = (int(columns[0]), int(columns[-1]) + 1) if len(columns) else (0, 0)
            self._over[moment] = whole[row:below, column:after].copy(), column, row
        return self._over[moment]


def _png(frame: Bytes) -> bytes:
    coder = av.CodecContext.create("png", "w")
    coder.width, coder.height, coder.pix_fmt = frame.shape[1], frame.shape[0], "rgb24"
    packets = [*coder.encode(av.VideoFrame.from_ndarray(frame, format="rgb24")), *coder.encode(None)]
    return b"".join(bytes(packet) for packet in packets)
