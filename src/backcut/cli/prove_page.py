"""The page of `backcut prove`: a proof handed over to `page.findings` as plain data."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from backcut.cli.prove_text import numbered
from backcut.page.findings import findings_page
from backcut.page.proved import heading, item
from backcut.prove import words
from backcut.prove.proof import Key, Proof
from backcut.prove.suggest import Way


def page(proof: Proof, ways: Mapping[Key, Sequence[Way]] | None) -> str:
    """The findings of a proof as one page. Raises: MotionError where a possession cannot be put in time."""
    told = numbered(ways or {})
    items = [
        item(
            proof,
            finding,
            [f"{told[way.text][0]}. {way.says} {words.changes(way)}" for way in (ways or {}).get(finding.key, ())],
        )
        for finding in proof.findings
    ]
    return findings_page(heading(proof), items)
