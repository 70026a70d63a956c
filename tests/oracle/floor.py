"""The floor of the second reading: spots are plain strings, a ring lists them from the left corner to the right corner.

Who stands where is a dict of player's number -> spot. Everything is counted along the ring, one spot after the other.
"""

from __future__ import annotations

from collections.abc import Sequence

RIM = "R"
LEFT, RIGHT = -1, 1

Where = dict[int, str]


def line_up(*spots: str) -> Where:
    """Place players 1, 2, 3 and so on, on these spots in order."""
    return dict(enumerate(spots, start=1))


def who_is_at(where: Where, spot: str) -> int | None:
    """Find the player on this spot, None if it is empty."""
    for player, his in where.items():
        if his == spot:
            return player
    return None


def empty_spots(ring: Sequence[str], where: Where) -> list[str]:
    """List the spots of the ring with nobody on them."""
    return [spot for spot in ring if who_is_at(where, spot) is None]


def steps(ring: Sequence[str], one: str, other: str) -> int:
    """Count the steps along the ring between two spots."""
    return abs(ring.index(one) - ring.index(other))


def is_one_pass_away(ring: Sequence[str], one: str, other: str) -> bool:
    """Say whether two spots are the very next to each other on the ring."""
    return steps(ring, one, other) == 1


def side(ring: Sequence[str], spot: str, ball_spot: str) -> int:
    """Say LEFT or RIGHT of the ball along the ring; 0 on the ball's own spot."""
    if ring.index(spot) < ring.index(ball_spot):
        return LEFT
    if ring.index(spot) > ring.index(ball_spot):
        return RIGHT
    return 0


def next_spot(ring: Sequence[str], spot: str, direction: int) -> str | None:
    """Name the very next spot of the ring that way, None past its end."""
    place = ring.index(spot) + direction
    return ring[place] if 0 <= place < len(ring) else None


def nearest(ring: Sequence[str], spots: Sequence[str], ball_spot: str, came_from: int) -> str | None:
    """Name the spot fewest steps from the ball; of two alike, the one on the side he came from."""
    if not spots:
        return None
    fewest = min(steps(ring, spot, ball_spot) for spot in spots)
    alike = [spot for spot in spots if steps(ring, spot, ball_spot) == fewest]
    for spot in alike:
        if side(ring, spot, ball_spot) == came_from:
            return spot
    return alike[0]


def half_of_floor(spot: str) -> str | None:
    """Say "left" or "right" half of the floor, None for the axis."""
    if spot == "T":
        return None
    return "left" if spot[0] == "L" else "right"


def other_half(half: str | None) -> str | None:
    """Name the half across the floor; across from the axis there is none."""
    return {"left": "right", "right": "left"}.get(half or "")


def is_corner(spot: str) -> bool:
    """Say whether it is one of the two corners; the wing at the end of a short ring is none."""
    return spot in ("LC", "RC")


def mirror_spot(spot: str) -> str:
    """Name the same spot across the floor; the top and the rim are their own."""
    if spot in ("T", RIM):
        return spot
    return {"L": "R", "R": "L"}[spot[0]] + spot[1:]
