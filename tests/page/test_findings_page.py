"""The page of findings: one file, every finding with its sentences and its still, each opens and plays in place."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from html import unescape
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from backcut.page.findings import findings_page

from .proved import CLASH, NEVER, SILENT, STARTS, clash, heading, never, opposite, silent, starts
from .tags import Tags, policy_of

AXE = Path(__file__).parents[1] / "vendor" / "axe-core" / "axe.min.js"
FONT = re.compile(r"url\(data:font/woff2;base64,[A-Za-z0-9+/=]+\)")
Opener = Callable[..., Page]


@pytest.fixture(scope="module")
def html() -> str:
    return findings_page(heading(), [silent(), clash(), never(), starts()])


@pytest.fixture(scope="module")
def clean() -> str:
    return findings_page(heading(), [])


@pytest.fixture
def opened(browser: Browser, tmp_path: Path, html: str) -> Iterator[Opener]:
    """Opens the page at an address; at the end no error was told and nothing was asked of any network."""
    told: list[str] = []
    pages: list[Page] = []
    file = tmp_path / "findings.html"

    def opener(address: str = "", width: int = 1440, height: int = 900, page_html: str = "", **settings: Any) -> Page:
        file.write_text(page_html or html, encoding="utf-8")
        page = browser.new_page(viewport={"width": width, "height": height}, **settings)
        page.on("console", lambda message: told.append(message.text))
        page.on("pageerror", lambda error: told.append(str(error)))
        page.on("request", lambda request: told.append(request.url) if request.url.split(":")[0] != "data" else None)
        page.goto(file.as_uri() + address)
        page.evaluate("document.fonts.ready.then(() => true)")
        pages.append(page)
        return page

    yield opener
    for page in pages:
        page.close()
    assert [text for text in told if not text.split("#")[0].endswith("/findings.html")] == []


def words(html: str) -> str:
    body = html.split("<body")[1].split("<template")[0].split("<script")[0]
    return unescape(re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", body)))


def comes_true(page: Page, what: str) -> bool:
    """Whether it comes true within two seconds; the page's own policy forbids the usual way to wait for it."""
    return bool(
        page.evaluate(f"""() => new Promise((done) => {{
          const end = performance.now() + 2000;
          const look = () => {{
            if (({what}) || performance.now() > end) done({what});
            else requestAnimationFrame(look);
          }};
          look();
        }})""")
    )


def still(html: str, place: int) -> str:
    found = re.search(rf'id="finding-{place}".*?<svg class="half still".*?</svg>', html, re.S)
    assert found is not None
    return found[0]


def test_nothing_is_fetched_and_every_id_is_there_once_beside_each_possession(html: str) -> None:
    tags = Tags()
    tags.feed(html)
    assert tags.wrong == []
    assert tags.open == []
    assert len(tags.ids) == 1 + 2
    page_ids, *possessions = tags.ids
    for ids in (page_ids, *possessions):
        assert len(ids) == len(set(ids))
    # The list is taken out while a possession stands in its place, so only its own ids may come back in one.
    kept = {name for name in page_ids if name.startswith(("m-", "head-", "ground", "stage", "possession-"))}
    assert all(kept.isdisjoint(ids) for ids in possessions)
    assert "://" not in FONT.sub("", html)


def test_fonts_and_script_are_in_the_file_once(html: str) -> None:
    assert len(FONT.findall(html)) == 2
    assert html.count('<script type="module">') == 1
    assert html.count('id="story"') == 2


def test_the_policy_allows_this_style_and_this_script_and_nothing_else(html: str) -> None:
    policy = policy_of(html)
    assert "unsafe" not in policy


def test_the_list_says_everything_without_script(html: str) -> None:
    said = words(html)
    for item in (silent(), clash(), never(), starts()):
        assert item.title in said
        assert item.moves in said
        for line in item.lines:
            assert line in said
    for sentence in opposite().sentences:
        assert sentence.text in said
    for line in (*heading().covered, *heading().not_looked_at):
        assert line in said


def test_what_has_to_hold_shows_what_holds_what_does_not_and_what_was_not_judged(html: str) -> None:
    said = re.sub(r"\s+", " ", words(html))
    assert re.search(r"One to a spot\. Nobody is sent where somebody stands or is going\. 1 finding", said)
    assert re.search(r"Somebody back\. Somebody is above the free-throw line\. holds", said)
    assert re.search(r"Runs in time\. Nobody is asked for a run longer than 3 seconds\. not judged", said)


def test_a_sentence_behind_findings_names_them(html: str) -> None:
    assert re.search(r"H Out\. When my cut is over, [^.]*\. Behind findings 1 2 ", words(html))


def test_ways_out_stand_under_their_finding() -> None:
    page = findings_page(heading(), [replace(silent(), ways_out=("H comes out to the nearest open spot.",))])
    assert re.search(r"A way out\s+H comes out to the nearest open spot\.", words(page))


def test_a_clean_proof_says_what_was_covered_and_what_holds(clean: str) -> None:
    said = words(clean)
    assert "Nothing found" in said
    assert "4 things have to hold. Wherever the ball went, they all did." in said
    assert "600 situations" in said
    assert said.count(" holds ") >= 4
    assert "<template" not in clean


def test_a_proof_that_was_stopped_does_not_say_that_anything_holds() -> None:
    said = words(findings_page(replace(heading(), stopped=True), []))
    assert "Nothing found so far" in said
    assert "they all did" not in said
    assert " holds " not in said


def test_who_has_no_answer_wears_a_question_mark_and_the_still_can_be_heard(html: str) -> None:
    picture = still(html, 1)
    assert picture.count(">?</text>") == 1
    assert 'class="pass"' in picture
    assert re.search(r'role="img" aria-label="[^"]*2 [^;"]*, has no answer', picture)
    assert re.search(r'aria-label="[^"]*3 at the top, has the ball', picture)


def test_a_clash_is_two_rings_and_the_way_of_who_is_sent_there(html: str) -> None:
    picture = still(html, 2)
    assert picture.count('class="twin"') == 1
    assert picture.count('class="fill"') == 1
    assert ">?</text>" not in picture
    assert "4 is sent to the left corner, where 2 already is." in picture


def test_players_and_spots_a_finding_is_about_are_ringed() -> None:
    about = replace(silent(), players=(2, 5), spot=starts().spot)
    picture = still(findings_page(heading(), [about]), 1)
    assert picture.count('class="hole"') == 2  # the spot and 5; 2 has the question mark


def test_what_shows_at_the_start_has_a_still_and_what_never_happens_has_none(html: str) -> None:
    assert 'class="hole"' in still(html, 4)
    assert "It never happens, so there is no picture." in words(html)
    assert 'href="#4"' not in html
    assert 'href="#3"' not in html


def test_hostile_words_stay_words(html: str) -> None:
    evil = "</script></template><script>alert(1)</script><b>"
    item = replace(
        silent(), title=evil, property=evil, lines=(evil,), count=evil, moves=evil, here=evil, ways_out=(evil,)
    )
    page = findings_page(replace(heading(), covered=(evil,), not_looked_at=(evil,)), [item])
    assert evil not in page
    tags = Tags()
    tags.feed(page)
    assert tags.wrong == []
    assert page.count("<script") == html.count("<script") - 1


def said(page: Page) -> str:
    return page.locator("#caption").inner_text().replace("\n", " ")


def test_the_keyboard_opens_a_finding_plays_it_and_comes_back(opened: Opener) -> None:
    page = opened()
    link = page.get_by_role("link", name="Show me finding 2")
    link.focus()
    page.keyboard.press("Enter")
    page.locator("#slider").wait_for()
    assert page.locator("h1").inner_text().replace("\n", " ") == CLASH
    assert page.evaluate("document.activeElement.tagName") == "H1"
    assert page.title().startswith(CLASH)
    assert "1 passes to 2" in said(page)
    page.keyboard.press("End")
    assert said(page).endswith("4 is sent to the left corner, where 2 already is. " + CLASH)
    page.keyboard.press("Escape")
    page.locator("#finding-2").wait_for()
    assert page.evaluate("document.activeElement.getAttribute('href')") == "#2"
    assert page.title().startswith("School team")


def test_the_address_opens_a_finding_directly_and_back_leads_to_the_list(opened: Opener) -> None:
    page = opened("#1")
    assert page.locator("h1").inner_text().replace("\n", " ") == SILENT
    page.get_by_role("link", name="Next: finding 2").click()
    page.get_by_role("heading", level=1, name=CLASH).wait_for()
    page.go_back()
    page.get_by_role("heading", level=1, name=SILENT).wait_for()
    page.get_by_role("link", name="All 4 findings").click()
    assert page.locator("#finding-1").bounding_box() is not None
    assert page.locator("#slider").count() == 0


def test_an_address_of_what_cannot_be_played_stays_in_the_list(opened: Opener) -> None:
    page = opened("#3", height=500)
    assert page.get_by_role("heading", name=NEVER).is_visible()
    box = page.locator("#finding-3").bounding_box()
    assert box is not None
    assert 0 <= box["y"] < 500


def test_an_opened_finding_jumps_to_the_moment_that_shows_it(opened: Opener) -> None:
    page = opened("#1")
    page.get_by_role("link", name=re.compile("It shows at")).click()
    assert "No sentence says what 2 does" in said(page)
    assert page.locator("#over .lost").count() == 1
    assert page.url.endswith("#1")


def test_an_opened_finding_plays(opened: Opener) -> None:
    page = opened("#2")
    page.get_by_label("Game").check()
    page.locator("#play").click()
    page.locator("#caption", has_text="1 comes out to the left corner").wait_for()
    assert page.locator("#play").get_attribute("aria-label") == "Stop"
    page.keyboard.press("Escape")
    page.locator("#finding-2").wait_for()


def test_after_coming_back_the_arrow_keys_belong_to_the_list_again(opened: Opener) -> None:
    page = opened("#1", height=500)
    page.keyboard.press("Escape")
    page.locator("#finding-1").wait_for()
    page.evaluate("scrollTo(0, 0)")
    page.keyboard.press("End")
    assert comes_true(page, "scrollY > 200")


def test_the_list_is_where_it_was_left(opened: Opener) -> None:
    page = opened(height=500)
    page.evaluate("document.getElementById('finding-2').scrollIntoView()")
    before = page.evaluate("scrollY")
    page.get_by_role("link", name="Show me finding 2").click()
    page.get_by_role("link", name="All 4 findings").click()
    assert comes_true(page, f"Math.abs(scrollY - {before}) < 3")


def test_the_book_stays_beside_the_findings_up_to_its_last_sentence(opened: Opener) -> None:
    page = opened(height=700)
    last = page.locator(".proof .habit").last
    page.evaluate("scrollTo(0, 700)")
    box = last.bounding_box()
    assert box is not None
    assert 0 < box["y"] < 700


def test_a_still_opens_its_possession_too(opened: Opener) -> None:
    page = opened()
    box = page.locator("#finding-1 .still").bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + box["width"] / 2, box["y"] + 20)
    page.locator("#slider").wait_for()
    assert page.url.endswith("#1")


def test_without_script_the_list_stands_and_offers_nothing_it_cannot_do(
    browser: Browser, tmp_path: Path, html: str
) -> None:
    file = tmp_path / "still.html"
    file.write_text(html, encoding="utf-8")
    page = browser.new_page(java_script_enabled=False)
    page.goto(file.as_uri())
    assert page.get_by_role("heading", name=SILENT).is_visible()
    assert page.locator("#finding-1 .still").is_visible()
    assert not page.locator("#finding-1 .button").is_visible()
    page.close()


@pytest.mark.parametrize("address", ["", "#2"])
@pytest.mark.parametrize("width", [320, 390, 820, 1440])
def test_nothing_has_to_be_scrolled_sideways(opened: Opener, width: int, address: str) -> None:
    page = opened(address, width=width, height=800)
    assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("width", [390, 1440])
def test_every_link_that_stands_alone_is_44_pixels_high(opened: Opener, width: int) -> None:
    for address, links in (("", ".button, .verdict a"), ("#2", ".ways-on a, .shows a")):
        for link in opened(address, width=width).locator(links).all():
            box = link.bounding_box()
            assert box is not None
            assert box["height"] >= 44


@pytest.mark.parametrize("address", ["", "#2"])
@pytest.mark.parametrize(("width", "light"), [(390, "light"), (1440, "light"), (1440, "dark")])
def test_axe_finds_nothing(opened: Opener, width: int, light: str, address: str) -> None:
    page = opened(address, width=width, color_scheme=light)
    page.wait_for_timeout(300)
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']})")
    assert [(v["id"], [node["html"][:120] for node in v["nodes"]]) for v in found["violations"]] == []


def test_a_clean_page_passes_axe_too(opened: Opener, clean: str) -> None:
    page = opened(page_html=clean)
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']})")
    assert [violation["id"] for violation in found["violations"]] == []


def test_print_is_black_on_white_and_keeps_a_finding_whole(opened: Opener) -> None:
    page = opened(color_scheme="dark")
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    for finding in page.locator(".find").all():
        assert finding.evaluate("node => getComputedStyle(node).breakInside") == "avoid"
    assert not page.locator(".button").first.is_visible()
    assert page.get_by_role("heading", name=STARTS).is_visible()


def test_forced_colours_replace_the_palette_at_night_too(opened: Opener) -> None:
    page = opened(color_scheme="dark", forced_colors="active")
    assert page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--floor').trim()") == "Canvas"
