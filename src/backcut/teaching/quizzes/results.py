"""Codes of many players read together: a table of players and sentences, and what could not be read."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.teaching.quizzes.code import CodeError, Result, book_number, read


@dataclass(frozen=True, slots=True)
class Results:
    """The results of one book by shirt, the last code of each shirt; the book itself where it is known.

    `mistyped` are codes that cannot be read, each with what is said about it; `other` are codes of another book;
    `again` are shirts of which more than one code was given.
    """

    book: Book | None
    by_shirt: dict[int, Result] = field(default_factory=dict)
    mistyped: list[tuple[str, str]] = field(default_factory=list)
    other: list[str] = field(default_factory=list)
    again: list[int] = field(default_factory=list)

    @property
    def sentences(self) -> list[tuple[str, str]]:
        """Letter and cue word of each sentence; letters alone where the book is not known."""
        many = max((len(result.counts) for result in self.by_shirt.values()), default=0)
        return [(str(letter(rank)), self.book.cue(rank) if self.book else "") for rank in range(many)]

    @property
    def asked(self) -> list[int]:
        """The ranks of the sentences that anybody was asked."""
        return [
            rank
            for rank in range(len(self.sentences))
            if any(result.counts[rank][1] for result in self.by_shirt.values())
        ]

    def total(self, rank: int) -> tuple[int, int]:
        """Right and asked of one sentence, over all players."""
        counts = [result.counts[rank] for result in self.by_shirt.values()]
        return sum(right for right, _ in counts), sum(asked for _, asked in counts)


def results(codes: Iterable[str], books: Sequence[Book], wanted: Book | None = None) -> Results:
    """Read codes together. The book is `wanted`, else the one of the first code that can be read, sought in `books`."""
    given = [code.strip() for code in codes if code.strip()]
    readable: list[tuple[str, Result]] = []
    mistyped: list[tuple[str, str]] = []
    for code in given:
        try:
            readable.append((code, read(code)))
        except CodeError as error:
            mistyped.append((code, str(error)))
    number = book_number(wanted) if wanted else readable[0][1].book if readable else None
    known = wanted or next((book for book in books if book_number(book) == number), None)
    found = Results(known, mistyped=mistyped)
    for code, result in readable:
        fits = known is None or len(known.sentences) == len(result.counts)
        if result.book != number or not fits:
            found.other.append(code)
            continue
        if result.shirt in found.by_shirt:
            found.again.append(result.shirt)
        found.by_shirt[result.shirt] = result
    return found
