"""How soon `backcut play` has printed its first line, beside a bare start of Python in the same run."""

from __future__ import annotations

import subprocess
import sys
import time

RUNS = 7


def first_line_s(command: list[str]) -> float:
    """Seconds until the first line of output, the median of several runs."""
    times = []
    for _ in range(RUNS):
        begin = time.perf_counter()
        with subprocess.Popen(command, stdout=subprocess.PIPE) as process:
            assert process.stdout is not None
            process.stdout.readline()
            times.append(time.perf_counter() - begin)
            process.communicate()
    return sorted(times)[RUNS // 2]


def main() -> None:
    """Print seconds and the ratio to the reference."""
    play = first_line_s([sys.executable, "-m", "backcut", "play", "school-team", "--moves", "T>RW"])
    bare = first_line_s([sys.executable, "-c", "print('up')"])
    numpy = first_line_s([sys.executable, "-c", "import numpy; print('up')"])
    print(f"first line of backcut play: {play:.2f} s; python: {bare:.3f} s; python with numpy: {numpy:.3f} s")
    print(f"ratio play / python with numpy: {play / numpy:.1f} (median of {RUNS})")


if __name__ == "__main__":
    main()
