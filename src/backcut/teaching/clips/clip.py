"""A clip as an MP4 file that plays in a phone's chat: H.264, no sound, drawn from `pose` without a browser."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

import av
from av.video.frame import VideoFrame
from av.video.reformatter import ColorRange, Colorspace
from av.video.stream import VideoStream

from backcut.errors import BackcutError
from backcut.teaching.clips.cut import FPS, Cut, Picture, cut, pictures
from backcut.teaching.clips.painter import Painter
from backcut.teaching.clips.shape import UPRIGHT, WIDE
from backcut.teaching.clips.sprites import Bytes
from backcut.teaching.clips.told import Told
from backcut.teaching.clips.words import in_words

CODER: Final = "libx264"
#: Constant quality and speed of the coder, in its own words (own choice: drawings stay sharp at some 200 kB a clip).
CODED: Final = {"crf": "21", "preset": "veryfast"}
#: The numbers of ITU-R BT.709 in ITU-T H.273: a player takes a picture of 720 lines to be coded by it.
_BT709: Final = 1

#: Told how many pictures are done, of how many.
Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Clip:
    """A clip: the MP4, a poster picture (PNG), the clip in words, its length, and which part it shows."""

    mp4: bytes
    poster: bytes
    words: str
    seconds: float
    cut: Cut


def clip(told: Told, *, wide: bool = False, light: str = "day", progress: Progress | None = None) -> Clip:
    """The clip of a decision: still, slow, then at game speed.

    Raises: KeyError for a light there is not, BackcutError where no coder for H.264 is installed.
    """
    shape = WIDE if wide else UPRIGHT
    part = cut(told)
    wanted = pictures(told.show, part)
    painter = Painter(told.show, shape, light)
    painter.prepare(wanted)
    # What a phone reads first is moved to the front when all is written, for which the coder needs a file of its own.
    with TemporaryDirectory() as folder:
        place = Path(folder) / "clip.mp4"
        _write(place, painter, wanted, progress)
        mp4 = place.read_bytes()
    shown = sorted({picture.moment for picture in wanted})
    words = in_words(told.show, part.decision, shown)
    return Clip(mp4, _png(painter.paint(wanted[0])), words, len(wanted) / FPS, part)


def _write(place: Path, painter: Painter, wanted: list[Picture], progress: Progress | None) -> None:
    shape = painter.layout.shape
    with av.open(str(place), "w", format="mp4", options={"movflags": "+faststart"}) as file:
        try:
            stream = file.add_stream(CODER, rate=FPS, options=CODED)
        except ValueError:
            raise BackcutError(f"The package av that is installed has no {CODER}: take the pinned one.") from None
        assert isinstance(stream, VideoStream)
        stream.width, stream.height, stream.pix_fmt = shape.wide_px, shape.high_px, "yuv420p"
        coder = stream.codec_context
        coder.thread_count = 1
        coder.colorspace, coder.color_range = _BT709, ColorRange.MPEG
        coder.color_primaries = coder.color_trc = _BT709
        last: Picture | None = None
        frame: VideoFrame | None = None
        for number, picture in enumerate(wanted):
            if frame is None or picture != last:
                frame, last = _frame(painter.paint(picture)), picture
            frame.pts, frame.time_base = number, Fraction(1, FPS)
            file.mux(stream.encode(frame))
            if progress is not None:
                progress(number + 1, len(wanted))
        file.mux(stream.encode(None))


def _frame(painted: Bytes) -> VideoFrame:
    whole = VideoFrame.from_ndarray(painted, format="rgb24")
    return whole.reformat(format="yuv420p", dst_colorspace=Colorspace.ITU709, dst_color_range=ColorRange.MPEG)


def _png(painted: Bytes) -> bytes:
    coder = av.CodecContext.create("png", "w")
    coder.width, coder.height, coder.pix_fmt = painted.shape[1], painted.shape[0], "rgb24"
    packets = [*coder.encode(VideoFrame.from_ndarray(painted, format="rgb24")), *coder.encode(None)]
    return b"".join(bytes(packet) for packet in packets)
