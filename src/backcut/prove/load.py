"""Reading load: how many different pictures a player must tell apart under a book, by spot.

A picture of a spot is one answer that a player who stands on this spot, with all settled, may owe after one event:
which sentence speaks, and what it asks for as seen from the spot (kind and target). It is the first thing a sentence
tells the player, other than to hold because nothing else speaks; to hold so until all have settled is one picture, too.
Mirror images are one picture, and so are two ways of running the same. What a cutter is told in the lane, and a filler
on the way, belongs to no spot and is not counted; nor is a dribble, which the player with the ball begins unasked.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from backcut.court.spots import Spot
from backcut.engine.advance import MOST_COUNTS, happen
from backcut.offence.action import Kind, letter
from backcut.offence.book import Book
from backcut.offence.situation import Doing, Player
from backcut.prove.depth import Depth
from backcut.prove.differ import said
from backcut.prove.told import Teller, Told
from backcut.prove.walk import Walk
from backcut.prove.who import plain_title


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture: the letter of the sentence that speaks, None where none does, and what it asks for, in words."""

    letter: str | None
    words: str


@dataclass(frozen=True, slots=True)
class Load:
    """The pictures of every kind of spot, "corner" before "wing" before "top", then the places inside."""

    book: Book
    depth: Depth
    spots: dict[str, tuple[Picture, ...]]

    @property
    def most(self) -> int:
        """The pictures of the spot that has most of them: what one player may have to tell apart at once."""
        return max(map(len, self.spots.values()), default=0)

    @property
    def total(self) -> int:
        """The pictures of all kinds of spots together."""
        return sum(map(len, self.spots.values()))

    @property
    def line(self) -> str:
        """In one line: "Reading load: corner 4, wing 6, top 5 (6 pictures at the most)"."""
        spots = ", ".join(f"{spot} {len(pictures)}" for spot, pictures in self.spots.items())
        return f"Reading load: {spots} ({self.most} {'picture' if self.most == 1 else 'pictures'} at the most)"

    def to_dict(self) -> dict[str, Any]:
        """The reading load as JSON."""
        return {
            "depth": str(self.depth),
            "most": self.most,
            "total": self.total,
            "spots": {
                spot: [{"letter": picture.letter, "says": picture.words} for picture in pictures]
                for spot, pictures in self.spots.items()
            },
        }


#: A picture as it is told apart: the sentence's rank, the kind, and spot and target turned to the left.
_Key = tuple[int | None, Kind, Spot, Spot]


def load(walk: Walk) -> Load:
    """The reading load of a book at the depth it was walked through."""
    teller = Teller(walk.book, walk.role, walk.mirror)
    teller.walked(walk)
    found: dict[str, set[_Key]] = {}
    for node, edges in enumerate(walk.edges):
        if not walk.settled[node]:
            continue
        situation = replace(walk.situations[node], count=MOST_COUNTS)
        for edge in edges:
            if edge.event is None:
                continue
            told = teller.told(happen(walk.book, situation, edge.event))
            for player in situation.players:
                if player.doing is Doing.STANDING and player.at is not Spot.R:
                    found.setdefault(plain_title(player.at), set()).add(_picture(player, told[player.number]))
    order = sorted(found, key=_place)
    return Load(
        walk.book,
        walk.depth,
        {spot: tuple(_said(key) for key in sorted(found[spot], key=_rank)) for spot in order},
    )


def _place(kind: str) -> int:
    return next(i for i, spot in enumerate(Spot) if plain_title(spot) == kind)


def _picture(player: Player, told: Told) -> _Key:
    first = next((answer for answer in told.answers if answer.kind is not Kind.DRIBBLE), None)
    if first is None:
        return told.rest, Kind.HOLD, *_to_the_left(player.at, player.at)
    return first.habit, first.kind, *_to_the_left(player.at, first.target)


def _to_the_left(spot: Spot, target: Spot) -> tuple[Spot, Spot]:
    side = spot.side or target.side
    return (spot.mirror, target.mirror) if side > 0 else (spot, target)


def _rank(key: _Key) -> tuple[float, str, str]:
    rank, kind, _, target = key
    return (float("inf") if rank is None else rank), kind, target


def _said(key: _Key) -> Picture:
    rank, kind, spot, target = key
    across = " on the other side" if spot.side * target.side < 0 else ""
    return Picture(letter(rank), said(kind, "" if target is spot else f"the {plain_title(target)}{across}"))
