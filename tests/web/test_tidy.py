"""Memory is looked through when nobody waits, and only then."""

from __future__ import annotations

import asyncio
import gc
import time
from pathlib import Path

import pytest
from anyio.from_thread import start_blocking_portal
from fastapi.testclient import TestClient

from backcut.web import tidy as tidying
from backcut.web.app import make_app
from backcut.web.shelf import Shelf
from backcut.web.tidy import NEVER, Tidy


def test_while_the_server_runs_full_collections_are_left_to_it_and_given_back_after(tmp_path: Path) -> None:
    before = gc.get_threshold()
    with TestClient(make_app(Shelf(tmp_path), port=8765), base_url="http://127.0.0.1:8765") as asks:
        assert gc.get_threshold() == (*before[:2], NEVER)
        assert asks.get("/api/books").status_code == 200
    assert gc.get_threshold() == before


def test_once_after_what_was_asked_for_and_not_before_it_is_quiet(monkeypatch: pytest.MonkeyPatch) -> None:
    times: list[float] = []
    monkeypatch.setattr(tidying, "QUIET_S", 0.04)
    monkeypatch.setattr(gc, "collect", lambda: times.append(time.monotonic()))
    tidy = Tidy()

    async def evening() -> float:
        going = asyncio.create_task(tidy.go())
        await asyncio.sleep(0.1)
        assert times == []
        tidy.asked = asked = time.monotonic()
        while not times:
            await asyncio.sleep(0.005)
        await asyncio.sleep(0.2)
        going.cancel()
        return asked

    with start_blocking_portal() as portal:  # a loop of its own: this thread may have the browser's
        asked = portal.call(evening)
    assert len(times) == 1
    assert times[0] - asked > 0.04
