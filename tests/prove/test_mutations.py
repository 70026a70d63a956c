"""Every sentence of the shipped books taken out and every choice made otherwise: nothing changes without being told.

A changed book is refused by the book check, or noticed by a proof, or shown to change nothing, or told apart in words.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache

import pytest
from tests.prove.books import SHIPPED, named

from backcut.engine.advance import MOST_COUNTS
from backcut.engine.decide import decide
from backcut.engine.play import settled
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES
from backcut.offence.edit import choose, take_out
from backcut.offence.library import preset_text
from backcut.offence.reading import book_from_text
from backcut.offence.situation import Situation
from backcut.prove.compare import Comparison, compare
from backcut.prove.compare_words import lines
from backcut.prove.depth import Depth, not_tried
from backcut.prove.proof import Key, prove
from backcut.prove.property import Sometimes, properties
from backcut.prove.side_by_side import TIMES
from backcut.prove.walk import Walk, walk

DEPTHS = (Depth.SETTLED, Depth.DENIED, Depth.DISTURBED)
#: A disturbed comparison is stopped after so many situations: it has to find one difference, not all.
ENOUGH = 700


class Fate(StrEnum):
    """What becomes of a changed book."""

    REFUSED = "refused by the book check"
    NOTICED = "noticed by a proof"
    NOTHING = "changes nothing"
    SOUND = "another sound book"


@dataclass(frozen=True)
class Judged:
    """A change of a shipped book, what became of it, and the comparison that told it, where one was made."""

    says: str
    fate: Fate
    otherwise: bool = False
    compared: Comparison | None = None


#: Counted by this test (refused, noticed, changes nothing, another sound book), each change read through by hand.
FATES = {
    "first-month": (1, 7, 4, 8),
    "school-team": (2, 10, 6, 25),
    "four-out-school-team": (3, 8, 2, 34),
    "two-bigs": (3, 8, 1, 31),
}
#: What changes nothing, and why: without Out the cut's own way out is the first open spot; nobody is inside in
#: five-out; no far corner is free there to cut through to; who has the ball keeps it without being told.
CHANGES_NOTHING = {
    "first-month": {"without Out", "corner passer: cut through", "occupied block: shallow", "occupied block: screen"},
    "school-team": {
        "without Out",
        "without Skip",
        "without Catch",
        "corner passer: cut through",
        "occupied block: shallow",
        "occupied block: screen",
    },
    "four-out-school-team": {"without Out", "without Catch"},
    "two-bigs": {"without Catch"},
}


def changes(name: str) -> Iterator[tuple[str, str]]:
    """Every sentence taken out, and every choice the sentences read made otherwise: what it is, and the text."""
    text, book = preset_text(name), named(name)
    for rank in range(len(book.sentences)):
        yield f"without {book.cue(rank)}", take_out(text, rank)
    read = {use for sentence in book.sentences for use in sentence.phrase.uses} | {"exit"}
    for choice in (choice for choice in CHOICES.values() if choice.name in read):
        for value in choice.values:
            if value.name != book.values[choice.name]:
                yield f"{choice.name}: {value.name}", choose(text, choice.name, value.name)


@cache
def judged(name: str) -> tuple[Judged, ...]:
    return tuple(judge(name, says, text) for says, text in changes(name))


def judge(name: str, says: str, text: str) -> Judged:
    book, problems = book_from_text(text)
    if problems:
        return Judged(says, Fate.REFUSED)
    shipped = named(name)
    otherwise = answers_otherwise(shipped, book, situations(name))
    # The same answers everywhere make the same walk, if the same events are tried: only the times can differ.
    deepest = 2 if otherwise or not_tried(book) != not_tried(shipped) else 1
    for depth in DEPTHS[:deepest]:
        if found(book, depth) - found_before(name, depth):
            return Judged(says, Fate.NOTICED, otherwise)
    for depth in DEPTHS[:2]:
        compared = compare(shipped, book, (depth,), walks=walks(name))
        if not compared.same:
            return Judged(says, Fate.SOUND, otherwise, compared)
    if not otherwise:
        return Judged(says, Fate.NOTHING, otherwise, compared)
    if found(book, Depth.DISTURBED) - found_before(name, Depth.DISTURBED):
        return Judged(says, Fate.NOTICED, otherwise)
    compared = compare(shipped, book, (Depth.DISTURBED,), stop, walks=walks(name))
    return Judged(says, Fate.SOUND if compared.differences else Fate.NOTHING, otherwise, compared)


def found(book: Book, depth: Depth) -> frozenset[Key]:
    """What a proof finds, without the properties that look on at every depth before they say never."""
    asked = [(p, p.numbers) for p in properties().values() if not (isinstance(p, Sometimes) and p.depths)]
    return frozenset(finding.key for finding in prove(book, (depth,), asked).findings)


@cache
def found_before(name: str, depth: Depth) -> frozenset[Key]:
    return found(named(name), depth)


@cache
def walks(name: str) -> tuple[Walk, ...]:
    return tuple(walk(named(name), depth) for depth in DEPTHS)


def stop(where: str, count: int) -> None:
    if "compared" in where and count >= ENOUGH:
        raise KeyboardInterrupt


@cache
def situations(name: str) -> tuple[Situation, ...]:
    """Everything the shipped book comes to; where all stand, the count is up, as when the ball has waited."""
    return tuple(
        dict.fromkeys(
            replace(situation, count=MOST_COUNTS) if rest else situation
            for made in walks(name)
            for situation, rest in zip(made.situations, made.settled, strict=True)
        )
    )


def answers_otherwise(shipped: Book, book: Book, asked: tuple[Situation, ...]) -> bool:
    """Whether the changed book answers otherwise in any of these situations, asked one by one."""
    return any(answers(shipped, situation) != answers(book, situation) for situation in asked)


def answers(book: Book, situation: Situation) -> object:
    decision = decide(book, situation)
    told = [(action.player, action.kind, action.target, action.route) for action in decision.actions]
    return told, settled(book, situation, decision)


@pytest.mark.parametrize("name", SHIPPED)
def test_every_change_is_refused_or_noticed_or_changes_nothing_or_is_another_sound_book(name: str) -> None:
    counted = Counter(change.fate for change in judged(name))
    assert tuple(counted[fate] for fate in Fate) == FATES[name]
    nothing = {change.says for change in judged(name) if change.fate is Fate.NOTHING}
    assert nothing == CHANGES_NOTHING[name]


@pytest.mark.parametrize("name", SHIPPED)
def test_no_change_that_is_answered_otherwise_anywhere_passes_in_silence(name: str) -> None:
    for change in judged(name):
        if change.fate is Fate.NOTHING:
            assert not change.otherwise, change.says
            assert change.compared is not None
            assert change.compared.same
        if change.fate is Fate.SOUND and not change.otherwise:
            assert change.compared is not None
            assert [chosen.name for chosen in change.compared.times] == [change.says.partition(":")[0]]
            assert change.says.partition(":")[0] in TIMES


@pytest.mark.parametrize("name", SHIPPED)
def test_another_sound_book_is_told_apart_in_words(name: str) -> None:
    for change in judged(name):
        if change.fate is not Fate.SOUND:
            continue
        compared = change.compared
        assert compared is not None
        said = lines(compared)
        for difference in compared.differences:
            assert any(difference.text in line for line in said), change.says
            assert difference.moments > 0
            assert difference.text
        for chosen in compared.times:
            assert f'{chosen.name.capitalize()}: "{chosen.b}" instead of "{chosen.a}".' in said
        assert compared.differences or compared.times, change.says
