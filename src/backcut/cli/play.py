"""`backcut play`: read a book, list its problems, play a possession, say who does what and why, write the page."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer
from rich.table import Table
from rich.text import Text

from backcut.cli.book import show_problems
from backcut.cli.out import PROBLEMS, check_places, console, print_json
from backcut.cli.start import begin
from backcut.engine.choose import possession
from backcut.engine.gym import gym
from backcut.engine.play import play as play_moves
from backcut.engine.possession import Step
from backcut.engine.report import answers, to_dict, troubles
from backcut.engine.words import action_words, event_words
from backcut.errors import BackcutError
from backcut.files import write_whole
from backcut.motion.squads import SQUADS
from backcut.offence.action import Action, Kind, letter
from backcut.offence.book import Book
from backcut.offence.library import open_book
from backcut.offence.moves import moves_from_text
from backcut.offence.situation import Situation


def play(
    book: Annotated[str, typer.Argument(help="A book file, a shipped book, or a formation (its plain book).")],
    moves: Annotated[
        str, typer.Option("--moves", help='The moves, for example "T>RW, deny 3, RW>T". Without: drawn by seed.')
    ] = "",
    start: Annotated[
        str, typer.Option("--start", help='Where everybody starts, for example "1:T* 2:RW 3:LW 4:RC 5:LC".')
    ] = "",
    seed: Annotated[int, typer.Option("--seed", help="The seed for drawing moves.")] = 1,
    json: Annotated[bool, typer.Option("--json", help="Print the possession as JSON.")] = False,
    html: Annotated[Path | None, typer.Option("--html", help="Write the page that plays the possession.")] = None,
    court: Annotated[str, typer.Option("--court", help="Play on this court instead of the book's.")] = "",
    squad: Annotated[str, typer.Option("--squad", help="Run with this squad preset instead of the book's.")] = "",
) -> None:
    """Play a possession by the book: every move, what each player does, and the sentence that says so."""
    check_places(book, {"--html": html})
    opened, problems = open_book(book, SQUADS)
    here = gym(opened, court, squad)
    first = begin(book, opened, problems, json, start)
    try:
        steps = play_moves(opened, first, moves_from_text(moves)) if moves.strip() else possession(opened, first, seed)
    except BackcutError:
        if not json:  # what the book leaves open may be why it cannot be played
            show_problems(book, opened, problems, json)
        raise
    if html is not None:  # first of all: who reads only the first lines of the table still gets the page
        write_whole(html, _page(opened, steps, court, squad))
    if json:
        data = to_dict(opened, court or opened.court, first, steps)
        print_json(data | {"said": here.placing.said, "problems": [problem.to_dict() for problem in problems]})
    else:
        show_problems(book, opened, problems, json)
        if not problems:
            console.print(f"{opened.title}: no problems. What stands higher is asked first.", markup=False)
        for rank, sentence in enumerate(opened.sentences):
            console.print(f"{letter(rank)}  {opened.cue(rank)}. {sentence.text}", markup=False, soft_wrap=True)
        console.print()
        console.print(_table(opened, first, steps))
        if here.placing.said:
            console.print(here.placing.said, markup=False)
    if html is not None and not json:
        console.print(f"The page is at {html}", markup=False, soft_wrap=True)
    if problems:
        raise typer.Exit(PROBLEMS)


def _page(book: Book, steps: list[Step], court: str, squad: str) -> str:
    # The page needs arrays and fonts; a table should not wait for them.
    from backcut.page import possession_page
    from backcut.picture.story import show

    return possession_page(show(book, steps, court_name=court, squad_name=squad))


def _table(book: Book, start: Situation, steps: list[Step]) -> Table:
    table = Table(title=Text(f"{book.title}, {book.formation.title.lower()}"), title_justify="left", pad_edge=False)
    table.add_column("move", no_wrap=True)
    table.add_column("player", justify="right")
    table.add_column("does")
    table.add_column("because")
    table.add_column("beats")
    there = ", ".join(f"{p.number} {p.at.title}" for p in start.players)
    table.add_row("start", "", f"{there}; {start.ball} has the ball", "", "", end_section=True)
    for step in steps:
        rows = [action for action in answers(step) if action.kind is not Kind.BALL or action.habit is not None]
        table.add_row(Text(step.text, style="bold"), "", Text(event_words(step), style="bold"), "", "")
        for action in rows:
            table.add_row("", *_row(book, action))
        for trouble in troubles(step):
            table.add_row(
                "", Text("!", style="bold"), Text(trouble.text, style="bold"), letter(trouble.habit) or "", ""
            )
        table.add_section()
    return table


def _row(book: Book, action: Action) -> tuple[Text, Text, Text, Text]:
    strong = "" if action.moves else "dim"
    because = "" if action.habit is None else f"{letter(action.habit)} {book.cue(action.habit)}"
    beats = ", ".join(f"{letter(claim.habit)} {book.cue(claim.habit)}" for claim in action.beat)
    return (
        Text(str(action.player), style=strong),
        Text(action_words(action), style=strong),
        Text(because, style=strong),
        Text(beats, style="dim"),
    )
