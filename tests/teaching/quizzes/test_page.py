"""The page on a phone: one file, no request, by hand and by keys, on small screens, read by a program."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page
from tests.engine.floor import book

from backcut.offence.library import presets
from backcut.teaching.quizzes import Ask, QuizError, quiz, quiz_page
from backcut.teaching.quizzes.code import read

from .pages import answer, asked, html, opened, shown

AXE = Path(__file__).parents[2] / "vendor" / "axe-core" / "axe.min.js"
RULES = "{runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']}"
CUT = """() => [...document.querySelectorAll('body *')].filter((n) => n.getClientRects().length && !n.closest('svg') &&
  (n.scrollWidth > n.clientWidth + 1 && n.clientWidth || n.getBoundingClientRect().right > innerWidth + 1))
  .map((n) => n.outerHTML.slice(0, 120))"""


def objections(page: Page) -> list[tuple[str, list[str]]]:
    told = page.evaluate(f"axe.run({RULES})")
    return [(one["id"], [node["html"][:160] for node in one["nodes"]]) for one in told["violations"]]


@pytest.mark.parametrize("name", presets())
def test_a_page_is_small_enough_for_a_chat_message_and_fetches_nothing(name: str) -> None:
    text = html(name)
    assert len(text.encode()) < 1_000_000
    assert not re.search(r"""(?:src|href)=["'](?!#)|@import|url\((?!data:|#)""", text.partition('id="quiz"')[0])
    assert "default-src 'none'" in text


@pytest.mark.parametrize(("width", "height", "light"), [(1440, 900, "dark"), (390, 844, "light")])
def test_axe_finds_nothing_from_the_first_question_to_the_result(
    browser: Browser, tmp_path: Path, width: int, height: int, light: str
) -> None:
    with opened(browser, tmp_path, html(), width, height, color_scheme=light, reduced_motion="reduce") as page:
        page.evaluate(AXE.read_text("utf-8"))
        for place in range(len(asked())):
            assert objections(page) == [], f"question {place + 1}"
            answer(page, shown(page, asked()), right=place % 2 == 0)
            assert objections(page) == [], f"answer {place + 1}"
            page.locator("#next").click()
        page.locator("#shirt").fill("12")
        assert objections(page) == [], "the result"


def test_the_whole_quiz_goes_by_keys_alone(browser: Browser, tmp_path: Path) -> None:
    with opened(browser, tmp_path, html(), reduced_motion="reduce") as page:
        for place, question in enumerate(asked()):
            right = next(i for i, choice in enumerate(question.choices) if choice.right)
            if question.ask in (Ask.WHERE, Ask.WHO):
                tab_to(page, "#cells .cell")
                walk_to(page, right)
                page.keyboard.press("Enter")
            else:
                tab_to(page, f"#options li:nth-child({right + 1}) button")
                page.keyboard.press("Enter")
            assert page.locator("#said").inner_text().startswith("Yes."), question.words
            tab_to(page, "#next")
            page.keyboard.press("Enter")
            assert page.locator("#end").is_visible() == (place + 1 == len(asked()))
        tab_to(page, "#shirt")
        page.keyboard.type("8")
        assert read(page.locator("#code").inner_text()).shirt == 8


def tab_to(page: Page, selector: str) -> None:
    for _ in range(30):
        if page.evaluate("(s) => document.activeElement.matches(s)", selector):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"{selector} is not reached with Tab")


def walk_to(page: Page, wanted: int) -> None:
    """Every place is reached with arrow keys: breadth first over what the keys do."""
    here = "() => [...document.querySelectorAll('#cells .cell')].indexOf(document.activeElement)"
    go = "(i) => document.querySelectorAll('#cells .cell')[i].focus()"
    start = int(page.evaluate(here))
    waiting, ways = [start], {start: list[str]()}
    while waiting and wanted not in ways:
        place = waiting.pop(0)
        for key in ("ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight"):
            page.evaluate(go, place)
            page.keyboard.press(key)
            there = int(page.evaluate(here))
            if there not in ways:
                ways[there] = [*ways[place], key]
                waiting.append(there)
    page.evaluate(go, start)
    for key in ways[wanted]:
        page.keyboard.press(key)


@pytest.mark.parametrize(("width", "height"), [(320, 640), (390, 844), (1440, 900), (720, 360)])
def test_nothing_is_cut_and_every_place_is_44_px(browser: Browser, tmp_path: Path, width: int, height: int) -> None:
    with opened(browser, tmp_path, html("four-out-school-team", 12), width, height, reduced_motion="reduce") as page:
        questions = asked("four-out-school-team", 12)
        for _ in questions:
            assert page.evaluate(CUT) == []
            assert page.evaluate("document.documentElement.scrollWidth") <= width
            for box in page.locator("#cells .reach, button:visible").evaluate_all(
                "(all) => all.map((n) => n.getBoundingClientRect()).map((b) => [b.width, b.height])"
            ):
                assert min(box) >= 44, box
            answer(page, shown(page, questions), right=False)
            assert page.evaluate(CUT) == []
            page.locator("#next").click()
        page.locator("#shirt").fill("99")
        assert page.evaluate(CUT) == []


def test_nothing_moves_before_it_is_asked_to(browser: Browser, tmp_path: Path) -> None:
    places = "() => [...document.querySelectorAll('#floor [id]')].map((n) => n.getAttribute('transform')).join()"
    with opened(browser, tmp_path, html()) as page:
        before = page.evaluate(places)
        page.wait_for_timeout(600)
        assert page.evaluate(places) == before
        answer(page, shown(page, asked()), right=True)
        page.locator("#slow").click()
        page.wait_for_function(f"(before) => ({places})() !== before", arg=before)


def test_a_mistake_is_played_before_it_is_named_and_the_right_move_after(browser: Browser, tmp_path: Path) -> None:
    with opened(browser, tmp_path, html(), reduced_motion="reduce") as page:
        for question in asked():
            if question.deed is not None and question.deed.to is not None and question.occasion.action.moves:
                break
            answer(page, question, right=True)
            page.locator("#next").click()
        else:
            pytest.fail("No mistake that runs is asked here; take another seed.")
        mine = f"() => document.querySelector('#p{question.occasion.player}').getAttribute('transform')"
        page.locator("#slow").click()
        wrong = page.evaluate(mine)
        answer(page, question, right=True)
        page.locator("#slow").click()
        assert page.evaluate(mine) != wrong


def test_what_was_wrong_comes_back_tomorrow_and_the_code_says_how_it_stands(browser: Browser, tmp_path: Path) -> None:
    questions = asked("first-month", 6, 3)
    with opened(browser, tmp_path, html("first-month", 6, 3), reduced_motion="reduce") as page:
        page.clock.set_fixed_time("2026-02-02T18:00:00")
        page.reload()
        for place, _ in enumerate(questions):
            answer(page, shown(page, questions), right=place > 1)
            page.locator("#next").click()
        assert page.locator("#end-words").inner_text() == "4 of 6 right"
        told = read(page.locator("#code").inner_text())
        assert told.shirt == 3
        assert [sum(column) for column in zip(*told.counts, strict=True)] == [4, 6]
        page.reload()
        assert page.locator("#end-words").inner_text() == "Nothing to ask today"
        page.clock.set_fixed_time("2026-02-03T07:00:00")
        page.reload()
        assert page.locator("#count").inner_text() == "Question 1 of 2"
        assert page.locator("#words").inner_text() == questions[0].words
        page.clock.set_fixed_time("2026-02-05T07:00:00")
        page.reload()
        assert page.locator("#count").inner_text() == "Question 1 of 6", "2 days after a first right answer"


def test_the_quiz_works_where_the_browser_keeps_nothing(browser: Browser, tmp_path: Path) -> None:
    refuse = "Object.defineProperty(window, 'localStorage', {get() { throw new Error('not here') }})"
    questions = asked("first-month", 4)
    with opened(browser, tmp_path, html("first-month", 4)) as page:
        page.add_init_script(refuse)
        page.reload()
        for _ in questions:
            answer(page, shown(page, questions), right=True)
            page.locator("#next").click()
        page.locator("#shirt").fill("14")
        assert read(page.locator("#code").inner_text()).shirt == 14


def test_where_do_you_go_is_asked_of_the_players_own_number_alone() -> None:
    for number in (1, 2, 3, 4, 5):
        own = [q for q in asked("school-team", 10, number) if q.ask is Ask.WHERE]
        assert own
        assert {q.occasion.player for q in own} == {number}


def test_the_same_seed_asks_the_same_and_another_asks_other_things() -> None:
    this = book("school-team")
    one, again, other = ([q.name for q in quiz(this, 8, seed)] for seed in (3, 3, 4))
    assert one == again
    assert one != other
    assert len(set(one)) == 8


@pytest.mark.parametrize(("count", "said"), [(0, "asks nothing"), (-3, "asks nothing")])
def test_a_quiz_of_nothing_is_refused(count: int, said: str) -> None:
    with pytest.raises(QuizError, match=said):
        quiz(book("school-team"), count, 1)


def test_a_sentence_that_decides_nothing_names_those_that_do() -> None:
    this = book("school-team")
    rank = next(rank for rank in range(len(this.sentences)) if this.cue(rank) == "Jammed")
    with pytest.raises(QuizError, match=r"G Jammed decides nothing.*A Dribble"):
        quiz(this, 5, 1, rank=rank)


def test_a_number_nobody_wears_is_refused() -> None:
    with pytest.raises(QuizError, match="Nobody wears 9"):
        quiz(book("school-team"), 5, 1, player=9)


def test_too_many_for_one_file_are_refused() -> None:
    this = book("first-month")
    with pytest.raises(QuizError, match="at most 63"):
        quiz_page(this, quiz(this, 64, 1))
