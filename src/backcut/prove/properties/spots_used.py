"""Each spot of the ring is used."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.prove.property import Breach, Numbers, Sometimes
from backcut.prove.who import plain_title
from backcut.prove.whole import Whole


def _looks(whole: Whole, numbers: Numbers) -> Iterator[Breach]:
    unused = list(whole.book.formation.ring)
    for depth in whole.asked:
        stood = {spot for spots in whole.lifted(depth).stands.values() for spot in spots}
        unused = [spot for spot in unused if spot not in stood]
        if not unused:
            return
    for title in dict.fromkeys(map(plain_title, unused)):
        there = [spot for spot in unused if plain_title(spot) == title]
        names = " and the ".join(spot.title for spot in there)
        yield Breach(f"Nobody ever stands at the {title}.", f"Nobody ever stands at the {names}.", spot=there[0])


PROPERTY = Sometimes(
    name="every spot is used",
    says="On each spot of the ring somebody stands in some settled moment.",
    why=(
        "A spot that nobody ever stands on is floor the defence need not guard; a ring without it says so. Common "
        "practice, no source."
    ),
    looks=_looks,
)
