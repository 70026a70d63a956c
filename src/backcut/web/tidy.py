"""Memory is looked through for garbage when nobody waits: in the middle of a move it would hold the move up."""

from __future__ import annotations

import asyncio
import gc
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from starlette.types import ASGIApp, Receive, Scope, Send

#: Nobody waits when nothing was asked for so long, in seconds (own design: longer than between two moves by hand).
QUIET_S = 2.0
#: The interpreter's own full collections come after so many of the middle ones: never, in one evening.
NEVER = 1_000_000


@dataclass(slots=True)
class Tidy:
    """When something was last asked for; 0 when nothing was since memory was looked through."""

    asked: float = 0.0

    @contextmanager
    def instead(self) -> Iterator[None]:
        """Meanwhile the interpreter leaves full collections to `go`."""
        before = gc.get_threshold()
        gc.set_threshold(*before[:2], NEVER)
        try:
            yield
        finally:
            gc.set_threshold(*before)

    async def go(self) -> None:
        """Look through memory once after everything that was asked for, until cancelled."""
        while True:
            await asyncio.sleep(QUIET_S / 4)
            if self.asked and time.monotonic() - self.asked > QUIET_S:
                self.asked = 0.0
                gc.collect()


class Heard:
    """Notes when something is asked for."""

    def __init__(self, app: ASGIApp, tidy: Tidy) -> None:
        self.app, self.tidy = app, tidy

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on."""
        self.tidy.asked = time.monotonic()
        await self.app(scope, receive, send)
