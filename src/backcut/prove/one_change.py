"""Every single change of a book that may alter what happens in one step: what it says, the book, and the new text.

The changed books are made without reading a text, which is quick; `write` makes the same change in the book's text.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import product

from backcut.engine.possession import Beat
from backcut.offence.action import letter
from backcut.offence.book import Book, Sentence
from backcut.offence.book_text import entries_from_text
from backcut.offence.checks import checks
from backcut.offence.choices import CHOICES
from backcut.offence.edit import choose, move, put_in, said_in, set_role, switch_on, take_out
from backcut.offence.phrase import Phrase, phrases
from backcut.offence.problems import Code
from backcut.prove.suggest import said_choice


@dataclass(frozen=True)
class Change:
    """One change: in a coach's words, the book with it, and the function that makes it in the book's text.

    Changes that have the same words in `alike`, such as one sentence at several ranks, may well do the same.
    """

    says: str
    book: Book
    write: Callable[[str], str]
    alike: str = ""


@dataclass(frozen=True, slots=True)
class _Step:
    """Where a change is looked for: the book and its text, the player, and the answers of the step in question."""

    text: str
    book: Book
    player: int
    beats: Sequence[Beat]

    @property
    def names(self) -> list[str]:
        """The names of the book's phrases, by rank."""
        return [sentence.phrase.name for sentence in self.book.sentences]


def changes(text: str, book: Book, player: int, beats: Sequence[Beat]) -> Iterator[Change]:
    """The changes of one choice, one sentence or one exception of this player that make no new problem.

    `text` is the book's; `beats` are the answers of the step in question: an order of sentences is changed only where
    two of them speak for one player there.
    """
    had, step = _problems(book), _Step(text, book, player, beats)
    tried = (_switched_on, _chosen, _put_in, _moved, _taken_out, _excepted)
    for change in (change for way in tried for change in way(step)):
        if _problems(change.book) <= had:
            yield change


def _problems(book: Book) -> Counter[Code]:
    """The problems of the whole book, by sort; where they stand in the text does not matter here."""
    rank_at = range(len(book.sentences))
    kept = book.exceptions
    roles = [("stays_inside", number, 0) for number in kept.stays_inside]
    roles += [("never_corner", number, 0) for number in kept.never_corner]
    roles += [("never_cuts", number, 0) for number in kept.never_cuts]
    return Counter(code for _, code, _, _ in checks(book, rank_at, _Anywhere(), roles))


class _Anywhere(dict[str, int]):
    """Places of lines that nobody asks for."""

    def __missing__(self, key: str) -> int:
        return 0


def _chosen(step: _Step) -> Iterator[Change]:
    """Every other value of every choice that a sentence says or reads."""
    book = step.book
    read = dict.fromkeys(use for s in book.sentences for use in (*s.phrase.slots, *s.phrase.uses))
    if any(sentence.phrase.ways_out for sentence in book.sentences):
        read["exit"] = None  # whoever cuts comes out, whether or not a sentence says where
    for name in read:
        for value in CHOICES[name].values:
            if value.name != book.values[name]:
                yield _choice(book, name, value.name)


def _choice(book: Book, name: str, value: str) -> Change:
    able = [i for i, sentence in enumerate(book.sentences) if name in sentence.phrase.slots]
    put = [i for i in able if name in book.sentences[i].values] or able[:1]
    sentences = tuple(
        replace(s, values=dict(s.values) | {name: value}, cue=book.cue(i)) if i in put else s
        for i, s in enumerate(book.sentences)
    )
    line = {name: value} if name in book.choices or not able else {}
    says = said_choice(book, name, value)
    if name in book.choices and not able:
        says = f'Let the line say "{name.capitalize()}: {CHOICES[name].value(value).words}"'
    changed = replace(book, sentences=sentences, choices=dict(book.choices) | line)
    # A line that no sentence says aloud may only silence one, whichever of several values it has.
    alike = "" if able else f"{name}:"
    return Change(says, changed, partial(choose, name=name, value=value), alike)


def _put_in(step: _Step) -> Iterator[Change]:
    """Every phrase the book does not have, with everything it can say, at every rank that may matter."""
    for name, phrase in phrases().items():
        if name in step.names:
            continue
        for values in _sayable(phrase, step.book):
            for rank in _ranks(phrase, step):
                sentence = Sentence(phrase, said_in(phrase, values), phrase.cue)
                yield Change(
                    f'Add as {letter(rank)}: "{sentence.text}"',
                    _with(step.book, rank, sentence),
                    partial(put_in, name=name, rank=rank, values=values),
                    sentence.text,
                )


def _switched_on(step: _Step) -> Iterator[Change]:
    """Every sentence that is kept in the text, but switched off."""
    rank = 0
    for place, entry in enumerate(e for e in entries_from_text(step.text) if e.kind in ("sentence", "off")):
        if entry.kind == "off" and entry.read is not None:
            read = entry.read
            sentence = Sentence(read.phrase, read.values, read.cue)
            says = f'Switch on, as {letter(rank)}: "{sentence.text}"'
            yield Change(says, _with(step.book, rank, sentence), partial(switch_on, place=place), sentence.text)
        rank += entry.kind == "sentence" and entry.read is not None


def _with(book: Book, rank: int, sentence: Sentence) -> Book:
    return replace(book, sentences=(*book.sentences[:rank], sentence, *book.sentences[rank:]))


def _sayable(phrase: Phrase, book: Book) -> Iterator[dict[str, str]]:
    """The book's choices with every value of those that the phrase cannot leave unsaid."""
    must = list(said_in(phrase, book.values))
    for chosen in product(*([value.name for value in CHOICES[slot].values] for slot in must)):
        yield dict(book.values) | dict(zip(must, chosen, strict=True))


def _ranks(phrase: Phrase, step: _Step) -> Sequence[int]:
    """A special case comes above its general one, the rest last; others on top, below all, or above who spoke here."""
    names, sentences = step.names, step.book.sentences
    if phrase.covers_rest:
        return [len(names)]
    if phrase.special_case_of in names:
        return [names.index(phrase.special_case_of)]
    last = next((rank for rank, sentence in enumerate(sentences) if sentence.phrase.covers_rest), len(names))
    actions = (action for beat in step.beats for action in beat.decision.actions if action.player == step.player)
    return sorted({0, last} | {action.habit for action in actions if action.habit is not None})


def _moved(step: _Step) -> Iterator[Change]:
    """A beaten sentence in the place of the one that won, or that one in the place of the beaten."""
    book = step.book
    actions = (action for beat in step.beats for action in beat.decision.actions if action.habit is not None)
    pairs = dict.fromkeys((claim.habit, action.habit) for action in actions for claim in action.beat)
    for beaten, won in pairs:
        assert won is not None
        for rank, to in ((beaten, won), (won, beaten)):
            sentences = list(book.sentences)
            sentences.insert(to, sentences.pop(rank))
            yield Change(
                f"Put {letter(rank)} {book.cue(rank)} in the place of {letter(to)} {book.cue(to)}",
                replace(book, sentences=tuple(sentences)),
                partial(move, rank=rank, to=to),
            )


def _taken_out(step: _Step) -> Iterator[Change]:
    book = step.book
    for rank, sentence in enumerate(book.sentences):
        if not sentence.phrase.covers_rest:
            sentences = book.sentences[:rank] + book.sentences[rank + 1 :]
            says = f"Take out {letter(rank)} {book.cue(rank)}"
            yield Change(says, replace(book, sentences=sentences), partial(take_out, rank=rank))


def _excepted(step: _Step) -> Iterator[Change]:
    """An exception more for this player, or one less."""
    exceptions, player = step.book.exceptions, step.player
    for words, more in (
        ("never fills a corner", replace(exceptions, never_corner=exceptions.never_corner ^ {player})),
        ("never cuts", replace(exceptions, never_cuts=exceptions.never_cuts ^ {player})),
    ):
        on = len(more.never_corner) + len(more.never_cuts) > len(exceptions.never_corner) + len(exceptions.never_cuts)
        says = f'{"Add" if on else "Take out"} the line "{player} {words}"'
        yield Change(says, replace(step.book, exceptions=more), partial(set_role, role=f"{player} {words}", on=on))
