"""Whether a possession of a book can begin in a situation."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.court.spots import Spot
from backcut.errors import SituationError
from backcut.offence.book import Book
from backcut.offence.inside import INSIDE_PLACES
from backcut.offence.problems import Code
from backcut.offence.situation import Doing, Situation


def check_start(book: Book, start: Situation) -> Situation:
    """The same start, once it is sure that a possession of this book can begin there. Raises: SituationError."""
    for _, wrong, right in start_troubles(book, start):
        raise SituationError(f"{wrong} {right}")
    return start


def start_troubles(book: Book, start: Situation) -> Iterator[tuple[Code, str, str]]:
    """What keeps a possession of this book from beginning here: code, what is wrong, what would be right."""
    ring = set(book.formation.ring)
    for player in start.players:
        if player.at not in ring | INSIDE_PLACES | {Spot.R}:
            yield lacks(book, player.at)
        elif player.at is Spot.R and player.doing is Doing.STANDING:
            yield (
                Code.IMPOSSIBLE,
                f"{player.number} stands at the rim: the rim is run to, never held.",
                f'Place {player.number} on another spot, or write for example "{player.number}:R(in the lane from T)".',
            )
        if player.origin is not None and player.origin not in ring:
            yield lacks(book, player.origin)
        if player.doing is Doing.CUTTING and not player.side:
            yield (
                Code.IMPOSSIBLE,
                f"{player.number} is cutting, but nothing says on which side of the ball the cut began.",
                f'Write for example "{player.number}:R(cutting from LW, left of the ball)".',
            )
    if (last := start.last) is not None:
        if last.player not in start.spots():
            yield (
                Code.NOBODY,
                f"Nobody wears {last.player} at the start.",
                f"On the floor are {', '.join(map(str, sorted(start.spots())))}.",
            )
        if last.target is not None and last.target not in ring:
            yield lacks(book, last.target)
    if start.ended is not None:
        yield Code.IMPOSSIBLE, f"The start has ended with a {start.ended} already.", "Take the end out."


def lacks(book: Book, spot: Spot) -> tuple[Code, str, str]:
    """That a book's formation has no such spot, and which spots it has."""
    ring = ", ".join(s.title for s in book.formation.ring)
    return Code.LACKING_SPOT, f"{book.formation.title} has no {spot.title} in this book.", f"Its ring is: {ring}."
