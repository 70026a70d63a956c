"""How fast a book is proved: beside a plain loop over the rules, and beside an outside model checker, in one run.

    python benchmarks/prove.py [--all]

With --all nothing is cut short: the outside checker explores the overlapped depth too (half a minute and more than a
gigabyte), and sentence by sentence the overlapped depth is walked to its end.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from multiprocessing import get_context

from backcut.engine.gym import gym
from backcut.offence.book import Book
from backcut.offence.library import open_book
from backcut.prove.depth import Depth
from backcut.prove.export import jani, model_of
from backcut.prove.lift import lift
from backcut.prove.ticks import walk_in_ticks
from backcut.prove.timed import JUDGED_TICK_S
from backcut.prove.timing import Timing, timing
from backcut.prove.walk import MOST, walk

RUNS = 5
#: Situations of the plain loop: a slice that takes some seconds.
SLICE = 15_000
#: Folded situations of the overlapped depth, sentence by sentence: of the whole book, about a quarter.
FEW = 10_000
ALL = "--all" in sys.argv


def in_child(work: Callable[[], tuple[int, float]]) -> tuple[int, float, float]:
    """What a piece of work counted, its seconds, and its peak memory in MB, in a process of its own."""
    receive, send = get_context("fork").Pipe(duplex=False)

    def run() -> None:
        counted, seconds = work()
        send.send((counted, seconds, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024))

    process = get_context("fork").Process(target=run)
    process.start()
    send.close()  # so that a child that fails ends the wait
    counted, seconds, peak_mb = receive.recv()
    process.join()
    return counted, seconds, peak_mb


def timed(work: Callable[[], int]) -> tuple[int, float]:
    """What a piece of work counted, and its seconds."""
    begin = time.perf_counter()
    counted = work()
    return counted, time.perf_counter() - begin


def school() -> Book:
    """The school team's book."""
    return open_book("school-team")[0]


def command_line() -> None:
    """Settled five-out from the command line, beside a start of Python with NumPy."""

    def median_s(command: list[str]) -> float:
        times = [
            timed(lambda: subprocess.run(command, capture_output=True, check=True).returncode)[1] for _ in range(RUNS)
        ]
        return sorted(times)[RUNS // 2]

    prove = median_s([sys.executable, "-m", "backcut", "prove", "five-out"])
    numpy = median_s([sys.executable, "-c", "import numpy"])
    print(f"backcut prove five-out: {prove:.2f} s, {prove / numpy:.1f} x python with numpy (median of {RUNS})")


def through_tables(depth: Depth) -> float:
    """Players told apart through tables; situations per second."""
    found, seconds, peak_mb = in_child(lambda: timed(lambda: lift(walk(school(), depth)).situations))
    print(
        f"{depth}, players told apart, through tables: {found:,} situations in {seconds:.1f} s "
        f"({found / seconds / 1000:,.0f} thousand a second), peak {peak_mb:,.0f} MB"
    )
    return found / seconds


def plain_loop(depth: Depth) -> float:
    """The same with the rules asked in every situation, on a slice; situations per second."""
    found, seconds, _ = in_child(
        lambda: timed(lambda: len(walk(school(), depth, told_apart=True, mirrored=False, most=SLICE).situations))
    )
    print(
        f"{depth}, plain loop over decide(): {found:,} situations in {seconds:.1f} s ({found / seconds:,.0f} a second)"
    )
    return found / seconds


def outside(depth: Depth) -> float | None:
    """The exported model explored by an outside checker; states per second, None where it is not installed."""
    try:
        import stormpy
    except ImportError:
        print("stormpy is not installed: no outside reference.")
        return None
    text = jani(model_of(walk(school(), depth), told_apart=True))

    def explore() -> tuple[int, float]:
        read, _ = stormpy.parse_jani_model_from_string(text)
        return timed(lambda: int(stormpy.build_model(read, options=stormpy.BuilderOptions()).nr_states))

    states, seconds, peak_mb = in_child(explore)
    print(
        f"{depth}, the exported model in stormpy: {states:,} states in {seconds:.2f} s "
        f"({states / seconds / 1000:,.0f} thousand a second), peak {peak_mb:,.0f} MB"
    )
    return states / seconds


def in_ticks(loop: float) -> None:
    """The walk in time beside a plain loop's speed: in the steps a proof uses, and in finer ones without a hold."""
    book = open_book("four-out-school-team")[0]
    usual, fine = (timing(book, gym(book), tick_s=tick_s) for tick_s in (JUDGED_TICK_S, 0.1))
    for name, clock in ((f"{JUDGED_TICK_S} s", usual), ("0.1 s, no hold", replace(fine, hold=0))):
        found, seconds, peak_mb = in_child(partial(timed, partial(_ticks, book, clock)))
        print(
            f"in time, {book.title}, steps of {name}: {found:,} situations in {seconds:.1f} s "
            f"({found / seconds / 1000:,.0f} thousand a second), peak {peak_mb:,.0f} MB; "
            f"ratio to the plain loop, overlapped: {found / seconds / loop:,.0f}"
        )


def _ticks(book: Book, clock: Timing) -> int:
    return len(walk_in_ticks(book, time=clock))


def sentence_by_sentence() -> None:
    """How situations and time grow as the school team's sentences are added to cut, fill and hold, one by one."""
    book = school()
    first = [sentence for sentence in book.sentences if sentence.phrase.name in ("cut", "fill", "hold")]
    added = [sentence for sentence in book.sentences if sentence not in first]
    print("the school team sentence by sentence: folded situations settled, denied, overlapped")
    for many in range(len(added) + 1):
        kept = first + added[:many]
        this = replace(book, sentences=tuple(sentence for sentence in book.sentences if sentence in kept))
        told = ", ".join(_walked(this, depth) for depth in (Depth.SETTLED, Depth.DENIED, Depth.OVERLAPPED))
        print(f"  {'+ ' + added[many - 1].phrase.name if many else 'cut, fill, hold'}: {told}")


def _walked(book: Book, depth: Depth) -> str:
    """How many situations are found in how many seconds, cut short at the overlapped depth unless all is asked for."""
    begin = time.perf_counter()
    found = walk(book, depth, most=FEW if depth is Depth.OVERLAPPED and not ALL else MOST)
    seconds = time.perf_counter() - begin
    return f"{'the first ' if found.unfinished else ''}{len(found.situations):,} in {seconds:.2f} s"


def main() -> None:
    """Print figures and ratios."""
    command_line()
    for depth in (Depth.DENIED, Depth.OVERLAPPED):
        tables, loop = through_tables(depth), plain_loop(depth)
        print(f"ratio tables / plain loop, {depth}: {tables / loop:,.0f}")
        if depth is Depth.DENIED or ALL:
            reference = outside(depth)
            if reference is not None:
                print(f"ratio tables / stormpy, {depth}: {tables / reference:.2f}")
    in_ticks(loop)
    sentence_by_sentence()


if __name__ == "__main__":
    main()
