"""Ways out of a finding: one sentence or choice changed, each proved before it is offered."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES
from backcut.offence.edit import choose, move, put_in, said_in, take_out
from backcut.offence.phrase import phrases
from backcut.offence.reading import book_from_text
from backcut.prove.compare import Comparison, compare
from backcut.prove.proof import Finding, Key, Proof, prove
from backcut.prove.property import Sometimes

#: Ways that are offered for one finding: more is no help.
OFFERED = 3
#: Of what else a way changes, so many differences are said.
SAID = 2

#: Told how many changes have been tried.
Progress = Callable[[int], None]


@dataclass(frozen=True, slots=True)
class Way:
    """One change: what it is in words, the book's text with it, and what else it changes.

    In `differs` of the `moments` that were compared somebody gets another answer; `changed` says the most frequent.
    `leaves` is how many findings there still are.
    """

    says: str
    text: str
    differs: int
    moments: int
    changed: tuple[str, ...]
    leaves: int


@dataclass(slots=True)
class Ways:
    """Looks for ways out of the findings of one proof of the book in `text`; every change is looked at once at most."""

    text: str
    proof: Proof
    progress: Progress | None = None
    quick: dict[str, tuple[Book, frozenset[Key]] | None] = field(default_factory=dict)
    whole: dict[str, frozenset[Key]] = field(default_factory=dict)
    compared: dict[str, Comparison] = field(default_factory=dict)

    def out_of(self, finding: Finding) -> list[Way]:
        """The changes that remove a finding and make no new one: first those that remove most, then change least."""
        before = {known.key for known in self.proof.findings} | _not_judged(self.proof)
        hopeful = [
            (says, text, looked[0])
            for says, text in _changes(self.text, self.proof.book, finding)
            if (looked := self._quick(text)) and finding.key not in looked[1] and looked[1] <= before
        ]
        ways = [self._way(*change) for change in hopeful]
        ways.sort(key=lambda way: (way.leaves, way.differs))
        books = {text: book for _, text, book in hopeful}
        found: list[Way] = []
        for way in ways:
            keys = self._whole(way.text, books[way.text])
            if finding.key not in keys and keys <= before:
                found.append(replace(way, leaves=sum(1 for _, cause in keys if cause)))
            if len(found) == OFFERED:
                break
        return found

    def _quick(self, text: str) -> tuple[Book, frozenset[Key]] | None:
        """The book in a changed text and what is found where it is walked through; None where it has problems."""
        if text not in self.quick:
            book, problems = book_from_text(text)
            self.quick[text] = None if problems else (book, self._keys(book, sometimes=False))
            if self.progress is not None:
                self.progress(len(self.quick))
        return self.quick[text]

    def _whole(self, text: str, book: Book) -> frozenset[Key]:
        """All that is found in the book: what never happens too, which takes longer to look for."""
        if text not in self.whole:
            looked = self.quick[text]
            assert looked is not None
            self.whole[text] = looked[1] | self._keys(book, sometimes=True)
        return self.whole[text]

    def _keys(self, book: Book, *, sometimes: bool) -> frozenset[Key]:
        proof = self.proof
        wanted = [asked for asked in proof.asked if isinstance(asked[0], Sometimes) is sometimes]
        made = prove(book, proof.depths, wanted, named=proof.named, sided=proof.sided)
        if made.stopped:
            raise KeyboardInterrupt  # what was cut short proves nothing
        return frozenset(found.key for found in made.findings) | _not_judged(made)

    def _way(self, says: str, text: str, book: Book) -> Way:
        if text not in self.compared:
            walks = tuple(self.proof.whole.walks.values())
            self.compared[text] = compare(self.proof.book, book, self.proof.depths, walks=walks)
        found = self.compared[text]
        if found.stopped:
            raise KeyboardInterrupt
        changed = tuple(difference.text for difference in found.differences[:SAID])
        looked = self.quick[text]
        leaves = sum(1 for _, cause in looked[1] if cause) if looked else 0
        return Way(says, text, found.differing, found.moments, changed, leaves)


def _not_judged(proof: Proof) -> frozenset[Key]:
    """Marks for what a proof could not judge: a change that only hides a finding removes nothing."""
    return frozenset((prop.name, "") for prop in proof.not_judged)


def _changes(text: str, book: Book, finding: Finding) -> Iterator[tuple[str, str]]:
    """Every change of one choice or one sentence that may help, the likeliest first: what it says, and the new text."""
    yield from _choices(text, book, finding)
    names = [sentence.phrase.name for sentence in book.sentences]
    for name, phrase in phrases().items():
        if name not in names:
            general = phrase.special_case_of
            for rank in {names.index(general) if general in names else 0, len(names) - 1}:
                said = phrase.sentence(said_in(phrase, book.values))
                yield f'Add as {letter(rank)}: "{said}"', put_in(text, name, rank, book.values)
    for rank in finding.breach.habits:
        for to in (to for to in range(len(names)) if to != rank):
            yield f"Put {letter(rank)} {book.cue(rank)} in the place of {letter(to)}", move(text, rank, to)
    for rank in finding.breach.habits:
        if not book.sentences[rank].phrase.covers_rest:
            yield f"Take {letter(rank)} {book.cue(rank)} out", take_out(text, rank)


def _choices(text: str, book: Book, finding: Finding) -> Iterator[tuple[str, str]]:
    named = [use for rank in finding.breach.habits for use in book.sentences[rank].phrase.uses]
    read = [use for sentence in book.sentences for use in sentence.phrase.uses]
    for name in dict.fromkeys([*named, "exit", *read]):
        for value in CHOICES[name].values:
            if value.name != book.values[name]:
                yield said_choice(book, name, value.name), choose(text, name, value.name)


def said_choice(book: Book, name: str, value: str) -> str:
    """A choice as it would stand in the book: the sentence that says it, else its line."""
    for rank, sentence in enumerate(book.sentences):
        if name in sentence.phrase.slots:
            new = sentence.phrase.sentence(dict(sentence.values) | {name: value})
            return f'Let {letter(rank)} say: "{new}"'
    return f'Add the line "{name.capitalize()}: {CHOICES[name].value(value).words}"'
