"""`backcut clip`: a sentence or a possession as a short film for the phone, with a poster and the clip in words."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated

import typer
from rich.progress import BarColumn, Progress, TextColumn

from backcut.cli.hall import BookArgument, HabitArgument, Json, Units, check_folder, opened, ranks
from backcut.cli.out import check_places, console, print_json
from backcut.cli.start import begin
from backcut.engine.play import play
from backcut.errors import BackcutError
from backcut.files import write_bytes_whole, write_whole
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.moves import moves_from_text
from backcut.page.plain import LIGHTS
from backcut.teaching.clips.cut import Cut
from backcut.teaching.clips.told import Told, told_example, told_moves
from backcut.teaching.examples import example, examples, rank_of


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A clip to make: the name of its files, and the decision it shows."""

    name: str
    told: Told


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
    if start and not moves:
        raise BackcutError("--start says where moves that are given begin: give --moves too.")
    check_folder(out)
    with opened(book, json, units) as taught:
        wanted, silent = _possession(taught.book, habit, moves, start) if moves else _sentences(taught.book, habit)
        places = [_place(out, one, end) for one in wanted for end in ("mp4", "png", "txt")]
        check_places(book, {f"the file {place.name}": place for place in places})
        made = _make(wanted, wide, light, out, json)
        if json:
            print_json({"clips": made, "silent": silent} | taught.listed)
        else:
            for name in silent:
                line = f"{name} never tells anybody what to do, so it has no clip."
                console.print(line, markup=False, soft_wrap=True)


def _sentences(book: Book, habit: str) -> tuple[list[_Wanted], list[str]]:
    """The sentences that speak, and the names of those that never do. Raises: NoExampleError where none speaks."""
    asked = ranks(book, habit)
    shown = examples(book, asked)
    if not shown:
        example(book, asked[0])  # says why
    names = {rank: f"{letter(rank)} {book.cue(rank)}" for rank in asked}
    wanted = [_Wanted(names[rank], told_example(one)) for rank, one in shown.items()]
    return wanted, [name for rank, name in names.items() if rank not in shown]


def _possession(book: Book, habit: str, moves: str, start: str) -> tuple[list[_Wanted], list[str]]:
    rank = rank_of(book, habit) if habit else None
    steps = play(book, begin(book.title, book, (), True, start), moves_from_text(moves))
    name = "possession" if rank is None else f"{letter(rank)} {book.cue(rank)}"
    return [_Wanted(name, told_moves(book, steps, rank))], []


def _make(wanted: list[_Wanted], wide: bool, light: str, out: Path, json: bool) -> list[dict[str, object]]:
    # Drawing and coding need large libraries; what goes wrong before should not wait for them.
    from backcut.teaching.clips.clip import clip as clip_of

    listed: list[dict[str, object]] = []
    columns = TextColumn("{task.description}"), BarColumn()
    with Progress(*columns, console=console, transient=True, disable=json) as progress:
        for one in wanted:
            task = progress.add_task(one.name, total=None)
            made = clip_of(
                one.told,
                wide=wide,
                light=light,
                progress=lambda done, of, task=task: progress.update(task, completed=done, total=of),  # type: ignore[misc]
            )
            place = _place(out, one, "mp4")
            write_bytes_whole(place, made.mp4)
            write_bytes_whole(_place(out, one, "png"), made.poster)
            write_whole(_place(out, one, "txt"), f"{made.words}\n")
            listed.append(
                {
                    "file": str(place),
                    "seconds": made.seconds,
                    "bytes": len(made.mp4),
                    "words": made.words,
                    "from_s": round(made.cut.game_s[0], 2),
                    "to_s": round(made.cut.game_s[1], 2),
                    "whole": made.cut.whole,
                }
            )
            progress.remove_task(task)
            if not json:
                size = f"{made.seconds:.1f} s, {len(made.mp4) // 1000} kB"
                console.print(f"{place}: {size}{_part(one.told, made.cut)}", markup=False, soft_wrap=True)
    return listed


def _part(told: Told, cut: Cut) -> str:
    """What the clip leaves out, where it does."""
    if cut.whole:
        return ""
    if not told.all_of_it:
        return "; the run goes on beyond it"
    begins_s, ends_s = cut.game_s
    return (
        f"; seconds {begins_s:.1f} to {ends_s:.1f} of {told.show.timeline.duration_s:.1f}, "
        "round the decision of the last move: a clip has no room for more"
    )


def _place(out: Path, one: _Wanted, kind: str) -> Path:
    return out / f"{_file_name(one.name)}.{kind}"


def _file_name(name: str) -> str:
    return " ".join(re.sub(r"[^\w' -]+", " ", name).split())[:60] or "clip"
