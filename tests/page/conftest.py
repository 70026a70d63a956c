"""A real browser for the page, where there is one."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

CHROMIUM = Path("/usr/bin/chromium")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium without a window; tests that need it are skipped, saying so, where it is not installed."""
    if not CHROMIUM.exists():
        pytest.skip(f"Chromium is not at {CHROMIUM}; the page was not opened in a browser.")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=str(CHROMIUM), args=["--no-sandbox", "--disable-gpu"])
        yield opened
        opened.close()
