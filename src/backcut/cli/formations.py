"""`backcut formations`: the rings, where players start, and how far the spots lie from each other on a court."""

from __future__ import annotations

from typing import Annotated, Any

import typer
from rich.table import Table

from backcut.cli.out import console, print_json
from backcut.court.placing import place
from backcut.court.units import in_feet, in_metres
from backcut.court.written import court_from_text
from backcut.offence.formation import formations as known


def formations(
    on: Annotated[str, typer.Option("--court", help="The court to measure on.")] = "fiba",
    json: Annotated[bool, typer.Option("--json", help="Print as JSON.")] = False,
) -> None:
    """List the formations with their rings and the distances between neighbours on a court."""
    ground = court_from_text(on)
    rows: list[dict[str, Any]] = []
    for formation in known().values():
        placing = place(ground, formation.ring)
        rows.append(
            {
                "name": formation.name,
                "title": formation.title,
                "court": ground.name,
                "ring": [str(spot) for spot in formation.ring],
                "start": {str(player.number): str(player.at) for player in formation.situation().players},
                "ball": formation.situation().ball,
                "inside": [str(spot) for spot in formation.inside],
                "pairs": [
                    {
                        "spots": [str(pair.a), str(pair.b)],
                        "distance": round(pair.distance_m, 3),
                        "band": [round(pair.low_m, 3), round(pair.high_m, 3)],
                        "fit": str(pair.fit),
                    }
                    for pair in placing.pairs
                ],
                "said": placing.said,
            }
        )
    if json:
        print_json(rows)
        return
    for row in rows:
        table = Table(title=f"{row['title']} on {ground.title}: {' '.join(row['ring'])}", title_justify="left")
        for column in ("pair", "distance", "band", "fit"):
            table.add_column(column)
        for pair in row["pairs"]:
            low, high = pair["band"]
            table.add_row(
                "-".join(pair["spots"]),
                f"{in_metres(pair['distance'])} ({in_feet(pair['distance'])})",
                f"{low:.2f}-{high:.2f} m",
                pair["fit"],
            )
        console.print(table)
        if row["said"]:
            console.print(row["said"], markup=False)
