"""`backcut prove`: what a book leaves open in any situation it can come to, and how two books differ."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from rich.progress import Progress, SpinnerColumn, TextColumn

from backcut.cli.book import problems_in, show_problems
from backcut.cli.out import PROBLEMS, console, print_json, write_whole
from backcut.cli.prove_text import numbered, proof_lines
from backcut.errors import BackcutError, NotationError
from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.library import open_book, source_text
from backcut.prove.depth import Depth
from backcut.prove.own import asked_of, chosen
from backcut.prove.proof import Key, Proof, prove
from backcut.prove.walk import MOST

if TYPE_CHECKING:
    from backcut.prove.suggest import Way

_DEPTHS = (*Depth, "all")


def prove_command(
    book: Annotated[str, typer.Argument(help="A book file, a shipped book, or a formation (its plain book).")],
    other: Annotated[str, typer.Argument(help="Another book: say how the two differ instead.")] = "",
    depth: Annotated[
        str, typer.Option("--depth", help=f"How far to look: {', '.join(_DEPTHS)}; several joined by commas.")
    ] = "settled",
    properties: Annotated[
        list[str] | None,
        typer.Option("--property", help="Prove only this property, by name; may be given again. NAME=4 sets a number."),
    ] = None,
    suggest: Annotated[bool, typer.Option("--suggest", help="Look for changes that remove each finding.")] = False,
    apply: Annotated[int, typer.Option("--apply", help="Write a new book with this suggested change.")] = 0,
    to: Annotated[Path | None, typer.Option("--to", help="Where --apply writes the new book.")] = None,
    most: Annotated[int, typer.Option("--most", help="Look at no more situations than this, at each depth.")] = MOST,
    apart: Annotated[bool, typer.Option("--apart", help="Count with the players told apart, too.")] = False,
    json: Annotated[bool, typer.Option("--json", help="Print everything as JSON.")] = False,
    html: Annotated[Path | None, typer.Option("--html", help="Write the findings as a page that plays them.")] = None,
    model: Annotated[
        Path | None, typer.Option("--model", help="Write what was walked through for an outside model checker.")
    ] = None,
) -> None:
    """Look at every situation a book can come to; show each hole as the shortest possession that comes to it."""
    depths = _depths(depth)
    if most < 1:
        raise BackcutError(f"--most {most} is too small: nothing would be looked at. Leave it out, or say 1000.")
    opened = _ready(book, json)
    if other:
        _compare(opened, _ready(other, json), depths, json)
        return
    asked = asked_of(opened)
    wanted = chosen(properties, asked.properties) if properties else asked.properties
    with _progress(json) as tell:
        proof = prove(
            opened,
            depths,
            wanted,
            named=asked.named,
            sided=asked.sided,
            most=most,
            progress=lambda where, count: tell(f"{where}: {count:,} situations so far"),
        )
        ways = _ways(source_text(book), proof, tell) if suggest or apply else None
    if apply and ways is not None:
        changed = _write_changed(book, numbered(ways), apply, to)
    if model is not None:
        _write_model(model, proof)
    if html is not None:
        write_whole(html, _page(proof, ways))
    if json:
        print_json(_data(proof, ways))
    else:
        for line in proof_lines(book, proof, ways, apart):
            console.print(line, markup=False, soft_wrap=True)
        if apply:
            console.print(
                f"{changed}: the book with way out {apply}. {book} is as it was.", markup=False, soft_wrap=True
            )
        for file in (file for file in (html, model) if file is not None):
            console.print(f"Written: {file}", markup=False, soft_wrap=True)
    if not proof.clean:
        raise typer.Exit(PROBLEMS)


def _depths(text: str) -> tuple[Depth, ...]:
    wanted = [word.strip().lower() for word in text.split(",") if word.strip()]
    for word in wanted:
        if word not in _DEPTHS:
            raise NotationError(f'"{word}" is no depth. There are: {", ".join(_DEPTHS)}.')
    if not wanted:
        raise NotationError(f"No depth to look to. There are: {', '.join(_DEPTHS)}.")
    return tuple(depth for depth in Depth if depth in wanted or "all" in wanted)


def _ready(name: str, json: bool) -> Book:
    """The book, if it has no problems; else its problems are listed and nothing is proved."""
    opened, problems = open_book(name, SQUADS)
    problems = problems_in(opened, problems)
    if problems:
        show_problems(name, opened, problems, json)
        if not json:
            console.print("A book with problems is not proved. Put these right first.", markup=False)
        raise typer.Exit(PROBLEMS)
    return opened


@contextmanager
def _progress(json: bool) -> Iterator[Callable[[str], None]]:
    """A line that says what is being looked at while it is."""
    with Progress(
        SpinnerColumn(), TextColumn("{task.description}"), console=console, transient=True, disable=json
    ) as progress:
        task = progress.add_task("looking")
        yield lambda said: progress.update(task, description=said)


def _compare(a: Book, b: Book, depths: Sequence[Depth], json: bool) -> None:
    """Say in which situations the second book answers otherwise, and whether the first stays true in it."""
    from backcut.prove.compare import compare, contradictions
    from backcut.prove.compare_words import contradiction_lines, lines, to_dict

    with _progress(json) as tell:

        def looking(where: str, count: int) -> None:
            tell(f"{where}: {count:,} situations so far")

        found = compare(a, b, depths, looking)
        against = contradictions(a, b, depths, looking)
    if json:
        print_json({"differences": to_dict(found), "contradictions": to_dict(against)})
    else:
        for line in (*lines(found), "", *contradiction_lines(against)):
            console.print(line, markup=False, soft_wrap=True)
    if not found.same:
        raise typer.Exit(PROBLEMS)


def _ways(text: str, proof: Proof, tell: Callable[[str], None]) -> dict[Key, list[Way]]:
    """The ways out of each finding; of those not come to before it was stopped, none."""
    from backcut.prove.suggest import Ways

    looking = Ways(text, proof, lambda count: tell(f"ways out: {count} changes tried"))
    found: dict[Key, list[Way]] = {finding.key: [] for finding in proof.findings}
    try:
        for finding in proof.findings:
            found[finding.key] = looking.out_of(finding)
    except KeyboardInterrupt:
        proof.stopped = True
    return found


def _data(proof: Proof, ways: dict[Key, list[Way]] | None) -> object:
    from backcut.prove.report import to_dict

    return to_dict(proof, ways)


def _page(proof: Proof, ways: dict[Key, list[Way]] | None) -> str:
    # The page needs fonts and drawings; the list should not wait for them.
    from backcut.cli.prove_page import page

    return page(proof, ways)


def _write_model(file: Path, proof: Proof) -> None:
    """Write the walk at the last depth: as JANI where the file is called so, else in the PRISM language."""
    from backcut.prove.export import jani, model_of, prism

    written = model_of(proof.whole.walk(proof.depths[-1]))
    write_whole(file, jani(written) if file.suffix == ".jani" else prism(written))


def _write_changed(name: str, offered: dict[str, tuple[int, Way]], number: int, to: Path | None) -> Path:
    """Write the book with one suggested change beside the old one, which is left as it is."""
    text = next((text for text, (numbered, _) in offered.items() if numbered == number), None)
    if text is None:
        there = f"there are {len(offered)}" if offered else "there is none"
        raise BackcutError(f"There is no way out {number}: {there}. See them with --suggest.")
    file = to or _next_name(name)
    if file.exists():
        raise BackcutError(f"{file}: this file exists already and is left alone. Name another with --to.")
    write_whole(file, text)
    return file


def _next_name(name: str) -> Path:
    """The first free name beside a book: ours-2.txt beside ours.txt, then ours-3.txt."""
    path = Path(name if name.endswith(".txt") else f"{name}.txt")
    number = 2
    while (free := path.with_name(f"{path.stem}-{number}{path.suffix}")).exists():
        number += 1
    return free
