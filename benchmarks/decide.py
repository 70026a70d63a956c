"""How long one decision takes, beside the naive second reading of the same pass in the same run."""

from __future__ import annotations

import sys
import timeit
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from tests.oracle.reading import after_pass

from backcut.engine.decide import decide
from backcut.engine.play import one_step
from backcut.offence.event import Event, EventKind
from backcut.offence.library import open_book


def main() -> None:
    """Print microseconds and the ratio to the reference."""
    book, _ = open_book("school-team")
    start = book.start()
    event = Event(EventKind.PASS, 1, 2)
    step = one_step(book, start, event)
    situations = [beat.before for beat in step.beats]
    rounds = 2000
    one = timeit.timeit(lambda: [decide(book, s) for s in situations], number=rounds) / rounds / len(situations)
    settled = timeit.timeit(lambda: one_step(book, start, event), number=rounds // 4) / (rounds // 4)
    ring = [str(spot) for spot in book.formation.ring]
    where = {number: str(spot) for number, spot in start.spots().items()}
    naive = timeit.timeit(lambda: after_pass(ring, where, 1, 2), number=rounds // 4) / (rounds // 4)
    print(f"decide(), school team, mean over the {len(situations)} situations of one pass: {one * 1e6:.1f} us")
    print(f"one pass until all have settled: {settled * 1e6:.0f} us; naive second reading: {naive * 1e6:.0f} us")
    print(f"ratio engine / naive second reading: {settled / naive:.2f}")


if __name__ == "__main__":
    main()
