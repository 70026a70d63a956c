"""`backcut handouts`: everything a book gives, in one folder with a page that lists it."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Annotated

import typer
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

from backcut.cli.hall import Balls, Baskets, BookArgument, Json, Paper, Players, Units, check_folder, opened
from backcut.cli.out import console, print_json
from backcut.files import write_bytes_whole
from backcut.offence.library import source_text
from backcut.teaching.drills.drill import Hall
from backcut.teaching.sheets.paper import paper_named


def handouts(
    book: BookArgument,
    players: Players = 8,
    baskets: Baskets = 1,
    balls: Balls = 4,
    minutes: Annotated[int, typer.Option("--minutes", help="How long tonight's practice is.")] = 60,
    paper: Paper = "a4",
    clips: Annotated[bool, typer.Option("--clips/--no-clips", help="Make the clips too; they take longest.")] = True,
    out: Annotated[Path, typer.Option("--out", help="The folder to write into.")] = Path("handouts"),
    units: Units = "m",
    json: Json = False,
) -> None:
    """Make everything of a book: poster, bench sheet, booklet, handouts, cards, tonight's page, quiz and clips."""
    hall, on = Hall(players, baskets, balls), paper_named(paper)
    check_folder(out)
    with opened(book, json, units) as taught:
        # Paper and film need large libraries; what goes wrong before should not wait for them.
        from backcut.teaching.pack import count, pack
        from backcut.teaching.sheets import stamp

        mark = stamp(taught.book, date.today(), source_text(book))
        written: list[dict[str, object]] = []
        columns = TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn()
        with Progress(*columns, console=console, transient=True, disable=json) as progress:
            task = progress.add_task("making", total=count(taught.book, with_clips=clips))
            for file in pack(taught.book, mark, on, hall, minutes, with_clips=clips):
                write_bytes_whole(out / file.name, file.data)
                written.append({"file": str(out / file.name), "about": file.about, "bytes": len(file.data)})
                progress.update(task, advance=1, description=file.name)
        if json:
            print_json({"files": written} | taught.listed)
        else:
            size = sum(int(str(one["bytes"])) for one in written) / 1_000_000
            console.print(
                f"{len(written)} files, {size:.1f} MB. Open {out / 'index.html'}", markup=False, soft_wrap=True
            )
