"""No network: the floor asks its own address alone, and its own policy lets nothing else through."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, Page, expect
from tests.web.conftest import visited


def press(page: Page, name: str | re.Pattern[str]) -> None:
    page.get_by_role("button", name=name).locator("visible=true").first.click()


def test_without_network_a_possession_is_played_kept_and_sent_off(
    cut_off: Browser, address: str, tmp_path: Path
) -> None:
    with visited(cut_off, address) as page:
        assert page.evaluate("document.fonts.ready.then(() => document.fonts.check('16px Literata'))")
        press(page, "Again from the start")
        press(page, re.compile("^1 passes to 2"))
        expect(page.locator("#caption")).to_contain_text("1 passes to 2.")
        page.locator("#head-does").get_by_role("button", name=re.compile("^Kee?p")).click()
        page.get_by_label("Name", exact=True).fill("no network")
        page.locator("dialog button[type=submit]").click()
        expect(page.locator("#said-line")).to_have_text("Kept as no network.")
        press(page, "Share")
        for name, head in (("Picture", b"\x89PNG"), ("Drawing", b"<svg"), ("Whole possession", b"<!doctype html")):
            with page.expect_download() as sent:
                page.locator("dialog").get_by_text(name, exact=True).click()
            sent.value.save_as(tmp_path / name)
            assert (tmp_path / name).read_bytes().startswith(head)
        alone = page.context.new_page()
        asked: list[str] = []
        alone.on("request", lambda request: asked.append(request.url))
        (tmp_path / "Whole possession").rename(tmp_path / "page.html")
        alone.goto((tmp_path / "page.html").as_uri())
        expect(alone.locator("#caption")).to_contain_text("1 passes to 2.")
        assert [url for url in asked if not url.startswith(("file:", "data:"))] == []


def test_the_policy_of_the_page_lets_nothing_out_and_the_tests_would_see_it(cut_off: Browser, address: str) -> None:
    # An address that is set aside for examples: nobody has it (RFC 5737).
    ask = "fetch('http://203.0.113.7/').then(() => true, () => new Promise((done) => setTimeout(done, 100, false)))"
    with pytest.raises(AssertionError, match="connect-src"), visited(cut_off, address) as page:
        assert page.evaluate(ask) is False


def test_this_browser_is_cut_off_even_from_the_other_name_of_this_machine(cut_off: Browser, address: str) -> None:
    with cut_off.new_page() as page, pytest.raises(Error, match="ERR_NAME_NOT_RESOLVED"):
        page.goto(address.replace("127.0.0.1", "localhost"))
