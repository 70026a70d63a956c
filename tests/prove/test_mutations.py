"""Every sentence of the shipped books taken out and every choice made otherwise: nothing changes without being told.

A changed book is refused by the book check, or noticed by a proof, or shown to change nothing, or told apart in words.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache

import pytest
from tests.engine.floor import opened
from tests.prove.books import SHIPPED

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

USUAL = (Depth.SETTLED, Depth.DENIED)
#: Looked at too where a change shows only there.
DEPTHS = (*USUAL, Depth.DISTURBED)
#: A comparison is stopped so many situations after the first that is answered otherwise: one difference is enough.
BEYOND = 200
#: These look on at every depth, or walk once more, before they say never.
SLOW = {p.name for p in properties().values() if isinstance(p, Sometimes) and p.depths} | {"every line-up"}


class Fate(StrEnum):
    """What becomes of a changed book."""

    REFUSED = "refused by the book check"
    NOTICED = "noticed by a proof"
    NOTHING = "changes nothing"
    SOUND = "another sound book"


@dataclass(frozen=True)
class Shows:
    """The first depth at which a changed book answers otherwise, and the place of the situation in that walk."""

    depth: Depth
    place: int


@dataclass(frozen=True)
class Judged:
    """A change of a shipped book, what became of it, where it shows first, and the last comparison that was made."""

    says: str
    fate: Fate
    shows: Shows | None = None
    compared: Comparison | None = None


#: Counted by this test (refused, noticed, changes nothing, another sound book), each change read through by hand.
FATES = {
    "first-month": (1, 7, 4, 8),
    "school-team": (2, 10, 6, 25),
    "four-out-school-team": (3, 8, 2, 34),
    "two-bigs": (3, 8, 1, 31),
}
#: What changes nothing, and why: without Out the cut's own way out is the first open spot; who skips holds without
#: being told; in five-out nobody is inside, and no far corner is free to cut through to; who has the ball keeps it.
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
    text, book = preset_text(name), opened(name)
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
    shows = first_shows(name, book)
    if shows is None:
        # The same answers everywhere make the same walk, if the same events are tried: only the times can differ.
        depths = USUAL if not_tried(book) != not_tried(opened(name)) else (Depth.SETTLED,)
    else:
        depths = USUAL if shows.depth is Depth.SETTLED else (shows.depth,)
    if found(book, depths) - found_before(name, depths):
        return Judged(says, Fate.NOTICED, shows)
    stop = None if shows is None else stops_after(shows.place + BEYOND)
    for depth in USUAL if shows is None else (shows.depth,):
        compared = compare(opened(name), book, (depth,), stop, walks=walks(name))
        if compared.differences or compared.times:
            return Judged(says, Fate.SOUND, shows, compared)
    return Judged(says, Fate.NOTHING, shows, compared)


def found(book: Book, depths: tuple[Depth, ...]) -> frozenset[Key]:
    asked = [(prop, prop.numbers) for prop in properties().values() if prop.name not in SLOW]
    return frozenset(finding.key for finding in prove(book, depths, asked).findings)


@cache
def found_before(name: str, depths: tuple[Depth, ...]) -> frozenset[Key]:
    return found(opened(name), depths)


@cache
def walks(name: str) -> tuple[Walk, ...]:
    return tuple(walk(opened(name), depth) for depth in DEPTHS)


def stops_after(most: int) -> Callable[[str, int], None]:
    def stop(where: str, count: int) -> None:
        if "compared" in where and count > most:
            raise KeyboardInterrupt

    return stop


def first_shows(name: str, book: Book) -> Shows | None:
    """Where the changed book first answers otherwise than the shipped one: every situation is asked, one by one."""
    for made in walks(name):
        for place, (situation, told) in enumerate(zip(made.situations, answered(name, made.depth), strict=True)):
            if answers(book, waited(situation, made.settled[place])) != told:
                return Shows(made.depth, place)
    return None


@cache
def answered(name: str, depth: Depth) -> list[object]:
    made = walks(name)[DEPTHS.index(depth)]
    return [
        answers(opened(name), waited(situation, rest))
        for situation, rest in zip(made.situations, made.settled, strict=True)
    ]


def waited(situation: Situation, rest: bool) -> Situation:
    """Where all stand, the count is up: the ball has waited."""
    return replace(situation, count=MOST_COUNTS) if rest else situation


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
            assert change.shows is None, change.says
            assert change.compared is not None
            assert change.compared.same
        elif change.fate is Fate.SOUND and change.shows is None:
            choice = change.says.partition(":")[0]
            assert choice in TIMES
            assert change.compared is not None
            assert [chosen.name for chosen in change.compared.times] == [choice]
        elif change.fate is Fate.SOUND:
            assert change.compared is not None
            assert change.compared.differences, change.says


@pytest.mark.parametrize("name", SHIPPED)
def test_another_sound_book_is_told_apart_in_words(name: str) -> None:
    for change in judged(name):
        if change.fate is not Fate.SOUND:
            continue
        assert change.compared is not None
        said = lines(change.compared)
        assert change.compared.differences or change.compared.times, change.says
        for difference in change.compared.differences:
            assert difference.text
            assert any(line.startswith("In ") and difference.text in line for line in said), change.says
        for chosen in change.compared.times:
            assert f'{chosen.name.capitalize()}: "{chosen.b}" instead of "{chosen.a}".' in said
