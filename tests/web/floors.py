"""A server for the tests: the whole app over a shelf of its own, asked without a network."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from anyio.from_thread import start_blocking_portal
from pydantic_core import from_json
from starlette.testclient import TestClient
from starlette.types import Message

from backcut.offence.library import preset_text
from backcut.web.app import make_app
from backcut.web.floor import Floor
from backcut.web.shelf import Shelf

PORT = 8765
HEADERS = [(b"host", f"127.0.0.1:{PORT}".encode()), (b"content-type", b"application/json")]


def floor(moves: str = "", *, book: str = "school-team", start: str = "") -> Floor:
    """A book that comes with Backcut, with these moves: what is on the floor, without a server."""
    return Floor(preset_text(book), start, tuple(move.strip() for move in moves.split(",") if move.strip()))


def client(folder: Path, own: Path | None = None) -> TestClient:
    """A client of a new server that keeps its books in `folder`; what breaks in the server is an answer here too."""
    app = make_app(Shelf(folder / "books", own), port=PORT)
    headers = {"content-type": "application/json"}
    return TestClient(app, base_url=f"http://127.0.0.1:{PORT}", headers=headers, raise_server_exceptions=False)


@dataclass(frozen=True, slots=True)
class Answer:
    """What came back from `Straight`."""

    status_code: int
    content: bytes

    def json(self) -> Any:
        """The body, read."""
        return from_json(self.content)


class Straight:
    """Asks the app itself with no HTTP between, for tests that ask many thousand times: door, routes and envelope stay.

    It has a thread and a loop of its own, until it is closed.
    """

    def __init__(self, folder: Path) -> None:
        self.app = make_app(Shelf(folder / "books"), port=PORT)
        self._opened = start_blocking_portal()
        self._portal = self._opened.__enter__()

    def close(self) -> None:
        """End its thread."""
        self._opened.__exit__(None, None, None)

    def get(self, path: str) -> Answer:
        """Ask for what is there."""
        return self._ask("GET", path, b"")

    def post(self, path: str, json: object = None, content: bytes | None = None) -> Answer:
        """Send JSON, or these very bytes."""
        return self._ask("POST", path, _bytes(json) if content is None else content)

    def _ask(self, method: str, path: str, body: bytes) -> Answer:
        got: list[Message] = []
        path, _, query = path.partition("?")
        scope = {
            "type": "http",
            "http_version": "1.1",
            "scheme": "http",
            "method": method,
            "path": path,
            "raw_path": path.encode(),
            "query_string": query.encode(),
            "root_path": "",
            "headers": HEADERS,
            "client": ("127.0.0.1", 1),
            "server": ("127.0.0.1", PORT),
        }
        to_come: list[Message] = [{"type": "http.request", "body": body, "more_body": False}]

        async def receive() -> Message:
            return to_come.pop() if to_come else {"type": "http.disconnect"}

        async def send(message: Message) -> None:
            got.append(message)

        self._portal.call(self.app, scope, receive, send)
        return Answer(got[0]["status"], b"".join(message["body"] for message in got[1:]))


def _bytes(value: object) -> bytes:
    return json.dumps(value).encode()


class Visitor:
    """Somebody at the page: one floor, and the last that was said of it."""

    def __init__(self, asks: TestClient | Straight, **asked: str) -> None:
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

    @property
    def play(self) -> dict[str, Any]:
        """The possession on the floor."""
        played: dict[str, Any] = self.floor["play"]
        return played

    @property
    def stops(self) -> list[dict[str, Any]]:
        """Its stops: the start, each decision, the end."""
        there: list[dict[str, Any]] = self.play["stops"]
        return there

    @property
    def book(self) -> str:
        """The text of the book on the floor."""
        return str(self.floor["book"]["text"])

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
