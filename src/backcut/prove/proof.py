"""Prove a book: walk through it at the depths asked for, judge every property, and tell each cause as a possession."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Collection, Iterable, Sequence
from dataclasses import dataclass, field
from functools import partial

from backcut.engine.decide import decide
from backcut.offence.book import Book
from backcut.prove.depth import Depth
from backcut.prove.judge import Broken, judge_always, judge_eventually
from backcut.prove.possession import Possession, possession
from backcut.prove.property import Always, Breach, Eventually, Numbers, Property, Seen, Sometimes, properties
from backcut.prove.timed import TimedCovered, TimedResult, judge_timed
from backcut.prove.walk import MOST, Walk, walk
from backcut.prove.whole import Whole

#: A property with the numbers it is asked with.
Wanted = tuple[Property, Numbers]
#: What makes a finding the same in another book: the property and the cause.
Key = tuple[str, str]
#: The letter in front of a sentence's cue, as in "H (Out)": one sentence more or less, and it is another.
_LETTER = re.compile(r"\b[A-Z]{1,2} (?=\()")
#: Told what is being looked at and how many situations have been found.
Progress = Callable[[str, int], None]


@dataclass(frozen=True, slots=True)
class Finding:
    """One cause for which a property breaks.

    `breach` is told as it lies in the possession. `situations` counts all that show it, players not told apart, left
    and right told apart; `far` is how many events the nearest is away. What never happens has no possession.
    """

    prop: Property
    numbers: Numbers
    breach: Breach
    depth: Depth
    situations: int = 0
    far: int = 0
    possession: Possession | None = None

    @property
    def key(self) -> Key:
        """What makes it the same finding in another book: the property and the cause, whatever the letters there."""
        return self.prop.name, _LETTER.sub("", self.breach.cause)


@dataclass(frozen=True, slots=True)
class Covered:
    """What a proof looked at, at one depth. `waiting` situations were found but not looked at."""

    depth: Depth
    situations: int
    unfolded: int
    moves: int
    far: int
    seconds: float
    waiting: int = 0
    multiplied_by: int | None = None


@dataclass(slots=True)
class Proof:
    """The findings of a proof, the nearest first, and what was covered; `stopped` where it was stopped early.

    `named` numbers were told apart, and left and right where `sided`.
    """

    book: Book
    asked: Sequence[Wanted]
    depths: tuple[Depth, ...]
    whole: Whole
    named: frozenset[int] = frozenset()
    sided: bool = False
    findings: list[Finding] = field(default_factory=list)
    covered: list[Covered] = field(default_factory=list)
    timed: dict[Depth, TimedCovered] = field(default_factory=dict)
    not_judged: list[Property] = field(default_factory=list)
    stopped: bool = False

    @property
    def clean(self) -> bool:
        """Whether everything asked for was looked at and nothing was found."""
        waiting = sum(c.waiting for c in self.covered) + sum(c.waiting for c in self.timed.values())
        return not (self.findings or self.not_judged or self.stopped or waiting)


def usual() -> list[Wanted]:
    """Every property with its default numbers."""
    return [(prop, prop.numbers) for prop in properties().values()]


def prove(
    book: Book,
    depths: Sequence[Depth] = (Depth.SETTLED,),
    asked: Sequence[Wanted] | None = None,
    *,
    named: Collection[int] = (),
    sided: bool = False,
    most: int = MOST,
    progress: Progress | None = None,
) -> Proof:
    """Judge the properties over every situation the book comes to at these depths.

    `named` numbers are told apart, and left and right are where `sided`: for properties that speak of them. `most` is
    how many situations are looked at per depth. Stopped by KeyboardInterrupt, what was found so far is returned.
    """

    def make(depth: Depth) -> Walk:
        tell = None if progress is None else partial(progress, depth)
        began = time.perf_counter()
        made = walk(book, depth, mirrored=not sided, named=named, most=most, progress=tell)
        seconds[depth] = time.perf_counter() - began
        return made

    seconds: dict[Depth, float] = {}
    whole = Whole(book, tuple(depths), make)
    proof = Proof(book, usual() if asked is None else asked, tuple(depths), whole, frozenset(named), sided)
    try:
        for depth in depths:
            _judge(proof, whole.walk(depth))
            if whole.walk(depth).unfinished and len(whole.walk(depth).situations) <= most:
                raise KeyboardInterrupt
        for depth in depths:
            tell = None if progress is None else partial(progress, f"{depth}, in time")
            timed = judge_timed(book, depth, proof.asked, named=named, sided=sided, most=most, progress=tell)
            _judge_in_time(proof, timed)
        _judge_whole(proof)
    except KeyboardInterrupt:
        proof.stopped = True
        proof.not_judged = [prop for prop, _ in proof.asked if isinstance(prop, Sometimes)]
    proof.covered = [_covered(made, seconds[depth]) for depth, made in whole.walks.items() if depth in seconds]
    proof.findings.sort(key=lambda finding: (finding.possession is None, finding.far, -finding.situations))
    return proof


def _judge(proof: Proof, made: Walk) -> None:
    """Add the findings of one walk that no shallower walk has shown."""
    known = {finding.key for finding in proof.findings}
    for prop, numbers in proof.asked:
        broken: list[Broken] = []
        if isinstance(prop, Always):
            broken = judge_always(made, prop, numbers)
        elif isinstance(prop, Eventually):
            broken = judge_eventually(made, prop, numbers)
        for cause in broken:
            if (prop.name, _LETTER.sub("", cause.breach.cause)) not in known:
                proof.findings.append(_finding(made, prop, numbers, cause))


def _judge_in_time(proof: Proof, timed: TimedResult | None) -> None:
    """Add the findings of one depth in time that were not found without it."""
    if timed is None:
        return
    known = {finding.key for finding in proof.findings}
    proof.timed[timed.depth] = timed.covered
    for broken in timed.broken:
        if (broken.prop.name, _LETTER.sub("", broken.breach.cause)) not in known:
            shown, depth = broken.possession, timed.depth
            proof.findings.append(
                Finding(broken.prop, broken.numbers, broken.breach, depth, broken.situations, broken.far, shown)
            )
    if timed.stopped:
        raise KeyboardInterrupt


def _judge_whole(proof: Proof) -> None:
    for prop, numbers in proof.asked:
        if not isinstance(prop, Sometimes):
            continue
        breaches = list(prop.looks(proof.whole, numbers))
        looked_at = prop.depths or proof.depths
        walks = [made for depth, made in proof.whole.walks.items() if depth in looked_at]
        if breaches and any(made.unfinished or made.holes for made in walks):
            proof.not_judged.append(prop)  # where nobody has looked, or behind a hole, it may happen
            continue
        proof.findings += (Finding(prop, numbers, breach, proof.depths[-1]) for breach in breaches)


def _finding(made: Walk, prop: Property, numbers: Numbers, broken: Broken) -> Finding:
    first = broken.nodes[0]
    shown = possession(made, first, broken.onward)
    seen = possession(made, first).seen if broken.onward else shown.seen
    breach = _as_it_lies(
        Seen(made.book, seen, decide(made.book, seen), made.settled[first]), prop, numbers, broken.breach
    )
    situations = sum(made.images(node) for node in broken.nodes)
    return Finding(prop, numbers, breach, made.depth, situations, made.far[first], shown)


def _as_it_lies(seen: Seen, prop: Property, numbers: Numbers, breach: Breach) -> Breach:
    """The breach in the numbers and on the side in which the possession shows it."""
    found: Iterable[Breach] = ()
    if isinstance(prop, Always):
        found = prop.looks(seen, numbers)
    elif isinstance(prop, Eventually):
        found = (prop.breach(seen, numbers, player) for player in prop.begins(seen, numbers))
    return next((here for here in found if here.cause == breach.cause), breach)


def _covered(made: Walk, seconds: float) -> Covered:
    ranks = [(count, rank) for rank, count in made.multiplied.items() if rank is not None]
    return Covered(
        made.depth,
        len(made.situations),
        sum(made.images(node) for node in range(len(made.situations))),
        made.moves,
        max(made.far),
        seconds,
        made.unfinished,
        max(ranks)[1] if ranks else None,
    )
