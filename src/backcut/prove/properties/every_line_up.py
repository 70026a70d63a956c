"""Every line-up comes: who stands where, and who has the ball."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.prove.depth import Depth
from backcut.prove.lift import lift
from backcut.prove.property import Breach, Numbers, Sometimes
from backcut.prove.starts import starts
from backcut.prove.walk import walk
from backcut.prove.whole import Whole


def _looks(whole: Whole, numbers: Numbers) -> Iterator[Breach]:
    # From the book's own start alone: the ball with somebody else is another half of the line-ups.
    first = starts(whole.book)[:1]
    said = ""
    for depth in dict.fromkeys((Depth.SETTLED, *whole.asked)):
        lifted = lift(walk(whole.book, depth, begin=first))
        if lifted.settled == lifted.possible:
            return
        said = f"From the start, only {lifted.settled:,} of {lifted.possible:,} line-ups ever come ({depth})."
    yield Breach("Some line-ups never come.", said)


PROPERTY = Sometimes(
    name="every line-up",
    says="From the book's own start every line-up comes: who stands where, and who has the ball.",
    why=(
        "A squad that has walked through its passes may have met half of its line-ups only: four-out on four spots "
        "reaches 48 of 96 by passes to the next spot, until a skip, a dribble or a back cut opens the rest. Computed; "
        "common practice, no source."
    ),
    looks=_looks,
)
