"""A proof as data: the JSON of `backcut prove`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from backcut.engine.report import to_dict as possession_to_dict
from backcut.offence.action import letter
from backcut.offence.situation_text import situation_text
from backcut.prove.depth import Depth
from backcut.prove.load import load
from backcut.prove.proof import Covered, Finding, Proof
from backcut.prove.suggest import Way
from backcut.prove.timed import TimedCovered


def to_dict(proof: Proof, ways: Mapping[tuple[str, str], Sequence[Way]] | None = None) -> dict[str, Any]:
    """The whole proof. `ways` holds the ways out per finding; their numbers run through all findings."""
    numbers: dict[str, int] = {}
    findings = []
    for finding in proof.findings:
        data = _finding(proof, finding)
        if ways is not None:
            data["ways_out"] = []
            for way in ways[finding.key]:
                data["ways_out"].append(
                    {
                        "number": numbers.setdefault(way.text, len(numbers) + 1),
                        "says": way.says,
                        "differs": way.differs,
                        "moments": way.moments,
                        "changed": list(way.changed),
                        "leaves": way.leaves,
                    }
                )
        findings.append(data)
    return {
        "book": proof.book.title,
        "clean": proof.clean,
        "stopped": proof.stopped,
        "findings": findings,
        "properties": [
            {"name": prop.name, "kind": prop.kind, "says": prop.sentence(numbers)} for prop, numbers in proof.asked
        ],
        "not_judged": [prop.name for prop in proof.not_judged],
        "reading_load": None if proof.stopped else load(proof.whole.walk(proof.depths[-1])).to_dict(),
        "covered": [_covered(covered) for covered in proof.covered],
        "in_time": [_in_time(depth, covered) for depth, covered in proof.timed.items()],
    }


def _finding(proof: Proof, finding: Finding) -> dict[str, Any]:
    shown = finding.possession
    return {
        "property": finding.prop.name,
        "cause": finding.breach.cause,
        "text": finding.breach.text,
        "habits": [str(letter(rank)) for rank in finding.breach.habits],
        "depth": str(finding.depth),
        "situations": finding.situations,
        "events": finding.far,
        "possession": None
        if shown is None
        else {
            "moves": shown.moves,
            "in_time": shown.timed,
            "seen": situation_text(shown.seen),
            "beat": shown.beat,
            **possession_to_dict(proof.book, proof.book.court, shown.start, shown.steps),
        },
    }


def _covered(covered: Covered) -> dict[str, Any]:
    return {
        "depth": str(covered.depth),
        "situations": covered.unfolded,
        "folded": covered.situations,
        "moves": covered.moves,
        "farthest": covered.far,
        "seconds": round(covered.seconds, 3),
        "not_looked_at": covered.waiting,
        "multiplied_by": letter(covered.multiplied_by),
    }


def _in_time(depth: Depth, covered: TimedCovered) -> dict[str, Any]:
    return {
        "depth": str(depth),
        "situations": covered.timed,
        "pictures": covered.pictures,
        "passes": covered.passes,
        "step_s": covered.tick_s,
        "seconds": round(covered.seconds, 3),
        "not_looked_at": covered.waiting,
    }
