"""What leaves the floor stands alone: it needs nothing from here, and names no file it should not."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import unquote
from xml.etree import ElementTree

import pytest
from starlette.testclient import TestClient
from tests.web.floors import Visitor, client

from backcut.web.floor import Floor
from backcut.web.stops import told

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def asks(tmp_path_factory: pytest.TempPathFactory) -> TestClient:
    return client(tmp_path_factory.mktemp("shelf"))


def shared(asks: TestClient, coach: Visitor, name: str) -> str:
    answer = asks.get(f"/share/{coach.floor['id']}/{name}")
    assert answer.status_code == 200, answer.text
    return answer.text


@pytest.mark.parametrize("light", ["day", "night", "print"])
def test_a_drawing_has_everybody_where_the_pose_has_them_and_fetches_nothing(asks: TestClient, light: str) -> None:
    coach = Visitor(asks)
    here = told(Floor(coach.floor["book"]["text"], "", tuple(m["text"] for m in coach.floor["play"]["moves"])))
    for stop in range(len(here.stops)):
        text = shared(asks, coach, f"moment.svg?stop={stop}&light={light}")
        drawn = ElementTree.fromstring(text)
        at = here.show.timeline
        for number, track in at.players.items():
            mark = next(g for g in drawn.iter(f"{SVG}g") if g.get("id") == f"p{number}")
            found = re.fullmatch(r"translate\((-?\d+) (-?\d+)\)", mark.get("transform") or "")
            assert found is not None
            x, y = track.at(here.show.moments[stop].t_s)[:2]
            assert abs(int(found[1]) - x * 100) <= 1
            assert abs(int(found[2]) - y * 100) <= 1
        links = re.findall(r'(?:href|src)="([^"]*)"|url\(([^)]*)\)', text)
        assert all((a or b).startswith(("#", "data:")) for a, b in links)
        assert "Literata" in text


def test_black_and_white_is_black_and_white(asks: TestClient) -> None:
    text = shared(asks, Visitor(asks), "moment.svg?light=print")
    rules = text[text.index("svg{") : text.index("/* the floor;")]
    own = dict(re.findall(r"--([\w-]+):\s*(#[0-9A-Fa-f]{3,6})", rules))  # of two the later holds, as in a style sheet
    assert set(own) >= {"page", "ink", "mark"}
    for colour in own.values():
        shades = re.findall("..", colour[1:]) if len(colour) == 7 else list(colour[1:])
        assert len(set(shades)) == 1, own


def test_a_whole_possession_is_one_page_with_its_own_policy(asks: TestClient) -> None:
    page = shared(asks, Visitor(asks), "page.html")
    assert page.startswith("<!doctype html>")
    assert "script-src 'sha256-" in page
    assert "All stand." not in page.split('id="story"')[0].split("decisions")[0]
    assert not re.search(r'(?:href|src)="(?!#|data:)', page)


@pytest.mark.parametrize(
    ("title", "plain", "true"),
    [
        ("<script>alert(1)</script>", "script alert(1) script.txt", "script alert(1) script.txt"),
        ("../../etc/passwd", "etc passwd.txt", "etc passwd.txt"),
        ("Ünïted", "United.txt", "Ünïted.txt"),
        ("مدرسة", "book.txt", "مدرسة.txt"),
        ('a"; b', "a ; b.txt", "a ; b.txt"),
    ],
)
def test_a_title_never_makes_a_file_name_that_leads_elsewhere(
    asks: TestClient, title: str, plain: str, true: str
) -> None:
    coach = Visitor(asks)
    assert coach.change({"kind": "line", "key": "title", "value": title}) == 200
    answer = asks.get(f"/share/{coach.floor['id']}/book.txt")
    named = re.fullmatch(
        r"attachment; filename=\"([^\"]*)\"; filename\*=UTF-8''(.*)", answer.headers["content-disposition"]
    )
    assert named is not None
    assert named[1] == plain
    assert unquote(named[2]) == true
    assert answer.text == coach.floor["book"]["text"]
    page = shared(asks, coach, "page.html")
    assert "<script>alert" not in page
    assert "<script>alert" not in shared(asks, coach, "moment.svg")


def test_what_is_not_there_is_refused_in_the_one_form(asks: TestClient, tmp_path: Path) -> None:
    coach = Visitor(asks)
    for path, status in (("moment.svg?stop=400", 422), ("moment.svg?light=red", 422), ("nothing.svg", 404)):
        answer = asks.get(f"/share/{coach.floor['id']}/{path}")
        assert answer.status_code == status
        assert answer.json()["ok"] is False
    assert asks.get("/share/nobody/book.txt").status_code == 404
