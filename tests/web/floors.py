"""A server for the tests: the whole app over a shelf of its own, asked without a network."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from starlette.testclient import TestClient

from backcut.web.app import make_app
from backcut.web.shelf import Shelf

PORT = 8765


def client(folder: Path, own: Path | None = None) -> TestClient:
    """A client of a new server that keeps its books in `folder`."""
    app = make_app(Shelf(folder / "books", own), port=PORT)
    return TestClient(app, base_url=f"http://127.0.0.1:{PORT}", headers={"content-type": "application/json"})


class Visitor:
    """Somebody at the page: one floor, and the last that was said of it."""

    def __init__(self, asks: TestClient, **asked: str) -> None:
        self.asks = asks
        self.floor: dict[str, Any] = {}
        self.said = ""
        self.take(asks.post("/api/floors", json=asked))

    def take(self, answer: Any) -> int:
        """Look at an answer: the envelope always, the floor where there is one. The status."""
        told = answer.json()
        assert set(told) == {"ok", "said", "data"}
        assert told["ok"] is (answer.status_code == 200), told
        assert answer.status_code < 500, told
        self.said = told["said"]
        if told["ok"]:
            self.floor = told["data"]
        else:
            assert told["data"] is None
            assert self.said.strip()
        return int(answer.status_code)

    @property
    def path(self) -> str:
        """The floor's address in the API."""
        return f"/api/floors/{self.floor['id']}"

    def change(self, change: Mapping[str, Any]) -> int:
        """Ask for a change on the floor as it is. The status."""
        asked = {"revision": self.floor["revision"], "change": change}
        return self.take(self.asks.post(f"{self.path}/changes", json=asked))

    def back(self, way: str) -> int:
        """Undo or redo. The status."""
        return self.take(self.asks.post(f"{self.path}/{way}", json={"revision": self.floor["revision"]}))

    def shown(self) -> dict[str, Any]:
        """All that is on the floor, without what counts changes or what was walked through."""
        left_out = {"runs", "revision", "undo", "redo", "stop", "differs", "seen", "kept"}
        return {key: value for key, value in self.floor.items() if key not in left_out}
