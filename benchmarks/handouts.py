"""How long everything of a book takes, and tonight's page with another head-count; beside them, one empty page.

Run: `python benchmarks/handouts.py`.
"""

from __future__ import annotations

import time
from datetime import date

import typst

from backcut.motion.squads import SQUADS
from backcut.offence.library import open_book
from backcut.teaching.drills.drill import Hall
from backcut.teaching.pack import pack
from backcut.teaching.sheets import PAPERS, page_pdf, stamp
from backcut.teaching.sheets.drilled import plan_of
from backcut.teaching.tonight.plan import evening


def main() -> None:
    """The school team, whole, and its evenings."""
    begin = time.perf_counter()
    typst.compile(b"")
    empty = time.perf_counter() - begin
    book, _ = open_book("school-team", SQUADS)
    mark, a4 = stamp(book, date(2026, 11, 26)), PAPERS["a4"]
    for players in (9, 14):
        begin = time.perf_counter()
        page_pdf(plan_of(evening(book, Hall(players, 1, 4), 60)), mark, a4)
        took = time.perf_counter() - begin
        print(f"tonight's page for {players}: {took:.2f} s, {took / empty:.0f} x an empty page ({empty:.3f} s)")
    begin, size, many = time.perf_counter(), 0, 0
    for one in pack(book, mark, a4, Hall(9, 1, 4), 60, with_clips=True):
        size, many = size + len(one.data), many + 1
    took = time.perf_counter() - begin
    each = f"{took / many:.1f} s a file, {took / empty:.0f} x an empty page"
    print(f"{many} files, {size / 1e6:.1f} MB: {took:.0f} s, {each}")


if __name__ == "__main__":
    main()
