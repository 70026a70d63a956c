"""Somebody at the page who does anything in any order, for the two fuzz tests.

Every request goes the whole way through the app: its door, its routes, its envelope, the rules and the drawing. For
speed alone, HTTP is left out, which `test_serve.py` speaks; so is most of the count of what could be walked through,
which `test_seen.py` holds to an account of its own; and floors that were drawn once stay in a larger cache.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from pathlib import Path
from typing import Any, ClassVar

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule
from tests.web.floors import Straight, Visitor

from backcut.offence.library import presets
from backcut.web import evening, stops, view

#: Sequences that are tried in both files together; `.ci/run` asks for 5,000.
SEQUENCES = int(os.environ.get("BACKCUT_FUZZ", "300"))
FUZZ = settings(
    max_examples=-(-SEQUENCES // 2), stateful_step_count=5, deadline=None, suppress_health_check=list(HealthCheck)
)

#: Bytes that are no request at all.
NONSENSE = st.one_of(
    st.binary(max_size=40),
    st.sampled_from(
        [
            b'{"revision":0,"change":{"kind":"cut","keep":' + b"9" * 5_000 + b"}}",
            b'{"revision":NaN,"change":{"kind":"cut","keep":0}}',
            b'{"revision":0,"change":{"kind":"line","key":"title","value":"\\ud800"}}',
            b"[" * 20_000,
        ]
    ),
)


class Coach(RuleBasedStateMachine):
    """A coach at one floor, who remembers every page of its history."""

    asks: ClassVar[Straight]

    @initialize(book=st.sampled_from(presets()), plain=st.booleans())
    def come_in(self, book: str, plain: bool) -> None:
        """Somebody opens a book that comes with Backcut, with the demo possession or with none."""
        self.coach = Visitor(self.asks, book=book)
        self.pages = [self.coach.shown()]
        self.at = 0
        if plain:
            assert self.does({"kind": "cut", "keep": 0}) == 200

    def does(self, change: dict[str, Any]) -> int:
        """A change: either it is the next page of the history, or all is as it was."""
        status = self.coach.change(change)
        if status == 200:
            self.pages = [*self.pages[: self.at + 1], self.coach.shown()]
            self.at += 1
        else:
            assert self.coach.shown() == self.pages[self.at]
        return status

    @rule(data=st.data())
    def do_what_can_be_done(self, data: st.DataObject) -> None:
        """A move that the page offers can always be made."""
        stop = data.draw(st.sampled_from(self.coach.stops))
        if stop["can"]:
            can = data.draw(st.sampled_from(stop["can"]))
            status = self.does({"kind": "happen", "keep": can["keep"], "move": can["move"]})
            assert status == 200, (can, self.coach.said)

    @rule(way=st.sampled_from(["undo", "redo"]))
    def go_back_or_on(self, way: str) -> None:
        """Undo returns what was there before, redo what came after, and at either end somebody is told."""
        to = self.at + (1 if way == "redo" else -1)
        if 0 <= to < len(self.pages):
            assert self.coach.back(way) == 200
            self.at = to
        else:
            assert self.coach.back(way) == 422
        assert self.coach.shown() == self.pages[self.at]

    @rule(body=st.none() | NONSENSE)
    def ask_what_cannot_be_answered(self, body: bytes | None) -> None:
        """Of two windows the second is told; what is no request is refused; the floor stays as it is."""
        if body is None:
            asked = {"revision": self.coach.floor["revision"] + 1, "change": {"kind": "cut", "keep": 0}}
            assert self.coach.take(self.asks.post(f"{self.coach.path}/changes", json=asked)) == 409
        else:
            assert self.coach.take(self.asks.post(f"{self.coach.path}/changes", content=body)) in (400, 422)
        assert self.coach.take(self.asks.get(self.coach.path)) == 200
        assert self.coach.shown() == self.pages[self.at]

    @invariant()
    def nobody_shares_a_spot(self) -> None:
        """Never two players on one spot, but at the rim, where they run past each other."""
        for stop in self.coach.stops if hasattr(self, "coach") else []:
            standing = [cell["id"] for cell in stop["cells"]]
            assert len(standing) == len(set(standing))
            at = [cell["label"].split(",")[0] for cell in stop["cells"] if cell["player"] is not None]
            on_spots = [spot for spot in at if spot != "rim"]
            assert len(on_spots) == len(set(on_spots)), stop["cells"]

    def teardown(self) -> None:
        """At the end, all of it undone page by page."""
        for page in reversed(self.pages[: self.at] if hasattr(self, "coach") else []):
            assert self.coach.back("undo") == 200
            assert self.coach.shown() == page


@contextmanager
def asked(machine: type[Coach], folder: Path) -> Iterator[None]:
    """A server while the sequences of a fuzz run."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("backcut.web.seen.MOST_LINE_UPS", 20)
        told, drawn = lru_cache(2_000)(stops.told.__wrapped__), lru_cache(2_000)(view._play.__wrapped__)
        for module in (evening, stops, view):
            patch.setattr(module, "told", told)
        patch.setattr(view, "_play", drawn)
        machine.asks = Straight(folder)
        yield
        machine.asks.close()
