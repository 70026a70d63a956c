"""Make the pictures of the documents: the live floor, a possession, a page of findings, sheets, a clip.

Needs Chromium on the path. Run: .venv/bin/python scripts/make_pictures.py
"""

from __future__ import annotations

import shutil
import sys
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

import av
import numpy as np
import pypdfium2
import uvicorn
from numpy.typing import NDArray
from playwright.sync_api import Browser, Page, sync_playwright

from backcut.cli.prove_page import page as findings
from backcut.engine.play import play
from backcut.offence.library import open_book, preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.page import possession_page
from backcut.picture.story import show
from backcut.prove.proof import prove
from backcut.teaching.clips.clip import clip
from backcut.teaching.clips.told import told_example
from backcut.teaching.drills.drill import Hall, drills
from backcut.teaching.examples import example
from backcut.teaching.sheets import PAPERS, cards_pdf, handout_pdf, page_pdf, poster_pdf, stamp
from backcut.teaching.sheets.drilled import card_of, plan_of
from backcut.teaching.tonight.plan import evening
from backcut.web.app import make_app
from backcut.web.serve import listen
from backcut.web.shelf import Shelf

PICTURES = Path(__file__).parents[1] / "docs" / "pictures"
MOVES = "T>RW, RW>T, deny 4, T>cutter, lay-up"
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run", "--disable-sync"]

#: File, width, height, colour scheme.
SHOTS = (
    ("school-team.png", 1440, 940, "light"),
    ("school-team-night.png", 1440, 940, "dark"),
    ("school-team-tablet.png", 820, 1180, "light"),
    ("school-team-phone.png", 390, 844, "light"),
)
#: The live floor: file, width, height, and how the system likes it.
FLOORS: tuple[tuple[str, int, int, dict[str, str]], ...] = (
    ("floor.png", 1440, 940, {"color_scheme": "light"}),
    ("floor-night.png", 1440, 940, {"color_scheme": "dark"}),
    ("floor-forced.png", 1440, 940, {"forced_colors": "active"}),
    ("floor-print.png", 794, 1123, {"media": "print"}),
    ("floor-tablet.png", 820, 1180, {"color_scheme": "light"}),
    ("floor-phone.png", 390, 844, {"color_scheme": "light"}),
)


def main() -> None:
    """Write every picture of `SHOTS`."""
    chromium = shutil.which("chromium")
    if chromium is None:
        sys.exit("These pictures are made with Chromium, and none is on the path.")
    book, _ = open_book("school-team")
    story = show(book, play(book, book.start(), moves_from_text(MOVES)))
    denied = next(i for i, moment in enumerate(story.moments) if (moment.event or "").startswith("X4 denies"))
    PICTURES.mkdir(exist_ok=True)
    _on_paper()
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        file = Path(folder) / "page.html"
        file.write_text(possession_page(story), "utf-8")
        browser = playwright.chromium.launch(executable_path=chromium, args=ARGUMENTS)
        for name, width, height, scheme in SHOTS:
            dark = scheme == "dark"
            page = browser.new_page(
                viewport={"width": width, "height": height}, color_scheme="dark" if dark else "light"
            )
            page.goto(file.as_uri())
            for _ in range(denied):
                page.keyboard.press("ArrowRight")
            page.wait_for_timeout(600)
            page.screenshot(path=PICTURES / name)
            page.close()
        found = Path(folder) / "holes.html"
        found.write_text(_findings(), "utf-8")
        page = browser.new_page(viewport={"width": 1440, "height": 900})
        page.goto(found.as_uri())
        page.wait_for_timeout(600)
        page.screenshot(path=PICTURES / "holes.png")
        page.close()
        with _server(Path(folder)) as address:
            _floors(browser, address)
        browser.close()


@contextmanager
def _server(folder: Path) -> Iterator[str]:
    """The live floor on a port of its own, with an empty shelf."""
    listening = listen("127.0.0.1", None)
    port = int(listening.getsockname()[1])
    server = uvicorn.Server(uvicorn.Config(make_app(Shelf(folder / "books"), port=port), log_level="warning"))
    thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
    thread.start()
    yield f"http://127.0.0.1:{port}/"
    server.should_exit = True
    thread.join()


def _floors(browser: Browser, address: str) -> None:
    """The live floor as X4 denies, then the projector, a sentence open, and what a change of it makes different."""
    for name, width, height, likes in FLOORS:
        page = _denied(browser, address, width, height)
        page.emulate_media(**likes)  # type: ignore[arg-type]
        page.wait_for_timeout(400)
        page.screenshot(path=PICTURES / name)
        page.close()
    page = _denied(browser, address, 1440, 940)
    page.click("#projector")
    page.wait_for_timeout(400)
    page.screenshot(path=PICTURES / "floor-projector.png")
    page.keyboard.press("Escape")
    page.click("text=the first open spot")
    page.wait_for_timeout(400)
    page.screenshot(path=PICTURES / "floor-sentence.png")
    page.click("text=the corner opposite the ball")
    page.wait_for_selector("#differs:not([hidden])")
    page.locator("#differs").screenshot(path=PICTURES / "floor-changed.png")
    page.close()


def _denied(browser: Browser, address: str, width: int, height: int) -> Page:
    """The demo possession, stopped at the moment a defender denies."""
    page = browser.new_page(viewport={"width": width, "height": height})
    page.goto(address)
    page.wait_for_selector("#caption")
    page.click("#play")
    page.keyboard.press("Home")
    while "denies" not in (page.text_content("#caption") or ""):
        page.keyboard.press("ArrowRight")
    return page


def _on_paper() -> None:
    """Tonight's page, a handout, the poster and a clip's first picture, of a book whose date never changes."""
    book, _ = open_book("first-month")
    shown, mark, a4 = example(book, 2), stamp(book, date(2026, 11, 26)), PAPERS["a4"]
    page = page_pdf(plan_of(evening(book, Hall(9, 1, 4), 45)), mark, a4)
    cards = cards_pdf([card_of(one) for one in drills(shown, Hall(9, 1, 4))], mark, a4)
    sheets = {"tonight": page, "handout": handout_pdf(shown, mark, a4), "poster": poster_pdf(book, mark, a4)}
    for name, data in (sheets | {"cards": cards}).items():
        drawn = pypdfium2.PdfDocument(data)[0].render(scale=900 / 842).to_numpy()[..., :3]
        (PICTURES / f"{name}.png").write_bytes(_png(np.ascontiguousarray(drawn[..., ::-1])))
    (PICTURES / "clip.png").write_bytes(clip(told_example(shown)).poster)


def _png(drawn: NDArray[np.uint8]) -> bytes:
    coder = av.CodecContext.create("png", "w")
    coder.width, coder.height, coder.pix_fmt = drawn.shape[1], drawn.shape[0], "rgb24"
    return b"".join(bytes(part) for part in [*coder.encode(av.VideoFrame.from_ndarray(drawn)), *coder.encode(None)])


def _findings() -> str:
    """The page of the hole with which the README begins."""
    text = preset_text("school-team").replace("the first open spot", "the corner opposite the ball")
    text = text.replace("Title: School team", "Title: Our team")
    return findings(prove(book_from_text(text)[0]), None)


if __name__ == "__main__":
    main()
