"""The page of `backcut prove`: a proof handed over to `page.findings` as plain data."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from backcut.cli.prove_text import numbered
from backcut.offence.action import letter
from backcut.page.findings import Asked, Heading, Item, findings_page
from backcut.prove import words
from backcut.prove.proof import Finding, Key, Proof
from backcut.prove.property import Numbers, Property
from backcut.prove.suggest import Way


def page(proof: Proof, ways: Mapping[Key, Sequence[Way]] | None) -> str:
    """The findings of a proof as one page. Raises: MotionError where a possession cannot be put in time."""
    heading = Heading(
        proof.book,
        tuple(line[:1].upper() + line[1:] for line in map(str.strip, words.looked_at(proof))),
        tuple(
            Asked(prop.name, _sentence(prop, numbers), prop not in proof.not_judged) for prop, numbers in proof.asked
        ),
        tuple(words.left_out(proof)),
        proof.stopped or any(covered.waiting for covered in proof.covered),
    )
    return findings_page(heading, [_item(proof, finding, ways) for finding in proof.findings])


def _sentence(prop: Property, numbers: Numbers) -> str:
    """The property's sentence; empty where the name is the sentence, as of a coach's own."""
    said = prop.sentence(numbers)
    return "" if said.rstrip(".") == prop.name else said


def _item(proof: Proof, finding: Finding, ways: Mapping[Key, Sequence[Way]] | None) -> Item:
    shown, breach = finding.possession, finding.breach
    offered = numbered(ways or {})
    return Item(
        title=breach.cause,
        property=finding.prop.name,
        lines=() if shown is None else tuple(words.lines(proof.book, shown)),
        count=words.how_often(finding),
        moves="" if shown is None else shown.moves,
        steps=None if shown is None else shown.steps,
        book=proof.book,
        at=(0, 0) if shown is None else (max(len(shown.steps) - 1, 0), shown.beat),
        here="" if shown is None and breach.text == breach.cause else breach.text,
        ways_out=tuple(
            f"{offered[way.text][0]}. {way.says} {words.changes(way)}" for way in (ways or {}).get(finding.key, ())
        ),
        players=breach.players,
        spot=breach.spot,
        letters=tuple(str(letter(rank)) for rank in breach.habits),
        start=None if shown is None else shown.start,
    )
