"""What `backcut prove` prints: the findings, how to play each, the ways out, and what was looked at."""

from __future__ import annotations

import shlex
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from backcut.offence.situation_text import situation_text
from backcut.prove import words
from backcut.prove.depth import Depth
from backcut.prove.load import load
from backcut.prove.proof import Finding, Key, Proof

if TYPE_CHECKING:
    from backcut.prove.suggest import Way


def numbered(ways: Mapping[Key, Sequence[Way]]) -> dict[str, tuple[int, Way]]:
    """Every way out once, by its text, with its number: what is offered for two findings is one change."""
    found: dict[str, tuple[int, Way]] = {}
    for offered in ways.values():
        for way in offered:
            found.setdefault(way.text, (len(found) + 1, way))
    return found


def proof_lines(name: str, proof: Proof, ways: Mapping[Key, Sequence[Way]] | None, apart: bool) -> Iterator[str]:
    """The whole proof, line by line; without a name there is no file to play, and it is not said how."""
    title = proof.book.title
    if not proof.asked:
        yield f"{title}: nothing was asked for, so nothing was proved."
    elif proof.findings:
        yield f"{title}: {words.counted(len(proof.findings), 'finding')}."
    else:
        yield f"{title}: clean." if proof.clean else f"{title}: nothing found so far, but not everything was looked at."
    told: set[int] = set()
    for place, finding in enumerate(proof.findings, 1):
        yield ""
        yield from _finding(name, proof, place, finding)
        if ways is not None:
            yield from _ways(ways.get(finding.key), numbered(ways), told)
    yield ""
    yield "Looked at, until it was stopped:" if proof.stopped else "Looked at:"
    for line in (*words.looked_at(proof, apart), *words.held_to(proof), *words.left_out(proof)):
        yield f"  {line}"
    if further := [depth for depth in Depth if depth not in proof.depths]:
        yield f"  Not asked for: {', '.join(further)}. Ask with --depth, or for all with --depth all."
    yield from (f"  {load(proof.whole.walk(depth)).line}" for depth in proof.depths[-1:] if not proof.stopped)


def _finding(name: str, proof: Proof, place: int, finding: Finding) -> Iterator[str]:
    yield f"{place}. {finding.breach.cause}"
    yield f"   {finding.prop.sentence(finding.numbers)} Not so: {words.how_often(finding)}."
    shown = finding.possession
    if shown is None:
        if finding.breach.text != finding.breach.cause:
            yield f"   {finding.breach.text}"
        return
    if shown.start != proof.book.start():
        yield f"     {words.begins(shown.start)}"
    for line in words.lines(proof.book, shown):
        yield f"     {line}"
    yield f"   Here: {finding.breach.text}"
    if not name:
        return
    if shown.timed:
        yield f"   In time: {shown.moves}. Watch it with --html."
        return
    start = "" if shown.start == proof.book.start() else f' --start "{situation_text(shown.start)}"'
    moves = f' --moves "{shown.moves}"' if shown.steps else ""
    what = "Play it" if shown.steps else "The start of this shows it"
    yield f"   {what}: backcut play {shlex.quote(name)}{start}{moves}"


def _ways(offered: Sequence[Way] | None, numbers: Mapping[str, tuple[int, Way]], told: set[int]) -> Iterator[str]:
    if offered is None:
        yield "   Ways out of this were not looked for to the end: it was stopped."
        return
    if not offered:
        yield "   No change of one sentence or one choice removes this without making something new."
    for way in offered:
        number, _ = numbers[way.text]
        yield f"   Way out {number}: {way.says}"
        if number not in told:
            yield f"      {words.changes(way)}"
        told.add(number)
