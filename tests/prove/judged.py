"""What the tests of the properties share: a book from its sentences, one situation judged, or a whole walk."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from backcut.engine.decide import decide
from backcut.engine.play import settled, stand
from backcut.offence.book import Book
from backcut.offence.reading import book_from_text
from backcut.offence.situation_text import situation_from_text
from backcut.prove.depth import Depth
from backcut.prove.judge import judge_always, judge_eventually
from backcut.prove.property import Always, Breach, Eventually, Property, Seen, Sometimes, properties
from backcut.prove.walk import Walk, walk
from backcut.prove.whole import Whole

CUT = "When I pass to the next spot, I cut to the rim."
OUT = "When my cut is over, I come out to the first open spot."
FILL = "When the next spot toward the ball is empty, I fill it at once."
BACK = "When I am one pass away and my defender denies me, I back cut."
SKIP = "When I skip the ball, I hold for a count."
SHOT = "When a shot goes up, the highest of us gets back and the rest rebound."
HOLD = "Otherwise I hold, wide, feet set."


def written(*sentences: str, formation: str = "five-out", lines: Iterable[str] = ()) -> Book:
    """A book with these sentences, in this order, and these lines "Key: value". Its problems are not looked at."""
    text = "\n\n".join(("Title: Invented", f"Formation: {formation}", *lines, *sentences))
    return book_from_text(text)[0]


def shown(book: Book, situation: str) -> Seen:
    """A situation as written, as a property sees it: with everybody's answers."""
    here = situation_from_text(situation)
    decision = decide(book, here)
    rest = here.ended is None and settled(book, here, decision) and stand(here) == here
    return Seen(book, here, decision, rest)


def waiting(book: Book, situation: str, waited_s: Mapping[int, float]) -> Seen:
    """The same, with how long players have been in the lane."""
    return replace(shown(book, situation), waited_s=waited_s)


def here(name: str, seen: Seen, **numbers: float) -> list[Breach]:
    """What breaks a property that has to hold always, in one situation."""
    prop = properties()[name]
    assert isinstance(prop, Always)
    return list(prop.looks(seen, _numbers(prop, numbers)))


def began(name: str, seen: Seen) -> list[int | None]:
    """For whom something that has to end has begun in one situation."""
    prop = properties()[name]
    assert isinstance(prop, Eventually)
    return list(prop.begins(seen, prop.numbers))


def is_over(name: str, seen: Seen, player: int | None = None) -> bool:
    """Whether it is over there."""
    prop = properties()[name]
    assert isinstance(prop, Eventually)
    return prop.ends(seen, prop.numbers, player)


def causes(name: str, book: Book, *depths: Depth, **numbers: float) -> set[str]:
    """Every cause for which a property breaks in anything the book comes to at these depths, settled where none."""
    prop = properties()[name]
    asked = _numbers(prop, numbers)
    depths = depths or (Depth.SETTLED,)
    if isinstance(prop, Sometimes):
        return {breach.cause for breach in prop.looks(Whole(book, depths, lambda depth: walk(book, depth)), asked)}
    return {cause for depth in depths for cause in _causes(walk(book, depth), prop, asked)}


def _causes(made: Walk, prop: Property, asked: Mapping[str, float]) -> set[str]:
    if isinstance(prop, Always):
        return {broken.breach.cause for broken in judge_always(made, prop, asked)}
    assert isinstance(prop, Eventually)
    return {broken.breach.cause for broken in judge_eventually(made, prop, asked)}


def _numbers(prop: Property, numbers: Mapping[str, float]) -> Mapping[str, float]:
    assert set(numbers) <= set(prop.numbers)
    return {**prop.numbers, **numbers}
