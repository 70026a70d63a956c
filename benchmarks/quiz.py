"""How long a quiz takes to make, and to show its first question on a slow phone, beside an empty page in the same run.

Chromium with a quarter of the processor; the page comes as a file and from the loopback. Median of so many visits:
`python benchmarks/quiz.py 11`.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from shutil import which

from playwright.sync_api import Browser, sync_playwright

from backcut.motion.squads import SQUADS
from backcut.offence.library import open_book, presets
from backcut.teaching.quizzes import questions, quiz, quiz_page

VISITS = int(sys.argv[1]) if len(sys.argv) > 1 else 7
QUESTIONS = 10
SLOWER = 4
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run", "--disable-sync"]
EMPTY = "<!doctype html><html lang=en><title>Empty</title><p>Empty</p></html>\n"


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


@contextmanager
def loopback(folder: Path) -> Iterator[str]:
    """The folder from this machine's own number."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_address[1]}"
    finally:
        server.shutdown()
        thread.join()


def first_screen_ms(browser: Browser, address: str) -> float:
    """Milliseconds from the call to the first picture with everything on it, with a cold cache."""
    times = []
    for _ in range(VISITS):
        context = browser.new_context(viewport={"width": 390, "height": 844})
        page = context.new_page()
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        begin = time.perf_counter()
        page.goto(address, wait_until="load")
        page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
        times.append((time.perf_counter() - begin) * 1000)
        context.close()
    return statistics.median(times)


def make(folder: Path) -> None:
    """A page for each shipped book, and how long it took."""
    for name in presets():
        book, _ = open_book(name, SQUADS)
        begin = time.perf_counter()
        every = len(questions(book))
        space_s = time.perf_counter() - begin
        begin = time.perf_counter()
        text = quiz_page(book, quiz(book, QUESTIONS, 1))
        made_s = time.perf_counter() - begin
        (folder / f"{name}.html").write_text(text, "utf-8")
        print(
            f"{name}: {every} questions found in {space_s:.2f} s; a page of {QUESTIONS} made in {made_s:.2f} s, "
            f"{len(text.encode()) / 1000:.0f} kB"
        )


def main() -> None:
    """Print all of it."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        make(folder)
        (folder / "empty.html").write_text(EMPTY, "utf-8")
        chromium = which("chromium")
        if chromium is None:
            print("no chromium here: the first screen was not measured")
            return
        with sync_playwright() as playwright, loopback(folder) as address:
            browser = playwright.chromium.launch(executable_path=chromium, args=ARGUMENTS)
            for way, base in (("file", folder.as_uri()), ("loopback", address)):
                empty = first_screen_ms(browser, f"{base}/empty.html")
                ours = first_screen_ms(browser, f"{base}/school-team.html")
                print(
                    f"first question, {way}, a quarter of the processor: {ours:.0f} ms; an empty page {empty:.0f} ms; "
                    f"ratio {ours / empty:.1f}"
                )
            browser.close()


if __name__ == "__main__":
    main()
