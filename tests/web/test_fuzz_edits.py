"""Whatever is edited, in whatever order: one form of answer, never two on one spot, and undo brings all back.

The other half of the fuzz: sentences, choices, lines, spots and exceptions, edits that can be and some that cannot,
with a possession on the floor that is played anew after each.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import strategies as st
from hypothesis.stateful import rule
from tests.web.fuzz import FUZZ, Coach, asked

from backcut.offence.choices import CHOICES

PLACES = st.integers(0, 14)
FILL = "Fill. When the next spot toward the ball is empty, I fill it at once."
VALUES = st.none() | st.sampled_from(["four-out", "five-out", "three-out", "NBA", "mini", "4", "boys-u12", "1 to 5"])
CHANGES: st.SearchStrategy[dict[str, Any]] = st.one_of(
    st.sampled_from(sorted(CHOICES)).flatmap(
        lambda name: st.sampled_from(CHOICES[name].values).map(
            lambda value: {"kind": "choose", "name": name, "value": value.name}
        )
    ),
    st.builds(
        lambda place, do, to: {"kind": "sentence", "place": place, "do": do, "to": to},
        PLACES,
        st.sampled_from(["off", "on", "out", "move"]),
        PLACES,
    ),
    st.builds(
        lambda place, words, do: {"kind": "sentence", "place": place, "do": do, "words": words},
        PLACES,
        st.text(max_size=40) | st.just(FILL),
        st.sampled_from(["write", "add", "why", "mistake"]),
    ),
    st.builds(
        lambda key, value: {"kind": "line", "key": key, "value": value},
        st.sampled_from(["title", "formation", "court", "squad", "denial mark", "players", "start", "nothing"]),
        VALUES,
    ),
    st.builds(
        lambda spot, x, y: {"kind": "spot", "spot": spot, "x_m": x, "y_m": y},
        st.sampled_from(["LW", "T", "RC", "LS", "XX"]),
        st.none() | st.floats(-9, 9),
        st.none() | st.floats(-2, 12),
    ),
    st.builds(
        lambda number, role, on: {"kind": "role", "role": f"{number} {role}", "on": on},
        st.integers(0, 6),
        st.sampled_from(["never cuts", "never fills a corner", "stays inside", "sings"]),
        st.booleans(),
    ),
    st.builds(lambda text: {"kind": "text", "text": text}, st.text(max_size=200)),
    st.dictionaries(st.sampled_from(["kind", "keep", "move", "text", "place"]), st.integers() | st.text(max_size=5)),
)


class Writer(Coach):
    """A coach who writes."""

    @rule(change=CHANGES)
    def edit(self, change: dict[str, Any]) -> None:
        """Any edit: written into the text, and what is written is what was shown; or refused."""
        before = self.coach.book
        if self.does(change) != 200:
            assert self.coach.book == before


@pytest.fixture(scope="module", autouse=True)
def _server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with asked(Writer, tmp_path_factory.mktemp("shelf")):
        yield


TestWriter = Writer.TestCase
TestWriter.settings = FUZZ
