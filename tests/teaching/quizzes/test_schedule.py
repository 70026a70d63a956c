"""The schedule in the page's script beside the fsrs library: the same days, whatever was answered and when."""

from __future__ import annotations

import random
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from importlib.resources import files
from typing import Any

import pytest
from fsrs import Card, Rating
from playwright.sync_api import Browser, Page

from backcut.page.bundle import joined
from backcut.teaching.quizzes.schedule import SEASON_DAYS, numbers, scheduler

BEGIN = datetime(2026, 9, 1, 12, tzinfo=UTC)
SEQUENCES = 300


@pytest.fixture
def script(browser: Browser) -> Iterator[Page]:
    folder = files("backcut.teaching.quizzes") / "static"
    context = browser.new_context()
    page = context.new_page()
    page.add_script_tag(content=joined({"schedule.js": (folder / "schedule.js").read_text("utf-8")}, "schedule.js"))
    yield page
    context.close()


def by_script(page: Page, answers: list[tuple[int, bool]]) -> list[Any]:
    weights, retention, longest = numbers()
    schedule = {"weights": weights, "retention": retention, "longest": longest}
    return list(
        page.evaluate(
            "([schedule, answers]) => { let card = null; return answers.map(([day, right]) => "
            "(card = answeredCard(schedule, card, right, day))) }",
            [schedule, answers],
        )
    )


def by_library(answers: list[tuple[int, bool]]) -> list[tuple[float, float, int]]:
    with_library, card, out = scheduler(), Card(), []
    for day, right in answers:
        when = BEGIN + timedelta(days=day)
        card, _ = with_library.review_card(card, Rating.Good if right else Rating.Again, when)
        assert card.stability is not None
        assert card.difficulty is not None
        out.append((card.stability, card.difficulty, (card.due - BEGIN).days))
    return out


def test_the_script_puts_every_question_off_as_long_as_the_library_does(script: Page) -> None:
    draw = random.Random(6)
    for _ in range(SEQUENCES):
        day, answers = 0, list[tuple[int, bool]]()
        for _ in range(draw.randint(1, 9)):
            answers.append((day, draw.random() < 0.7))
            day += draw.choice([0, 1, 1, 2, 3, 7, 20, 90])
        ours, theirs = by_script(script, answers), by_library(answers)
        for one, other in zip(ours, theirs, strict=True):
            assert one[:2] == pytest.approx(other[:2], rel=1e-9)
            assert one[3] == other[2]


def test_reviewed_when_due_the_days_grow_as_was_measured_with_the_library(script: Page) -> None:
    """First wrong, then right each time: 1 2 6 17 44 102 days; right from the first: 2 11 46 (fsrs 6.3.2)."""
    for first, days in ((False, [1, 2, 6, 17, 44, 102]), (True, [2, 11, 46, SEASON_DAYS, SEASON_DAYS])):
        answers, day, found = [(0, first)], 0, list[int]()
        for _ in days:
            card = by_script(script, answers)[-1]
            found.append(card[3] - day)
            day = card[3]
            answers.append((day, True))
        assert found == days
