"""A proof as JSON for the page: every finding with its kind, its words, its still and the way to it on the floor."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from typing import Any

from backcut.engine.gym import gym
from backcut.errors import BackcutError
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.event import PASSES, EventKind
from backcut.page.finding import Heading, Item
from backcut.page.finding_list import counted, opening_word
from backcut.page.findings import Shown, shown
from backcut.page.proved import heading, item
from backcut.page.still_svg import still_svg
from backcut.page.words import sentence_case
from backcut.picture.floor import floor
from backcut.prove import words
from backcut.prove.depth import Depth
from backcut.prove.possession import Possession
from backcut.prove.proof import Finding, Proof
from backcut.prove.property import Sometimes, properties
from backcut.prove.suggest import Way
from backcut.web.proof_floor import on_the_floor

#: The kind of a finding by the property that breaks: the name of its sign, and the word beside it. Any other property
#: that breaks is a hole: something the book leaves open.
KINDS: Mapping[str, tuple[str, str]] = {
    "an answer for everybody": ("silent", "Silent"),
    "one to a spot": ("clash", "Clash"),
    "an order between sentences": ("clash", "Clash"),
    "three seconds": ("late", "Late"),
    "runs in time": ("late", "Late"),
    "every sentence speaks": ("never", "Never asked"),
    "every choice matters": ("never", "Never asked"),
}
HOLE, LATE, NEVER, NOT_SO = ("hole", "Hole"), ("late", "Late"), ("never", "Never"), ("notso", "Not so")

#: What has happened, of one and of several; a kind of pass is a pass.
_COUNTED = {
    EventKind.PASS: ("a pass", "passes"),
    EventKind.DENY: ("a denial", "denials"),
    EventKind.JUMP: ("a jump to the ball", "jumps to the ball"),
    EventKind.DRIBBLE: ("a dribble", "dribbles"),
    EventKind.JAM: ("a cut taken away", "cuts taken away"),
    EventKind.FORGET: ("a forgotten run", "forgotten runs"),
    EventKind.LAY_UP: ("a lay-up", "lay-ups"),
    EventKind.SHOT: ("a shot", "shots"),
}


def kind_of(finding: Finding) -> tuple[str, str]:
    """The kind of a finding: the name of its sign, and the word beside it."""
    name = finding.prop.name
    if name not in properties():
        return NOT_SO  # a sentence of the coach's own
    if finding.possession is None:
        return KINDS.get(name, NEVER)
    return LATE if finding.possession.timed else KINDS.get(name, HOLE)


def proof_data(proof: Proof, apart: bool = False) -> dict[str, Any]:
    """The whole proof. `apart` also counts with the players told apart."""
    return {
        "title": proof.book.title,
        "depths": [str(depth) for depth in proof.depths],
        "clean": proof.clean,
        "stopped": proof.stopped,
        "findings": findings_data(proof),
        "covered": list((head := heading(proof, apart)).covered),
        "holds": _holds(head, proof),
        "not_looked_at": _not_looked_at(head, proof),
    }


def findings_data(proof: Proof) -> list[dict[str, Any]]:
    """Every finding, the nearest first."""
    items = [item(proof, finding) for finding in proof.findings]
    seen = [_shown(one) for one in items]
    reach_cm = max((one.still.reach_cm for one in seen if one), default=0.0)
    drawn = floor(gym(proof.book).court)
    return [
        _finding(proof.book, number, finding, told)
        | {"still": "" if one is None else still_svg(one.still, drawn.room, reach_cm)}
        for number, (finding, told, one) in enumerate(zip(proof.findings, items, seen, strict=True), 1)
    ]


def _shown(told: Item) -> Shown | None:
    try:
        return shown(told)
    except BackcutError:  # it is a finding even where it cannot be put in time
        return None


def _finding(book: Book, number: int, finding: Finding, told: Item) -> dict[str, Any]:
    sign, word = kind_of(finding)
    possession = finding.possession
    floor_ = None if possession is None else on_the_floor(book, possession)
    begins = "" if possession is None or possession.start == book.start() else words.begins(possession.start)
    return {
        "number": number,
        "kind": sign,
        "word": word,
        "property": opening_word(told.property),
        "title": sentence_case(told.title),
        "when": _when(book, finding),
        "letters": list(told.letters),
        "begins": begins,
        "lines": [sentence_case(line) for line in told.lines],
        "here": sentence_case(told.here) if told.here else "",
        "count": opening_word(sentence_case(told.count)),
        "plays": floor_ is not None,
        "start": "" if floor_ is None else floor_.start,
        "moves": "" if floor_ is None else floor_.moves,
        "step": 0 if floor_ is None else floor_.step,
        "beat": 0 if floor_ is None else floor_.beat,
        "note": "" if floor_ is None or possession is None else _note(possession, floor_.exact),
    }


def _note(possession: Possession, exact: bool) -> str:
    if not possession.timed:
        return ""
    near = "" if exact else " The floor shows it as nearly as moves can say it."
    return f"In time: {possession.moves}.{near}"


def _when(book: Book, finding: Finding) -> str:
    """After how much it shows, and which sentences are behind it."""
    behind = [f"{letter(rank)} {book.cue(rank).rstrip('.')}" for rank in finding.breach.habits]
    why = f" Behind it: {_list(behind)}." if behind else ""
    if finding.possession is None:
        return ("Nowhere in what was looked at." if isinstance(finding.prop, Sometimes) else "") + why
    return _after(finding.possession) + why


def _after(possession: Possession) -> str:
    names: Counter[EventKind] = Counter()
    for event in (step.event for step in possession.steps):
        names[EventKind.PASS if event.kind in PASSES else event.kind] += len(event.players)
    said = [
        one if number == 1 else f"{number} {many}" for kind, (one, many) in _COUNTED.items() if (number := names[kind])
    ]
    return f"After {_list(said)}." if said else "At the start."


def _list(parts: list[str]) -> str:
    return " and ".join([", ".join(parts[:-1]), parts[-1]]) if len(parts) > 1 else "".join(parts)


def _holds(head: Heading, proof: Proof) -> list[dict[str, Any]]:
    """Everything that has to hold, with what became of it."""
    rows = []
    for asked in head.asked:
        numbers = [n for n, found in enumerate(proof.findings, 1) if found.prop.name == asked.name]
        if numbers:
            sign, verdict = "hole", counted(len(numbers))
        elif not asked.judged:
            sign, verdict = "unseen", "not judged"
        else:
            sign, verdict = "holds", "nothing found so far" if head.stopped else "holds"
        name = sentence_case(opening_word(asked.name))
        rows.append(
            {"kind": sign, "name": name, "sentence": asked.sentence, "verdict": verdict, "findings": numbers},
        )
    return rows


def _not_looked_at(head: Heading, proof: Proof) -> list[dict[str, str]]:
    """What was left out and why; then the depths that were not asked for, each with what may happen there."""
    rows = [{"depth": "", "said": line} for line in head.not_looked_at]
    return rows + [
        {"depth": str(depth), "said": sentence_case(opening_word(depth.says))}
        for depth in Depth
        if depth not in proof.depths
    ]


def way_data(way: Way) -> dict[str, Any]:
    """One way out: what it is, the book's text with it, and what else it changes."""
    return {
        "says": way.says if way.says.endswith('."') else sentence_case(way.says),
        "text": way.text,
        "differs": way.differs,
        "moments": way.moments,
        "changed": list(way.changed),
        "leaves": way.leaves,
        "changes": words.changes(way),
    }
