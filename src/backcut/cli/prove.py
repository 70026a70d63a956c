"""`backcut prove`: what a book leaves open in any situation it can come to, and how two books differ."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from backcut.prove.depth import Depth
from backcut.prove.walk import MOST

_DEPTHS = ", ".join((*Depth, "all"))


def prove_command(
    book: Annotated[str, typer.Argument(help="A book file, a shipped book, or a formation (its plain book).")],
    other: Annotated[str, typer.Argument(help="Another book: say how the two differ instead.")] = "",
    depth: Annotated[
        str, typer.Option("--depth", help=f"How far to look: {_DEPTHS}; several joined by commas.")
    ] = "settled",
    properties: Annotated[
        list[str] | None,
        typer.Option("--property", help="Prove only this property, by name; may be given again. NAME=4 sets a number."),
    ] = None,
    suggest: Annotated[bool, typer.Option("--suggest", help="Look for changes that remove each finding.")] = False,
    apply: Annotated[int | None, typer.Option("--apply", help="Write a new book with this suggested change.")] = None,
    to: Annotated[Path | None, typer.Option("--to", help="Where --apply writes the new book.")] = None,
    most: Annotated[int, typer.Option("--most", help="Look at no more situations than this, at each depth.")] = MOST,
    apart: Annotated[bool, typer.Option("--apart", help="Count with the players told apart, too.")] = False,
    json: Annotated[bool, typer.Option("--json", help="Print everything as JSON.")] = False,
    html: Annotated[Path | None, typer.Option("--html", help="Write the findings as a page that plays them.")] = None,
    model: Annotated[
        Path | None, typer.Option("--model", help="Write what was walked through for an outside model checker.")
    ] = None,
) -> None:
    """Look at every situation a book can come to; show each hole as the shortest possession that comes to it."""
    # Arrays and properties are loaded only here: the other commands should not wait for them.
    from backcut.cli.prove_run import run

    run(
        book,
        other,
        depth=depth,
        properties=properties,
        suggest=suggest,
        apply=apply,
        to=to,
        most=most,
        apart=apart,
        json=json,
        html=html,
        model=model,
    )
