"""`backcut floor`, and bare `backcut`: the live court in the browser; without a terminal, a report in print."""

from __future__ import annotations

import sys
from contextlib import suppress
from pathlib import Path
from typing import Annotated

import typer

from backcut.cli.out import console
from backcut.motion.squads import SQUADS
from backcut.offence.edit import choose, set_line
from backcut.offence.library import source_text
from backcut.offence.reading import book_from_text

DEMO = "school-team"
#: A possession with a pass and cut, a back cut against a denial, and a lay-up. Invented.
MOVES = "T>RW, RW>T, deny 4, T>cutter, lay-up"


def floor(
    book: Annotated[str, typer.Argument(help="A book file, a shipped book, or a formation.")] = DEMO,
    host: Annotated[str, typer.Option("--host", help="The address to listen on; only this machine by default.")] = (
        "127.0.0.1"
    ),
    port: Annotated[
        int | None, typer.Option("--port", help="The port; without it the first free one.", min=0, max=65_535)
    ] = None,
    books: Annotated[Path | None, typer.Option("--books", help="The folder where books are kept.")] = None,
    browser: Annotated[bool, typer.Option("--browser/--no-browser", help="Open the page in a browser.")] = True,
    once: Annotated[bool, typer.Option("--once", help="Print the report of the main job instead, and end.")] = False,
) -> None:
    """Open the live floor in the browser. Where no terminal is, print the report of the main job and end."""
    if once or not sys.stdout.isatty():
        report(book)
        return
    # The server needs arrays, drawings and the web; nothing else should wait for them.
    from backcut.web.serve import serve, usual_folder
    from backcut.web.shelf import Shelf

    source_text(book)  # refuses a book there is not before anything is started
    own = Path(book).resolve() if Path(book).is_file() else None
    shelf = Shelf((books or usual_folder()).absolute(), own)
    serve(
        shelf,
        book=shelf.own_name or book,
        host=host,
        port=port,
        browse=browser,
        say=lambda line: console.print(line, markup=False, soft_wrap=True),
    )


def report(book: str = DEMO) -> None:
    """The main job in print: what a proof finds (the demo has a hole), then a possession. Writes no file."""
    from backcut.cli.play import play

    text = source_text(book)
    if book == DEMO:
        text = set_line(choose(text, "exit", "opposite corner"), "title", "The school team, with a hole")
    _prove(text)
    console.print()
    with suppress(typer.Exit):
        play(book, moves=MOVES if book == DEMO else "", start="", seed=1, json=False, html=None, court="", squad="")


def _prove(text: str) -> None:
    from backcut.cli.prove_text import proof_lines
    from backcut.prove.depth import Depth
    from backcut.prove.own import asked_of
    from backcut.prove.proof import prove

    book, _ = book_from_text(text, SQUADS)
    asked = asked_of(book)
    proof = prove(book, (Depth.SETTLED,), asked.properties, named=asked.named, sided=asked.sided)
    for line in proof_lines("", proof, None, False):
        console.print(line, markup=False, soft_wrap=True)
