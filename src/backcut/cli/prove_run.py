"""The work of `backcut prove`: a book proved, or two compared, printed and written."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer
from rich.progress import Progress, SpinnerColumn, TextColumn

from backcut.cli.book import problems_in, show_problems
from backcut.cli.out import PROBLEMS, check_places, console, print_json
from backcut.cli.prove_text import numbered, proof_lines
from backcut.errors import BackcutError, NotationError
from backcut.files import write_whole
from backcut.motion.squads import SQUADS
from backcut.offence.book import Book
from backcut.offence.library import open_book, source_text
from backcut.prove import words
from backcut.prove.depth import Depth
from backcut.prove.own import asked_of, chosen
from backcut.prove.proof import Key, Proof, prove
from backcut.prove.walk import MOST

if TYPE_CHECKING:
    from backcut.prove.suggest import Way

#: What `--depth` takes.
DEPTHS = (*Depth, "all")


def run(
    book: str,
    other: str,
    *,
    depth: str,
    properties: list[str] | None,
    suggest: bool,
    apply: int | None,
    to: Path | None,
    most: int,
    apart: bool,
    json: bool,
    html: Path | None,
    model: Path | None,
) -> None:
    """Prove a book, or compare two, as the options of `backcut prove` say. Raises: BackcutError, typer.Exit."""
    depths = _depths(depth)
    _check_numbers(most, apply, to)
    if other:
        one_only = {
            "--property": properties,
            "--suggest": suggest,
            "--apply": apply,
            "--most": most != MOST,
            "--apart": apart,
            "--html": html,
            "--model": model,
        }
        if idle := [option for option, given in one_only.items() if given]:
            raise BackcutError(f"{', '.join(idle)}: for one book only. Leave it out, or name one book.")
    check_places(book, {"--to": to, "--html": html, "--model": model})
    opened = _ready(book, json)
    if other:
        _compare(opened, _ready(other, json), depths, json)
        return
    asked = asked_of(opened)
    wanted = chosen(properties, asked.properties) if properties else asked.properties
    with _uncollected(), _progress(json) as tell:
        proof = prove(
            opened,
            depths,
            wanted,
            named=asked.named,
            sided=asked.sided,
            most=most,
            progress=lambda where, count: tell(f"{where}: {count:,} situations so far"),
        )
        looking = (suggest or apply is not None) and not proof.stopped
        ways = _ways(source_text(book), proof, tell) if looking else None
    texts: dict[Path, str] = {}  # all are made before any is written
    notes: list[str] = []
    if html is not None:
        texts[html] = _page(proof, ways)
    if model is not None:
        if (text := _model(model, proof)) is None:
            notes.append(f"{model} was not written: only what was walked through to its end can be.")
        else:
            texts[model] = text
    notes += (f"Written: {file}" for file in texts)
    if suggest and proof.stopped:
        notes.append("Ways out were not looked for: it was stopped.")
    if apply is not None and (text := _changed(opened, proof, ways, apply)) is None:
        notes.append(f"No book was written: it was stopped before there was a way out {apply}.")
    elif apply is not None and text is not None:
        changed = to or _next_name(book)
        texts[changed] = text
        notes.append(f"{changed}: the book with way out {apply}. {book} is as it was.")
    for file, text in texts.items():
        write_whole(file, text)
    if json:
        print_json(_data(proof, ways, apart, list(texts)))
    else:
        for line in (*proof_lines(book, proof, ways, apart), *notes):
            console.print(line, markup=False, soft_wrap=True)
    if not proof.clean:
        raise typer.Exit(PROBLEMS)


def _check_numbers(most: int, apply: int | None, to: Path | None) -> None:
    if most < 1:
        raise BackcutError(f"--most {most} is too small: nothing would be looked at. Leave it out, or say 1000.")
    if apply is not None and apply < 1:
        raise BackcutError(f"--apply {apply}: ways out are numbered from 1. See them with --suggest.")
    if to is not None and apply is None:
        raise BackcutError("--to says where --apply writes the new book. Add --apply, or leave it out.")
    if to is not None and to.exists():
        raise BackcutError(f"{to}: this file exists already and is left alone. Name another with --to.")


@contextmanager
def _uncollected() -> Iterator[None]:
    """Without the collector of rings: a proof makes millions of things, and no rings of them."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def _depths(text: str) -> tuple[Depth, ...]:
    wanted = [word.strip().lower() for word in text.split(",") if word.strip()]
    for word in wanted:
        if word not in DEPTHS:
            raise NotationError(f'"{word}" is no depth. There are: {", ".join(DEPTHS)}.')
    if not wanted:
        raise NotationError(f"No depth to look to. There are: {', '.join(DEPTHS)}.")
    return tuple(depth for depth in Depth if depth in wanted or "all" in wanted)


def _ready(name: str, json: bool) -> Book:
    """The book, if it has no problems; else its problems are listed and nothing is proved."""
    opened, problems = open_book(name, SQUADS)
    problems = problems_in(opened, problems)
    if problems:
        show_problems(name, opened, problems, json)
        if not json:
            console.print("A book with problems is not proved. Put these right first.", markup=False, soft_wrap=True)
        raise typer.Exit(PROBLEMS)
    return opened


@contextmanager
def _progress(json: bool) -> Iterator[Callable[[str], None]]:
    """A line that says what is being looked at while it is."""
    quiet = json or not console.is_terminal
    with Progress(
        SpinnerColumn(), TextColumn("{task.description}"), console=console, transient=True, disable=quiet
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
        against = None if found.stopped else contradictions(a, b, depths, looking)
    if json:
        print_json({"differences": to_dict(found), "contradictions": None if against is None else to_dict(against)})
    else:
        for line in lines(found):
            console.print(line, markup=False, soft_wrap=True)
        verdict = [f"Whether {a.title} stays true in {b.title} was not looked at."]
        if against is not None:
            # Books that cannot be compared spot by spot are told so once.
            verdict = contradiction_lines(against) if against.apart is None else []
        for line in ("", *verdict) if verdict else ():
            console.print(line, markup=False, soft_wrap=True)
    if not found.same or against is None or against.stopped:
        raise typer.Exit(PROBLEMS)


def _ways(text: str, proof: Proof, tell: Callable[[str], None]) -> dict[Key, list[Way]]:
    """The ways out of each finding; where it was stopped, those that were not come to are missing."""
    from backcut.prove.suggest import Ways

    looking = Ways(text, proof, lambda count: tell(f"ways out: {count} changes tried"))
    found: dict[Key, list[Way]] = {}
    with suppress(KeyboardInterrupt):
        for finding in proof.findings:
            found[finding.key] = looking.out_of(finding)
    return found


def _data(proof: Proof, ways: Mapping[Key, list[Way]] | None, apart: bool, written: Sequence[Path]) -> dict[str, Any]:
    from backcut.prove.report import to_dict

    every = None if ways is None else {finding.key: ways.get(finding.key, []) for finding in proof.findings}
    data = to_dict(proof, every)
    if apart:
        lifted = {covered.depth: proof.whole.lifted(covered.depth) for covered in words.asked(proof)}
        data["told_apart"] = [
            {"depth": str(depth), "situations": one.situations, "line_ups": one.settled, "possible": one.possible}
            for depth, one in lifted.items()
        ]
    return data | {"written": [str(file) for file in written]}


def _page(proof: Proof, ways: dict[Key, list[Way]] | None) -> str:
    # The page needs fonts and drawings; the list should not wait for them.
    from backcut.cli.prove_page import page

    return page(proof, ways)


def _model(file: Path, proof: Proof) -> str | None:
    """The walk at the last depth, as JANI where the file is called so, else in the PRISM language; None if stopped."""
    from backcut.prove.export import jani, model_of, prism

    if proof.stopped or proof.whole.walk(proof.depths[-1]).unfinished:
        return None
    written = model_of(proof.whole.walk(proof.depths[-1]))
    return jani(written) if file.suffix == ".jani" else prism(written)


def _changed(book: Book, proof: Proof, ways: Mapping[Key, list[Way]] | None, number: int) -> str | None:
    """The book's text with one suggested change; None where it was stopped before there was such a way out."""
    offered = numbered(ways or {})
    text = next((text for text, (numbered, _) in offered.items() if numbered == number), None)
    if text is not None or ways is None or any(finding.key not in ways for finding in proof.findings):
        return text
    if not proof.findings:
        raise BackcutError(f"There is no way out {number}: nothing was found in {book.title}.")
    there = f"there {'are' if len(offered) > 1 else 'is'} {len(offered)}. See them with --suggest"
    raise BackcutError(f"There is no way out {number}: {there if offered else 'no change removes what was found'}.")


def _next_name(name: str) -> Path:
    """The first free name beside a book: ours-2.txt beside ours.txt, then ours-3.txt."""
    path = Path(name if name.endswith(".txt") else f"{name}.txt")
    number = 2
    while (free := path.with_name(f"{path.stem}-{number}{path.suffix}")).exists():
        number += 1
    return free
