"""What every command of teaching asks: the book, the sentence, and who and what is there tonight."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Any

import typer

from backcut.cli.book import show_problems
from backcut.cli.out import PROBLEMS
from backcut.errors import BackcutError
from backcut.language import measuring
from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.library import open_book
from backcut.teaching.examples import rank_of

BookArgument = Annotated[str, typer.Argument(help="A book file, a shipped book, or a formation (its plain book).")]
HabitArgument = Annotated[
    str, typer.Argument(help="A sentence by its letter or cue word, such as Fill; without it, every one.")
]
Players = Annotated[int, typer.Option("--players", help="How many players are there.")]
Baskets = Annotated[int, typer.Option("--baskets", help="How many baskets.")]
Balls = Annotated[int, typer.Option("--balls", help="How many balls.")]
Out = Annotated[Path | None, typer.Option("--out", help="The folder to write files into.")]
Paper = Annotated[str, typer.Option("--paper", help="a4 or letter; posters take the large one, a3 or tabloid.")]
Units = Annotated[str, typer.Option("--units", help="How lengths are said: m or ft.")]
Json = Annotated[bool, typer.Option("--json", help="Print as JSON.")]


@dataclass(frozen=True, slots=True)
class Taught:
    """A book, and what JSON says of its problems: nothing where it has none."""

    book: Book
    listed: dict[str, Any]


@contextmanager
def opened(name: str, json: bool, units: str = "m") -> Iterator[Taught]:
    """A book to teach from, as far as it can be read; its problems are told, and end the command with exit code 1.

    Meanwhile lengths are said in these units. Raises: BackcutError where there is no such book, no sentence in it can
    be read, or there are no such units.
    """
    book, problems = open_book(name, SQUADS)
    if problems and not json:
        show_problems(name, book, problems, json)
    if not book.sentences:
        raise BackcutError(f"{name}: there is no sentence in it that can be read, so there is nothing to teach yet.")
    with measuring(units):
        yield Taught(book, {"problems": [problem.to_dict() for problem in problems]} if problems else {})
    if problems:
        raise typer.Exit(PROBLEMS)


def check_folder(out: Path | None) -> None:
    """Refuse, before anything is worked out, a folder that is a file. Raises: BackcutError."""
    if out is not None and out.exists() and not out.is_dir():
        raise BackcutError(f"--out {out}: this is no folder. Name another place.")


def ranks(book: Book, habit: str) -> list[int]:
    """The rank of the sentence that is named; of every sentence where none is. Raises: BackcutError."""
    return [rank_of(book, habit)] if habit else list(range(len(book.sentences)))
