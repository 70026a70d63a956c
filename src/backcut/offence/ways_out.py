"""Where cutters come out of the lane: one function for every value of the choice "exit"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from backcut.court.spots import Spot
from backcut.offence.rules import CORNERS, Rules
from backcut.offence.situation import Cause, Player

#: Per ring place, whether it is empty.
Empty = Sequence[bool]


def ways_out(rules: Rules, where: Sequence[Player | None], ball: int, lane: Sequence[Player]) -> dict[int, int | None]:
    """The place where each cutter in the lane comes out, None where the book names none.

    The first in goes first and takes the place nearer the ball. Two who went in together choose at once; where both
    want one place it goes to the one who came from that side, then to the one who cut from nearer the ball; the other
    chooses again.
    """
    empty = [player is None for player in where]
    out: dict[int, int | None] = {}
    for order in sorted({player.order for player in lane}):
        group = [player for player in lane if player.order == order]
        first = {player.number: _way_out(rules, where, empty, ball, player) for player in group}
        group.sort(key=lambda player: _turn(rules, first[player.number], ball, player))
        for player in group:
            place = _way_out(rules, where, empty, ball, player)
            out[player.number] = place
            if place is not None:
                empty[place] = False
    return out


def _turn(rules: Rules, place: int | None, ball: int, player: Player) -> tuple[bool, int, bool]:
    """Whose turn it is, of two who went in together: own side, then the cut from nearer the ball, then its side now."""
    began = (rules.index.get(player.origin, ball) if player.origin is not None else ball) - ball
    toward = 0 if place is None else place - ball
    return toward * player.side <= 0, abs(began), toward * began <= 0


def _way_out(rules: Rules, where: Sequence[Player | None], empty: Empty, ball: int, player: Player) -> int | None:
    if rules.never_corner and player.number in rules.never_corner:
        empty = [free and spot not in CORNERS for free, spot in zip(empty, rules.ring, strict=True)]
    if _goes_through(rules, player):
        far = [place for place in _side(empty, ball, -player.side) if empty[place]]
        return far[-1] if far else _first_open(rules, where, empty, ball, player)
    place = _EXITS[rules.values["exit"]](rules, where, empty, ball, player)
    if place is not None and player.number in rules.never_corner and rules.ring[place] in CORNERS:
        return _first_open(rules, where, empty, ball, player)
    return place


def _goes_through(rules: Rules, player: Player) -> bool:
    if player.origin not in CORNERS:
        return False
    if player.cause is Cause.DENIED:
        return rules.values["denied corner"] == "go through"
    return player.cause is Cause.PASSED and rules.values["corner passer"] == "cut through"


def _side(empty: Empty, ball: int, side: int) -> range:
    """The places on one side of the ball, nearest first."""
    return range(ball + 1, len(empty)) if side > 0 else range(ball - 1, -1, -1)


def _nearest(empty: Empty, ball: int, side: int) -> int | None:
    return next((place for place in _side(empty, ball, side) if empty[place]), None)


def _first_open(rules: Rules, where: Sequence[Player | None], empty: Empty, ball: int, player: Player) -> int | None:
    for place in (ball + player.side, ball - player.side):
        if 0 <= place < len(empty) and empty[place]:
            return place
    return _end_of_line(rules, where, empty, ball, player)


def _end_of_line(rules: Rules, where: Sequence[Player | None], empty: Empty, ball: int, player: Player) -> int | None:
    own = _nearest(empty, ball, player.side)
    return own if own is not None else _nearest(empty, ball, -player.side)


def _corner_on(rules: Rules, side: int) -> int | None:
    """The ring's end on one side of the floor: the corner, where the ring has one."""
    return None if side == 0 else (len(rules.ring) - 1 if side > 0 else 0)


def _opposite_corner(
    rules: Rules, where: Sequence[Player | None], empty: Empty, ball: int, player: Player
) -> int | None:
    return _corner_on(rules, -rules.ring[ball].side)


def _opposite_own(rules: Rules, where: Sequence[Player | None], empty: Empty, ball: int, player: Player) -> int | None:
    origin = player.origin if player.origin is not None else Spot.R
    return _corner_on(rules, -origin.side)


def _fewest(rules: Rules, where: Sequence[Player | None], empty: Empty, ball: int, player: Player) -> int | None:
    sides = [rules.ring[place].side for place, standing in enumerate(where) if standing is not None]
    lean = sides.count(-1) - sides.count(1)
    if lean:
        thin = 1 if lean > 0 else -1
        places = [place for place, free in enumerate(empty) if free and rules.ring[place].side == thin]
        if places:
            return min(places, key=lambda place: (abs(place - ball), (place - ball) * player.side < 0))
    return _first_open(rules, where, empty, ball, player)


def _fillers_spot(rules: Rules, where: Sequence[Player | None], empty: Empty, ball: int, player: Player) -> int | None:
    """The first empty place behind the spot of the cut, seen from the ball: there the filler came from.

    None while nobody has filled that spot, and where it is none of the ring: then no filler has left a spot.
    """
    began = rules.index.get(player.origin) if player.origin is not None else None
    if began is None or where[began] is None:
        return None
    away = player.side if began == ball else (1 if began > ball else -1)
    behind = _nearest(empty, began, away)
    return behind if behind is not None else _nearest(empty, began, -away)


_EXITS: dict[str, Callable[[Rules, Sequence[Player | None], Empty, int, Player], int | None]] = {
    "first open": _first_open,
    "end of the line": _end_of_line,
    "opposite corner": _opposite_corner,
    "fewest": _fewest,
    "opposite own": _opposite_own,
    "filler's spot": _fillers_spot,
}
