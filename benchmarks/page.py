"""How big the page of a 20-pass possession is, and how smoothly it scrubs in Chromium beside an empty page."""

from __future__ import annotations

import base64
import re
import shutil
import tempfile
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from backcut.engine.choose import allowed
from backcut.engine.play import one_step
from backcut.engine.possession import Step
from backcut.offence.event import EventKind
from backcut.offence.library import open_book
from backcut.page import possession_page
from backcut.picture.story import show

PASSES = 20
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run", "--disable-sync"]

#: Frames a second while a script does something in every frame for three seconds.
FRAMES = """async (busy) => {
  const act = new Function('n', busy);
  let n = 0, begin = performance.now();
  while (performance.now() - begin < 3000) {
    await new Promise(requestAnimationFrame);
    act(n++);
  }
  return n / ((performance.now() - begin) / 1000);
}"""


def twenty_passes() -> str:
    """The page of twenty neighbour passes by the school team."""
    book, _ = open_book("school-team")
    situation, steps = book.start(), list[Step]()
    for number in range(PASSES):
        options = [event for event in allowed(book, situation) if event.kind is EventKind.PASS]
        steps.append(one_step(book, situation, options[number % len(options)]))
        situation = steps[-1].after
    return possession_page(show(book, steps))


def frames(page: Page, busy: str) -> float:
    """Frames a second while `busy` runs in every frame."""
    return float(page.evaluate(FRAMES, busy))


def main() -> None:
    """Print the sizes, the frame rates and their ratio."""
    html = twenty_passes()
    fonts = sum(len(base64.b64decode(font)) for font in re.findall(r"font/woff2;base64,([A-Za-z0-9+/=]+)", html))
    bare = re.sub(r"font/woff2;base64,[A-Za-z0-9+/=]+", "", html)
    print(f"page of {PASSES} passes: {len(bare.encode()) / 1000:.0f} kB without fonts, fonts {fonts / 1000:.0f} kB")
    chromium = shutil.which("chromium")
    if chromium is None:
        print("no chromium here: scrubbing was not measured")
        return
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        file = Path(folder) / "page.html"
        file.write_text(html, "utf-8")
        browser = playwright.chromium.launch(executable_path=chromium, args=ARGUMENTS)
        # The benchmark evaluates its own script, which the page's content policy would refuse.
        page = browser.new_context(bypass_csp=True, viewport={"width": 1440, "height": 900}).new_page()
        page.goto("about:blank")
        empty = frames(page, "")
        page.goto(file.as_uri())
        still = frames(page, "")
        key = "n % 40 < 20 ? 'ArrowRight' : 'ArrowLeft'"
        slider = "document.querySelector('[role=slider]')"
        scrub = frames(
            page,
            f"{slider}.dispatchEvent(new KeyboardEvent('keydown', {{key: {key}, bubbles: true, cancelable: true}}))",
        )
        browser.close()
    print(f"frames a second: empty page {empty:.1f}, this page at rest {still:.1f}, while scrubbing {scrub:.1f}")
    print(f"ratio scrubbing / empty page: {scrub / empty:.2f}")


if __name__ == "__main__":
    main()
