"""Each player gets to each spot."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.court.spots import Spot
from backcut.offence.rules import CORNERS
from backcut.prove.property import Breach, Numbers, Sometimes
from backcut.prove.who import plain_title
from backcut.prove.whole import Whole


def _looks(whole: Whole, numbers: Numbers) -> Iterator[Breach]:
    book = whole.book
    stands: dict[int, set[Spot]] = {}
    missing: dict[Spot, list[int]] = {}
    for depth in whole.asked:
        for number, spots in whole.lifted(depth).stands.items():
            stands.setdefault(number, set()).update(spots)
        used = set().union(*stands.values())
        missing = {
            spot: [n for n, spots in stands.items() if spots and spot not in spots and _may(whole, n, spot)]
            for spot in book.formation.ring
            if spot in used  # what nobody uses is a finding of its own
        }
        if not any(missing.values()):
            return
    lacking = {spot: who for spot, who in missing.items() if who}
    for title in dict.fromkeys(map(plain_title, lacking)):
        there = {spot: who for spot, who in lacking.items() if plain_title(spot) == title}
        said = "; ".join(f"at the {spot.title} {', '.join(map(str, who))}" for spot, who in there.items())
        yield Breach(
            f"Not everybody gets to the {title}.",
            f"Never {said}.",
            tuple(sorted({number for who in there.values() for number in who})),
            spot=next(iter(there)),
        )


def _may(whole: Whole, number: int, spot: Spot) -> bool:
    return spot not in CORNERS or number not in whole.book.exceptions.never_corner


PROPERTY = Sometimes(
    name="everybody everywhere",
    says="Each player who plays outside gets to each spot, but for the corners where the book excepts a number.",
    why=(
        "In a motion offence the spots have no owners; a player who never comes to the corner need not be guarded "
        "there. Common practice, no source."
    ),
    looks=_looks,
)
