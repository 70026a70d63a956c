"""`backcut quiz`: a page of questions from a book, and the codes that players bring back read into a table."""

from __future__ import annotations

from os.path import isfile
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from rich.box import SIMPLE
from rich.table import Table

from backcut.cli.book import show_problems
from backcut.cli.out import PROBLEMS, check_places, console, print_json
from backcut.errors import BackcutError
from backcut.files import write_whole
from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.library import open_book, presets

if TYPE_CHECKING:
    from backcut.teaching.quizzes import Question, Results


def quiz(
    book: Annotated[str, typer.Argument(help='A book file, a shipped book or a formation; or "read", before codes.')],
    rest: Annotated[
        list[str] | None,
        typer.Argument(metavar="[HABIT] | CODE...", help="One sentence, by letter or cue word; or codes, or a file."),
    ] = None,
    out: Annotated[Path, typer.Option("--out", help="The folder the page is written to.")] = Path("."),
    count: Annotated[int, typer.Option("--count", help="How many questions.")] = 10,
    seed: Annotated[int, typer.Option("--seed", help="The seed the questions are drawn with.")] = 1,
    player: Annotated[int, typer.Option("--player", help="A page for this number of the book, 1 to 5.")] = 0,
    squad: Annotated[bool, typer.Option("--squad", help="One page for everybody (so it is without --player).")] = False,
    of: Annotated[str, typer.Option("--book", help="With read: the book the codes belong to.")] = "",
    json: Annotated[bool, typer.Option("--json", help="Print as JSON.")] = False,
) -> None:
    """Make a page of questions for a phone; `quiz read CODE...` turns the players' codes into a table."""
    given = rest or []
    if book == "read":
        _read(given, of, json)
        return
    if squad and player:
        raise BackcutError("--player and --squad: a page is for one number or for all. Give one of the two.")
    if len(given) > 1:
        raise BackcutError(f"Give one sentence, by its letter or cue word; here are {len(given)}: {', '.join(given)}.")
    _make(book, given[0] if given else "", out, count, seed, player or None, json)


def _make(name: str, habit: str, out: Path, count: int, seed: int, player: int | None, json: bool) -> None:
    # The page needs arrays and fonts; a refusal should not wait for them.
    from backcut.teaching.examples import rank_of
    from backcut.teaching.quizzes import quiz as draw
    from backcut.teaching.quizzes import quiz_page

    book, problems = open_book(name, SQUADS)
    rank = rank_of(book, habit) if habit else None
    file = out / _file_name(book, rank, player)
    check_places(name, {"--out": file})
    asked = draw(book, count, seed, rank=rank, player=player)
    page = quiz_page(book, asked, player=player)
    write_whole(file, page)
    if json:
        print_json(
            {
                "book": book.title,
                "file": str(file),
                "bytes": len(page.encode()),
                "asked_for": count,
                "problems": [problem.to_dict() for problem in problems],
                "questions": [_question(question) for question in asked],
            }
        )
    else:
        if problems:
            show_problems(name, book, problems, json)
        many = "1 question" if len(asked) == 1 else f"{len(asked)} questions"
        fewer = f" There are no more of {count} that differ." if len(asked) < count else ""
        console.print(f"{book.title}: {many}.{fewer} The page is at {file}", markup=False, soft_wrap=True)
    if problems:
        raise typer.Exit(PROBLEMS)


def _file_name(book: Book, rank: int | None, player: int | None) -> str:
    words = ["quiz", book.title, "" if rank is None else book.cue(rank), "" if player is None else str(player)]
    plain = "".join(character if character.isalnum() else "-" for character in " ".join(filter(None, words)).lower())
    return f"{'-'.join(filter(None, plain.split('-')))[:80]}.html"


def _question(question: Question) -> dict[str, object]:
    return {
        "id": question.name,
        "ask": str(question.ask),
        "level": question.level,
        "sentence": question.sentence[0],
        "told": question.occasion.happened,
        "words": question.words,
        "answer": question.answer,
        "choices": [{"text": choice.text, "right": choice.right, "why": choice.why} for choice in question.choices],
    }


def _read(given: list[str], of: str, json: bool) -> None:
    from backcut.teaching.quizzes import results
    from backcut.teaching.quizzes.code import GROUP

    if given and all(len(part) <= GROUP and not isfile(part) for part in given):  # one code, typed with spaces
        given = ["-".join(given)]
    codes = [code for one in given for code in (_lines(one) if isfile(one) else [one])]
    if not any(code.strip() for code in codes):
        raise BackcutError("No code is given. Type the codes after `quiz read`, or name a file with one in each line.")
    wanted = open_book(of, SQUADS)[0] if of else None
    shipped = [open_book(name, SQUADS)[0] for name in presets()]
    found = results(codes, shipped, wanted)
    if json:
        print_json(_told(found))
    else:
        _print(found)
    if found.mistyped or found.other:
        raise typer.Exit(PROBLEMS)


def _lines(file: str) -> list[str]:
    try:
        return Path(file).read_text("utf-8-sig").splitlines()
    except (OSError, UnicodeDecodeError):
        raise BackcutError(f"{file}: this file cannot be read as text. Write one code in each line.") from None


def _told(found: Results) -> dict[str, object]:
    return {
        "book": found.book.title if found.book else None,
        "sentences": [{"letter": sign, "cue": cue} for sign, cue in found.sentences],
        "players": [
            {
                "shirt": shirt,
                "counts": [{"right": right, "asked": asked} for right, asked in found.by_shirt[shirt].counts],
            }
            for shirt in sorted(found.by_shirt)
        ],
        "mistyped": [code for code, _ in found.mistyped],
        "another_book": found.other,
        "more_than_one": sorted(set(found.again)),
    }


def _print(found: Results) -> None:
    if found.by_shirt:
        title = found.book.title if found.book else "A book of your own; name it with --book to see its cue words"
        table = Table(title=title, title_justify="left", pad_edge=False, box=SIMPLE, padding=(0, 1, 0, 0))
        table.add_column("shirt", justify="right", no_wrap=True)
        for rank in found.asked:
            sign, _ = found.sentences[rank]
            table.add_column(sign, justify="right", no_wrap=True)
        table.add_column("all", justify="right", no_wrap=True)
        for shirt in sorted(found.by_shirt):
            counts = found.by_shirt[shirt].counts
            row = [_cell(*counts[rank]) for rank in found.asked]
            table.add_row(str(shirt), *row, _cell(sum(r for r, _ in counts), sum(a for _, a in counts)))
        table.add_section()
        totals = [found.total(rank) for rank in found.asked]
        table.add_row(
            "all", *(_cell(*one) for one in totals), _cell(sum(r for r, _ in totals), sum(a for _, a in totals))
        )
        console.print(table)
        named = (f"{sign} {cue}" for sign, cue in found.sentences if cue)
        console.print(", ".join(named), markup=False, soft_wrap=True)
    for _, words in found.mistyped:
        console.print(words, markup=False, soft_wrap=True)
    for code in found.other:
        console.print(
            f"{code}: this code is of another book, or of this one before it was changed.", markup=False, soft_wrap=True
        )
    for shirt in sorted(set(found.again)):
        console.print(f"{shirt} has more than one code here; the last one counts.", markup=False)


def _cell(right: int, asked: int) -> str:
    return f"{right}/{asked}" if asked else "·"
