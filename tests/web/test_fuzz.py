"""Whatever a page sends, in whatever order: one form of answer, never two on one spot, and undo brings all back."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule
from tests.web.floors import Visitor, client

from backcut.offence.choices import CHOICES
from backcut.offence.library import presets

#: Sequences that are tried; `.ci/run` asks for 5,000.
SEQUENCES = int(os.environ.get("BACKCUT_FUZZ", "300"))

_FOLDER = tempfile.TemporaryDirectory()
_ASKS = client(Path(_FOLDER.name))

CHANGES: st.SearchStrategy[dict[str, Any]] = st.one_of(
    st.builds(lambda keep: {"kind": "cut", "keep": keep}, st.integers(0, 5)),
    st.builds(lambda seed: {"kind": "draw", "seed": seed}, st.integers(0, 50)),
    st.sampled_from(sorted(CHOICES)).flatmap(
        lambda name: st.sampled_from(CHOICES[name].values).map(
            lambda value: {"kind": "choose", "name": name, "value": value.name}
        )
    ),
    st.builds(
        lambda place, do, to: {"kind": "sentence", "place": place, "do": do, "to": to},
        st.integers(0, 14),
        st.sampled_from(["off", "on", "out", "move"]),
        st.integers(0, 14),
    ),
    st.builds(
        lambda place, words, do: {"kind": "sentence", "place": place, "do": do, "words": words},
        st.integers(0, 14),
        st.text(max_size=40) | st.just("Fill. When the next spot toward the ball is empty, I fill it at once."),
        st.sampled_from(["write", "add", "why", "mistake"]),
    ),
    st.builds(
        lambda key, value: {"kind": "line", "key": key, "value": value},
        st.sampled_from(["title", "formation", "court", "squad", "denial mark", "players", "start", "nothing"]),
        st.none() | st.sampled_from(["four-out", "five-out", "three-out", "NBA", "mini", "4", "boys-u12"]),
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
    st.builds(lambda move: {"kind": "happen", "keep": 1, "move": move}, st.text(max_size=20)),
    st.dictionaries(st.sampled_from(["kind", "keep", "move", "text", "place"]), st.integers() | st.text(max_size=5)),
)


class Evening(RuleBasedStateMachine):
    """A coach, and everything a page could send."""

    @initialize(book=st.sampled_from(presets()))
    def come_in(self, book: str) -> None:
        """Somebody opens a book that comes with Backcut."""
        self.coach = Visitor(_ASKS, book=book)

    @rule(data=st.data())
    def do_what_can_be_done(self, data: st.DataObject) -> None:
        """A move that the page offers can always be made."""
        play = self.coach.floor["play"]
        stop = data.draw(st.sampled_from(play["stops"]))
        if not stop["can"]:
            return
        can = data.draw(st.sampled_from(stop["can"]))
        before = self.coach.shown()
        status = self.coach.change({"kind": "happen", "keep": can["keep"], "move": can["move"]})
        assert status == 200, (can, self.coach.said)
        self.undone_is_as_before(before)

    @rule(change=CHANGES)
    def change_something(self, change: dict[str, Any]) -> None:
        """A change that cannot be leaves all as it was."""
        before = self.coach.shown()
        if self.coach.change(change) == 200:
            self.undone_is_as_before(before)
        else:
            assert self.coach.shown() == before

    @rule()
    def change_what_has_changed(self) -> None:
        """Of two windows the second is told."""
        asked = {"revision": self.coach.floor["revision"] + 1, "change": {"kind": "cut", "keep": 0}}
        assert _ASKS.post(f"{self.coach.path}/changes", json=asked).status_code == 409

    def undone_is_as_before(self, before: dict[str, Any]) -> None:
        """Undo brings all back, and redo all that was done."""
        now = self.coach.shown()
        assert self.coach.back("undo") == 200
        assert self.coach.shown() == before
        assert self.coach.back("redo") == 200
        assert self.coach.shown() == now

    @invariant()
    def nobody_shares_a_spot(self) -> None:
        """Never two players on one spot, but at the rim, where they run past each other."""
        for stop in (getattr(self, "coach", None) and self.coach.floor["play"]["stops"]) or []:
            standing = [cell["id"] for cell in stop["cells"]]
            assert len(standing) == len(set(standing))
            at = [cell["label"].split(",")[0] for cell in stop["cells"] if cell["player"] is not None]
            on_spots = [spot for spot in at if spot != "rim"]
            assert len(on_spots) == len(set(on_spots)), stop["cells"]


TestEvening = Evening.TestCase
TestEvening.settings = settings(
    max_examples=SEQUENCES,
    stateful_step_count=4,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
