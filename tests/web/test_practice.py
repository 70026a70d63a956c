"""From the floor, with one tap: cards, handouts, tonight's page, the clip and the quiz of the book that is on it."""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, expect
from pypdf import PdfReader
from starlette.testclient import TestClient
from tests.web.conftest import visited
from tests.web.floors import Visitor, client


@pytest.fixture(scope="module")
def asks(tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    with client(tmp_path_factory.mktemp("shelf")) as made:
        yield made


@pytest.fixture(scope="module")
def coach(asks: TestClient) -> Visitor:
    here = Visitor(asks, book="first-month")
    here.change({"kind": "line", "key": "title", "value": "Our own"})
    return here


def made(asks: TestClient, coach: Visitor, path: str) -> Any:
    answer = asks.get(f"/practice/{coach.floor['id']}/{path}")
    assert answer.status_code == 200, answer.text
    assert "attachment; filename=" in answer.headers["content-disposition"]
    assert (
        "default-src 'none'" in answer.headers["content-security-policy"]
        or "sandbox" in answer.headers["content-security-policy"]
    )
    return answer


def words(answer: Any) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(io.BytesIO(answer.content)).pages).split())


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("handout.pdf?rank=2", "I fill it at once"),
        ("card.pdf?rank=2&players=8", "Fill, guided defence"),
        ("tonight.pdf?players=9&minutes=45", "9 players"),
        ("sheet.pdf?kind=poster", "Otherwise I hold"),
        ("sheet.pdf?kind=bench&paper=letter", "Notes"),
        ("sheet.pdf?kind=booklet", "Our own"),
        ("sheet.pdf?kind=quiz", "Key"),
    ],
)
def test_on_paper_it_is_the_book_on_the_floor_as_it_is_now(
    asks: TestClient, coach: Visitor, path: str, said: str
) -> None:
    answer = made(asks, coach, path)
    assert answer.content.startswith(b"%PDF")
    told = words(answer)
    assert said in told
    assert "Our own" in told


def test_a_clip_and_a_quiz_are_saved_too(asks: TestClient, coach: Visitor) -> None:
    assert made(asks, coach, "clip.mp4?rank=0").content[4:8] == b"ftyp"
    page = made(asks, coach, "quiz.html").text
    assert page.startswith("<!doctype html>")
    assert "Our own" in page


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("handout.pdf?rank=40", "There is no sentence 41: this book has 4."),
        ("card.pdf?rank=2&players=2", "C Fill takes 3 players, and there are 2."),
        ("tonight.pdf?minutes=5", "--minutes 5: give 20 to 150 minutes."),
        ("sheet.pdf?kind=novel", "kind"),
        ("handout.pdf?rank=1&paper=a0", "paper"),
    ],
)
def test_what_cannot_be_made_is_one_sentence(asks: TestClient, coach: Visitor, path: str, said: str) -> None:
    answer = asks.get(f"/practice/{coach.floor['id']}/{path}")
    assert answer.status_code == 422
    assert said in answer.json()["said"]
    assert asks.get("/practice/nobody/handout.pdf?rank=0").status_code == 404


def test_in_the_page_the_sentence_that_won_is_chosen_and_a_press_saves_the_file(
    browser: Browser, address: str, tmp_path: Path
) -> None:
    with visited(browser, address) as page:
        page.get_by_role("button", name="For practice").locator("visible=true").first.click()
        dialog = page.get_by_role("dialog")
        expect(dialog.get_by_label("One sentence")).to_be_visible()
        dialog.get_by_label("Players").fill("9")
        with page.expect_download() as saving:
            dialog.get_by_role("link", name="Tonight's page").click()
        told = PdfReader(saving.value.path()).pages[0].extract_text()
        assert "9 players" in told
        dialog.get_by_role("button", name="Close").click()
        page.locator("#sentences > li button.tab").first.click()
        with page.expect_download() as saving:
            page.locator(".editor").get_by_role("link", name="Handout").click()
        assert saving.value.suggested_filename.endswith(".pdf")
