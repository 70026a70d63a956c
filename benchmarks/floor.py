"""How fast the live floor is: a move and a changed sentence on the server; in Chromium from the hand to the picture.

Run with a number for more moves: `python benchmarks/floor.py 1000`. References in the same run: the same possession
played from nothing, `json.dumps` of the same answer, an empty page, and a move while nothing else is at work.
"""

from __future__ import annotations

import json
import random
import shutil
import statistics
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import uvicorn
from playwright.sync_api import Browser, Page, sync_playwright

from backcut.web import floor as floors
from backcut.web import stops, view
from backcut.web.app import make_app
from backcut.web.changes import Choose, Happen
from backcut.web.envelope import FloorData
from backcut.web.evening import Evening
from backcut.web.serve import listen
from backcut.web.shelf import Shelf

MOVES = int(sys.argv[1]) if len(sys.argv) > 1 else 200
LONGEST = 8  # moves of one possession before it begins again
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run", "--disable-sync"]

#: Presses a move under "What if"; gives the milliseconds until a disc or the ball is drawn somewhere else.
MOVE = """async (share) => {
  const drawn = () => [...document.querySelectorAll('.half [id^=p], .half #ball, .half #ball use')]
    .map((n) => n.getAttribute('transform') + n.getAttribute('x')).join();
  await new Promise(requestAnimationFrame);
  const can = [...document.querySelectorAll('.can')].filter((n) => / passes to | skips to /.test(n.textContent));
  if (!can.length) return null;
  const button = can[Math.floor(share * can.length)];
  const before = drawn();
  const begin = performance.now();
  button.click();
  while (drawn() === before) await new Promise(requestAnimationFrame);
  return performance.now() - begin;
}"""
#: Chooses another value; gives the milliseconds until the book and the floor show it.
EDIT = """async (words) => {
  const labels = [...document.querySelectorAll('.pick-one label')];
  const label = labels.find((n) => n.querySelector('b').textContent === words);
  const stage = document.querySelector('#stage').firstChild;
  const begin = performance.now();
  label.querySelector('input').click();
  while (document.querySelector('#stage').firstChild === stage) await new Promise(requestAnimationFrame);
  return performance.now() - begin;
}"""
FRAMES = """async () => {
  let n = 0, begin = performance.now();
  while (performance.now() - begin < 4000) { await new Promise(requestAnimationFrame); n += 1; }
  return n / ((performance.now() - begin) / 1000);
}"""


def spread(times_ms: list[float]) -> str:
    """Median and 99th percentile."""
    ordered = sorted(times_ms)
    return f"median {statistics.median(ordered):.0f} ms, 99th {ordered[int(len(ordered) * 0.99)]:.0f} ms"


def forget() -> None:
    """Nothing that was played or drawn before is known any more on this side of the engine."""
    for kept in (floors.played, floors.read, stops.told, stops._cans, stops._right, view._play, view._book):
        kept.cache_clear()


def timed(act: Callable[[], FloorData]) -> tuple[float, FloorData]:
    """Milliseconds, and what came of it."""
    begin = time.perf_counter()
    made = act()
    return (time.perf_counter() - begin) * 1000, made


def server(folder: Path) -> None:
    """A move and a changed sentence without browser and network."""
    evening, draw = Evening(Shelf(folder)), random.Random(1)
    here = evening.open("school-team", moves="1>2")
    grown: dict[int, list[float]] = {}
    for _ in range(MOVES):
        length = len(here.play.moves)
        if length >= LONGEST:
            here = evening.open("school-team", moves=draw.choice(["1>2", "1>3"]))
            continue
        passes = [can for can in here.play.stops[-1].can if can.kind in ("pass", "skip", "deny")]
        can = draw.choice(passes)
        happens = Happen(kind="happen", keep=can.keep, move=can.move)
        took, here = timed(lambda here=here, happens=happens: evening.change(here.id, here.revision, happens))  # type: ignore[misc]
        grown.setdefault(length + 1, []).append(took)
        if not here.play.stops[-1].can:
            here = evening.open("school-team", moves="1>2")
    for length in (2, 5, LONGEST):
        print(f"a move more, to {length} moves: {spread(grown[length])}")
    last = here
    begin = time.perf_counter()
    json.dumps(json.loads(last.model_dump_json()))
    dumps = (time.perf_counter() - begin) * 1000
    forget()
    scratch, _ = timed(lambda: evening.look(last.id))
    print(f"the same from nothing: {scratch:.0f} ms; json of one answer: {dumps:.1f} ms")
    edits = []
    for value in ("opposite corner", "first open", "end of the line", "fewest", "opposite own", "first open"):
        change = Choose(kind="choose", name="exit", value=value)
        took, last = timed(lambda last=last, change=change: evening.change(last.id, last.revision, change))  # type: ignore[misc]
        edits.append(took)
    many, ratio = len(last.play.moves), max(edits) / scratch
    print(f"another way out, {many} moves played again: {spread(edits)}, {ratio:.1f} x from nothing")


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """The server, with an empty shelf."""
    listening = listen("127.0.0.1", None)
    port = int(listening.getsockname()[1])
    made = uvicorn.Server(uvicorn.Config(make_app(Shelf(folder), port=port), log_level="error"))
    thread = threading.Thread(target=made.run, kwargs={"sockets": [listening]})
    thread.start()
    try:
        yield f"http://127.0.0.1:{port}/"
    finally:
        made.should_exit = True
        thread.join()


def moves(page: Page, count: int) -> list[float]:
    """Milliseconds of so many moves, from the press to the first disc that moves."""
    draw, out, made = random.Random(2), list[float](), 0
    while len(out) < count:
        took = page.evaluate(MOVE, draw.random()) if made < LONGEST else None
        if took is None:
            page.get_by_text("Again from the start").click()
            page.wait_for_timeout(80)
            made = 0
        else:
            out.append(float(took))
            made += 1
        page.keyboard.press("End")
        page.wait_for_timeout(30)
    return out


def visit(browser: Browser, address: str) -> None:
    """Everything that a browser shows."""
    page = browser.new_context(bypass_csp=True, viewport={"width": 1440, "height": 900}).new_page()
    page.goto("about:blank")
    empty = float(page.evaluate(FRAMES))
    wire = page.context.new_cdp_session(page)
    wire.send("Network.enable")
    sizes: dict[str, float] = {}
    kinds: dict[str, str] = {}
    wire.on("Network.responseReceived", lambda e: kinds.__setitem__(e["requestId"], e["type"]))
    wire.on("Network.loadingFinished", lambda e: sizes.__setitem__(e["requestId"], e["encodedDataLength"]))
    begin = time.perf_counter()
    page.goto(address)
    page.wait_for_selector("#play.playing")
    usable = (time.perf_counter() - begin) * 1000
    page.wait_for_load_state("networkidle")
    bare = sum(size for one, size in sizes.items() if kinds.get(one) != "Font")
    print(f"usable after {usable:.0f} ms with a cold cache; {bare / 1000:.0f} kB over the wire without fonts")
    quiet = moves(page, MOVES)
    print(f"from the press to the first disc that moves, {MOVES} moves: {spread(quiet)}")
    page.get_by_role("button", name="the first open spot").click()
    values = [
        "the corner opposite the ball",
        "the end of the line",
        "the side with the fewest of us",
        "the first open spot",
    ]
    edits = [float(page.evaluate(EDIT, values[i % len(values)])) for i in range(20)]
    print(f"from the choice to the possession played again: {spread(edits)}")
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Look at every situation").click()
    busy = moves(page, 20)
    print(
        f"the same move while a proof runs: {spread(busy)}, {statistics.median(busy) / statistics.median(quiet):.1f} x"
    )
    page.locator("[name=speed][value=game]").check(force=True)
    page.get_by_text("A possession drawn").click()
    page.wait_for_timeout(300)
    wire.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    playing = float(page.evaluate(FRAMES))
    print(f"frames a second: empty page {empty:.1f}, playing with a quarter of the processor {playing:.1f}")
    print(f"ratio playing / empty page: {playing / empty:.2f}")


def main() -> None:
    """Print all of it."""
    with tempfile.TemporaryDirectory() as folder:
        server(Path(folder))
        chromium = shutil.which("chromium")
        if chromium is None:
            print("no chromium here: nothing was measured in a browser")
            return
        with sync_playwright() as playwright, serving(Path(folder)) as address:
            browser = playwright.chromium.launch(executable_path=chromium, args=ARGUMENTS)
            visit(browser, address)
            browser.close()


if __name__ == "__main__":
    main()
