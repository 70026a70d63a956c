"""How long one decision takes, beside the naive second reading of the same pass in the same run."""

from __future__ import annotations

import sys
import timeit
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from tests.oracle.reading import after_pass

from backcut.engine.decide import decide
from backcut.engine.play import one_step
from backcut.offence.event import Event, EventKind
from backcut.offence.library import open_book, presets


def time_of(act: Callable[[], object], rounds: int) -> float:
    """Seconds for one call, the mean of `rounds`."""
    return timeit.timeit(act, number=rounds) / rounds


def decide_us(name: str, rounds: int) -> float:
    """Microseconds for one decision of this book, the mean over the situations of its first pass."""
    book, _ = open_book(name)
    situations = [beat.before for beat in one_step(book, book.start(), Event(EventKind.PASS, 1, 2)).beats]
    return time_of(lambda: [decide(book, s) for s in situations], rounds) / len(situations) * 1e6


def main() -> None:
    """Print microseconds and the ratio to the reference."""
    rounds = 2000
    for name in presets():
        print(f"decide(), {name}, mean over the situations of a pass: {decide_us(name, rounds):.1f} us")
    book, _ = open_book("school-team")
    start = book.start()
    event = Event(EventKind.PASS, 1, 2)
    settled = time_of(lambda: one_step(book, start, event), rounds // 4)
    ring = [str(spot) for spot in book.formation.ring]
    where = {number: str(spot) for number, spot in start.spots().items()}
    naive = time_of(lambda: after_pass(ring, where, 1, 2), rounds // 4)
    print(f"one pass until all have settled: {settled * 1e6:.0f} us; naive second reading: {naive * 1e6:.0f} us")
    print(f"ratio engine / naive second reading: {settled / naive:.2f}")


if __name__ == "__main__":
    main()
