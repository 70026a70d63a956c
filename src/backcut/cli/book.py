"""`backcut book check|format|new|list`: a book's problems, its canonical text, a new one from a shipped one."""

from __future__ import annotations

from os.path import exists
from pathlib import Path
from typing import Annotated

import typer

from backcut.cli.out import PROBLEMS, console, print_json
from backcut.errors import BookFileError
from backcut.files import write_whole
from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.book_text import canonical
from backcut.offence.library import book_text, preset_text, presets
from backcut.offence.problems import Problem
from backcut.offence.reading import book_from_text

app = typer.Typer(help="Check, format and start books.", no_args_is_help=True, rich_markup_mode=None)


def show_problems(name: str, book: Book, problems: tuple[Problem, ...], json: bool) -> None:
    """Every problem of a book, each with its place, what is wrong and what would be right."""
    if json:
        print_json({"book": book.title, "problems": [problem.to_dict() for problem in problems]})
        return
    if problems:
        console.print(
            "One problem" if len(problems) == 1 else f"{len(problems)} problems", "in this book:", markup=False
        )
    for problem in problems:
        console.print(f"{name}:{problem.line}:{problem.column}: {problem.wrong}", markup=False, soft_wrap=True)
        console.print(f"    {problem.right}", markup=False, soft_wrap=True)


def problems_in(book: Book, problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """The problems of a book with those of its `Prove:` lines, in order of place."""
    from backcut.prove.own import problems_of

    if not book.proofs:
        return problems
    return tuple(sorted((*problems, *problems_of(book)), key=lambda problem: (problem.line, problem.column)))


@app.command()
def check(
    file: Annotated[str, typer.Argument(help="A book file or the name of a shipped book.")],
    json: Annotated[bool, typer.Option("--json", help="Print the problems as JSON.")] = False,
) -> None:
    """List every problem of a book at once, with line and column, what is wrong and what would be right."""
    book, problems = book_from_text(book_text(file), SQUADS)
    problems = problems_in(book, problems)
    if json or problems:
        show_problems(file, book, problems, json)
    else:
        console.print(f"{book.title}: {len(book.sentences)} sentences, no problems.", markup=False)
    if problems:
        raise typer.Exit(PROBLEMS)


@app.command("format")
def format_(
    file: Annotated[str, typer.Argument(help="A book file or the name of a shipped book.")],
    in_place: Annotated[bool, typer.Option("--in-place", help="Write the file itself instead of printing.")] = False,
    json: Annotated[bool, typer.Option("--json", help="Print as JSON.")] = False,
) -> None:
    """Write a book's canonical text: even spacing and wording, comments and order kept."""
    text = canonical(book_text(file))
    if in_place and not exists(file):
        raise BookFileError(
            f"{file} is a shipped book. Start your own with: backcut book new my-book.txt --from {file}"
        )
    if in_place:
        write_whole(Path(file), text)
    if json:
        print_json({"file": file, "text": text, "written": in_place})
    elif in_place:
        console.print(f"{file}: written.", markup=False)
    else:
        typer.echo(text, nl=False)


@app.command()
def new(
    file: Annotated[Path, typer.Argument(help="Where to write the book.")],
    preset: Annotated[str, typer.Option("--from", help="The shipped book to start from.")] = "first-month",
    title: Annotated[str, typer.Option(help="The title of the new book.")] = "",
    json: Annotated[bool, typer.Option("--json", help="Print as JSON.")] = False,
) -> None:
    """Start a book from a shipped one; it is yours to change."""
    if exists(file):
        raise BookFileError(f"{file}: this file exists already and is left alone. Name another file.")
    text = preset_text(preset)
    if title := " ".join(title.split()):
        lines = [f"Title: {title}" if line.startswith("Title:") else line for line in text.splitlines()]
        text = "\n".join(lines) + "\n"
    write_whole(file, text)
    if json:
        print_json({"file": str(file), "from": preset})
        return
    console.print(f"{file}: a new book from {preset}. Check it with: backcut book check {file}", markup=False)


@app.command("list")
def list_(json: Annotated[bool, typer.Option("--json", help="Print as JSON.")] = False) -> None:
    """List the shipped books."""
    rows = [(name, book_from_text(preset_text(name), SQUADS)[0]) for name in presets()]
    if json:
        print_json([{"name": name, "title": book.title, "formation": book.formation.name} for name, book in rows])
        return
    for name, book in rows:
        console.print(f"{name}: {book.title}, {book.formation.title}, {len(book.sentences)} sentences", markup=False)
