"""`backcut film`: a possession of real tracking, in words, as data, as a page, or as a tidy table."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def film_command(
    file: Annotated[Path, typer.Argument(help="A tidy table (CSV, .gz, Parquet) or another format that is known.")],
    units: Annotated[str, typer.Option(metavar="m|ft|cm|auto", help="Units of the places.")] = "auto",
    origin: Annotated[str, typer.Option(metavar="corner|basket|centre|auto", help="Where 0, 0 lies.")] = "auto",
    attack: Annotated[
        str, typer.Option(metavar="left|right|auto", help="The basket attacked: small or large x.")
    ] = "auto",
    y_axis: Annotated[str, typer.Option(metavar="up|down|auto", help="Where +y points when +x points right.")] = "auto",
    rate: Annotated[str, typer.Option(metavar="HZ", help="Frames a second, for a column frame.")] = "auto",
    court: Annotated[str, typer.Option(metavar="NAME", help="fiba, nba, ...; see `backcut court`.")] = "auto",
    offence: Annotated[str, typer.Option(metavar="TEAM", help="Who attacks, where teams have names.")] = "auto",
    clip: Annotated[str | None, typer.Option(metavar="ID", help="One clip of a file that holds several.")] = None,
    meta: Annotated[Path | None, typer.Option(metavar="FILE", help="The table that explains the clips.")] = None,
    from_s: Annotated[float | None, typer.Option("--from", metavar="S", help="Begin here, clock of the file.")] = None,
    to_s: Annotated[float | None, typer.Option("--to", metavar="S", help="End here, clock of the file.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print JSON, lengths in metres.")] = False,
    html: Annotated[Path | None, typer.Option(metavar="OUT", help="Write the page.")] = None,
    tidy: Annotated[
        Path | None, typer.Option(metavar="OUT", help="Write a tidy table: .csv, .csv.gz, .parquet.")
    ] = None,
) -> None:
    """Show a real possession: who is on which spot or between spots, and who has the ball."""
    # Arrays, tables and fonts are loaded for this command alone: no other should wait for them.
    from backcut.cli.film_report import report
    from backcut.film.reader import Ask

    texts = {"units": units, "origin": origin, "attack": attack, "y_axis": y_axis}
    texts |= {"rate_hz": rate, "court": court, "offence": offence}
    report(file, texts, Ask(clip, meta), (from_s, to_s), as_json=as_json, html=html, tidy=tidy)
