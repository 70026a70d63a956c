"""Two windows at once, a window closed in mid-edit, a server started again: nothing that was written is lost."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Page, expect
from tests.web.conftest import visited
from tests.web.server import serving

OUT, FIRST = "the corner opposite the ball", "the first open spot"
LINE = "the end of the line"


def press(page: Page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).locator("visible=true").first.click()


def change_out(page: Page, words: str) -> None:
    """Another way out, written into the book on the floor."""
    press(page, FIRST)
    page.get_by_text(words, exact=True).locator("visible=true").first.click()
    press(page, "Close")
    expect(page.locator("#sentences")).to_contain_text(words)


def keep_as(page: Page, name: str) -> None:
    page.locator("#head-does").get_by_role("button", name=re.compile("^(Keep|Kept)$")).click()
    page.get_by_label("Name", exact=True).fill(name)
    page.locator("dialog button[type=submit]").click()


@contextmanager
def second(page: Page) -> Iterator[Page]:
    """Another window of the same browser."""
    other = page.context.new_page()
    other.goto(page.url.split("?")[0])
    expect(other.locator("#caption")).to_be_visible()
    yield other
    other.close()


def test_what_is_kept_in_one_window_is_not_written_over_from_another(browser: Browser, tmp_path: Path) -> None:
    with serving(tmp_path) as address, visited(browser, address, refusals=True) as page, second(page) as other:
        change_out(page, OUT)
        expect(other.locator("#sentences")).to_contain_text(FIRST)
        keep_as(page, "ours")
        expect(page.locator("#said-line")).to_have_text("Kept as ours.")
        change_out(other, LINE)
        keep_as(other, "ours")
        said = other.locator("#said-line")
        expect(other.locator("dialog .said-line")).to_contain_text(
            '"ours" has changed on disk since, perhaps in another window.'
        )
        kept = tmp_path / "books" / "ours.txt"
        assert OUT in kept.read_text("utf-8")
        expect(other.locator("#sentences")).to_contain_text(LINE)
        other.get_by_label("Name", exact=True).fill("theirs")
        other.locator("dialog button[type=submit]").click()
        expect(said).to_have_text("Kept as theirs.")
        assert OUT in kept.read_text("utf-8")
        assert LINE in kept.with_name("theirs.txt").read_text("utf-8")


def test_a_window_closed_in_mid_edit_loses_nothing(browser: Browser, address: str) -> None:
    with visited(browser, address) as page:
        with second(page) as closed:
            change_out(closed, OUT)
            press(closed, "Again from the start")
            expect(closed.locator("#caption")).to_contain_text("1 has the ball.")
        with second(page) as again:
            expect(again.locator("#sentences")).to_contain_text(FIRST)
            press(again, "Books")
            press(again, "Where you left off")
            expect(again.locator("#sentences")).to_contain_text(OUT)
            expect(again.locator("#caption")).to_contain_text("1 has the ball.")
        # Without the browser's memory, as in another browser, it is among the versions of the book.
        press(page, "Books")
        press(page, "Versions of School team")
        press(page, "Open")
        expect(page.locator("#sentences")).to_contain_text(OUT)


def test_a_window_that_was_doubled_is_told_when_the_other_was_faster(browser: Browser, address: str) -> None:
    with visited(browser, address, refusals=True) as page, second(page) as other:
        # A browser that doubles a window gives the second what the first remembers.
        remembered = page.evaluate("JSON.stringify(sessionStorage)")
        other.evaluate("(all) => Object.assign(sessionStorage, JSON.parse(all))", remembered)
        other.reload()
        change_out(page, OUT)
        press(other, "Again from the start")
        expect(other.locator("#said-line")).to_contain_text("The floor has changed since, perhaps in another window.")
        expect(other.locator("#sentences")).to_contain_text(OUT)


def test_a_server_that_was_started_again_gets_the_floor_back(browser: Browser, tmp_path: Path) -> None:
    with ExitStack() as windows:
        with serving(tmp_path) as address:
            page = windows.enter_context(visited(browser, address, refusals=True))
            change_out(page, OUT)
        said, port = page.locator("#said-line"), int(address.rsplit(":", 1)[1])
        press(page, "Again from the start")
        expect(said).to_contain_text("Backcut does not answer.")
        with serving(tmp_path, port):
            press(page, "Again from the start")
            expect(said).to_have_text("The floor was put on anew, just as it was. Do that once more.")
            expect(page.locator("#sentences")).to_contain_text(OUT)
            press(page, "Again from the start")
            expect(page.locator("#caption")).to_contain_text("1 has the ball.")
        with serving(tmp_path, port):
            page.reload()
            expect(page.locator("#caption")).to_contain_text("1 has the ball.")
            expect(page.locator("#sentences")).to_contain_text(OUT)


def test_after_a_restart_a_book_is_still_kept_under_its_own_name(browser: Browser, tmp_path: Path) -> None:
    kept = tmp_path / "books" / "ours.txt"
    with ExitStack() as windows:
        with serving(tmp_path) as address:
            page = windows.enter_context(visited(browser, address, refusals=True))
            keep_as(page, "ours")
            expect(page.locator("#said-line")).to_have_text("Kept as ours.")
            change_out(page, OUT)
        port = int(address.rsplit(":", 1)[1])
        with serving(tmp_path, port):
            # The first thing asked is one that changes nothing: it brings the floor back too.
            press(page, "Not in our team")
            expect(page.locator("#said-line")).to_have_text(
                "The floor was put on anew, just as it was. Do that once more."
            )
            press(page, "Close")
            keep_as(page, "ours")
            expect(page.locator("#said-line")).to_have_text("Kept as ours.")
            assert OUT in kept.read_text("utf-8")
        # What another wrote meanwhile is not written over, whatever was in between.
        anothers = kept.read_text("utf-8").replace("Title: ", "Title: Another's ")
        kept.write_text(anothers, "utf-8")
        with serving(tmp_path, port):
            press(page, "Again from the start")
            keep_as(page, "ours")
            expect(page.locator("dialog .said-line")).to_contain_text("has changed on disk since")
            assert kept.read_text("utf-8") == anothers
