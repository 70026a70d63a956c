"""Make the pictures of the documents: a played possession, at the moment a defender denies, and a page of findings.

Needs Chromium on the path. Run: .venv/bin/python scripts/make_pictures.py
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from backcut.cli.prove_page import page as findings
from backcut.engine.play import play
from backcut.offence.library import open_book, preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.page import possession_page
from backcut.picture.story import show
from backcut.prove.proof import prove

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


def main() -> None:
    """Write every picture of `SHOTS`."""
    chromium = shutil.which("chromium")
    if chromium is None:
        sys.exit("These pictures are made with Chromium, and none is on the path.")
    book, _ = open_book("school-team")
    story = show(book, play(book, book.start(), moves_from_text(MOVES)))
    denied = next(i for i, moment in enumerate(story.moments) if (moment.event or "").startswith("X4 denies"))
    PICTURES.mkdir(exist_ok=True)
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
        browser.close()


def _findings() -> str:
    """The page of the hole with which the README begins."""
    text = preset_text("school-team").replace("the first open spot", "the corner opposite the ball")
    text = text.replace("Title: School team", "Title: Our team")
    return findings(prove(book_from_text(text)[0]), None)


if __name__ == "__main__":
    main()
