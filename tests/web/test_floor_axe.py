"""The screens that a coach comes to in the course of an evening, one after the other: axe objects to none of them."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.web.conftest import visited

AXE = Path(__file__).parents[1] / "vendor" / "axe-core" / "axe.min.js"
RULES = "{runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']}"


def press(page: Page, name: str | re.Pattern[str]) -> None:
    page.get_by_role("button", name=name, exact=True).locator("visible=true").first.click()


def objections(page: Page) -> list[tuple[str, list[str]]]:
    """What axe has against the page as it is now."""
    told = page.evaluate(f"axe.run({RULES})")
    return [(one["id"], [node["html"][:160] for node in one["nodes"]]) for one in told["violations"]]


@pytest.mark.parametrize(("width", "height", "light"), [(1440, 900, "dark"), (390, 844, "light")])
def test_axe_finds_nothing_in_the_course_of_an_evening(
    browser: Browser, address: str, width: int, height: int, light: str
) -> None:
    with visited(browser, address, width, height, color_scheme=light, reduced_motion="reduce", refusals=True) as page:
        page.evaluate(AXE.read_text("utf-8"))
        press(page, "Stop")
        book = page.locator("#head-does, .phone-only").locator("visible=true")
        book.get_by_role("button", name=re.compile("^(Keep|Kept)$")).first.click()
        assert objections(page) == [], "keep"
        page.get_by_label("Name", exact=True).fill("../up")
        page.locator("dialog button[type=submit]").click()
        expect(page.locator("dialog .said-line")).to_contain_text("A book cannot be kept as")
        assert objections(page) == [], "a name that cannot be"
        press(page, "Close")
        book.get_by_role("button", name="Court and squad").first.click()
        press(page, "Move spots on the floor")
        expect(page.locator(".handle").first).to_be_visible()
        assert objections(page) == [], "spots"
        press(page, "Done")
        press(page, "Change H, Out")
        page.get_by_label("The sentence").fill("Out. After my cut I come out to the moon.")
        press(page, "Use these words")
        expect(page.locator(".wave").first).to_be_visible()
        assert objections(page) == [], "a sentence that cannot be understood"
        press(page, "Undo")
        press(page, "Books")
        page.get_by_role("button", name="Versions of School team").click()
        assert objections(page) == [], "versions"
        press(page, "Back to the books")
        press(page, "An empty book")
        expect(page.locator("#title")).to_have_text("Our team")
        press(page, "Look at every situation")
        expect(page.locator("#findings")).to_contain_text("moment", timeout=60_000)
        assert objections(page) == [], "a book of one sentence"
