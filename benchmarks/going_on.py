"""How quickly a possession goes on: one move more, and a choice of the book changed, each to the page's own JSON.

References in the same run: the same possession played, timed and drawn from nothing, and `json.dumps` of the same data.
"""

from __future__ import annotations

import json
import statistics
import time
from collections.abc import Callable, Sequence
from functools import partial

from backcut.engine import timeline
from backcut.engine.play import play
from backcut.motion import assemble, shadow
from backcut.offence import edit
from backcut.offence.book import Book
from backcut.offence.library import preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.page import data
from backcut.picture.floor import floor
from backcut.picture.story import show

RUNS = 7
ROUND = ("T>RW", "RW>T", "T>LW", "LW>T")
#: Ten passes that can be made whichever of the two ways the cutter comes out; all but the first are answered otherwise.
EITHER = ("1>5", "5>3", "3>4", "4>2", "2>3", "3>1", "1>4", "4>5", "5>1", "1>4")


def told(book: Book, moves: Sequence[str]) -> str:
    """A possession played, timed, drawn and written down."""
    steps = play(book, book.start(), moves_from_text(", ".join(moves)))
    line = show(book, steps)
    return data.story(line, floor(line.court, line.denial_word).room)


def forget() -> None:
    """Nothing that was timed or drawn before is known any more."""
    for kept in (timeline._begun, timeline._after, assemble.path_between, data._told):
        kept.cache_clear()
    shadow._LATEST.clear()


def nothing() -> None:
    """Do nothing before what is measured."""


def median_ms(act: Callable[[], object], before: Callable[[], object] = nothing) -> float:
    """Milliseconds of an act, the median of several runs, each after something that is not measured."""
    times = []
    for _ in range(RUNS):
        forget()
        before()
        begin = time.perf_counter()
        act()
        times.append((time.perf_counter() - begin) * 1000)
    return statistics.median(times)


def main() -> None:
    """Print milliseconds and ratios."""
    text = preset_text("school-team")
    book, _ = book_from_text(text)
    other, _ = book_from_text(edit.choose(text, "exit", "opposite corner"))
    told(book, ROUND)  # what is loaded on first use is not part of it
    for moves in (1, 5, 10, 20):
        passes = [ROUND[i % len(ROUND)] for i in range(moves)]
        act = partial(told, book, passes)
        dumps, scratch = median_ms(partial(json.dumps, json.loads(act()))), median_ms(act)
        more = median_ms(act, partial(told, book, passes[:-1]) if moves > 1 else nothing)
        print(
            f"one move more, to {moves:2}: {more:5.1f} ms; from nothing {scratch:.1f} ms, json.dumps {dumps:.1f} ms; "
            f"ratios {more / scratch:.2f} and {more / dumps:.0f}"
        )
    for moves in (5, 10):
        act = partial(told, other, EITHER[:moves])
        scratch, again = median_ms(act), median_ms(act, partial(told, book, EITHER[:moves]))
        print(
            f"another way out, {moves:2} moves played again: {again:5.1f} ms; from nothing {scratch:.1f} ms; "
            f"ratio {again / scratch:.2f}"
        )


if __name__ == "__main__":
    main()
