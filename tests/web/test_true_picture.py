"""The picture is never wrong: while it plays, sixty things at random, and after each everybody is where Python has him.

What is looked at is the screen: where each disc and the ball lie in pixels, and the time that the time line shows.
"""

from __future__ import annotations

import random
import re
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page
from tests.web.conftest import visited

from backcut.motion.timeline import Timeline, pose
from backcut.web.floor import Floor
from backcut.web.stops import told

THINGS = 60
#: The time line says tenths of a second: the true time lies this far around it, and is looked for in these steps.
AROUND_S, STEP_S = 0.06, 0.001
WITHIN_PX = 1.0

Look = dict[str, Any]
#: One look: everything in the same instant. box and view box map the floor to pixels.
LOOK = """() => {
  const half = document.querySelector('#stage .half'), box = half.getBoundingClientRect();
  const at = (id) => {
    const node = document.getElementById(id), to = node.getScreenCTM();
    return [to.e, to.f];
  };
  const named = [...document.querySelectorAll('#stage .half [id]')].map((node) => node.id);
  const names = named.filter((id) => /^[px]\\d+$/.test(id));
  return {
    t: Number(document.getElementById('slider').getAttribute('aria-valuenow')),
    box: [box.left, box.top, box.width, box.height],
    view: half.getAttribute('viewBox').split(' ').map(Number),
    turned: half.classList.contains('turned'),
    drawn: Object.fromEntries(names.map((id) => [id, at(id)])),
    moving: document.getElementById('play').classList.contains('playing'),
  };
}"""


def where(look: Look, x_m: float, y_m: float) -> tuple[float, float]:
    """A place of the floor in pixels."""
    left, top, width, height = look["box"]
    x0, y0, wide, high = look["view"]
    scale = max(width / wide, height / high)
    x, y = width / 2 + (x_m * 100 - x0 - wide / 2) * scale, (y_m * 100 - y0) * scale
    return (left + width - x, top + height - y) if look["turned"] else (left + x, top + y)


def farthest_px(look: Look, timeline: Timeline, t_s: float) -> float:
    """How far the one who is drawn most wrongly is from his place at a time."""
    here = pose(timeline, t_s)
    true = {f"p{n}": at for n, at in here.players.items()} | {f"x{n}": at for n, at in here.defenders.items()}
    assert set(true) == set(look["drawn"])
    away = []
    for name, place in true.items():
        x, y = where(look, *place[:2])
        away.append(max(abs(x - look["drawn"][name][0]), abs(y - look["drawn"][name][1])))
    return float(max(away))


def off_px(look: Look, timeline: Timeline) -> float:
    """The same at the time, of those the time line can mean, at which the picture is truest."""
    count = round(2 * AROUND_S / STEP_S)
    times = [look["t"] - AROUND_S + STEP_S * i for i in range(count + 1)]
    return min(farthest_px(look, timeline, t) for t in times)


class Coach:
    """Somebody who cannot leave the page alone."""

    def __init__(self, page: Page, address: str, seed: int) -> None:
        self.page, self.draw = page, random.Random(seed)
        floor = page.evaluate("sessionStorage.getItem('backcut-floor')")
        there = page.request.get(f"{address}/api/floors/{floor}")
        self.timeline = timeline_of(there.json()["data"])

    def button(self, name: str | re.Pattern[str]) -> Locator:
        """The first button of this name that is seen."""
        return self.page.get_by_role("button", name=name).locator("visible=true").first

    def told(self, target: Locator) -> None:
        """Press what the server answers to, and wait until its answer is on the page."""
        page = self.page
        page.evaluate("document.querySelector('#stage').firstElementChild.dataset.old = ''")
        with page.expect_response(re.compile("/api/floors/.*/(changes|undo)")) as answer:
            target.dispatch_event("click")
        page.wait_for_function("() => !document.querySelector('#stage').firstElementChild.hasAttribute('data-old')")
        self.timeline = timeline_of(answer.value.json()["data"])

    def play(self) -> None:
        """Let it run, where it stands."""
        if self.button("Play").count():
            self.button("Play").dispatch_event("click")

    def wait(self) -> None:
        """Let it run for a moment."""
        self.page.wait_for_timeout(self.draw.randrange(30, 90))

    def resize(self) -> None:
        """A window of another size."""
        width, height = self.draw.choice([(1440, 900), (390, 844), (820, 1180), (1100, 700)])
        self.page.set_viewport_size({"width": width, "height": height})

    def scrub(self) -> None:
        """Press somewhere on the time line."""
        self.page.locator("#slider").scroll_into_view_if_needed()
        box = self.page.locator("#slider").bounding_box()
        assert box is not None
        self.page.mouse.click(box["x"] + box["width"] * self.draw.random(), box["y"] + 20)

    def step(self) -> None:
        """A decision on, or back."""
        self.button(re.compile("^(Next decision|Decision before)$")).dispatch_event("click")

    def turn(self) -> None:
        """The floor from its other end."""
        self.button("Other end").dispatch_event("click")

    def choose(self) -> None:
        """Another value of some choice in the book."""
        words = self.page.locator(".says .choice")
        words.nth(self.draw.randrange(words.count())).dispatch_event("click")
        other = self.page.locator(".pick-one.asked input:not(:checked)")
        self.told(other.nth(self.draw.randrange(other.count())))
        self.button("Close").dispatch_event("click")

    def move(self) -> None:
        """Something of what can be done now."""
        moves = self.page.locator(".can")
        if moves.count():
            self.told(moves.nth(self.draw.randrange(moves.count())))

    def undo(self) -> None:
        """Take the last thing back."""
        if self.page.locator("#undo").is_enabled():
            self.told(self.page.locator("#undo"))


def timeline_of(data: dict[str, Any]) -> Timeline:
    """What is on the floor, in time, as Python has it."""
    moves = tuple(move["text"] for move in data["play"]["moves"])
    return told(Floor(data["book"]["text"], data["play"]["start"], moves)).show.timeline


@pytest.mark.parametrize("seed", [4])
def test_whatever_is_done_while_it_plays_everybody_is_drawn_where_he_is(
    browser: Browser, address: str, seed: int
) -> None:
    with visited(browser, address) as page:
        coach = Coach(page, address, seed)
        page.locator("[name=speed][value=game]").dispatch_event("click")
        things = [coach.resize, coach.scrub, coach.choose, coach.undo, coach.turn, coach.move, coach.step]
        moving = 0
        for number in range(THINGS):
            coach.play()
            coach.wait()
            thing = coach.draw.choice(things)
            thing()
            for _ in range(2):
                look = page.evaluate(LOOK)
                assert off_px(look, coach.timeline) <= WITHIN_PX, (number, thing.__name__, look)
                moving += look["moving"]
        assert moving > THINGS / 2
