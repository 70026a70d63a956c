"""What `backcut film` prints, and the page and table it writes."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from rich import box
from rich.markup import escape
from rich.table import Table

from backcut.cli.out import console, print_json
from backcut.court.placing import place_spots
from backcut.files import write_whole
from backcut.film.detect import Known, T
from backcut.film.played import at_spots, to_timeline
from backcut.film.reader import Ask
from backcut.film.reading import court_of, read_film, read_rows
from backcut.film.stated import Stated, stated_from_texts
from backcut.film.summary import Summary, summarise
from backcut.film.tidy import header_of, write_tidy
from backcut.page import film_page

_SHOWN = 3  # estimate: more spots a player than these are noise on one line


def report(
    file: Path,
    texts: dict[str, str],
    ask: Ask,
    window_s: tuple[float | None, float | None],
    *,
    as_json: bool,
    html: Path | None,
    tidy: Path | None,
) -> None:
    """Read a film, write what was asked for, print the summary. Raises: FilmError for what cannot be read."""
    from_s, to_s = window_s
    stated = stated_from_texts(texts, "the command")
    strip = read_film(file, stated, ask, from_s=from_s, to_s=to_s)
    floor = court_of(Stated(court=strip.court), strip.file)
    spots = place_spots(floor)
    summary = summarise(strip, spots, floor)
    if tidy is not None:
        rows = read_rows(file, ask, from_s=from_s, to_s=to_s, rate_hz=stated.rate_hz)
        write_tidy(rows, header_of(strip, stated.over(rows.stated)), tidy)
    if html is not None:
        title = f"Clip {ask.clip}" if ask.clip else "A possession on film"
        page = film_page(
            to_timeline(strip),
            spots,
            floor,
            title=title,
            subtitle=file.name,
            notes=list(_notes(summary)),
            at_spots=at_spots(strip, spots, floor),
        )
        write_whole(html, page)
    if as_json:
        print_json(summary.to_dict())
    else:
        _show(summary, [path for path in (html, tidy) if path is not None])


def _show(summary: Summary, written: list[Path]) -> None:
    for line in _notes(summary):
        console.print(escape(line))
    table = Table(box=box.SIMPLE_HEAD)
    for column in ("attacker", "guarded by", "has the ball", "on spots", "between spots"):
        table.add_column(column, justify="right" if column in ("has the ball", "between spots") else "left")
    for one in summary.attackers:
        spots = ", ".join(f"{spot.title} {share:.0%}" for spot, share in list(one.on.items())[:_SHOWN])
        name = str(one.number) if str(one.number) == one.name else f"{one.number} ({one.name})"
        table.add_row(escape(name), escape(one.guarded_by), f"{one.ball_s:.1f} s", spots, f"{one.between:.0%}")
    console.print(table)
    for path in written:
        console.print(f"Written: {escape(str(path))}")


def _notes(summary: Summary) -> Iterator[str]:
    strip, facts = summary.strip, summary.strip.facts
    yield (
        f"{strip.duration_s:.1f} s, {len(strip.t_s)} moments, {strip.rate_hz:.4g} a second, {strip.court} court, "
        f"read as {strip.reader}."
    )
    yield f"Units {_known(facts.units)}; origin {_known(facts.origin)}."
    if facts.attack is not None:
        yield f"Attack {_known(facts.attack)}."
    yield f"The y axis points {_known(facts.y_axis)}."
    if strip.offence.evidence:
        yield f"Offence {_known(strip.offence)}."
    if strip.ball_m.shape[1] == 2:
        yield "The height of the ball is not known; it is drawn at the chest."
    yield f"The ball changes hands {_times(summary.holder_changes)}, inferred from who is nearest to it."
    yield (
        f"All five are past mid-court for {summary.half_court_s:.1f} s; then the nearest spot is "
        f"{summary.nearest_median_m:.2f} m away (median), and {summary.far_share:.0%} of player moments are more than "
        f"5 ft off."
    )
    yield from strip.notes


def _times(count: int) -> str:
    return {0: "never", 1: "once"}.get(count, f"{count} times")


def _known(known: Known[T]) -> str:
    return f"{known.value} ({known.how}{f': {known.evidence}' if known.evidence else ''})"
