"""From where a proof begins: everything that can be the first situation of a book's possession."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from backcut.court.spots import Spot
from backcut.offence.book import Book
from backcut.offence.rules import CORNERS
from backcut.offence.situation import Cause, Doing, Player, Situation


@dataclass(frozen=True, slots=True)
class Start:
    """A first situation and how it came about, in words; `far` counts the events that it took."""

    said: str
    situation: Situation
    far: int = 0


def starts(book: Book) -> list[Start]:
    """Every start: the formation with the ball with anyone, after a throw-in from the side, and before a kick-out."""
    first = book.start()
    return [
        *(Start("the start", replace(first, ball=player.number)) for player in _ball_first(first)),
        *_after_a_throw_in(book, first),
        *_in_the_lane(book, first),
    ]


def _ball_first(situation: Situation) -> list[Player]:
    return sorted(situation.players, key=lambda player: player.number != situation.ball)


def _after_a_throw_in(book: Book, first: Situation) -> Iterator[Start]:
    """One who threw in from the side comes on to a wing or corner; anybody else on the ring has the ball."""
    sides = {spot for spot in book.formation.ring if spot in CORNERS or spot in (Spot.LW, Spot.RW)}
    for thrower in first.players:
        if thrower.at not in sides:
            continue
        on = first.with_players(replace(thrower, doing=Doing.OUT))
        for player in first.players:
            if player.number != thrower.number and player.at in book.rules.index:
                yield Start(f"after a throw-in by {thrower.number}", replace(on, ball=player.number), far=1)


def _in_the_lane(book: Book, first: Situation) -> Iterator[Start]:
    """One is in the lane with the ball: the next pass is a kick-out."""
    for driver in first.players:
        place = book.rules.index.get(driver.at)
        if place is None:
            continue
        for side in (driver.at.side,) if driver.at.side else (-1, 1):
            inside = replace(driver, at=Spot.R, doing=Doing.LANE, origin=driver.at, side=side, cause=Cause.KICKED_OUT)
            said = f"{driver.number} has driven to the rim"
            yield Start(said, replace(first.with_players(inside), ball=driver.number), far=2)  # a catch and a drive
