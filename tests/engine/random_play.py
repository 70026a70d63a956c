"""Random books and random possessions, every move of which can be made and written in a move list."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import permutations

from hypothesis import strategies as st

from backcut.engine.play import Stage, one_step
from backcut.engine.possession import Step
from backcut.offence.book import Book, Sentence
from backcut.offence.choices import CHOICES
from backcut.offence.event import Event, EventKind
from backcut.offence.formation import formation, formations
from backcut.offence.phrase import phrases
from backcut.offence.situation import Doing, Guard, Situation

#: The phrases in the order most books have them; those a book may do without are drawn.
ORDER = (
    "dribble at",
    "flash",
    "dribble out",
    "denied corner",
    "denied filler",
    "back cut",
    "corner pass",
    "skip pass",
    "cut",
    "cut taken away",
    "come out",
    "fill",
    "inside",
    "two inside",
    "catch",
    "shot",
    "hold",
)
ALWAYS = frozenset({"back cut", "cut", "fill", "hold"})

#: When the next event comes: after all have settled; when a cutter is in the lane; when he has started; with the pass.
WHEN = (None, None, Stage.LANE, Stage.CUTTING, Stage.BEFORE)


@dataclass(frozen=True, repr=False)
class Possession:
    """A book and what was played with it; its repr is short, so that a failure can be read."""

    book: Book
    steps: tuple[Step, ...]

    def __repr__(self) -> str:
        chosen = {name: value for name, value in self.book.choices.items() if value != CHOICES[name].default}
        left_out = set(ORDER) - self.book.rules.names
        moves = ", ".join(step.text for step in self.steps)
        return f"{self.book.formation.name}: {moves}; choices {chosen}; without {sorted(left_out)}"

    @property
    def situations(self) -> list[Situation]:
        """Every situation on the way, those between two beats too."""
        return [beat.before for step in self.steps for beat in step.beats] + [step.after for step in self.steps]


@st.composite
def books(draw: st.DrawFn) -> Book:
    """Any formation with most phrases, each choice at any value."""
    form = formation(draw(st.sampled_from(list(formations()))))
    told = {1: {"two inside"}, 2: {"inside"}}.get(len(form.inside), {"inside", "two inside"})
    may = [name for name in ORDER if name not in told]
    left_out = draw(st.sets(st.sampled_from([name for name in may if name not in ALWAYS])))
    choices = {name: draw(st.sampled_from([v.name for v in choice.values])) for name, choice in CHOICES.items()}
    sentences = tuple(Sentence(phrases()[name]) for name in may if name not in left_out)
    return Book("Drawn by lot", form, sentences, choices)


def can_come(book: Book, situation: Situation, until: Stage | None) -> list[Event]:
    """Every event that can come now; those that belong to the moment the step before was stopped at."""
    ball, index = situation.ball, book.rules.index
    others = [player for player in situation.players if player.number != ball]
    if until is Stage.BEFORE:
        last = situation.last
        jumps = [] if last is None else [Event(EventKind.JUMP, last.player)]
        return jumps + [Event(EventKind.FORGET, p.number) for p in situation.players]
    jams = [Event(EventKind.JAM, p.number) for p in others if p.doing is Doing.CUTTING]
    if until is Stage.CUTTING and jams:
        return jams
    found = jams + [Event(EventKind.PASS, ball, p.number) for p in others if p.guard is not Guard.DENIES]
    found += [Event(kind, p.number) for p in others for kind in (EventKind.FORGET, EventKind.SAG)]
    can_be_denied = [p.number for p in others if p.doing not in (Doing.CUTTING, Doing.LANE)]
    found += [Event(EventKind.DENY, number) for number in can_be_denied]
    found += [Event(EventKind.DENY, one, also=(other,)) for one, other in permutations(can_be_denied, 2)]
    place = index.get(situation.holder.at)
    for spot in () if place is None else book.rules.ring:
        if abs(index[spot] - index[situation.holder.at]) == 1:
            found.append(Event(EventKind.DRIBBLE, ball, spot=spot))
    return found


def one_of(events: list[Event]) -> st.SearchStrategy[Event]:
    """A kind of event first, passes three times as often as others; then one of that kind."""
    kinds = list(dict.fromkeys(event.kind for event in events))
    often = [kind for kind in kinds for _ in range(3 if kind is EventKind.PASS else 1)]
    return st.sampled_from(often).flatmap(lambda kind: st.sampled_from([e for e in events if e.kind is kind]))


@st.composite
def possessions(draw: st.DrawFn, most: int = 6) -> Possession:
    """A book and up to `most` events, some of them before all have settled."""
    book = draw(books())
    situation, until = book.start(), None
    steps: list[Step] = []
    for _ in range(draw(st.integers(2, most))):
        event = draw(one_of(can_come(book, situation, until)))
        until = draw(st.sampled_from(WHEN))
        steps.append(one_step(book, situation, event, until))
        situation = steps[-1].after
    return Possession(book, tuple(steps))
