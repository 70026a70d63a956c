"""Situations made alike: what no sentence reads any more is dropped; numbers and sides are told apart only if asked.

A folded situation stands for all that differ from it in who wears which number and, if mirrored, in the side.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.situation import IN_LANE, Doing, Guard, Player, Situation

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
        players = sorted((replace(p, number=called[p.number]) for p in shown.players), key=lambda p: p.number)
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
    rank = {order: i for i, order in enumerate(sorted({p.order for p in situation.players if _ranked(p)}))}
    players = tuple(_plain(player, rank) for player in situation.players)
    count = situation.count if book.values["when to fill"] == _READS_COUNT else 0
    return Situation(players, situation.ball, last, count, situation.ended)


def _ranked(player: Player) -> bool:
    return player.doing in IN_LANE or player.doing is Doing.FLASHED


def _plain(player: Player, rank: Mapping[int, int]) -> Player:
    guard = Guard.PLAIN if player.guard is Guard.SAGS else player.guard
    if _ranked(player):
        return replace(player, guard=guard, order=rank[player.order])
    return Player(player.number, player.at, player.doing, guard, jammed=player.jammed, forgets=player.forgets)


#: What is compared to put players in order: everything but the number.
_State = tuple[object, ...]


def _state(player: Player) -> _State:
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


def _numbered(situation: Situation, role: Mapping[int, int]) -> tuple[tuple[_State, ...], tuple[Player, ...]]:
    """Who takes the place of which number: players of one role in order of what they do; and their states."""
    slots: dict[int, list[Player]] = {}
    for player in situation.players:
        slots.setdefault(role[player.number], []).append(player)
    waiting = {mark: sorted(((_state(p), p.number, p) for p in there), reverse=True) for mark, there in slots.items()}
    chosen = [waiting[role[player.number]].pop() for player in situation.players]
    return tuple(state for state, _, _ in chosen), tuple(player for _, _, player in chosen)


def fold(situation: Situation, role: Mapping[int, int], mirror: bool) -> tuple[Situation, Turn]:
    """The folded situation that stands for a plain one, and how it lies there. `mirror` also folds left and right."""
    states, chosen = _numbered(situation, role)
    shown, flipped = situation, False
    if mirror:
        other = situation.mirrored()
        other_states, other_chosen = _numbered(other, role)
        if _key(other_states, other, other_chosen) < _key(states, situation, chosen):
            shown, flipped, chosen = other, True, other_chosen
    numbers = [player.number for player in situation.players]
    called = {player.number: number for player, number in zip(chosen, numbers, strict=True)}
    last = shown.last
    return (
        replace(
            shown,
            players=tuple(replace(player, number=number) for player, number in zip(chosen, numbers, strict=True)),
            ball=called[shown.ball],
            last=last and replace(last, player=called[last.player]),
        ),
        Turn(tuple(player.number for player in chosen), flipped),
    )


def _key(states: tuple[_State, ...], situation: Situation, chosen: tuple[Player, ...]) -> tuple[object, ...]:
    """Decides which of two mirror images stands for both: players first, then the ball, then the last pass."""
    place = {player.number: i for i, player in enumerate(chosen)}
    last = situation.last
    passed = () if last is None else (last.kind, place[last.player], last.origin, last.target or "")
    return states, place[situation.ball], passed
