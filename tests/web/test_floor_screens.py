"""Every screen of the floor: nothing axe objects to, nothing cut off, nothing that colour alone would say."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.web.conftest import visited

AXE = Path(__file__).parents[1] / "vendor" / "axe-core" / "axe.min.js"
RULES = "{runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']}"


def click(name: str | re.Pattern[str]) -> Callable[[Page], None]:
    """Press the first button of this name that is seen."""
    return lambda page: page.get_by_role("button", name=name).locator("visible=true").first.click()


def found(page: Page) -> None:
    """Look at every situation of a book with a hole, and at one way out."""
    page.get_by_role("button", name="the first open spot").click()
    page.get_by_text("the corner opposite the ball", exact=True).first.click()
    expect(page.locator("#differs")).to_be_visible()
    click("Look at every situation")(page)
    page.get_by_role("button", name=re.compile("^Show me")).first.wait_for(timeout=60_000)


def answered(page: Page) -> None:
    """The answers a player could have, and what would say one."""
    click("Not in our team")(page)
    page.locator(".answers .can").first.click()
    page.locator(".sayings li").first.wait_for(timeout=60_000)


SCREENS: dict[str, Callable[[Page], None]] = {
    "at rest": lambda page: None,
    "a sentence": click("Change H, Out"),
    "findings": found,
    "not in our team": answered,
    "add": click("Add a sentence"),
    "text": click("Edit as text"),
    "choices": click("All choices"),
    "books": click("Books"),
    "court": click("Court and squad"),
    "share": click("Share"),
    "freeze": click("Freeze and ask"),
    "mark": click("Denial mark"),
    "projector": click("Projector"),
}


def stopped(page: Page) -> None:
    """The demo, stopped at its first decision that a sentence won."""
    page.locator("#play").click()
    page.keyboard.press("Home")
    page.keyboard.press("ArrowRight")


@pytest.mark.parametrize(("width", "height", "light"), [(1440, 900, "light"), (390, 844, "dark"), (820, 1180, "light")])
def test_axe_finds_nothing_on_any_screen(browser: Browser, address: str, width: int, height: int, light: str) -> None:
    with visited(browser, address, width, height, color_scheme=light, reduced_motion="reduce") as page:
        for name, show in SCREENS.items():
            if width == 820 and name not in ("at rest", "findings"):
                continue
            page.goto(address)  # the same window: only what is on the screen is left
            page.wait_for_selector("#caption")
            stopped(page)
            show(page)
            page.wait_for_timeout(200)
            page.evaluate(AXE.read_text("utf-8"))
            told = page.evaluate(f"axe.run({RULES})")
            objections = [(one["id"], [node["html"][:160] for node in one["nodes"]]) for one in told["violations"]]
            assert objections == [], name


#: From the smallest phone on; the last is 1440 by 900 at 200 percent.
SIZES = ((320, 640), (390, 844), (820, 1180), (1440, 900), (720, 450))


@pytest.mark.parametrize("name", ["at rest", "a sentence", "findings", "text", "share", "freeze"])
def test_nothing_makes_the_page_scroll_sideways(browser: Browser, address: str, name: str) -> None:
    with visited(browser, address) as page:
        stopped(page)
        SCREENS[name](page)
        for width, height in SIZES:
            page.set_viewport_size({"width": width, "height": height})
            wide = page.evaluate("document.documentElement.scrollWidth")
            assert wide <= width, (name, width)


def test_the_sentence_that_won_is_on_the_first_screen_of_a_phone(browser: Browser, address: str) -> None:
    with visited(browser, address, 390, 844) as page:
        stopped(page)
        box = page.locator(".habit.won .says").bounding_box()
        assert box is not None
        assert box["y"] + box["height"] < 844


def test_in_forced_colours_and_without_motion_everybody_is_still_told_apart(browser: Browser, address: str) -> None:
    with visited(browser, address, forced_colors="active", reduced_motion="reduce") as page:
        stopped(page)
        page.keyboard.press("End")
        for _ in range(12):
            if "denies" in page.inner_text("#caption"):
                break
            page.keyboard.press("ArrowLeft")
        shapes = page.evaluate(
            "[...document.querySelectorAll('.half g[id^=x] use')].map((u) => u.getAttribute('href'))"
        )
        assert {"#m-denies", "#m-arms", "#m-plain"} <= set(shapes)
        tab = page.locator(".habit.won > .tab")
        paints = tab.evaluate("(node) => [getComputedStyle(node).color, getComputedStyle(node).backgroundColor]")
        assert paints[0] != paints[1]


def test_what_was_done_is_there_after_a_reload_and_in_another_window_there_is_another_floor(
    browser: Browser, address: str
) -> None:
    with visited(browser, address) as page:
        stopped(page)
        click("Again from the start")(page)
        expect(page.locator("#caption")).to_contain_text("1 has the ball.")
        page.reload()
        expect(page.locator("#caption")).to_contain_text("1 has the ball.")
        page.locator("#undo").click()
        expect(page).to_have_url(re.compile("lay-up"))
        other = page.context.new_page()
        other.goto(f"{address}/")
        expect(other.locator("#undo")).to_be_disabled()
