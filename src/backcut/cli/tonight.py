"""`backcut tonight`: one page for the practice tonight, for those who are there, and the cards of its drills."""

from __future__ import annotations

from dataclasses import asdict
from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer
from rich.table import Table
from rich.text import Text

from backcut.cli.drill import plain_drill, print_cards
from backcut.cli.hall import (
    Balls,
    Baskets,
    BookArgument,
    HabitArgument,
    Json,
    Out,
    Paper,
    Players,
    Units,
    check_folder,
    opened,
)
from backcut.cli.out import console, print_json
from backcut.files import write_bytes_whole
from backcut.offence.book import Book
from backcut.offence.library import source_text
from backcut.teaching.drills.drill import Hall
from backcut.teaching.examples import rank_of
from backcut.teaching.sheets.paper import Paper as PaperSize
from backcut.teaching.sheets.paper import paper_named
from backcut.teaching.tonight.plan import Evening, evening


def tonight(
    book: BookArgument,
    habit: HabitArgument = "",
    players: Players = 8,
    baskets: Baskets = 1,
    balls: Balls = 4,
    minutes: Annotated[int, typer.Option("--minutes", help="How long the evening is.")] = 60,
    begins: Annotated[str, typer.Option("--begins", help="When it begins.")] = "18:00",
    out: Out = None,
    paper: Paper = "a4",
    units: Units = "m",
    json: Json = False,
) -> None:
    """Make tonight's running order from the book's drills; with another head-count, ask again."""
    hall, on = Hall(players, baskets, balls), paper_named(paper)
    check_folder(out)
    with opened(book, json, units) as taught:
        rank = rank_of(taught.book, habit) if habit else None
        made = evening(taught.book, hall, minutes, habit=rank, begins=begins)
        if out is not None:
            _print(taught.book, source_text(book), made, on, out)
        if json:
            print_json(_plain(made) | taught.listed)
        else:
            _show(made)
            if out is not None:
                console.print(f"The page and its cards are in {out}", markup=False, soft_wrap=True)


def _print(book: Book, text: str, made: Evening, on: PaperSize, out: Path) -> None:
    """The page and the cards as PDFs in a folder."""
    from backcut.teaching.sheets import page_pdf, stamp
    from backcut.teaching.sheets.drilled import plan_of
    from backcut.teaching.sheets.sheets import file_name

    page = page_pdf(plan_of(made), stamp(book, date.today(), text), on)
    write_bytes_whole(out / f"{file_name(book.title)}-tonight-{on.name}.pdf", page)
    if made.cards:
        print_cards(book, text, made.cards, on, out)


def _plain(made: Evening) -> dict[str, Any]:
    return {
        "title": made.title,
        "about": made.about,
        "activities": [asdict(one) for one in made.activities],
        "cards": [plain_drill(one) for one in made.cards],
        "questions": [asdict(one) for one in made.questions],
        "bring": made.bring,
        "not_met": list(made.not_met),
        "care": made.care,
    }


def _show(made: Evening) -> None:
    console.print(made.title, style="bold", markup=False)
    console.print(made.about, markup=False)
    console.print(made.bring, markup=False)
    table = Table(pad_edge=False)
    for head in ("at", "min", "what", "groups", "card"):
        table.add_column(head, no_wrap=head in ("at", "min"))
    for one in made.activities:
        what = "\n".join([one.title, *one.what, *([one.say] if one.say else [])])
        card = "" if one.card is None else str(one.card)
        table.add_row(one.begins, str(one.minutes), Text(what), Text(one.groups.replace(" | ", "\n")), card)
    console.print(table)
    for question in made.questions:
        console.print(f"{question.asks} {question.answer}", markup=False, soft_wrap=True)
    for line in made.not_met:
        console.print(line, style="bold", markup=False, soft_wrap=True)
    console.print(made.care, markup=False, soft_wrap=True)
