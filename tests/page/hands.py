"""Hands for the tests of the live board: mouse, finger, keyboard, and where a place of the floor is on the screen."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page


def told(page: Page) -> list[Any]:
    """What the board has told the page."""
    return list(page.evaluate("told"))


def centre(page: Page, selector: str) -> tuple[float, float]:
    """The middle of an element in pixels."""
    box = page.locator(selector).bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def drag(page: Page, start: tuple[float, float], end: tuple[float, float]) -> None:
    """The mouse, pressed, from one place to another."""
    page.mouse.move(*start)
    page.mouse.down()
    page.mouse.move((start[0] + end[0]) / 2, (start[1] + end[1]) / 2, steps=3)
    page.mouse.move(*end, steps=3)
    page.mouse.up()


def on_screen(page: Page, place_cm: tuple[float, float], turned: bool = False) -> tuple[float, float]:
    """Where a place of the floor lies on the screen, by the drawing's own box and view box."""
    box = page.locator(".half").first.bounding_box()
    view = page.locator(".half").first.get_attribute("viewBox")
    assert box is not None
    assert view is not None
    left, top, wide, high = map(float, view.split())
    scale = max(box["width"] / wide, box["height"] / high)
    x = box["width"] / 2 + (place_cm[0] - left - wide / 2) * scale
    y = (place_cm[1] - top) * scale
    if turned:
        x, y = box["width"] - x, box["height"] - y
    return box["x"] + x, box["y"] + y


def touch(page: Page, start: tuple[float, float], end: tuple[float, float], count: int = 12) -> None:
    """One finger from one place to another."""
    client = page.context.new_cdp_session(page)

    def send(kind: str, *points: tuple[float, float]) -> None:
        client.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y} for x, y in points]})

    send("touchStart", start)
    for i in range(1, count + 1):
        share = i / count
        send("touchMove", (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share))
        page.wait_for_timeout(16)
    send("touchEnd")


def focused(page: Page) -> str | None:
    """The words of what has the focus."""
    found = page.evaluate("document.activeElement.getAttribute('aria-label')")
    return None if found is None else str(found)


def tab_to_the_floor(page: Page) -> None:
    """Tab until a place of the floor has the focus."""
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('[data-cell]')"):
            return
    raise AssertionError("No Tab came to the floor.")
