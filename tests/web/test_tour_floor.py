"""The evening of the README, from end to end: with the mouse, by finger on a phone, and with the keyboard alone.

Each hand knows how to do a thing; the evening itself is the same for all three, and what is looked at is what a coach
sees: the caption, the sentence that carries the marker, the list of findings.
"""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page, expect
from tests.web.conftest import visited
from typing_extensions import override

OUT = "the corner opposite the ball"


class Hand(ABC):
    """Somebody at the page who has only one way to touch it."""

    def __init__(self, page: Page) -> None:
        self.page = page

    @abstractmethod
    def press(self, name: str | re.Pattern[str], role: str = "button") -> None:
        """Do what a button, a tick or a link of this name does."""

    @abstractmethod
    def ball(self, receiver: int) -> None:
        """Give the ball to this player on the floor."""

    @abstractmethod
    def deny(self, player: int) -> None:
        """Let this player's defender deny."""

    @abstractmethod
    def last(self) -> None:
        """Go to the last stop of the time line."""

    @abstractmethod
    def choose(self, now: str, then: str) -> None:
        """Change the words of a choice in the book."""

    @abstractmethod
    def name(self, label: str, words: str) -> None:
        """Write into a field, and send it off."""

    def target(self, name: str | re.Pattern[str], role: str) -> Locator:
        """The first thing of this name that is seen."""
        return self.page.get_by_role(role, name=name).locator("visible=true").first  # type: ignore[arg-type]

    def holder(self) -> int:
        """Who has the ball."""
        return int(self.page.locator(".all li:has(.has) .who").first.inner_text())

    def middle(self, player: int) -> tuple[float, float]:
        """Where a player's disc is on the screen."""
        self.page.locator(f"#p{player}").scroll_into_view_if_needed()
        box = self.page.locator(f"#p{player} use").bounding_box()
        assert box is not None
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


class Mouse(Hand):
    """A mouse, and no keyboard but for words."""

    @override
    def press(self, name: str | re.Pattern[str], role: str = "button") -> None:
        self.target(name, role).click()

    @override
    def ball(self, receiver: int) -> None:
        mouse = self.page.mouse
        mouse.move(*self.middle(self.holder()))
        mouse.down()
        mouse.move(*self.middle(receiver), steps=6)
        mouse.up()

    @override
    def deny(self, player: int) -> None:
        self.page.mouse.click(*self.middle(player))
        self.press(f"X{player} denies {player}")

    @override
    def last(self) -> None:
        box = self.page.locator("#slider").bounding_box()
        assert box is not None
        self.page.mouse.click(box["x"] + box["width"] - 4, box["y"] + 20)

    @override
    def choose(self, now: str, then: str) -> None:
        self.press(now)
        self.page.get_by_text(then, exact=True).locator("visible=true").first.click()

    @override
    def name(self, label: str, words: str) -> None:
        self.page.get_by_label(label, exact=True).fill(words)
        self.page.locator("dialog button[type=submit]").click()


class Finger(Mouse):
    """A finger on a phone: taps only."""

    @override
    def press(self, name: str | re.Pattern[str], role: str = "button") -> None:
        self.target(name, role).tap()

    @override
    def ball(self, receiver: int) -> None:
        for player in (self.holder(), receiver):
            self.page.touchscreen.tap(*self.middle(player))

    @override
    def deny(self, player: int) -> None:
        self.page.touchscreen.tap(*self.middle(player))
        self.press(f"X{player} denies {player}")

    @override
    def last(self) -> None:
        while "All stand" not in self.page.inner_text("#caption"):
            self.press(re.compile("^Next decision"))

    @override
    def choose(self, now: str, then: str) -> None:
        self.press(now)
        self.page.get_by_text(then, exact=True).locator("visible=true").first.tap()

    @override
    def name(self, label: str, words: str) -> None:
        self.page.get_by_label(label, exact=True).fill(words)
        self.page.locator("dialog button[type=submit]").tap()


class Keys(Hand):
    """The keyboard alone: things are reached by Tab, the floor by arrow keys."""

    def reach(self, selector: str) -> None:
        """Press Tab until this has the focus, backwards where that is nearer."""
        for way in ("Tab", "Shift+Tab"):
            for _ in range(120):
                if self.page.evaluate(f"document.activeElement?.matches({selector!r}) ?? false"):
                    return
                self.page.keyboard.press(way)
        raise AssertionError(f"Tab never comes to {selector}.")

    @override
    def press(self, name: str | re.Pattern[str], role: str = "button") -> None:
        target = self.target(name, role)
        target.evaluate("(node) => node.setAttribute('data-wanted', '')")
        self.reach("[data-wanted]")
        self.page.keyboard.press("Space" if role == "checkbox" else "Enter")
        self.page.evaluate(
            "document.querySelectorAll('[data-wanted]').forEach((n) => n.removeAttribute('data-wanted'))"
        )

    def walk(self, player: int) -> None:
        """Walk the cells of the floor until this player has the focus."""
        self.reach(".cell")
        for key in ("Right", "Down", "Left", "Up") * 12:
            label = self.page.evaluate("document.activeElement?.getAttribute('aria-label') ?? ''")
            if str(player) in label.split(", "):
                return
            self.page.keyboard.press(f"Arrow{key}")
        raise AssertionError(f"The arrow keys never come to {player}.")

    @override
    def ball(self, receiver: int) -> None:
        self.walk(receiver)
        self.page.keyboard.press("Enter")

    @override
    def deny(self, player: int) -> None:
        self.walk(player)
        self.page.keyboard.press("d")

    @override
    def last(self) -> None:
        self.reach("#slider, .cell")
        while "All stand" not in self.page.inner_text("#caption"):
            self.page.keyboard.press("PageDown")

    @override
    def choose(self, now: str, then: str) -> None:
        self.press(now)
        radio = self.page.locator(".pick-one.asked label", has_text=then).locator("input")
        for _ in range(8):
            if radio.is_checked():
                return
            self.page.keyboard.press("ArrowDown")
            self.page.wait_for_timeout(300)  # the sentence is drawn anew with each value
            self.reach(".pick-one input:checked")
        raise AssertionError(f"The arrow keys never come to {then}.")

    @override
    def name(self, label: str, words: str) -> None:
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(words)
        self.page.keyboard.press("Enter")


HANDS: dict[str, tuple[type[Hand], dict[str, Any]]] = {
    "mouse": (Mouse, {"width": 1440, "height": 900}),
    "finger": (Finger, {"width": 390, "height": 844, "has_touch": True, "is_mobile": True}),
    "keyboard": (Keys, {"width": 1440, "height": 900}),
}


@pytest.mark.parametrize("hand", HANDS)
def test_the_evening_of_the_readme_works_from_end_to_end(browser: Browser, address: str, hand: str) -> None:
    kind, screen = HANDS[hand]
    with visited(browser, address, **screen) as page:
        coach: Hand = kind(page)
        caption = page.locator("#caption")
        # The demo runs; it is stopped, and gone through decision by decision.
        expect(page.locator("#play")).to_have_accessible_name("Stop")
        coach.press("Stop")
        coach.press(re.compile("^Next decision"))
        expect(page.locator(".habit.won")).to_have_count(1)
        # Another way out: the same possession is played again, and what differs is shown.
        coach.choose("the first open spot", OUT)
        expect(page.locator("#differs")).to_be_visible()
        expect(page.locator("#differs figcaption").first).to_contain_text("comes out to the")
        coach.press("Close")
        expect(page.locator("#sentences")).to_contain_text(OUT)
        # Every situation is looked at; a finding opens on the floor; the change that closes it is taken.
        coach.press("Look at every situation")
        show = page.get_by_role("button", name=re.compile("^Show me"))
        expect(show.first).to_be_visible(timeout=60_000)
        coach.press(re.compile("^Show me"))
        expect(caption).to_contain_text("No sentence says what")
        coach.press(re.compile("^Try ways out"))
        way = page.get_by_role("button", name=re.compile("^Write it|^Take it|^Use it"))
        expect(way.first).to_be_visible(timeout=60_000)
        coach.press(re.compile("^Write it|^Take it|^Use it"))
        expect(page.locator("#sentences")).not_to_contain_text(OUT)
        coach.press("Again from the start")
        expect(caption).to_contain_text("1 has the ball.")
        # The passer cuts, the others fill, the cutter comes out.
        coach.ball(2)
        expect(caption).to_contain_text("1 passes to 2. 1 cuts to the rim.")
        expect(page.locator(".habit.won > .tab")).to_have_text("F")
        coach.last()
        expect(caption).to_contain_text("All stand. 2 has the ball, right wing.")
        coach.ball(3)
        expect(caption).to_contain_text("2 passes to 3. 2 cuts to the rim.")
        coach.last()
        # A defender denies, and the back cut happens.
        coach.deny(4)
        expect(caption).to_contain_text("X4 denies 4, so 4 back cuts.")
        expect(page.locator(".habit.won b").first).to_have_text("Back.")
        # Undo takes all of it back, one after the other.
        undo = page.locator("#undo")
        for _ in range(30):
            if undo.is_disabled():
                break
            before = page.evaluate("performance.getEntriesByType('resource').length")
            coach.press("Undo")
            page.wait_for_function("(n) => performance.getEntriesByType('resource').length > n", arg=before)
            page.wait_for_timeout(60)
        expect(undo).to_be_disabled()
        expect(page).to_have_url(re.compile("lay-up"))
        # The book is kept, and found again.
        coach.press("Keep" if page.get_by_role("button", name="Keep", exact=True).count() else "Kept")
        coach.name("Name", f"ours {hand}")
        expect(page.locator("#said-line")).to_have_text(f"Kept as ours {hand}.")
        coach.press("Books")
        expect(page.locator("dialog")).to_contain_text(f"ours {hand}")
        coach.press(re.compile(f"^Open .*, ours {hand}$"))
        expect(page).to_have_url(re.compile(f"book=ours\\+{hand}"))
        expect(page.locator("#head-does")).to_contain_text("Kept")
