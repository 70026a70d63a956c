"""A proof as the faces show it: its findings, what has to hold and what was looked at as plain data for a page."""

from __future__ import annotations

from collections.abc import Sequence

from backcut.offence.action import letter
from backcut.page.finding import Asked, Heading, Item
from backcut.page.finding_list import opening_word
from backcut.prove import words
from backcut.prove.proof import Finding, Proof
from backcut.prove.property import Numbers, Property


def heading(proof: Proof, apart: bool = False) -> Heading:
    """What stands round the findings of a proof; `apart` also counts with the players told apart."""
    return Heading(
        proof.book,
        tuple(opening_word(line.strip()) for line in words.looked_at(proof, apart)),
        tuple(
            Asked(prop.name, _sentence(prop, numbers), prop not in proof.not_judged) for prop, numbers in proof.asked
        ),
        tuple(words.left_out(proof)),
        proof.stopped or any(covered.waiting for covered in proof.covered),
    )


def _sentence(prop: Property, numbers: Numbers) -> str:
    """The property's sentence; empty where the name is the sentence, as of a coach's own."""
    said = prop.sentence(numbers)
    return "" if said.rstrip(".") == prop.name else said


def item(proof: Proof, finding: Finding, ways_out: Sequence[str] = ()) -> Item:
    """One finding; `ways_out` are the changes that remove it, in words."""
    shown, breach = finding.possession, finding.breach
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
        ways_out=tuple(ways_out),
        players=breach.players,
        spot=breach.spot,
        letters=tuple(str(letter(rank)) for rank in breach.habits),
        start=None if shown is None else shown.start,
    )
