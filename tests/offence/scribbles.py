"""Invented texts for Hypothesis: lines a coach could write in any order, and edits of one of them."""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import strategies as st

from backcut.court.spots import Spot
from backcut.offence import edit
from backcut.offence.choices import CHOICES
from backcut.offence.reading import ROLES
from backcut.offence.sentences import every_sentence

from .invented import CUES, WORDS

SENTENCES = st.sampled_from(tuple(every_sentence()))
DRAFTS = st.sampled_from(("When I wait, I wait.", "Otherwise I dance", "Zone. When they zone, we move.", "(later)"))
_SPOKEN = st.one_of(SENTENCES, DRAFTS, st.builds("{}. {}".format, CUES, SENTENCES))
_INDENTS = st.sampled_from(("", "", "", "  ", "\t"))

_LINES = st.one_of(
    _SPOKEN,
    _SPOKEN.map(lambda words: words.replace(", ", ",\n    ", 1)),
    st.builds("Off: {}".format, _SPOKEN),
    st.builds("{}: {}".format, st.sampled_from(("Why", "Mistake", "why ")), WORDS),
    st.builds("# {}".format, WORDS),
    st.just(""),
    st.sampled_from(("Title: x", "Formation: four-out", "Exit: fewest", "Top: 0 m off, 7 m out", "Denial: foot")),
    st.builds("{} {}.".format, st.integers(1, 5), st.sampled_from(tuple(ROLES))),
    st.sampled_from(("Prove: Never are two of us in the lane.", "Do not prove: every line-up")),
    st.just("!"),
)

#: Texts in which every line may be set in, so that one may go on in the next.
SCRIBBLES = st.lists(st.builds("{}{}".format, _INDENTS, _LINES), max_size=9).map(lambda lines: "\n".join(lines) + "\n")

Edit = Callable[[str], str]
_PLACES = st.integers(0, 5)
_AT_M = st.none() | st.tuples(st.floats(-9, 9), st.floats(-2, 12))

#: Edits by name, so that a failure tells which they were: the name of a function of `edit` and what it is given.
EDITS = st.one_of(
    st.tuples(st.sampled_from(("switch_off", "switch_on", "take_out_at")), _PLACES),
    st.tuples(st.just("move_to"), _PLACES, _PLACES),
    st.tuples(st.sampled_from(("rewrite", "put_in_text")), _PLACES, st.one_of(_SPOKEN, WORDS)),
    st.tuples(st.just("note"), _PLACES, st.sampled_from(("why", "mistake")), st.one_of(st.just(""), WORDS)),
    st.tuples(
        st.just("set_line"),
        st.sampled_from(("title", "formation", "court", "squad", "denial", "denial mark", "players")),
        st.none() | WORDS,
    ),
    st.tuples(st.just("set_spot"), st.sampled_from(tuple(Spot)), _AT_M),
    st.tuples(
        st.just("set_role"),
        st.builds("{} {}".format, st.integers(1, 5), st.sampled_from(tuple(ROLES))),
        st.booleans(),
    ),
    st.sampled_from([("choose", name, value.name) for name, choice in CHOICES.items() for value in choice.values]),
)


def edited(text: str, change: tuple[object, ...]) -> str:
    """The text after an edit."""
    name, *given = change
    made: str = getattr(edit, str(name))(text, *given)
    return made
