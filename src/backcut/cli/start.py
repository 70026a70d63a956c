"""Where a possession starts, for the commands that play one: the start that is asked for, or the book's own."""

from __future__ import annotations

import typer

from backcut.cli.book import show_problems
from backcut.cli.out import PROBLEMS
from backcut.errors import SituationError
from backcut.offence.book import Book
from backcut.offence.problems import Problem
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_from_text
from backcut.offence.start import check_start


def begin(name: str, book: Book, problems: tuple[Problem, ...], json: bool, asked: str = "") -> Situation:
    """The start that was asked for, else the book's own; a book whose own start cannot be gets its list of problems.

    Raises: NotationError or SituationError for an asked start that cannot be; typer.Exit after the list.
    """
    if asked.strip():
        return check_start(book, situation_from_text(asked))
    try:
        return check_start(book, book.start())
    except SituationError:
        if not problems:
            raise
        show_problems(name, book, problems, json)
        raise typer.Exit(PROBLEMS) from None
