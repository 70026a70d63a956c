"""How long sheets take: a card, a handout, the poster, beside an empty page of the same press in the same run."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from statistics import median
from time import perf_counter

import typst

from backcut.motion.squads import SQUADS
from backcut.offence.library import open_book
from backcut.teaching.examples import example
from backcut.teaching.sheets import PAPERS, Card, cards_pdf, handout_pdf, poster_pdf, stamp
from backcut.teaching.sheets.decisions import told
from backcut.teaching.sheets.handout import drawn

RUNS = 7


def seconds(work: Callable[[], object]) -> tuple[float, float]:
    """The first run and the median of those after it."""
    took = []
    for _ in range(RUNS + 1):
        begin = perf_counter()
        work()
        took.append(perf_counter() - begin)
    return took[0], median(took[1:])


def main() -> None:
    """Print seconds and ratios."""
    book, _ = open_book("school-team", SQUADS)
    rank, mark, paper = 8, stamp(book, date(2026, 11, 25)), PAPERS["a4"]

    def card() -> bytes:
        one = told(example(book, rank))
        words = ("After each turn everybody moves one spot round.",) * 3
        picture = drawn(one, one.decision).svg
        return cards_pdf([Card("I", "Fill", book.sentences[rank].text, "9 players", picture, words)], mark, paper)

    works: dict[str, Callable[[], object]] = {
        "empty page": lambda: typst.compile(b'#set page(paper: "a4")\n', format="pdf", ignore_system_fonts=True),
        "card": card,
        "handout": lambda: handout_pdf(example(book, rank), mark, paper),
        "poster": lambda: poster_pdf(book, mark, paper),
    }
    took = {name: seconds(work) for name, work in works.items()}
    for name, (first, later) in took.items():
        ratio = later / took["empty page"][1]
        print(f"{name:<10} first {first:.3f} s, then {later:.3f} s, {ratio:.0f} x an empty page")


if __name__ == "__main__":
    main()
