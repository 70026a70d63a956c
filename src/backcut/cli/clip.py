"""`backcut clip`: a sentence or a possession as a short film for the phone, with a poster and the clip in words."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated

import typer
from rich.progress import BarColumn, Progress, TextColumn

from backcut.cli.hall import BookArgument, HabitArgument, Json, Units, check_folder, opened, ranks
from backcut.cli.out import console, print_json
from backcut.cli.start import begin
from backcut.engine.play import play
from backcut.errors import BackcutError
from backcut.files import write_bytes_whole, write_whole
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.moves import moves_from_text
from backcut.page.plain import LIGHTS
from backcut.picture.show import Show
from backcut.picture.story import show
from backcut.teaching.clips.cut import Cut, cut_of, cut_whole
from backcut.teaching.examples import example


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A clip to make: the name of its files, what is shown, and which part of it."""

    name: str
    show: Show
    cut: Cut


def clip(
    book: BookArgument,
    habit: HabitArgument = "",
    moves: Annotated[str, typer.Option("--moves", help='A possession instead, such as "1>2, deny 4".')] = "",
    start: Annotated[str, typer.Option("--start", help="Where that possession starts.")] = "",
    wide: Annotated[bool, typer.Option("--wide/--upright", help="For a laptop, or upright for a phone.")] = False,
    light: Annotated[str, typer.Option("--light", help="day or night.")] = "day",
    out: Annotated[Path, typer.Option("--out", help="The folder to write into.")] = Path("clips"),
    units: Units = "m",
    json: Json = False,
) -> None:
    """Make a clip of six to ten seconds for each sentence: still first, then slow, then at game speed."""
    if light not in LIGHTS:
        raise BackcutError(f'--light "{light}": there are {", ".join(LIGHTS)}.')
    check_folder(out)
    with opened(book, json, units) as taught:
        wanted = _possession(taught.book, moves, start) if moves else _sentences(taught.book, habit)
        made = _make(wanted, wide, light, out, json)
        if json:
            print_json({"clips": made} | taught.listed)


def _sentences(book: Book, habit: str) -> list[_Wanted]:
    made = []
    for rank in ranks(book, habit):
        shown = example(book, rank)
        told = show(book, list(shown.possession.steps))
        made.append(_Wanted(f"{letter(rank)} {book.cue(rank)}", told, cut_of(told, shown)))
    return made


def _possession(book: Book, moves: str, start: str) -> list[_Wanted]:
    told = show(book, play(book, begin(book.title, book, (), True, start), moves_from_text(moves)))
    return [_Wanted("possession", told, cut_whole(told))]


def _make(wanted: list[_Wanted], wide: bool, light: str, out: Path, json: bool) -> list[dict[str, object]]:
    # Drawing and coding need large libraries; what goes wrong before should not wait for them.
    from backcut.teaching.clips.clip import clip as clip_of
    from backcut.teaching.clips.sheet import UPRIGHT, WIDE

    told: list[dict[str, object]] = []
    columns = TextColumn("{task.description}"), BarColumn()
    with Progress(*columns, console=console, transient=True, disable=json) as progress:
        for one in wanted:
            task = progress.add_task(one.name, total=None)
            made = clip_of(
                one.show,
                one.cut,
                shape=WIDE if wide else UPRIGHT,
                light=light,
                progress=lambda done, of, task=task: progress.update(task, completed=done, total=of),  # type: ignore[misc]
            )
            place = out / f"{_file_name(one.name)}.mp4"
            write_bytes_whole(place, made.mp4)
            write_bytes_whole(place.with_suffix(".png"), made.poster)
            write_whole(place.with_suffix(".txt"), f"{made.words}\n")
            told.append({"file": str(place), "seconds": made.seconds, "bytes": len(made.mp4), "words": made.words})
            progress.remove_task(task)
            if not json:
                size = f"{made.seconds:.1f} s, {len(made.mp4) // 1000} kB"
                part = "" if made.whole else ", as much as ten seconds hold"
                console.print(f"{place}: {size}{part}", markup=False, soft_wrap=True)
    return told


def _file_name(name: str) -> str:
    return " ".join(re.sub(r"[^\w' -]+", " ", name).split())[:60] or "clip"
