"""The command `backcut`: its commands, and one way out for every error."""

from __future__ import annotations

import io
import sys
from typing import Annotated

import typer

from backcut import __version__
from backcut.cli.book import app as book
from backcut.cli.clip import clip
from backcut.cli.count import count
from backcut.cli.court import court_command
from backcut.cli.drill import drill
from backcut.cli.film import film_command
from backcut.cli.floor import floor
from backcut.cli.formations import formations
from backcut.cli.handouts import handouts
from backcut.cli.play import play
from backcut.cli.prove import prove_command
from backcut.cli.quiz import quiz
from backcut.cli.sheet import sheet
from backcut.cli.tonight import tonight
from backcut.errors import BackcutError

app = typer.Typer(
    name="backcut",
    help="State the habits of a motion offence once, in sentences; see them played, checked and explained.",
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    add_completion=False,
)
app.command("floor")(floor)
app.command("play")(play)
app.add_typer(book, name="book")
app.command("prove")(prove_command)
app.command("drill")(drill)
app.command("tonight")(tonight)
app.command("clip")(clip)
app.command("quiz")(quiz)
app.command("sheet")(sheet)
app.command("handouts")(handouts)
app.command("count")(count)
app.command("court")(court_command)
app.command("formations")(formations)
app.command("film")(film_command)


def _version(asked: bool) -> None:
    if asked:
        typer.echo(f"backcut {__version__}")
        raise typer.Exit


@app.callback(invoke_without_command=True)
def _main(
    asked: typer.Context,
    once: Annotated[bool, typer.Option("--once", help="Print the report of the main job, and end.")] = False,
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Print the version.")
    ] = False,
) -> None:
    """State the habits of a motion offence once, in sentences; see them played, checked and explained.

    Without a command: the live floor in the browser.
    """
    if asked.invoked_subcommand is None:
        floor(once=once)


def run() -> None:
    """Run the command line; an error of ours is one message and exit code 2."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            # A terminal without é shows it escaped rather than failing.
            stream.reconfigure(errors="backslashreplace")
    try:
        app()
    except BackcutError as error:
        sys.stderr.write(f"{error}\n")
        sys.exit(2)
