"""The second reading of the rules, asked about a book: it knows no engine, only ring, spots, ball and choices."""

from __future__ import annotations

from typing import NamedTuple

from tests.oracle.reading import (
    Choices,
    Outcome,
    Where,
    after_dribble,
    after_move,
    explore,
    possible_moves,
    reach,
)

from backcut.offence.book import Book

#: What the two readings call the same choice, and the one value they call by two names.
_CHOICES = {
    "exit": "exit",
    "who fills": "fillers",
    "corner passer": "corner passer",
    "skip passer": "skip passer",
    "denied corner": "denied corner",
    "dribble at": "dribble at",
}
_VALUES = {"come back": "cut and come back"}


class Asked(NamedTuple):
    """A move put to the second reading: "pass", "skip" and "deny" name a player, "dribble" a spot.

    "deny pair", both players beside the ball at once, names the one with the ball.
    """

    move: str
    whom: int | str


def ring_of(book: Book) -> tuple[str, ...]:
    """The ring as the second reading has it: plain strings."""
    return tuple(str(spot) for spot in book.formation.ring)


def start_of(book: Book) -> tuple[Where, int]:
    """Who starts where on the ring, and who has the ball; inside players are no part of the second reading."""
    start = book.start()
    return {p.number: str(p.at) for p in start.players if p.at in book.formation.ring}, start.ball


def choices_of(book: Book) -> Choices:
    """The book's choices that the second reading knows."""
    return {theirs: _VALUES.get(book.values[ours], book.values[ours]) for ours, theirs in _CHOICES.items()}


def count(book: Book, moves: tuple[str, ...]) -> tuple[int, int, int]:
    """Situations, moves tried, longest shortest way, by the second reading.

    A book without a sentence for the denied plays a denial by holding: it opens nothing and is tried all the same.
    """
    ring, (where, ball), choices = ring_of(book), start_of(book), choices_of(book)
    if "back cut" in book.rules.names or "deny" not in moves:
        return explore(ring, where, ball, moves, choices)
    played = tuple(move for move in moves if move != "deny")
    situations, _, depth = reach(ring, where, ball, played, choices)
    return len(situations), sum(len(possible_moves(ring, *one, moves)) for one in situations), depth


def asked_of(book: Book, where: Where, ball: int) -> list[Asked]:
    """Every move the second reading can judge in a situation under this book.

    Left out are moves the book has no sentence for, and the denial of the only player beside the ball where a flash
    answers it: the second reading knows no flash.
    """
    names, ring = book.rules.names, ring_of(book)
    beside = [player for move, player in possible_moves(ring, where, ball, ("deny",))]
    kinds = ("pass", "skip") + (("deny",) if "back cut" in names and ("flash" not in names or len(beside) > 1) else ())
    found = [Asked(move, player) for move, player in possible_moves(ring, where, ball, kinds)]
    if "dribble at" in names:
        place = ring.index(where[ball])
        found += [Asked("dribble", ring[i]) for i in (place - 1, place + 1) if 0 <= i < len(ring)]
    return found


def pairs_of(book: Book, where: Where, ball: int) -> list[Asked]:
    """The denial of both beside the ball at once, where there are two and the book answers it without a flash."""
    if "back cut" not in book.rules.names or "flash" in book.rules.names:
        return []
    return [Asked(move, player) for move, player in possible_moves(ring_of(book), where, ball, ("deny pair",))]


def ruled(book: Book, where: Where, ball: int, asked: Asked) -> Outcome:
    """What the second reading says comes of a move."""
    ring, choices = ring_of(book), choices_of(book)
    if isinstance(asked.whom, str):
        return after_dribble(ring, where, ball, asked.whom, choices)
    return after_move(ring, where, ball, asked.move, asked.whom, choices)
