"""The page in Chromium: nothing is fetched, the keyboard is enough, nothing moves for whoever asks for calm."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from backcut.motion.timeline import pose
from backcut.page import film_page, possession_page
from backcut.picture.show import Answer, Show

from .demo import SPOTS, demo, timeline, twenty_passes

AXE = Path(__file__).parents[1] / "vendor" / "axe-core" / "axe.min.js"
Opener = Callable[..., Page]


@pytest.fixture
def opened(browser: Browser, tmp_path: Path) -> Iterator[Opener]:
    """Opens a show at a width; at the end no error was told and nothing was asked of any network."""
    told: list[str] = []
    pages: list[Page] = []

    def opener(show: Show | str | None = None, width: int = 1440, height: int = 900, **settings: Any) -> Page:
        html = show if isinstance(show, str) else possession_page(show or demo())
        file = tmp_path / "page.html"
        file.write_text(html, encoding="utf-8")
        page = browser.new_page(viewport={"width": width, "height": height}, **settings)
        page.on("console", lambda message: told.append(message.text))
        page.on("pageerror", lambda error: told.append(str(error)))
        page.on("request", lambda request: told.append(request.url) if request.url.split(":")[0] != "data" else None)
        page.goto(file.as_uri())
        page.evaluate("document.fonts.ready.then(() => true)")
        pages.append(page)
        return page

    yield opener
    for page in pages:
        page.close()
    assert [text for text in told if not text.endswith("/page.html")] == []


def said(page: Page) -> str:
    return page.locator("#caption").inner_text().replace("\n", " ")


def place(page: Page, name: str) -> tuple[float, float]:
    found = re.match(r"translate\(([-\d.]+) ([-\d.]+)\)", page.locator(f"#{name}").get_attribute("transform") or "")
    assert found is not None
    return float(found[1]), float(found[2])


def test_the_still_picture_of_the_first_decision_comes_first(opened: Opener) -> None:
    page = opened()
    assert said(page).endswith(demo().moments[0].caption)
    assert page.locator("input[name=speed]:checked").get_attribute("value") == "still"
    assert page.locator("#play").get_attribute("aria-label") == "Play"
    assert page.evaluate("document.fonts.check('16px Literata')")


def test_the_keyboard_alone_goes_through_all_decisions_and_back(opened: Opener) -> None:
    page, moments = opened(), demo().moments
    for moment in moments[1:]:
        page.keyboard.press("ArrowRight")
        assert said(page).endswith(moment.caption)
    page.keyboard.press("ArrowRight")
    assert said(page).endswith(moments[-1].caption)
    page.keyboard.press("ArrowLeft")
    assert said(page).endswith(moments[-2].caption)
    page.keyboard.press("Home")
    assert said(page).endswith(moments[0].caption)
    page.keyboard.press("End")
    assert said(page).endswith(moments[-1].caption)


def test_a_clicker_goes_on_with_its_page_keys(opened: Opener) -> None:
    page = opened()
    page.keyboard.press("PageDown")
    assert said(page).endswith(demo().moments[1].caption)
    page.keyboard.press("PageUp")
    assert said(page).endswith(demo().moments[0].caption)


def test_the_sentence_that_won_is_marked_and_names_whom_it_beat(opened: Opener) -> None:
    page = opened()
    page.locator("[data-go='3']").click()
    won = page.locator(".habit.won")
    assert won.get_attribute("data-letter") == "A"
    assert won.get_attribute("aria-current") == "true"
    assert "beats Fill, which wanted 2 at the top." in won.inner_text().replace("\n", "")
    assert page.locator(".said .hot").inner_text() == "A"
    assert page.locator("#g2 use").is_visible()
    assert not page.locator("#g4 use").is_visible()


def test_the_strip_moves_the_time_by_keys_and_says_so(opened: Opener) -> None:
    page = opened()
    page.locator("#slider").focus()
    for _ in range(4):
        page.keyboard.press("ArrowRight")
    assert page.locator("#slider").get_attribute("aria-valuenow") == "0.8"
    assert page.locator("#slider").get_attribute("aria-valuetext") == "0.8 of 6.0 seconds, decision 2 of 5"
    assert said(page).endswith(demo().moments[1].caption)


def test_the_strip_can_be_dragged(opened: Opener) -> None:
    page = opened()
    box = page.locator("#slider").bounding_box()
    assert box is not None
    page.mouse.move(box["x"] + 30, box["y"] + 40)
    page.mouse.down()
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + 40, steps=5)
    page.mouse.up()
    assert float(page.locator("#slider").get_attribute("aria-valuenow") or 0) == pytest.approx(3.0, abs=0.1)
    assert said(page).endswith(demo().moments[3].caption)


@pytest.mark.parametrize("t_s", [0.0, 0.33, 0.95, 1.3, 2.47, 2.8, 3.61, 4.3, 5.99, 6.0])
def test_the_page_and_python_put_everybody_on_the_same_place(opened: Opener, t_s: float) -> None:
    page = opened()
    board = Path("src/backcut/page/static/board/pose.js").read_text(encoding="utf-8").replace("export ", "")
    found = page.evaluate(
        f"""(t) => {{ {board}
        const story = JSON.parse(document.getElementById("story").textContent);
        return pose(unpackAll(story.tracks), story.held, t); }}""",
        t_s * 100,
    )
    expected = pose(timeline(), t_s)
    for player, there in expected.players.items():
        assert found["players"][str(player)] == pytest.approx([v * 100 for v in there], abs=2.0)
    for player, (x, y, heading) in expected.defenders.items():
        assert found["defenders"][str(player)] == pytest.approx([x * 100, y * 100], abs=2.0)
        assert found["facing"][str(player)] == pytest.approx([heading], abs=4.0)
    assert found["ball"] == pytest.approx([v * 100 for v in expected.ball[:2]], abs=2.0)
    assert (found["held"] or [None])[0] == expected.holder


def test_every_still_of_the_page_is_the_still_that_python_draws(opened: Opener) -> None:
    page = opened()
    for index, moment in enumerate(demo().moments):
        page.locator(f"[data-go='{index}']").click()
        for player, (x, y) in pose(timeline(), moment.t_s).players.items():
            assert place(page, f"p{player}") == pytest.approx((x * 100, y * 100), abs=2.0)


def test_step_runs_to_the_next_decision_and_stops_there(opened: Opener) -> None:
    page = opened()
    page.get_by_label("Step").check()
    page.locator("#play").click()
    assert page.locator("#play").get_attribute("aria-label") == "Stop"
    page.locator("#play[aria-label=Play]").wait_for()
    assert said(page).endswith(demo().moments[1].caption)
    assert page.locator("#slider").get_attribute("aria-valuenow") == "0.7"


def test_at_game_speed_the_possession_runs_to_its_end(opened: Opener) -> None:
    page = opened()
    page.get_by_label("Game").check()
    page.locator("#play").focus()
    page.keyboard.press("Space")
    page.locator("#caption[aria-live=off]").wait_for()
    page.locator("#slider[aria-valuenow='6.0']").wait_for(timeout=15000)
    page.locator("#caption[aria-live=polite]").wait_for()
    assert place(page, "p2") == pytest.approx((20, 180), abs=1.0)


def test_whoever_asks_for_calm_sees_only_stills(opened: Opener) -> None:
    page = opened(reduced_motion="reduce")
    page.get_by_label("Game").check()
    page.locator("#play").click()
    times = page.evaluate(
        """() => new Promise((done) => {
          const seen = new Set();
          const end = performance.now() + 1200;
          const look = () => {
            seen.add(document.getElementById("slider").getAttribute("aria-valuenow"));
            performance.now() < end ? requestAnimationFrame(look) : done([...seen]);
          };
          look();
        })"""
    )
    stops = {f"{moment.t_s:.1f}" for moment in demo().moments}
    assert set(times) <= stops
    assert page.evaluate("document.getAnimations().length") == 0


@pytest.mark.parametrize("width", [320, 390, 820, 1440])
def test_nothing_has_to_be_scrolled_sideways(opened: Opener, width: int) -> None:
    for show in (demo(), twenty_passes()):
        page = opened(show, width=width, height=800)
        for key in ("", "ArrowRight", "ArrowRight", "ArrowRight", "End"):
            if key:
                page.keyboard.press(key)
            assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("width", [390, 1440])
def test_every_control_is_44_pixels_or_more(opened: Opener, width: int) -> None:
    page = opened(width=width)
    for control in page.locator("button, label, [role=slider], .decisions a").all():
        box = control.bounding_box()
        assert box is not None
        assert min(box["width"], box["height"]) >= 44


def test_on_a_phone_the_lit_sentence_is_on_the_first_screen(opened: Opener) -> None:
    page = opened(width=390, height=844)
    for index in (1, 2, 3):
        page.keyboard.press("ArrowRight")
        box = page.locator(".habit.won .says").first.bounding_box()
        assert box is not None, index
        assert box["y"] + box["height"] < 844


def test_the_playhead_of_a_long_possession_stays_in_view(opened: Opener) -> None:
    page = opened(twenty_passes(), width=820)
    for key in ("End", "Home", *["ArrowRight"] * 12):
        page.keyboard.press(key)
        strip, head = page.locator("#slider").bounding_box(), page.locator("#playhead").bounding_box()
        assert strip is not None
        assert head is not None
        assert strip["x"] <= head["x"] <= strip["x"] + strip["width"]


def test_the_light_follows_the_system_until_somebody_chooses(opened: Opener) -> None:
    page = opened(color_scheme="dark")
    ground = "getComputedStyle(document.body).backgroundColor"
    assert page.evaluate(ground) == "rgb(14, 20, 17)"
    page.get_by_label("Day").check()
    assert page.evaluate(ground) == "rgb(246, 248, 245)"
    page.get_by_label("Night").check()
    assert page.evaluate(ground) == "rgb(14, 20, 17)"


def test_print_is_black_on_white_even_at_night(opened: Opener) -> None:
    page = opened(color_scheme="dark")
    page.get_by_label("Night").check()
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    assert not page.locator(".time").is_visible()
    assert page.locator(".decisions").is_visible()


def test_without_script_the_page_still_reads(browser: Browser, tmp_path: Path) -> None:
    file = tmp_path / "still.html"
    file.write_text(possession_page(demo()), encoding="utf-8")
    page = browser.new_page(java_script_enabled=False)
    page.goto(file.as_uri())
    assert page.locator("#p1").is_visible()
    assert page.locator(".decisions").is_visible()
    assert not page.locator(".time").is_visible()
    assert not page.locator(".pick").is_visible()
    page.close()


@pytest.mark.parametrize(("width", "light"), [(390, "light"), (1440, "light"), (1440, "dark")])
def test_axe_finds_nothing(opened: Opener, width: int, light: str) -> None:
    page = opened(width=width, color_scheme=light)
    for key in ("", "ArrowRight", "End"):
        if key:
            page.keyboard.press(key)
        page.wait_for_timeout(300)
        page.evaluate(AXE.read_text(encoding="utf-8"))
        found = page.evaluate("axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']})")
        assert [(v["id"], [node["html"][:120] for node in v["nodes"]]) for v in found["violations"]] == []


def test_a_film_opens_too(opened: Opener) -> None:
    html = film_page(
        timeline(), SPOTS, demo().court, title="Clip", notes=[], at_spots=[(0.0, {1: "top"}), (2.0, {3: "left wing"})]
    )
    page = opened(html)
    page.keyboard.press("ArrowRight")
    assert said(page).endswith("3 has the ball, left wing.")
    assert json.loads(page.locator("#story").text_content() or "")["moments"][1]["t"] == 200


def test_in_a_long_book_the_sentence_that_won_is_in_sight_beside_the_floor(opened: Opener) -> None:
    show = demo()
    more = tuple(replace(show.sentences[-1], letter=chr(70 + i), cue=f"Wide {i}") for i in range(14))
    late = Answer(2, "fill", "S", "fills the top", lit=True)
    moment = replace(show.moments[2], answers=(late,))
    page = opened(replace(show, sentences=(*show.sentences, *more), moments=(show.moments[0], moment)))
    page.keyboard.press("ArrowRight")
    won, floor = page.locator(".won").bounding_box(), page.locator(".court .half").bounding_box()
    assert won is not None
    assert floor is not None
    assert page.locator(".won").get_attribute("data-letter") == "S"
    assert 0 <= won["y"] <= won["y"] + won["height"] <= 900
    assert 0 <= floor["y"] <= floor["y"] + floor["height"] <= 900


def test_a_run_is_wiped_away_behind_its_runner_and_a_shut_pass_goes_when_it_is_over(opened: Opener) -> None:
    page = opened()
    page.locator("[data-go='3']").click()
    cut = page.locator("#under .run.hot[data-runner='2']")
    assert cut.evaluate("node => node.style.strokeDasharray") in ("", "none")
    assert page.locator("#under .shut").evaluate("node => getComputedStyle(node).visibility") == "visible"
    page.locator("#slider").focus()
    for _ in range(5):
        page.keyboard.press("ArrowRight")
    assert 0.3 < -float(cut.evaluate("node => node.style.strokeDashoffset")) < 0.9
    assert page.locator("#under .shut").evaluate("node => getComputedStyle(node).visibility") == "hidden"


def test_axe_would_find_something(opened: Opener) -> None:
    page = opened()
    page.evaluate("document.getElementById('play').removeAttribute('aria-label')")
    page.evaluate("document.getElementById('play-word').textContent = ''")
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run({runOnly: ['wcag2a']})")
    assert "button-name" in [violation["id"] for violation in found["violations"]]
