"""All questions of a book, and the few that make a quiz: drawn by seed, every sentence in turn, the easy ones first."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from backcut.errors import BackcutError
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.situation import Situation
from backcut.prove.fold import has_mirror, roles
from backcut.teaching.quizzes.occasion import Occasion, events, occasions, played, standing, turned
from backcut.teaching.quizzes.question import Ask, Question
from backcut.teaching.quizzes.sentences import which
from backcut.teaching.quizzes.slips import mistakes
from backcut.teaching.quizzes.spots import where, who

#: Letters of what has happened so far that fill more than two lines of a phone (own choice).
LONG = 80

_KINDS = (where, who, mistakes, which)


class QuizError(BackcutError):
    """A quiz that cannot be made: no question about this sentence, or not so many."""


def about(occasion: Occasion) -> list[Question]:
    """Every question that can be asked on one occasion."""
    return [
        question for kind in _KINDS for question in kind(occasion) if 0 < len(question.right) < len(question.choices)
    ]


def after(book: Book, situation: Situation, event: Event) -> list[Question]:
    """Every question about one event in one situation."""
    step = played(book, situation, event)
    found = [] if step is None else [q for occasion in occasions(book, step) for q in about(occasion)]
    seen: dict[tuple[object, ...], Question] = {}
    for question in found:  # an early filler is asked with those who never run; each question once
        seen.setdefault(_key(question), question)
    return list(seen.values())


def questions(book: Book) -> list[Question]:
    """Every question of the book, numbers and sides not told apart."""
    return [q for here in standing(book) for event in events(book, here) for q in after(book, here, event)]


def _key(question: Question) -> tuple[object, ...]:
    return question.ask, question.occasion.beat, question.occasion.player, question.rank, question.deed


def quiz(book: Book, count: int, seed: int, *, rank: int | None = None, player: int | None = None) -> list[Question]:
    """So many different questions, drawn by `seed`; about one sentence where `rank` says so.

    With `player`, "where do you go" is asked of this number alone. Raises: QuizError where there is none, or none for
    this player.
    """
    if count < 1:
        raise QuizError(f"A quiz of {count} questions asks nothing. Ask for one question or more, 10 for example.")
    numbers = [p.number for p in book.start().players]
    if player is not None and player not in numbers:
        raise QuizError(f"Nobody wears {player} in this book; on the floor are {', '.join(map(str, numbers))}.")
    every = questions(book)
    found = [q for q in every if rank is None or q.rank == rank]
    if not found:
        raise QuizError(_nothing(book, rank, every))
    draw = random.Random(f"{seed}/{player}")
    draw.shuffle(found)
    made = sorted(_dressed(book, _in_turn(found), count, draw, player), key=lambda q: q.level)
    if not made:
        raise QuizError(f"No question of {book.title} can be put to {player}. Make it for the squad: --squad.")
    return made


def _nothing(book: Book, rank: int | None, every: Sequence[Question]) -> str:
    if rank is None or not every:
        return f"{book.title}: no sentence of this book ever asks anybody to do anything, so there is nothing to ask."
    named = ", ".join(f"{letter(r)} {book.cue(r)}" for r in sorted({q.rank for q in every}))
    return (
        f"{letter(rank)} {book.cue(rank)} decides nothing that can be asked from a still picture of this book. "
        f"There are questions about: {named}. Where it never speaks at all, `backcut prove` says what speaks before it."
    )


def _in_turn(found: Sequence[Question]) -> Iterator[Question]:
    """The questions so that sentences and kinds come in turn, what has come least first."""
    left = list(found)
    ranks: Counter[int] = Counter()
    kinds: Counter[Ask] = Counter()
    pairs: Counter[tuple[object, ...]] = Counter()
    while left:
        best = min(left, key=lambda q: (pairs[_pair(q)] > 0, ranks[q.rank], kinds[q.ask], pairs[_pair(q)], _long(q)))
        left.remove(best)
        ranks[best.rank] += 1
        kinds[best.ask] += 1
        pairs[_pair(best)] += 1
        yield best


def _long(question: Question) -> bool:
    """Whether there is much to read before the question: such a one comes when the shorter have been drawn."""
    return len(question.occasion.happened) > LONG


def _pair(question: Question) -> tuple[object, ...]:
    """What makes two questions much alike: the same picture, or the same answer to the same kind of event."""
    at = question.occasion
    return question.ask, question.rank, at.action.kind, at.step.event.kind, at.action.target, question.deed


def _dressed(
    book: Book, found: Iterator[Question], count: int, draw: random.Random, player: int | None
) -> list[Question]:
    """The first so many that can be put to this player, with numbers and sides drawn."""
    made: dict[str, Question] = {}
    for question in found:
        if len(made) == count:
            break
        own = player if question.ask is Ask.WHERE else None
        if (dressed := dress(book, question, draw, own)) is not None:
            made.setdefault(dressed.name, dressed)
    return list(made.values())


def dress(book: Book, question: Question, draw: random.Random, own: int | None = None) -> Question | None:
    """The same question with other numbers and perhaps on the other side; `own` becomes the number that is asked.

    None where the book tells that number from the one that was asked.
    """
    at = question.occasion
    wears = _wears(book, at.step.before, draw, None if own is None else (at.player, own))
    if wears is None:
        return None
    mirrored = has_mirror(book) and draw.random() < 0.5
    situation, event = turned(at.step.before, at.step.event, wears, mirrored)
    wanted = _like(question, [wears[c.player or at.player] for c in question.right], wears[at.player])
    for other in after(book, situation, event):
        if wanted == _like(other, [c.player or other.occasion.player for c in other.right], other.occasion.player):
            return other
    return None


def _like(question: Question, right: Sequence[int], asked: int) -> tuple[object, ...]:
    """What tells a question from the others about the same event, whatever the numbers; of "who" the right ones."""
    slip = question.deed and question.deed.slip
    whom = frozenset(right) if question.ask is Ask.WHO else asked
    return question.ask, question.occasion.beat, whom, question.rank, slip


def _wears(
    book: Book, situation: Situation, draw: random.Random, asked: tuple[int, int] | None
) -> Mapping[int, int] | None:
    """New numbers for all: who plays inside keeps a number that starts inside, and exceptions by number are kept."""
    role, ring = roles(book), book.formation.ring
    kinds: dict[tuple[int, bool], list[int]] = {}
    for p in book.start().players:
        kinds.setdefault((role[p.number], p.at in ring), []).append(p.number)
    here = {p.number: (role[p.number], p.at in ring) for p in situation.players}
    if asked is not None and asked[1] not in kinds.get(here[asked[0]], ()):
        return None
    wears: dict[int, int] = {}
    for kind, numbers in kinds.items():
        mine = [number for number, its in here.items() if its == kind]
        if len(mine) != len(numbers):
            return None
        given = draw.sample(numbers, len(numbers))
        wears |= dict(zip(mine, given, strict=True))
    if asked is not None and wears[asked[0]] != asked[1]:
        number, own = asked
        other = next(n for n, given in wears.items() if given == own)
        wears[number], wears[other] = own, wears[number]
    return wears
