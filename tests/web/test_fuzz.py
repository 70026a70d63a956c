"""Whatever is played, in whatever order: one form of answer, never two on one spot, and undo brings all back.

One half of the fuzz: moves that can be made and some that cannot, possessions drawn and shown, back and on.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import strategies as st
from hypothesis.stateful import rule
from tests.web.fuzz import FUZZ, Coach, asked

NUMBERS = st.integers(0, 6)
WHO = st.integers(0, 6).map(str) | st.sampled_from(["T", "RW", "LC", "the left wing", "cutter", "rim"])
MOVES = st.one_of(
    st.builds("{}{}>{}".format, st.sampled_from(["", "early ", "after 1 beat ", "after 61 beats "]), WHO, WHO),
    st.builds("{} {}".format, st.sampled_from(["deny", "sag", "jump", "free", "jam", "forget", "lay-up", "shot"]), WHO),
    st.builds("dribble {}>{}".format, WHO, WHO),
    st.text(max_size=20),
)


CHANGES: st.SearchStrategy[dict[str, Any]] = st.one_of(
    st.fixed_dictionaries({"kind": st.just("happen"), "keep": NUMBERS, "move": MOVES}),
    st.fixed_dictionaries({"kind": st.just("cut"), "keep": NUMBERS}),
    st.fixed_dictionaries({"kind": st.just("draw"), "seed": st.integers(0, 99)}),
    st.fixed_dictionaries(
        {
            "kind": st.just("show"),
            "start": st.just("") | st.text(max_size=20),
            "moves": st.lists(MOVES, max_size=3).map(", ".join),
            "step": st.none() | NUMBERS,
            "beat": NUMBERS,
        }
    ),
)


class Player(Coach):
    """A coach who plays."""

    @rule(change=CHANGES)
    def try_anything(self, change: dict[str, Any]) -> None:
        """Any move anywhere, made or refused; back to a moment and a drawn possession, which can always be."""
        started = self.coach.play["stuck"] == ""
        done = self.does(change) == 200
        if change["kind"] == "cut":
            assert done
            assert len(self.coach.play["moves"]) <= change["keep"]
        if change["kind"] == "draw" and started:
            assert done
            assert self.coach.play["stuck"] == ""


@pytest.fixture(scope="module", autouse=True)
def _server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with asked(Player, tmp_path_factory.mktemp("shelf")):
        yield


TestPlayer = Player.TestCase
TestPlayer.settings = FUZZ
