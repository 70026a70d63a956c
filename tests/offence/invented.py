"""Invented books and situations for Hypothesis, written by hand out of the phrases, not by the code under test."""

from __future__ import annotations

import string

from hypothesis import settings
from hypothesis import strategies as st

from backcut.court.spots import Spot
from backcut.offence.choices import CHOICES
from backcut.offence.event import ENDS, PASSES, EventKind
from backcut.offence.formation import formations
from backcut.offence.phrase import Phrase, phrases
from backcut.offence.situation import Cause, Doing, Guard, Last, Player, Situation

#: No test passes or fails by the clock or by luck.
CALMLY = settings(deadline=None, derandomize=True, database=None)

#: A book that has no problems: what every test of one problem starts from.
SOUND = """\
Title: Sound
Formation: five-out

Cut. When I pass to the next spot, I cut to the rim.

Fill. When the next spot toward the ball is empty, I fill it.

Wide. Otherwise I hold, wide, feet set.
"""

WORDS = st.text(alphabet=string.ascii_letters + string.digits + " -,'#!?:", min_size=1, max_size=160).map(
    lambda text: " ".join(text.split()) or "word"
)
CUES = st.from_regex(r"[A-Z][a-z]{1,8}( [a-z]{1,6})?", fullmatch=True)
_SPACES = st.sampled_from((" ", "  ", "\n  ", "\n\t", " \n    "))


@st.composite
def values(draw: st.DrawFn, phrase: Phrase) -> dict[str, str]:
    """Some of the choices that stand in a phrase, said."""
    said = draw(st.sets(st.sampled_from(phrase.slots))) if phrase.slots else set()
    return {name: draw(st.sampled_from(CHOICES[name].values)).name for name in phrase.slots if name in said}


@st.composite
def sentences(draw: st.DrawFn, phrase: Phrase) -> str:
    """One sentence as a coach types it: any case, any breaks between the words, with or without its cue."""
    text = phrase.sentence(draw(values(phrase)))
    if draw(st.booleans()):
        text = draw(st.sampled_from((str.upper, str.lower)))(text)
    text = "".join(draw(_SPACES) if letter == " " else letter for letter in text)
    return f"{draw(CUES)}. {text}" if draw(st.booleans()) else text


@st.composite
def books(draw: st.DrawFn) -> str:
    """A book's text: headers, choices, exceptions, sentences in any order, notes, comments and blank lines."""
    formation = draw(st.sampled_from(tuple(formations().values())))
    lines = [f"title:  {draw(WORDS)}", f"Formation: {formation.name}"]
    lines += [
        f"{draw(st.sampled_from('5432'))} {what}" for what in draw(st.lists(_EXCEPTIONS, max_size=2, unique=True))
    ]
    for name in draw(st.lists(st.sampled_from(tuple(CHOICES)), max_size=3, unique=True)):
        value = draw(st.sampled_from(CHOICES[name].values))
        lines.append(f"{name} :  {draw(st.sampled_from((value.name, value.words)))}")
    for name in draw(st.lists(st.sampled_from(tuple(phrases())), max_size=5, unique=True)):
        lines += ["" for _ in range(draw(st.integers(0, 2)))]
        if draw(st.booleans()):
            lines.append(f"# {draw(WORDS)}")
        lines.append(draw(sentences(phrases()[name])))
        lines += [f"  {note}:  {draw(WORDS)}" for note in draw(st.lists(_NOTES, max_size=2, unique=True))]
    return "\n".join(lines) + "\n"


_EXCEPTIONS = st.sampled_from(("stays inside", "never fills a corner.", "never  cuts"))
_NOTES = st.sampled_from(("Why", "Mistake"))

_ON_THE_WAY = (Doing.CUTTING, Doing.LANE, Doing.OUT, Doing.FILLING, Doing.FLASHED)
_SPOTS = st.sampled_from(tuple(Spot))


@st.composite
def situations(draw: st.DrawFn) -> Situation:
    """Any situation the notation can say, sensible or not, but for two on one spot."""
    numbers = sorted(draw(st.sets(st.integers(0, 99), min_size=1, max_size=5)))
    free = draw(st.permutations([spot for spot in Spot if spot is not Spot.R]))
    players = []
    for number, spot in zip(numbers, free, strict=False):
        doing = draw(st.sampled_from(Doing))
        players.append(
            Player(
                number,
                Spot.R if doing in (Doing.CUTTING, Doing.LANE) else spot,
                doing,
                draw(st.sampled_from(Guard)),
                draw(_SPOTS) if doing in _ON_THE_WAY else None,
                draw(st.sampled_from((-1, 0, 1))),
                draw(st.integers(0, 4)),
                draw(st.none() | st.sampled_from(Cause)),
                draw(st.booleans()),
                draw(st.booleans()),
            )
        )
    return Situation(
        tuple(players),
        ball=draw(st.sampled_from(numbers)),
        last=draw(st.none() | _lasts(numbers)),
        count=draw(st.integers(0, 3)),
        ended=draw(st.none() | st.sampled_from(sorted(ENDS))),
    )


@st.composite
def _lasts(draw: st.DrawFn, numbers: list[int]) -> Last:
    return Last(
        draw(st.sampled_from(sorted(PASSES | {EventKind.DRIBBLE}))),
        draw(st.sampled_from(numbers)),
        draw(_SPOTS),
        draw(st.booleans()),
        draw(st.none() | _SPOTS),
    )
