"""The page as a text: one file, nothing fetched, every word of the show in it."""

from __future__ import annotations

import json
import re
from dataclasses import replace

import pytest

from backcut.court.courts import court
from backcut.page import film_page, possession_page
from backcut.page.book import state
from backcut.picture.show import Show

from .demo import SPOTS, demo, timeline, twenty_passes
from .tags import Tags, policy_of

FONT = re.compile(r"url\(data:font/woff2;base64,[A-Za-z0-9+/=]+\)")


@pytest.fixture(scope="module")
def html() -> str:
    return possession_page(demo())


def test_nothing_is_fetched_and_every_element_is_closed(html: str) -> None:
    tags = Tags()
    tags.feed(html)
    assert tags.wrong == []
    assert tags.open == []
    (ids,) = tags.ids
    assert len(ids) == len(set(ids))
    assert "://" not in FONT.sub("", html)


def test_the_policy_allows_this_style_and_this_script_and_nothing_else(html: str) -> None:
    policy = policy_of(html)
    assert policy.startswith("default-src 'none'")
    assert "unsafe" not in policy


def test_the_first_picture_and_every_decision_are_there_without_script(html: str) -> None:
    body = html.split("<script")[0]
    for moment in demo().moments:
        assert moment.caption.split(",")[0] in body
    for sentence in demo().sentences:
        assert sentence.text in body
        assert sentence.why in body
    assert body.count('id="p1"') == 1


def test_hostile_words_stay_words() -> None:
    evil = "</script><script>alert(1)</script><b>"
    show = demo()
    first = replace(show.moments[0], caption=evil, event=evil)
    page = possession_page(
        replace(
            show,
            title=evil,
            subtitle=evil,
            moments=(first, *show.moments[1:]),
            notes=(evil,),
            denial_word=evil,
            sentences=(replace(show.sentences[0], cue=evil, text=evil, why=evil, mistake=evil), *show.sentences[1:]),
        )
    )
    assert page.count("<script") == possession_page(show).count("<script")
    assert evil not in page
    tags = Tags()
    tags.feed(page)
    assert tags.wrong == []
    data = re.search(r'id="story">(.*?)</script>', page, re.S)
    assert data is not None
    assert "alert(1)" in json.loads(data[1])["moments"][0]["caption"]


def test_the_sentence_that_acts_stands_with_those_it_beat() -> None:
    show = demo()
    assert [state(s.letter, show.moments[3]) for s in show.sentences] == ["won", "rest", "work", "work", "work"]
    page = possession_page(replace(show, moments=show.moments[3:]))
    won = re.search(r'<li class="habit won".*?</div></li>', page, re.S)
    assert won is not None
    words = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", won[0]))
    assert "cuts to the rim. The top is one pass from 3" in words
    assert "C beats Fill , which wanted 2 at the top. A stands above C." in words


def test_a_page_of_twenty_passes_weighs_less_than_300_kb_plus_font() -> None:
    page = FONT.sub("", possession_page(twenty_passes()))
    assert len(page.encode()) < 300_000


def test_a_show_without_moments_still_stands() -> None:
    show = demo()
    empty = Show(show.title, "", show.court, show.spots, (), (), show.timeline)
    assert 'class="half"' in possession_page(empty)


def test_a_film_has_a_floor_and_no_book() -> None:
    page = film_page(
        timeline(),
        SPOTS,
        court("fiba"),
        title="Clip 7",
        notes=["Invented."],
        at_spots=[(0.0, {1: "top", 3: "left wing"}), (1.5, {1: "between spots", 3: "left wing"})],
    )
    assert '<body class="film">' in page
    assert 'class="book"' not in page
    assert "3 has the ball, left wing." in page
