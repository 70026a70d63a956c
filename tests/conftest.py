"""A real browser for the pages, where there is one: one for all tests of a process."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Playwright, sync_playwright

CHROMIUM = Path("/usr/bin/chromium")
ARGUMENTS = ["--no-sandbox", "--disable-gpu"]


@pytest.fixture(scope="session")
def drives() -> Iterator[Playwright]:
    """What drives browsers; tests that need one are skipped, saying so, where it is not installed."""
    if not CHROMIUM.exists():
        pytest.skip(f"Chromium is not at {CHROMIUM}; the page was not opened in a browser.")
    with sync_playwright() as playwright:
        yield playwright


@pytest.fixture(scope="session")
def browser(drives: Playwright) -> Iterator[Browser]:
    """Chromium without a window."""
    opened = drives.chromium.launch(executable_path=str(CHROMIUM), args=ARGUMENTS)
    yield opened
    opened.close()


@pytest.fixture(scope="module")
def cut_off(drives: Playwright) -> Iterator[Browser]:
    """Chromium of a machine that is in no network: every name but this machine's own number comes to nothing."""
    alone = "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"
    opened = drives.chromium.launch(executable_path=str(CHROMIUM), args=[*ARGUMENTS, alone])
    yield opened
    opened.close()
