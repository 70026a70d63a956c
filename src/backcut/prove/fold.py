"""Situations made alike: what no sentence reads any more is dropped; numbers and sides are told apart only if asked.

A folded situation stands for all that differ from it in who wears which number and, if mirrored, in the side.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache

from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.situation import IN_LANE, Doing, Guard, Last, Player, Situation

_READS_COUNT = "count of two"
_ON_THE_WAY = (Doing.FILLING, Doing.OUT)


def roles(book: Book, named: Collection[int] = ()) -> dict[int, int]:
    """The role of each number: numbers of one role are interchangeable under this book's sentences.

    Exceptions by number make roles, and so does being `named`, by a property that speaks of a number.
    """
    exceptions = book.exceptions
    marks = {
        player.number: (
            player.number in exceptions.never_corner,
            player.number in exceptions.never_cuts,
            player.number if player.number in named else 0,
        )
        for player in book.start().players
    }
    order = sorted(set(marks.values()))
    return {number: order.index(mark) for number, mark in marks.items()}


def has_mirror(book: Book) -> bool:
    """Whether the ring is its own mirror image, so that left and right can be folded into one."""
    return {spot.mirror for spot in book.formation.ring} == set(book.formation.ring)


@dataclass(frozen=True, slots=True)
class Turn:
    """How a folded situation lies on the floor: `worn[i]` is the number its i-th player wears there, `flipped` a side.

    The floor's situation is the folded one, mirrored where `flipped`, with these numbers.
    """

    worn: tuple[int, ...]
    flipped: bool = False

    def then(self, next_: Turn, numbers: Sequence[int]) -> Turn:
        """How the next folded situation lies on the floor, when `next_` says how it lies in this one.

        `numbers` are the folded numbers, in order: the same in every folded situation of a book.
        """
        place = {number: i for i, number in enumerate(numbers)}
        return Turn(tuple(self.worn[place[number]] for number in next_.worn), self.flipped != next_.flipped)

    def event(self, event: Event, numbers: Sequence[int]) -> Event:
        """An event of the folded situation as it happens on the floor."""
        called = dict(zip(numbers, self.worn, strict=True))
        spot = event.spot.mirror if event.spot is not None and self.flipped else event.spot
        return replace(
            event,
            player=called[event.player],
            receiver=None if event.receiver is None else called[event.receiver],
            spot=spot,
            also=tuple(called[number] for number in event.also),
        )

    def situation(self, folded: Situation) -> Situation:
        """The folded situation as it lies on the floor."""
        shown = folded.mirrored() if self.flipped else folded
        called = {player.number: number for player, number in zip(shown.players, self.worn, strict=True)}
        last = shown.last
        players = sorted((_wearing(p, called[p.number]) for p in shown.players), key=lambda p: p.number)
        return replace(
            shown,
            players=tuple(players),
            ball=called[shown.ball],
            last=last and replace(last, player=called[last.player]),
        )


def plain(book: Book, situation: Situation) -> Situation:
    """The same situation without what no sentence can read any more, so that equal pictures are equal.

    Gone are: the count where the book never asks for it, the last pass once everybody has answered it (kept while the
    ball is inside: cutters come out as seen from where it went in), where a filler came from, and a sag. Cutters are
    ranked 0, 1, 2, ... by who went in first.
    """
    last, holder = situation.last, situation.holder
    inside = holder.doing in IN_LANE or holder.at not in book.rules.index
    if last is not None and not last.fresh and not inside:
        last = None
    orders = sorted({p.order for p in situation.players if _ranked(p)})
    players = tuple(_plain(p, orders.index(p.order) if _ranked(p) else 0) for p in situation.players)
    count = situation.count if book.values["when to fill"] == _READS_COUNT else 0
    return Situation(players, situation.ball, last, count, situation.ended)


def _ranked(player: Player) -> bool:
    return player.doing in IN_LANE or player.doing is Doing.FLASHED


# A million situations are made of a few hundred different players: what is found out about one is kept.


@cache
def _plain(player: Player, order: int) -> Player:
    guard = Guard.PLAIN if player.guard is Guard.SAGS else player.guard
    if _ranked(player):
        return replace(player, guard=guard, order=order)
    return Player(player.number, player.at, player.doing, guard, jammed=player.jammed, forgets=player.forgets)


@cache
def _wearing(player: Player, number: int) -> Player:
    return replace(player, number=number)


#: A player to be put in order: everything but the number, which is compared; the number; himself.
_Entry = tuple[tuple[object, ...], int, Player]


@cache
def _entries(player: Player) -> tuple[_Entry, _Entry]:
    """The player as he is, and his mirror image."""
    image = player.mirrored()
    return (_state(player), player.number, player), (_state(image), player.number, image)


def _state(player: Player) -> tuple[object, ...]:
    return (
        player.at,
        player.doing,
        player.guard,
        player.origin or "",
        player.side,
        player.order,
        player.cause or "",
        player.jammed,
        player.forgets,
    )


def _numbered(entries: Sequence[_Entry], role: Mapping[int, int]) -> list[_Entry]:
    """Who takes the place of which number: players of one role in order of what they do."""
    waiting: dict[int, list[_Entry]] = {}
    for entry in sorted(entries, reverse=True):
        waiting.setdefault(role[entry[1]], []).append(entry)
    return [waiting[role[number]].pop() for _, number, _ in entries]


def fold(situation: Situation, role: Mapping[int, int], mirror: bool) -> tuple[Situation, Turn]:
    """The folded situation that stands for a plain one, and how it lies there. `mirror` also folds left and right."""
    entries = [_entries(player) for player in situation.players]
    chosen, last, flipped = _numbered([straight for straight, _ in entries], role), situation.last, False
    if mirror:
        others, other_last = _numbered([image for _, image in entries], role), last and last.mirrored()
        if _key(others, situation.ball, other_last) < _key(chosen, situation.ball, last):
            chosen, last, flipped = others, other_last, True
    called = {number: player.number for (_, number, _), player in zip(chosen, situation.players, strict=True)}
    return (
        Situation(
            tuple(_wearing(player, called[player.number]) for _, _, player in chosen),
            called[situation.ball],
            last and replace(last, player=called[last.player]),
            situation.count,
            situation.ended,
        ),
        Turn(tuple(called), flipped),
    )


def own_mirror(folded: Situation, role: Mapping[int, int]) -> Turn | None:
    """How a folded situation lies in itself when mirrored; None where its mirror image is another."""
    entries = [_entries(player) for player in folded.players]
    images, last = _numbered([image for _, image in entries], role), folded.last
    image = _key(images, folded.ball, last and last.mirrored())
    if image != _key([straight for straight, _ in entries], folded.ball, last):
        return None
    return Turn(tuple(number for _, number, _ in images), True)


def _key(chosen: Sequence[_Entry], ball: int, last: Last | None) -> tuple[object, ...]:
    """Decides which of two mirror images stands for both: players first, then the ball, then the last pass."""
    place = {number: i for i, (_, number, _) in enumerate(chosen)}
    passed = () if last is None else (last.kind, place[last.player], last.origin, last.target or "")
    return [state for state, _, _ in chosen], place[ball], passed
