"""`backcut court`: the courts there are, one court with its sources, or a gym as a tape measures it."""

from __future__ import annotations

import json
from typing import Annotated, Literal

import typer
from rich import box
from rich.console import Console
from rich.markup import escape
from rich.table import Table

from backcut.court.courts import COURTS, court
from backcut.court.measure import Measure
from backcut.court.record import Court
from backcut.court.tape import from_tape, scaled
from backcut.court.units import floor_from_text, in_feet, in_metres, metres_from_text

_TAPE = 'Metres or feet: "25.6 m", "84 ft", "19 ft 9 in".'


def court_command(
    name: Annotated[str | None, typer.Argument(help=f"{', '.join(COURTS)}. Without it: a list.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print JSON, lengths in metres.")] = False,
    length: Annotated[str | None, typer.Option(help=f"Floor between the baselines. {_TAPE}")] = None,
    width: Annotated[str | None, typer.Option(help=f"Floor between the sidelines. {_TAPE}")] = None,
    arc: Annotated[str | None, typer.Option(help="From under the basket to the arc's outer edge, or none.")] = None,
    corner: Annotated[str | None, typer.Option(help="From the axis to the straight part's outer edge.")] = None,
    basket_height: Annotated[str | None, typer.Option(help="From the floor to the ring.")] = None,
    free_throw_line: Annotated[str | None, typer.Option(help="From the baseline to its far edge.")] = None,
    lane_width: Annotated[str | None, typer.Option(help="Between the outer edges of the lane.")] = None,
    like: Annotated[str | None, typer.Option(help="The court to take what was not measured from.")] = None,
    scale: Annotated[str | None, typer.Option(metavar="LENGTHxWIDTH", help='Another floor: "26x14".')] = None,
) -> None:
    """Show a court: every measure in metres and feet, its edge, its edition and its clause."""
    tape = (length, width, arc, corner, basket_height, free_throw_line, lane_width)
    if not any((name, like, scale, *tape)):
        _show_all(as_json=as_json)
        return
    shown = court(like or name or "fiba")
    if scale:
        shown = scaled(shown, *floor_from_text(scale))
    if any(tape):
        shown = from_tape(
            name if name and like else "gym" if not name else f"{name}, measured",
            length_m=_metres(length),
            width_m=_metres(width),
            arc_m=_arc_m(arc),
            corner_m=_metres(corner),
            basket_height_m=_metres(basket_height),
            free_throw_line_m=_metres(free_throw_line),
            lane_width_m=_metres(lane_width),
            like=shown,
        )
    _show(shown, as_json=as_json)


def _metres(text: str | None) -> float | None:
    return None if text is None else metres_from_text(text)


def _arc_m(text: str | None) -> float | Literal["like"] | None:
    if text is None:
        return "like"
    return None if text.strip().lower() == "none" else metres_from_text(text)


def _show_all(*, as_json: bool) -> None:
    if as_json:
        typer.echo(json.dumps({"courts": [record.to_dict() for record in COURTS.values()]}, indent=2))
        return
    table = Table(box=box.SIMPLE_HEAD, title="Courts", title_justify="left")
    for column in ("name", "floor", "arc", "ring", "edition"):
        table.add_column(column)
    for record in COURTS.values():
        arc = in_metres(record.arc_radius.m) if record.has_arc else "none"
        floor = f"{in_metres(record.length.m)} x {in_metres(record.width.m)}"
        table.add_row(record.name, floor, arc, in_metres(record.basket_height.m), escape(record.edition))
    Console().print(table)


def _show(record: Court, *, as_json: bool) -> None:
    if as_json:
        typer.echo(json.dumps(record.to_dict(), indent=2))
        return
    title = f"{escape(record.title)} ({escape(record.edition)})"
    table = Table(box=box.SIMPLE_HEAD, title=title, title_justify="left", padding=(0, 1, 0, 0))
    for column in ("measure", "metres", "feet", "edge", "source"):
        table.add_column(column, justify="right" if column in ("metres", "feet", "source") else "left")
    # clause and edition are too long for a row of eighty columns, so they stand below under their number
    sources: dict[str, int] = {}
    for key, measure in record.measures.items():
        number = sources.setdefault(str(measure.source), len(sources) + 1)
        table.add_row(_words(key), *_lengths(measure), str(number))
    console = Console(highlight=False, soft_wrap=True)
    console.print(table)
    for text, number in sources.items():
        console.print(f"{number:>3}  {escape(text)}")
    console.print()
    for key, measure in record.measures.items():
        if measure.note:
            console.print(f"     {_words(key)}: {escape(measure.note)}")


def _words(key: str) -> str:
    return key.replace("_", " ")


def _lengths(measure: Measure) -> tuple[str, str, str]:
    if measure.value_m is None:
        return "none", "none", ""
    return in_metres(measure.value_m), in_feet(measure.value_m), str(measure.edge)
