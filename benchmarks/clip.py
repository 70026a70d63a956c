"""How long a clip takes and how large it is, on one core: beside it, coding as many plain pictures.

Run: `python benchmarks/clip.py`.
"""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

import av
import numpy as np

from backcut.motion.squads import SQUADS
from backcut.offence.library import open_book
from backcut.teaching.clips.clip import CODED, CODER, clip
from backcut.teaching.clips.cut import FPS
from backcut.teaching.clips.shape import UPRIGHT, WIDE, Shape
from backcut.teaching.clips.told import told_example
from backcut.teaching.examples import examples


def plain(shape: Shape, count: int) -> float:
    """Seconds to code so many pictures of one colour with the same coder."""
    picture = np.full((shape.high_px, shape.wide_px, 3), 230, np.uint8)
    begin = time.perf_counter()
    with tempfile.TemporaryDirectory() as folder, av.open(str(Path(folder) / "plain.mp4"), "w") as file:
        stream = file.add_stream(CODER, rate=FPS, options=CODED)
        stream.width, stream.height, stream.pix_fmt = shape.wide_px, shape.high_px, "yuv420p"
        stream.codec_context.thread_count = 1
        for _ in range(count):
            file.mux(stream.encode(av.VideoFrame.from_ndarray(picture, format="rgb24")))
        file.mux(stream.encode(None))
    return time.perf_counter() - begin


def main() -> None:
    """Clips of three sentences, upright and wide."""
    book, _ = open_book("school-team", SQUADS)
    shown = examples(book)
    for shape, name in ((UPRIGHT, "upright"), (WIDE, "wide")):
        for rank in (2, 5, 8):
            begin = time.perf_counter()
            made = clip(told_example(shown[rank]), wide=shape is WIDE)
            took = time.perf_counter() - begin
            base = plain(shape, round(made.seconds * FPS))
            print(
                f"{name}, {book.cue(rank)}: {made.seconds:.1f} s of clip in {took:.1f} s, "
                f"{len(made.mp4) / 1000:.0f} kB; plain pictures {base:.1f} s, {took / base:.1f} x"
            )


if __name__ == "__main__":
    main()
