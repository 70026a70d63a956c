"""A real server on loopback for the browser: in a thread of the test's process, and stopped by its own handle."""

from __future__ import annotations

import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import uvicorn

from backcut.web.app import make_app
from backcut.web.serve import listen
from backcut.web.shelf import Shelf

WAITS_S = 60.0


@contextmanager
def serving(folder: Path, port: int | None = None) -> Iterator[str]:
    """The floor over a shelf in `folder`: its address, without the last slash."""
    listening = listen("127.0.0.1", port)
    taken = int(listening.getsockname()[1])
    app = make_app(Shelf(folder / "books"), port=taken)
    server = uvicorn.Server(uvicorn.Config(app, log_level="error", timeout_graceful_shutdown=2))
    thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]}, daemon=True)
    thread.start()
    end = time.monotonic() + WAITS_S
    while not server.started:
        assert time.monotonic() < end, "The server never came up."
        time.sleep(0.01)
    try:
        yield f"http://127.0.0.1:{taken}"
    finally:
        server.should_exit = True
        thread.join(WAITS_S)
        listening.close()
