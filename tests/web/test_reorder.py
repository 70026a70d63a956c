"""A sentence dragged by its letter is asked earlier or later; a press on the letter still opens it."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect
from tests.web.conftest import visited


def words(page: Page) -> list[str]:
    """The cue words in the order of the book."""
    return page.locator("#sentences > li .says b").all_inner_texts()


def drag(page: Page, row: int, to: int, *, drop: bool = True) -> None:
    """Take a letter to just past the middle of another row."""
    rows = page.locator("#sentences > li")
    rows.nth(row).scroll_into_view_if_needed()
    letter, over = rows.nth(row).locator("button.tab").bounding_box(), rows.nth(to).bounding_box()
    assert letter is not None
    assert over is not None
    x = letter["x"] + letter["width"] / 2
    page.mouse.move(x, letter["y"] + letter["height"] / 2)
    page.mouse.down()
    page.mouse.move(x, over["y"] + over["height"] / 2 + (4 if to > row else -4), steps=5)
    if drop:
        page.mouse.up()


def test_a_sentence_is_dragged_by_its_letter_and_undone(browser: Browser, address: str) -> None:
    with visited(browser, address) as page:
        was = words(page)
        drag(page, 0, 2)
        expect(page.locator("#sentences > li .says b").first).to_have_text(was[1])
        assert words(page) == [was[1], was[2], was[0], *was[3:]]
        drag(page, 2, 0)
        expect(page.locator("#sentences > li .says b").first).to_have_text(was[0])
        assert words(page) == was
        page.locator("#undo").click()
        expect(page.locator("#sentences > li .says b").first).to_have_text(was[1])


def test_a_press_opens_the_sentence_and_escape_lets_go_of_it(browser: Browser, address: str) -> None:
    with visited(browser, address) as page:
        was = words(page)
        drag(page, 0, 2, drop=False)
        assert page.locator(".dragged").count() == 1
        assert page.locator(".drop-above, .drop-below").count() == 1
        page.keyboard.press("Escape")
        assert page.locator(".dragged, .drop-above, .drop-below").count() == 0
        page.mouse.up()
        assert words(page) == was
        page.locator("#sentences > li button.tab").nth(1).click()
        expect(page.locator(".editor textarea")).to_be_visible()
