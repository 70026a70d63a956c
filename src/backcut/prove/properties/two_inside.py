"""Two inside players keep to the book's choice of levels or sides."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.court.spots import Spot
from backcut.offence.inside import INSIDE_PLACES, height
from backcut.offence.situation import Doing
from backcut.prove.property import Always, Breach, Numbers, Seen

#: Elbow and high post are high; block, short corner and mid post are low (common practice, no source).
_HIGH = height(Spot.LE)


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    if not seen.settled or len(seen.book.formation.inside) != 2:
        return
    if seen.situation.holder.at not in seen.book.rules.index:
        return  # they answer the ball on the ring; while it is inside nobody is told to change
    standing = [p for p in seen.situation.players if p.at in INSIDE_PLACES and p.doing is Doing.STANDING]
    # Who forgets was told where to go: that is no mistake of the book.
    if len(standing) != 2 or any(player.forgets for player in standing):
        return
    one, other = standing
    level, sides = height(one.at) >= _HIGH, one.at.side * other.at.side
    same_level = level is (height(other.at) >= _HIGH)
    if seen.book.values["two inside"] == "opposite sides":
        wrong = "do not stand on opposite sides" if sides != -1 else ""
    else:
        wrong = f"both stand {'high' if level else 'low'}" if same_level else ""
    if wrong and same_level and sides == 1:
        wrong += ", on one side"
    if wrong:
        yield Breach(
            f"The two inside players {wrong}.",
            f"{one.number}, at the {one.at.title}, and {other.number}, at the {other.at.title}, {wrong}.",
            (one.number, other.number),
            tuple(r for r, s in enumerate(seen.book.sentences) if "two inside" in s.phrase.uses),
        )


PROPERTY = Always(
    name="two inside",
    says="Two inside players keep the book's choice of levels or sides.",
    why=(
        "Two on one level are guarded by one and a half; two on one side close the lane. Judged once all stand and the "
        "ball is on the ring. Opposite levels: one at an elbow or the high post, one lower. Opposite sides: one left, "
        "one right. Common practice, no source."
    ),
    looks=_looks,
)
