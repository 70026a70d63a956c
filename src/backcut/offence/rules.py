"""A book made ready for deciding: its ring, its choices, and its sentences in order of rank."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from backcut.court.spots import Spot
from backcut.offence.phrase import Phrase
from backcut.offence.situation import Cause

CORNERS = frozenset({Spot.LC, Spot.RC})


@dataclass(frozen=True, slots=True)
class Rules:
    """`index` numbers the ring spots from the left; `owner` names, per cause, the phrase that owns the way out.

    `in_play` and `at_the_end` are the sentences that may speak before and after the possession has ended.
    """

    ring: tuple[Spot, ...]
    index: Mapping[Spot, int]
    values: Mapping[str, str]
    habits: tuple[tuple[int, Phrase], ...]
    in_play: tuple[tuple[int, Phrase], ...]
    at_the_end: tuple[tuple[int, Phrase], ...]
    names: frozenset[str]
    owner: Mapping[Cause, str]
    never_corner: frozenset[int] = frozenset()
    never_cuts: frozenset[int] = frozenset()

    @classmethod
    def of(
        cls,
        ring: tuple[Spot, ...],
        values: Mapping[str, str],
        habits: tuple[tuple[int, Phrase], ...],
        never_corner: frozenset[int] = frozenset(),
        never_cuts: frozenset[int] = frozenset(),
    ) -> Rules:
        """Compile. The way out belongs to the sentence made for it; else to the cut's own; else to any cut."""
        owner: dict[Cause, str] = {}
        claims = [(cause, phrase.name) for _, phrase in habits for cause in phrase.ways_out]
        special = next((phrase.name for _, phrase in habits if phrase.ways_out == frozenset(Cause)), None)
        fallback = claims[0][1] if claims else None
        for cause in Cause:
            own = special or next((name for asked, name in claims if asked is cause), fallback)
            if own:
                owner[cause] = own
        return cls(
            ring=ring,
            index={spot: i for i, spot in enumerate(ring)},
            values=values,
            habits=habits,
            in_play=tuple(habit for habit in habits if not habit[1].after_end),
            at_the_end=tuple(habit for habit in habits if habit[1].after_end or habit[1].covers_rest),
            names=frozenset(phrase.name for _, phrase in habits),
            owner=owner,
            never_corner=never_corner,
            never_cuts=never_cuts,
        )
