"""What the tests of the page share: a live page in the browser."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from backcut.picture.show import Show

from .demo import demo
from .live import Opener, served


@pytest.fixture
def live(browser: Browser) -> Iterator[Opener]:
    """Opens the live page of a show; at the end no error was told and nothing came from elsewhere."""
    wrong: list[str] = []
    closing: list[Any] = []

    def opener(show: Show | None = None, width: int = 1440, height: int = 900, **settings: Any) -> Page:
        address = served(show or demo())
        url = address.__enter__()
        context = browser.new_context(viewport={"width": width, "height": height}, **settings)
        closing.extend([lambda: address.__exit__(None, None, None), context.close])
        page = context.new_page()
        page.on("console", lambda message: wrong.append(message.text))
        page.on("pageerror", lambda error: wrong.append(str(error)))
        here = url.removesuffix("page.html")
        page.on("request", lambda r: None if r.url.startswith((here, "data:")) else wrong.append(r.url))
        page.goto(url)
        page.locator("[data-ready]").wait_for()
        return page

    yield opener
    for close in reversed(closing):
        close()
    assert wrong == []
