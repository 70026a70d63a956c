"""Where a cutter comes out, one function for each sentence a coach may say. All common practice, no source.

`where` is the floor after the others have moved up, with the cutter still at the rim; `ball_spot` is where the ball is
then; `stood` is where he began his cut; `came_from` is the side of the ball he stood on. None: the sentence is silent.
"""

from __future__ import annotations

from collections.abc import Sequence

from .floor import (
    Where,
    empty_spots,
    half_of_floor,
    is_one_pass_away,
    nearest,
    next_spot,
    other_half,
    side,
    steps,
    who_is_at,
)

#: Exits that name one corner and know no other spot.
ONE_CORNER_ONLY = ("opposite corner", "opposite own")


def exit_spot(ring: Sequence[str], where: Where, ball_spot: str, stood: str, came_from: int, choice: str) -> str | None:
    """Name the spot a cutter comes out to by the exit of this name, None where it has no answer."""
    if choice == "first open":
        return first_open(ring, where, ball_spot, came_from)
    if choice == "end of the line":
        return end_of_the_line(ring, where, ball_spot, came_from)
    if choice == "opposite corner":
        return opposite_corner(ring, where, ball_spot)
    if choice == "fewest":
        return side_with_fewest(ring, where, ball_spot, came_from)
    if choice == "filler's spot":
        return fillers_spot(ring, where, ball_spot, stood, came_from)
    return corner_if_empty(ring, where, other_half(half_of_floor(stood)))


def first_open(ring: Sequence[str], where: Where, ball_spot: str, came_from: int) -> str | None:
    """Take an empty spot one pass from the ball; else the nearest on the side he came from; else on the other side."""
    beside = [spot for spot in empty_spots(ring, where) if is_one_pass_away(ring, spot, ball_spot)]
    if beside:
        return nearest(ring, beside, ball_spot, came_from)
    return end_of_the_line(ring, where, ball_spot, came_from)


def end_of_the_line(ring: Sequence[str], where: Where, ball_spot: str, came_from: int) -> str | None:
    """Take the empty spot nearest the ball on the side he came from; when that side is full, on the other side."""
    empty = empty_spots(ring, where)
    own_side = [spot for spot in empty if side(ring, spot, ball_spot) == came_from]
    if own_side:
        return nearest(ring, own_side, ball_spot, came_from)
    return nearest(ring, empty, ball_spot, came_from)


def opposite_corner(ring: Sequence[str], where: Where, ball_spot: str) -> str | None:
    """Take the corner across the floor from the ball; a ball in the middle has none across from it."""
    if len(ring) % 2 == 1 and ball_spot == ring[len(ring) // 2]:
        return None
    return corner_if_empty(ring, where, other_half(half_of_floor(ball_spot)))


def side_with_fewest(ring: Sequence[str], where: Where, ball_spot: str, came_from: int) -> str | None:
    """Take the empty spot nearest the ball on the half with fewest; halves alike or that half full: first open."""
    left = [spot for spot in ring if half_of_floor(spot) == "left" and who_is_at(where, spot) is not None]
    right = [spot for spot in ring if half_of_floor(spot) == "right" and who_is_at(where, spot) is not None]
    if len(left) == len(right):
        return first_open(ring, where, ball_spot, came_from)
    thin = "left" if len(left) < len(right) else "right"
    room = [spot for spot in empty_spots(ring, where) if half_of_floor(spot) == thin]
    if not room:
        return first_open(ring, where, ball_spot, came_from)
    return nearest(ring, room, ball_spot, came_from)


def fillers_spot(ring: Sequence[str], where: Where, ball_spot: str, stood: str, came_from: int) -> str | None:
    """Take the first empty spot behind his own, away from the ball; none there, the first toward the ball and beyond.

    While nobody stands on his own spot nobody has filled it, and there is no spot a filler left.
    """
    if who_is_at(where, stood) is None:
        return None
    away = side(ring, stood, ball_spot) or came_from
    for direction in (away, -away):
        spot = next_spot(ring, stood, direction)
        while spot is not None:
            if who_is_at(where, spot) is None:
                return spot
            spot = next_spot(ring, spot, direction)
    return None


def far_spot(ring: Sequence[str], where: Where, ball_spot: str, came_from: int) -> str | None:
    """Take the empty spot farthest from the ball on the side he did not come from, None if that side is full."""
    farthest = None
    for spot in empty_spots(ring, where):
        if side(ring, spot, ball_spot) == came_from:
            continue
        if farthest is None or steps(ring, spot, ball_spot) > steps(ring, farthest, ball_spot):
            farthest = spot
    return farthest


def corner_if_empty(ring: Sequence[str], where: Where, half: str | None) -> str | None:
    """Take the corner of this half of the floor, None if the ring has no such corner or somebody stands there."""
    if half is None:
        return None
    corner = {"left": "LC", "right": "RC"}[half]
    if corner not in ring or who_is_at(where, corner) is not None:
        return None
    return corner
