"""Quiz pages as a player opens them: a file, in a browser, with whatever went wrong noted down."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page
from tests.engine.floor import book

from backcut.teaching.quizzes import Question, quiz, quiz_page


@cache
def asked(name: str = "school-team", count: int = 10, player: int | None = None) -> tuple[Question, ...]:
    return tuple(quiz(book(name), count, 1, player=player))


@cache
def html(name: str = "school-team", count: int = 10, player: int | None = None) -> str:
    return quiz_page(book(name), asked(name, count, player), player=player)


@contextmanager
def opened(
    browser: Browser, folder: Path, text: str, width: int = 390, height: int = 844, **settings: Any
) -> Iterator[Page]:
    """The page, opened as a file; at the end nothing was asked of any host and nothing was complained about."""
    file = folder / "quiz.html"
    file.write_text(text, "utf-8")
    wrong: list[str] = []
    context = browser.new_context(viewport={"width": width, "height": height}, **settings)
    page = context.new_page()
    page.on("console", lambda message: wrong.append(message.text))
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.on("request", lambda r: None if r.url.startswith((file.as_uri(), "data:")) else wrong.append(r.url))
    page.goto(file.as_uri())
    yield page
    context.close()
    assert wrong == []


def shown(page: Page, questions: tuple[Question, ...]) -> Question:
    """The question that stands on the page."""
    place = int(page.locator("#count").inner_text().split()[1]) - 1
    return questions[place]


def answer(page: Page, question: Question, right: bool) -> None:
    """Answer by hand: a tap on the floor, or on the words."""
    place = next(i for i, choice in enumerate(question.choices) if choice.right is right)
    if page.locator("#options button").count():
        page.locator("#options button").nth(place).click()
        return
    box = page.locator("#cells .cell").nth(place).bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
