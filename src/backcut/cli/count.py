"""`backcut count`: how many settled situations a book reaches, and how far away the farthest is."""

from __future__ import annotations

from typing import Annotated

import typer
from rich.progress import Progress, SpinnerColumn, TextColumn

from backcut.cli.book import show_problems
from backcut.cli.out import PROBLEMS, console, print_json
from backcut.cli.start import begin
from backcut.engine.explore import KINDS, explore
from backcut.errors import NotationError
from backcut.motion.squads import SQUADS
from backcut.offence.event import EventKind
from backcut.offence.library import open_book


def count(
    book: Annotated[str, typer.Argument(help="A book file, a shipped book, or a formation (its plain book).")],
    moves: Annotated[str, typer.Option("--with", help=f"Moves to try: {', '.join(KINDS)}, joined by commas.")] = "pass",
    json: Annotated[bool, typer.Option("--json", help="Print the counts as JSON.")] = False,
) -> None:
    """Count all settled situations from the start: who stands where and who has the ball, inside players left out."""
    kinds = frozenset(_kind(word) for word in moves.split(",") if word.strip())
    if not kinds:
        raise NotationError(f"No moves to try. Write --with {','.join(KINDS)} or some of them.")
    opened, problems = open_book(book, SQUADS)
    begin(book, opened, problems, json)
    with Progress(
        SpinnerColumn(), TextColumn("{task.description}"), console=console, transient=True, disable=json
    ) as progress:
        task = progress.add_task("looking")
        found, _ = explore(
            opened, kinds, lambda so_far: progress.update(task, description=f"{so_far} situations so far")
        )
    if json:
        listed = {"problems": [problem.to_dict() for problem in problems]} if problems else {}
        print_json({"situations": found.situations, "moves": found.moves, "depth": found.depth} | listed)
    else:
        show_problems(book, opened, problems, json)
        console.print(
            f"{opened.title}: {found.situations} situations, {found.moves} moves, the farthest {found.depth} moves "
            f"away (with {', '.join(sorted(kinds))}).",
            markup=False,
        )
    if problems:
        raise typer.Exit(PROBLEMS)


def _kind(word: str) -> EventKind:
    for kind in KINDS:
        if word.strip().lower() == kind:
            return kind
    raise NotationError(f'"{word.strip()}" is no move that can be counted. There are: {", ".join(KINDS)}.')
