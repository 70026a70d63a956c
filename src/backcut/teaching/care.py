"""The short caution that stands on everything with running or contact. It warns; it never clears anybody to play."""

from __future__ import annotations

import re

from backcut.language import say

#: Below this age the caution speaks of children (own choice).
CHILD = 13

#: A warm-up of about ten minutes with strength, balance and landing roughly a third fewer ankle and knee injuries:
#: incidence rate ratio 0.64 (0.51-0.79), Emery et al. 2022, Br J Sports Med (basketball, youth).
WARM_UP_MIN = 10


def age_of(squad: str) -> int | None:
    """The age in a squad's name ("girls-u13" is 13), None where there is none."""
    found = re.search(r"u(\d{1,2})\b", squad)
    return int(found[1]) if found else None


def care(age: int | None = None) -> str:
    """The caution in two or three sentences, by age."""
    if age is not None and age < CHILD:
        rest = say("Whoever is tired, hot or thirsty rests and drinks; a child need not ask.")
    else:
        rest = say("Drink and rest more often in heat, and build the load up over weeks.")
    return " ".join(
        (
            say("Warm up first. Stop on pain."),
            say("After a blow to the head: out at once, and to a doctor."),
            rest,
            say("Local rules and medical staff decide."),
        )
    )
