"""What leaves the floor stands alone: it needs nothing from here, and names no file it should not."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import unquote
from xml.etree import ElementTree

import numpy as np
import pytest
from playwright.sync_api import Browser, expect
from starlette.testclient import TestClient
from tests.web.conftest import visited
from tests.web.floors import Visitor, client

from backcut.motion.timeline import pose
from backcut.picture.marks import DISC_CM
from backcut.web.floor import Floor
from backcut.web.stops import told

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def asks(tmp_path_factory: pytest.TempPathFactory) -> TestClient:
    return client(tmp_path_factory.mktemp("shelf"))


def shared(asks: TestClient, coach: Visitor, name: str) -> str:
    answer = asks.get(f"/share/{coach.floor['id']}/{name}")
    assert answer.status_code == 200, answer.text
    return answer.text


@pytest.mark.parametrize("light", ["day", "night", "print"])
def test_a_drawing_has_everybody_where_the_pose_has_them_and_fetches_nothing(asks: TestClient, light: str) -> None:
    coach = Visitor(asks)
    here = told(Floor(coach.floor["book"]["text"], "", tuple(m["text"] for m in coach.floor["play"]["moves"])))
    for stop in range(len(here.stops)):
        text = shared(asks, coach, f"moment.svg?stop={stop}&light={light}")
        drawn = ElementTree.fromstring(text)
        at = here.show.timeline
        for number, track in at.players.items():
            mark = next(g for g in drawn.iter(f"{SVG}g") if g.get("id") == f"p{number}")
            found = re.fullmatch(r"translate\((-?\d+) (-?\d+)\)", mark.get("transform") or "")
            assert found is not None
            x, y = track.at(here.show.moments[stop].t_s)[:2]
            assert abs(int(found[1]) - x * 100) <= 1
            assert abs(int(found[2]) - y * 100) <= 1
        links = re.findall(r'(?:href|src)="([^"]*)"|url\(([^)]*)\)', text)
        assert all((a or b).startswith(("#", "data:")) for a, b in links)
        assert "Literata" in text


def test_black_and_white_is_black_and_white(asks: TestClient) -> None:
    text = shared(asks, Visitor(asks), "moment.svg?light=print")
    rules = text[text.index("svg{") : text.index("/* the floor;")]
    own = dict(re.findall(r"--([\w-]+):\s*(#[0-9A-Fa-f]{3,6})", rules))  # of two the later holds, as in a style sheet
    assert set(own) >= {"page", "ink", "mark"}
    for colour in own.values():
        shades = re.findall("..", colour[1:]) if len(colour) == 7 else list(colour[1:])
        assert len(set(shades)) == 1, own


def test_a_whole_possession_is_one_page_with_its_own_policy(asks: TestClient) -> None:
    page = shared(asks, Visitor(asks), "page.html")
    assert page.startswith("<!doctype html>")
    assert "script-src 'sha256-" in page
    assert "All stand." not in page.split('id="story"')[0].split("decisions")[0]
    assert not re.search(r'(?:href|src)="(?!#|data:)', page)


@pytest.mark.parametrize(
    ("title", "plain", "true"),
    [
        ("<script>alert(1)</script>", "script alert(1) script.txt", "script alert(1) script.txt"),
        ("../../etc/passwd", "etc passwd.txt", "etc passwd.txt"),
        ("Ünïted", "United.txt", "Ünïted.txt"),
        ("مدرسة", "book.txt", "مدرسة.txt"),
        ('a"; b', "a ; b.txt", "a ; b.txt"),
        ("a\uff02\uff0f..", "a.txt", "a\uff02\uff0f.txt"),  # signs that become a quote and a slash in plain letters
        ("a\u202etxt.exe", "atxt.exe.txt", "a txt.exe.txt"),  # a sign that turns the writing round
        ("a" * 300, "a" * 60 + ".txt", "a" * 60 + ".txt"),
    ],
)
def test_a_title_never_makes_a_file_name_that_leads_elsewhere(
    asks: TestClient, title: str, plain: str, true: str
) -> None:
    coach = Visitor(asks)
    assert coach.change({"kind": "line", "key": "title", "value": title}) == 200
    answer = asks.get(f"/share/{coach.floor['id']}/book.txt")
    named = re.fullmatch(
        r"attachment; filename=\"([^\"]*)\"; filename\*=UTF-8''(.*)", answer.headers["content-disposition"]
    )
    assert named is not None
    assert named[1] == plain
    assert unquote(named[2]) == true
    assert answer.text == coach.floor["book"]["text"]
    page = shared(asks, coach, "page.html")
    assert "<script>alert" not in page
    assert "<script>alert" not in shared(asks, coach, "moment.svg")


def test_what_is_not_there_is_refused_in_the_one_form(asks: TestClient, tmp_path: Path) -> None:
    coach = Visitor(asks)
    for path, status in (("moment.svg?stop=400", 422), ("moment.svg?light=red", 422), ("nothing.svg", 404)):
        answer = asks.get(f"/share/{coach.floor['id']}/{path}")
        assert answer.status_code == status
        assert answer.json()["ok"] is False
    assert asks.get("/share/nobody/book.txt").status_code == 404


def test_a_possession_is_named_after_its_moves_and_a_drawing_after_its_place(asks: TestClient) -> None:
    coach = Visitor(asks, book="school-team", moves="1>2, deny 4")
    base = f"/share/{coach.floor['id']}"
    for path, name in (
        ("page.html", "School team 1-2, deny 4.html"),
        ("moment.svg?stop=1&save=true", "School team 2.svg"),
    ):
        assert f'filename="{name}"' in asks.get(f"{base}/{path}").headers["content-disposition"]
    assert "content-disposition" not in asks.get(f"{base}/moment.svg").headers


def test_a_title_with_a_sign_that_no_drawing_may_hold_still_draws(asks: TestClient) -> None:
    coach = Visitor(asks)
    assert coach.change({"kind": "line", "key": "title", "value": "Red\uffff team\ufffe"}) == 200
    drawn = ElementTree.fromstring(shared(asks, coach, "moment.svg"))
    assert "Red team" in [text.text for text in drawn.iter(f"{SVG}text")]


def test_a_long_title_and_caption_stay_on_the_paper(asks: TestClient, browser: Browser) -> None:
    coach = Visitor(asks)
    assert coach.change({"kind": "line", "key": "title", "value": "Our first book of the autumn " * 8}) == 200
    last = len(coach.floor["play"]["stops"]) - 1
    page = browser.new_page()
    for stop in (0, last):
        page.set_content(shared(asks, coach, f"moment.svg?stop={stop}&wide=800"))
        assert page.locator("svg.half").get_attribute("width") == "800"
        page.evaluate("document.fonts.ready")
        paper = page.locator(".paper").bounding_box()
        assert paper is not None
        for words in page.locator(".words").all():
            box = words.bounding_box()
            assert box is not None
            assert box["width"] > 0
            assert box["x"] + box["width"] < paper["x"] + paper["width"]
            assert box["y"] + box["height"] < paper["y"] + paper["height"]
    page.close()


#: The shared picture as it is made in the page; of every disc, a square of grey values round its place.
PICTURE = """async ([address, places, half]) => {
  const { pictureOf } = await import('/static/floor/share.js');
  const picture = await createImageBitmap(await pictureOf(address));
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [picture.width, picture.height];
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  pen.drawImage(picture, 0, 0);
  const square = ([x, y]) => {
    const wide = 2 * half + 1;
    const all = pen.getImageData(Math.round(x) - half, Math.round(y) - half, wide, wide).data;
    return Array.from({ length: wide * wide }, (_, i) => all[4 * i]);
  };
  return { size: [picture.width, picture.height], squares: places.map(square) };
}"""


def ring_offset_px(square: list[float], radius_px: float, x: float, y: float) -> tuple[float, float]:
    """How far the white disc in a square lies from (x, y), by its rim wherever nothing lies over it."""
    side = round(len(square) ** 0.5)
    grey, half = np.array(square, float).reshape(side, side), side // 2
    sub_x, sub_y = x - round(x), y - round(y)
    found: list[tuple[float, float, float]] = []
    for angle in np.linspace(0, 2 * np.pi, 48, endpoint=False):
        out = np.arange(radius_px - 6, radius_px + 6, 0.25)
        rows = np.rint(half + sub_y + out * np.sin(angle)).astype(int)
        columns = np.rint(half + sub_x + out * np.cos(angle)).astype(int)
        dark = 255 - grey[rows, columns]
        if dark[0] < 40 and dark.max() > 150 and dark[-1] < 80:  # white, ink, floor: nothing lies over the rim here
            found.append((np.cos(angle), np.sin(angle), float((dark * out).sum() / dark.sum())))
    assert len(found) > 12, "This disc has no rim."
    # A circle whose middle is off by (a, b) has its rim at r + a cos + b sin.
    rays = np.array([[c, s, 1.0] for c, s, _ in found])
    a, b, _ = np.linalg.lstsq(rays, np.array([at for *_, at in found]), rcond=None)[0]
    return float(a), float(b)


def test_in_a_picture_made_on_the_page_everybody_stands_where_the_pose_has_him(browser: Browser, address: str) -> None:
    with visited(browser, address) as page:
        ident = page.evaluate("sessionStorage.getItem('backcut-floor')")
        data = page.request.get(f"{address}/api/floors/{ident}").json()["data"]
        here = told(Floor(data["book"]["text"], data["play"]["start"], tuple(m["text"] for m in data["play"]["moves"])))
        for stop in (0, len(here.stops) - 1):
            path = f"/share/{ident}/moment.svg?stop={stop}"
            drawn = ElementTree.fromstring(page.request.get(address + path).text())
            left, top, wide, high = map(float, (drawn.get("viewBox") or "").split())
            scale = 1600 / wide
            at = pose(here.show.timeline, here.show.moments[stop].t_s)
            free = {n: xy for n, xy in at.players.items() if n != at.holder}
            places = [((x * 100 - left) * scale, (y * 100 - top) * scale) for x, y, *_ in free.values()]
            radius = DISC_CM * scale
            made = page.evaluate(PICTURE, [path, places, round(radius + 8)])
            assert made["size"] == [1600, pytest.approx(1600 * high / wide, abs=1)]
            for square, (x, y) in zip(made["squares"], places, strict=True):
                assert max(map(abs, ring_offset_px(square, radius, x, y))) <= 1


def test_a_floor_that_is_gone_says_so_instead_of_a_picture(browser: Browser, address: str) -> None:
    with visited(browser, address, refusals=True) as page:
        page.route("**/moment.svg*", lambda route: route.abort())
        page.locator("#open-share").click()
        page.locator("dialog").get_by_text("Picture", exact=True).click()
        expect(page.locator("dialog .said-line")).to_contain_text("The picture did not come.")


def test_the_drawing_that_is_saved_is_the_one_that_is_seen(browser: Browser, address: str) -> None:
    with visited(browser, address) as page:
        page.locator("#open-share").click()
        page.locator("#share-light").select_option("print")
        with page.expect_download() as sent:
            page.locator("dialog").get_by_text("Drawing", exact=True).click()
        assert "--page:#FFF" in sent.value.path().read_text("utf-8")


def sheets(printed: bytes) -> int:
    """How many sheets a PDF has."""
    return len(re.findall(rb"/Type\s*/Page\b", printed))


def test_the_decisions_begin_a_sheet_of_their_own_even_where_there_is_room(browser: Browser, address: str) -> None:
    with visited(browser, address) as page:
        page.locator("#play").click()
        for other in ("#book", ".reasons"):
            page.locator(other).evaluate("(node) => node.style.setProperty('display', 'none')")
        assert sheets(page.pdf(format="A4")) == 2


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_on_paper_the_page_is_two_sheets_without_a_button(browser: Browser, address: str, paper: str) -> None:
    with visited(browser, address, color_scheme="dark") as page:
        page.locator("#play").click()
        page.keyboard.press("Home")
        page.keyboard.press("ArrowRight")
        page.locator("#open-share").click()
        assert sheets(page.pdf(format=paper)) == 2
        page.emulate_media(media="print", color_scheme="dark")
        assert page.locator(":is(button:not(.tab, .choice), select, input, dialog, #findings):visible").count() == 0
        for seen in ("#stamp", "#stage .half", "#caption", ".habit.won", "#now", ".decisions"):
            assert page.locator(seen).first.is_visible(), seen
        assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"


def test_frozen_the_paper_asks_and_does_not_tell(browser: Browser, address: str) -> None:
    with visited(browser, address) as page:
        page.locator("#play").click()
        page.get_by_role("button", name="Freeze and ask").click()
        page.emulate_media(media="print")
        assert page.locator("#asking li").count() == 5
        assert page.locator(":is(#asking select, #asking button, #now, .decisions):visible").count() == 0
