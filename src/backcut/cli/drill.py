"""`backcut drill`: from a sentence of the book, the drill that trains it, for those who are there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer

from backcut.cli.hall import (
    Balls,
    Baskets,
    BookArgument,
    HabitArgument,
    Json,
    Out,
    Paper,
    Players,
    Units,
    check_folder,
    opened,
    ranks,
)
from backcut.cli.out import console, print_json
from backcut.errors import BackcutError
from backcut.files import write_bytes_whole
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.library import source_text
from backcut.teaching.drills.card import Words, words
from backcut.teaching.drills.chains import chains
from backcut.teaching.drills.drill import BLOCK_MIN, Drill, Hall, ShortError, drills
from backcut.teaching.drills.stages import Stage
from backcut.teaching.examples import examples
from backcut.teaching.sheets.paper import Paper as PaperSize
from backcut.teaching.sheets.paper import paper_named


def drill(
    book: BookArgument,
    habit: HabitArgument = "",
    players: Players = 8,
    baskets: Baskets = 1,
    balls: Balls = 4,
    stage: Annotated[str, typer.Option("--stage", help=f"{', '.join(Stage)}, or all of them.")] = "guided",
    minutes: Annotated[float, typer.Option("--minutes", help="How long the block is.", min=1, max=10)] = BLOCK_MIN,
    chain: Annotated[int, typer.Option("--chains", help="Draw so many chains of denials instead.", min=0)] = 0,
    seed: Annotated[int, typer.Option("--seed", help="The seed for what is drawn.")] = 1,
    out: Out = None,
    paper: Paper = "a4",
    units: Units = "m",
    json: Json = False,
) -> None:
    """Make the drill of a sentence: the fewest players that hold its decision, the true cue and the false one."""
    hall, stages, on = Hall(players, baskets, balls), _stages(stage), paper_named(paper)
    check_folder(out)
    with opened(book, json, units) as taught:
        if chain:
            _chains([one.moves for one in chains(taught.book, chain, seed)], json)
            return
        made, short = _made(taught.book, habit, hall, stages, minutes, seed)
        if out is not None:
            print_cards(taught.book, source_text(book), made, on, out)
        if json:
            print_json({"drills": [plain_drill(one) for one in made], "instead": short} | taught.listed)
            return
        for one in made:
            _show(words(one))
        for line in short:
            console.print(line, markup=False, soft_wrap=True)
        if out is not None:
            console.print(f"The cards are in {out}", markup=False, soft_wrap=True)


def print_cards(book: Book, text: str, made: Sequence[Drill], on: PaperSize, out: Path) -> None:
    """The cards of these drills as a PDF in a folder."""
    # Paper needs a large library; words should not wait for it.
    from backcut.teaching.sheets import cards_pdf, stamp
    from backcut.teaching.sheets.drilled import card_of
    from backcut.teaching.sheets.sheets import file_name

    data = cards_pdf([card_of(one) for one in made], stamp(book, date.today(), text), on)
    write_bytes_whole(out / f"{file_name(book.title)}-cards-{on.name}.pdf", data)


def _made(
    book: Book, habit: str, hall: Hall, stages: list[Stage], minutes: float, seed: int
) -> tuple[list[Drill], list[str]]:
    """The drills, and what can be done instead of those that cannot be. Raises: BackcutError where none can be."""
    shown, made, short = examples(book), list[Drill](), list[str]()
    for rank in ranks(book, habit):
        if rank not in shown:
            short.append(f"{letter(rank)} {book.cue(rank)} never tells anybody what to do, so it cannot be drilled.")
            continue
        try:
            made += drills(shown[rank], hall, stages=stages, minutes=minutes, seed=seed)
        except ShortError as error:
            short.append(str(error))
    if not made:
        raise BackcutError("\n".join(short))
    return made, short


def _stages(named: str) -> list[Stage]:
    if named == "all":
        return list(Stage)
    for stage in Stage:
        if named.strip().lower() == stage:
            return [stage]
    raise BackcutError(f'--stage "{named}": there are {", ".join(Stage)}, or all.')


def plain_drill(one: Drill) -> dict[str, Any]:
    """A drill as plain data, its card in words."""
    return asdict(words(one)) | {
        "stage": str(one.stage),
        "start": ", ".join(f"{p.number}:{p.at}" for p in one.piece.start.players),
        "moves": one.piece.moves,
        "decisions_each": round(one.each, 1),
        "wait_s": round(one.lines.wait_s),
    }


def _show(card: Words) -> None:
    console.print(f"{card.letter}  {card.name}", style="bold", markup=False)
    lines = (
        card.sentence,
        card.needs,
        card.set_up,
        card.true,
        *card.false,
        card.false_turns,
        card.defence,
        *card.rotation,
        f"Run it from: {card.spots}",
        card.each,
        card.say,
        card.mistake,
        card.score,
        f"Easier: {card.easier}",
        f"Harder: {card.harder}",
        card.instead,
        card.care,
    )
    for line in filter(None, lines):
        console.print(f"   {line}", markup=False, soft_wrap=True)
    console.print()


def _chains(moves: list[str], json: bool) -> None:
    if json:
        print_json({"chains": moves})
        return
    for number, one in enumerate(moves, 1):
        console.print(f"{number:2}  {one}", markup=False, soft_wrap=True)
