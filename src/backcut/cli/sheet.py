"""`backcut sheet`: the book on paper, as PDF files."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer

from backcut.cli.hall import BookArgument, HabitArgument, Json, Units, opened
from backcut.cli.out import console, print_json
from backcut.errors import BackcutError
from backcut.files import write_bytes_whole
from backcut.offence.action import letter
from backcut.offence.library import source_text
from backcut.teaching.examples import rank_of
from backcut.teaching.sheets import PAPERS, Sheet, paper_named, sheets, stamp


def sheet(
    book: BookArgument,
    habit: HabitArgument = "",
    kind: Annotated[str, typer.Option("--kind", help=f"{', '.join(Sheet)}.")] = "handout",
    paper: Annotated[str, typer.Option("--paper", help=f"{', '.join(PAPERS)}; posters take the large one.")] = "a4",
    large: Annotated[bool, typer.Option("--large", help="The bench sheet in large print.")] = False,
    seed: Annotated[int, typer.Option("--seed", help="The seed for the questions of a quiz.")] = 1,
    day: Annotated[str, typer.Option("--date", help="The day at the foot, such as 2026-11-25; today without.")] = "",
    out: Annotated[Path, typer.Option("--out", help="The folder to write the files into.")] = Path(),
    units: Units = "m",
    json: Json = False,
) -> None:
    """Print the book: a handout of a sentence or of each, a poster, the bench sheet, the booklet or a quiz."""
    chosen, on, dated = _kind(kind), paper_named(paper), _day(day)
    with opened(book, json, units) as taught:
        rank = rank_of(taught.book, habit) if habit else None
        printed: list[dict[str, Any]] = []
        mark = stamp(taught.book, dated, source_text(book))
        for made in sheets(taught.book, chosen, mark, on, rank=rank, large=large, seed=seed):
            file = out / made.name
            write_bytes_whole(file, made.pdf)
            about = None if made.rank is None else str(letter(made.rank))
            printed.append({"file": str(file), "letter": about, "bytes": len(made.pdf)})
            if not json:
                console.print(str(file), markup=False, soft_wrap=True)
        if json:
            print_json({"kind": str(chosen), "text": mark.version, "sheets": printed} | taught.listed)


def _kind(named: str) -> Sheet:
    for kind in Sheet:
        if named.strip().lower() == kind:
            return kind
    raise BackcutError(f'--kind "{named}": there are {", ".join(Sheet)}.')


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text) if text else date.today()
    except ValueError:
        raise BackcutError(f'--date "{text}": give a day such as 2026-11-25.') from None
