"""Each choice that the book says changes something."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backcut.engine.decide import decide
from backcut.engine.gym import gym, timed
from backcut.engine.possession import Decision
from backcut.errors import BackcutError
from backcut.motion.timeline import Timeline
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES
from backcut.offence.rules import CORNERS
from backcut.prove.depth import Depth
from backcut.prove.possession import Possession, possession
from backcut.prove.property import Breach, Numbers, Sometimes
from backcut.prove.whole import Whole

#: The quick walks first: most books need no more.
_DEPTHS = (Depth.SETTLED, Depth.DENIED, Depth.DISTURBED, Depth.OVERLAPPED)

#: Choices that no answer depends on: they say when, not what.
_OF_TIME = frozenset({"hold count", "signal", "denial"})
_TRIED = 30  # so many possessions put in time, before a choice of time is said to change nothing: estimate

_INSIDE = frozenset({"occupied block", "inside", "two inside"})
_OF_CORNERS = frozenset({"corner passer", "denied corner"})


def _looks(whole: Whole, numbers: Numbers) -> Iterator[Breach]:
    book = whole.book
    said = _said(book)
    idle = [name for name in said if name not in _OF_TIME]
    waiting = {name: others(book, name) for name in idle if _none_to_matter_to(book, name) is None}
    for seen in whole.seen(_DEPTHS) if waiting else ():
        told = _told(seen.decision)
        for name in [
            name
            for name, books in waiting.items()
            if any(_told(decide(other, seen.situation)) != told for other in books)
        ]:
            del waiting[name]
            idle.remove(name)
        if not waiting:
            break
    idle += [name for name in said if name in _OF_TIME and not _shows_in_time(whole, name)]
    for name in said:
        if name in idle:
            why = _none_to_matter_to(book, name) or "whatever it says, everybody is told the same"
            cause = f'The choice "{name}" changes nothing: {why}.'
            yield Breach(cause, f'{cause} The book says "{CHOICES[name].value(book.values[name]).words}".')


def _said(book: Book) -> list[str]:
    """The choices said in a sentence or on a line of their own that a sentence of the book reads, in order."""
    phrases = [sentence.phrase for sentence in book.sentences]
    read = {name for phrase in phrases for name in phrase.uses}
    if any(phrase.ways_out for phrase in phrases):
        read.add("exit")
    said = {*book.choices, *(name for sentence in book.sentences for name in sentence.values)}
    return [name for name in CHOICES if name in said and name in read]


def others(book: Book, name: str) -> list[Book]:
    """The book with each other value of this choice."""
    return [_with(book, name, value.name) for value in CHOICES[name].values if value.name != book.values[name]]


def _with(book: Book, name: str, value: str) -> Book:
    sentences = tuple(replace(s, values={**s.values, name: value}) if name in s.values else s for s in book.sentences)
    return replace(book, choices={**book.choices, name: value}, sentences=sentences)


def _told(decision: Decision) -> list[tuple[str, str, str]]:
    return [(action.kind, action.target, action.route) for action in decision.actions]


def _none_to_matter_to(book: Book, name: str) -> str | None:
    if name in _INSIDE and not book.formation.inside:
        return "nobody plays inside"
    if name in _OF_CORNERS and not CORNERS & set(book.formation.ring):
        return "this ring has no corner"
    return None


def _shows_in_time(whole: Whole, name: str) -> bool:
    """Whether another value makes some possession run differently in time."""
    book = whole.book
    try:
        for shown in _possessions(whole, name):
            own = timed(book, shown.steps, gym(book))
            if any(_times(timed(other, shown.steps, gym(other))) != _times(own) for other in others(book, name)):
                return True
    except BackcutError:
        return True  # a book that cannot be put on its floor is told so elsewhere
    return False


def _possessions(whole: Whole, name: str) -> Iterator[Possession]:
    """Short possessions in which a sentence that reads this choice speaks, right after an event."""
    ranks = {rank for rank, sentence in enumerate(whole.book.sentences) if name in sentence.phrase.uses}
    # How long the ball is held shows in the pass after it.
    events = 2 if name == "hold count" else 1
    tried = 0
    for depth in (Depth.SETTLED, Depth.DENIED):
        walk = whole.walk(depth)
        for node, decision in enumerate(walk.decisions):
            if walk.far[node] >= events and any(action.habit in ranks for action in decision.actions):
                yield possession(walk, node)
                tried += 1
                if tried == _TRIED:
                    return


def _times(timeline: Timeline) -> tuple[object, ...]:
    runs = [(run.player, run.kind, run.start_s, run.end_s) for run in timeline.runs]
    return timeline.duration_s, runs, [(flight.start_s, flight.end_s) for flight in timeline.flights]


PROPERTY = Sometimes(
    name="every choice matters",
    says="Each choice that the book says changes what somebody does, or when.",
    why=(
        "A choice without effect is a word that a player learns for nothing, or a sign that the sentence around it "
        "never gets its chance. Choices the book leaves unsaid are not asked. Common practice, no source."
    ),
    looks=_looks,
    depths=_DEPTHS,
)
