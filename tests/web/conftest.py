"""What the browser tests of the floor share: a browser, a server, and a page that tells every fault."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, Request
from tests.web.server import serving


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """A server of the module's own."""
    with serving(tmp_path_factory.mktemp("shelf")) as here:
        yield here


@contextmanager
def visited(
    browser: Browser, address: str, width: int = 1440, height: int = 900, *, refusals: bool = False, **has: Any
) -> Iterator[Page]:
    """The floor in a window of its own. Whatever goes wrong in it, or leaves this machine, fails the test.

    With `refusals` the server may refuse, or be away: the browser's own note of that is no fault.
    """
    context = browser.new_context(viewport={"width": width, "height": height}, accept_downloads=True, **has)
    page = context.new_page()
    faults: list[str] = []

    def asked(request: Request) -> None:
        if not request.url.startswith((address, "data:", "blob:")):
            faults.append(f"asked for {request.url}")

    page.on("request", asked)
    page.on("pageerror", lambda error: faults.append(f"error: {error}"))

    def noted(said: ConsoleMessage) -> None:
        if "was preloaded" in said.text and said.type == "warning":
            return  # a busy machine draws the first letters later than the browser expects
        if said.type in ("error", "warning") and not (refusals and said.text.startswith("Failed to load resource")):
            faults.append(said.text)

    page.on("console", noted)
    page.add_init_script(
        "document.addEventListener('securitypolicyviolation', (e) => console.error('policy: ' + e.violatedDirective))"
    )
    page.goto(f"{address}/")
    page.wait_for_selector("#caption")
    yield page
    context.close()
    assert faults == []
