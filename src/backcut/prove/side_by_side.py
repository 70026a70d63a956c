"""Two books read side by side: which sentences stand in one of them only, and what they say or choose otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES, Choice
from backcut.offence.event import EventKind
from backcut.prove.depth import not_tried

#: Choices that say when something is done or begins, not what is done.
TIMES = ("when to fill", "hold count", "signal", "denial")
_EXCEPTIONS = {"stays_inside": "stays inside", "never_corner": "never fills a corner", "never_cuts": "never cuts"}
_TRIED = {EventKind.SKIP: "skip passes", EventKind.DRIBBLE: "dribbles at a team-mate"}


@dataclass(frozen=True, slots=True)
class Chosen:
    """One choice that both books make, each in its own way. `time` says that it is about when, not about what."""

    name: str
    a: str
    b: str
    time: bool


@dataclass(frozen=True, slots=True)
class Reading:
    """Two books side by side, read, not played. Sentences are given with letter and cue, "H Out: When my cut ..."."""

    only_a: tuple[str, ...]
    only_b: tuple[str, ...]
    otherwise: tuple[tuple[str, str], ...]
    choices: tuple[Chosen, ...]
    notes: tuple[str, ...]


def why_not(a: Book, b: Book) -> str | None:
    """Why two books cannot be compared spot by spot, in words; None where they can."""
    rings = [" ".join(book.formation.ring) for book in (a, b)]
    if rings[0] != rings[1]:
        return (
            f"The two books do not share a ring: {rings[0]} against {rings[1]}. Nothing can be compared spot by spot; "
            "their sentences can."
        )
    players = [f"{len(book.formation.start)} outside and {len(book.formation.inside)} inside" for book in (a, b)]
    if players[0] != players[1]:
        return (
            f"The two books do not send out the same players: {players[0]} against {players[1]}. Nothing can be "
            "compared spot by spot; their sentences can."
        )
    return None


def read(a: Book, b: Book) -> Reading:
    """Both books read: sentences, choices, and what else the rules ask for."""
    names = [[sentence.phrase.name for sentence in book.sentences] for book in (a, b)]
    both = [name for name in names[0] if name in names[1]]
    pairs = [(_line(a, names[0].index(name)), _line(b, names[1].index(name)), name) for name in both]
    uses = [{use for sentence in book.sentences for use in sentence.phrase.uses} for book in (a, b)]
    return Reading(
        only_a=tuple(_line(a, rank) for rank, name in enumerate(names[0]) if name not in names[1]),
        only_b=tuple(_line(b, rank) for rank, name in enumerate(names[1]) if name not in names[0]),
        otherwise=tuple((one, other) for one, other, name in pairs if _text(a, name) != _text(b, name)),
        choices=tuple(
            Chosen(choice.name, _chosen(a, choice), _chosen(b, choice), choice.name in TIMES)
            for choice in CHOICES.values()
            if choice.name in uses[0] & uses[1] and a.values[choice.name] != b.values[choice.name]
        ),
        notes=tuple(_notes(a, b, both, [name for name in names[1] if name in both])),
    )


def _chosen(book: Book, choice: Choice) -> str:
    return choice.value(book.values[choice.name]).words


def _text(book: Book, name: str) -> str:
    return next(sentence.text for sentence in book.sentences if sentence.phrase.name == name)


def _line(book: Book, rank: int) -> str:
    return f"{letter(rank)} {book.cue(rank)}: {book.sentences[rank].text}"


def _notes(a: Book, b: Book, order_a: list[str], order_b: list[str]) -> Iterator[str]:
    if order_a != order_b:
        cues = [
            ", ".join(book.cue(rank) for rank, s in enumerate(book.sentences) if s.phrase.name in order_a)
            for book in (a, b)
        ]
        yield f"The sentences are asked in another order: {cues[1]} instead of {cues[0]}."
    for what in ("stays_inside", "never_corner", "never_cuts"):
        one, other = (getattr(book.exceptions, what) for book in (a, b))
        words = {"stays_inside": "stays inside", "never_corner": "never fills a corner", "never_cuts": "never cuts"}[
            what
        ]
        for number in sorted(one ^ other):
            yield f"{number} {words} in {(a if number in one else b).title} only."
    if a.mark_m != b.mark_m:
        yield f"The denial mark lies {_mark(b.mark_m)} instead of {_mark(a.mark_m)}."
    for kind in not_tried(a):
        if kind not in not_tried(b):
            yield f"No {_TRIED[kind]} were compared: only {b.title} has a sentence for them."


def _mark(mark_m: float) -> str:
    return f"{abs(mark_m):g} m {'outside' if mark_m > 0 else 'inside'} the arc" if mark_m else "on the arc"
