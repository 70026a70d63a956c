"""Which activities an evening has, in which order and how long: plain arithmetic, no search."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from backcut.errors import BackcutError

#: An activity ends or changes after so long (federation manual: 7 to 10 minutes at most before a change or a break).
MOST_MIN = 10
#: Shorter than this nothing is learnt in it (own choice).
LEAST_MIN = 4
#: A neuromuscular warm-up takes about ten minutes (Emery et al. 2022, Br J Sports Med); a short evening has a fifth.
WARM_UP_MIN, WARM_UP_SHARE = 10, 0.2
#: Three breaks of three minutes an hour: published heat guidance for its lowest band, kept at any heat.
BREAK_MIN, BREAK_EVERY_MIN = 3, 20
#: The last minutes: fall in load, and something to win (federation manual: hard but simple, or a shooting contest).
END_MIN = 5
#: Shorter evenings have no room for warm-up, one drill and an end; longer ones are more than young players take.
SHORTEST_MIN, LONGEST_MIN = 20, 150


class Part(StrEnum):
    """What an activity is for."""

    WARM_UP = "warm-up"
    WALK = "walk-through"
    REVIEW = "review"
    BREAKDOWN = "breakdown"
    GUIDED = "guided"
    BREAK = "break"
    ADVANTAGE = "advantage"
    LIVE = "live"
    CHAINS = "chains"
    END = "end"


@dataclass(frozen=True, slots=True)
class Slot:
    """An activity: from which minute of the evening, and for how long."""

    part: Part
    begins_min: int
    minutes: int


#: What is worked on, in the order of worth; an evening takes as many as there is time for, and keeps their order.
_WORTH = (Part.GUIDED, Part.WALK, Part.LIVE, Part.BREAKDOWN, Part.ADVANTAGE, Part.REVIEW, Part.CHAINS)
#: The order in which they come: the whole first, then the piece, then against more and more defence, then the whole.
_ORDER = (Part.WALK, Part.REVIEW, Part.BREAKDOWN, Part.GUIDED, Part.ADVANTAGE, Part.LIVE, Part.CHAINS)
#: What the habit of the day is worked on in.
OF_THE_DAY = frozenset({Part.BREAKDOWN, Part.GUIDED, Part.ADVANTAGE})


def order(minutes: int) -> tuple[Slot, ...]:
    """The running order of an evening of so many minutes: it fills them, no activity is longer than ten.

    The habit of the day is neither first nor last. Raises: BackcutError for an evening too short or too long.
    """
    if not SHORTEST_MIN <= minutes <= LONGEST_MIN:
        raise BackcutError(f"--minutes {minutes}: give {SHORTEST_MIN} to {LONGEST_MIN} minutes.")
    warm = min(WARM_UP_MIN, max(LEAST_MIN, round(minutes * WARM_UP_SHARE)))
    breaks = max(1, (minutes - warm) // BREAK_EVERY_MIN - 1) if minutes > SHORTEST_MIN + BREAK_MIN else 0
    work = minutes - warm - END_MIN - breaks * BREAK_MIN
    return _placed([(Part.WARM_UP, warm), *_with_breaks(_worked(work), breaks), (Part.END, END_MIN)])


def _worked(work: int) -> list[tuple[Part, int]]:
    """The working minutes cut into activities, as even as can be; a long evening repeats the last of them."""
    number = max(1, min(len(_WORTH), -(-work // 8)))
    chosen = [part for part in _ORDER if part in _WORTH[:number]]
    while -(-work // len(chosen)) > MOST_MIN:  # a long evening goes through the live parts again
        chosen += [Part.LIVE] if chosen[-1] is not Part.LIVE else [Part.CHAINS]
    each, more = divmod(work, len(chosen))
    late = len(chosen) - more
    return [(part, each + (place >= late)) for place, part in enumerate(chosen)]


def _with_breaks(worked: list[tuple[Part, int]], breaks: int) -> list[tuple[Part, int]]:
    """Breaks put between the activities, evenly."""
    after = {round((place + 1) * len(worked) / (breaks + 1)) for place in range(breaks)}
    out: list[tuple[Part, int]] = []
    for place, one in enumerate(worked, 1):
        out.append(one)
        if place in after:
            out.append((Part.BREAK, BREAK_MIN))
    return out


def _placed(parts: list[tuple[Part, int]]) -> tuple[Slot, ...]:
    slots: list[Slot] = []
    begins = 0
    for part, minutes in parts:
        slots.append(Slot(part, begins, minutes))
        begins += minutes
    return tuple(slots)
