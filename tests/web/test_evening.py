"""A floor opened again: the same book, its name, and what is known of the file it came from."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import parse_qsl

from tests.web.floors import Visitor, client


def test_a_version_opened_again_keeps_its_book_s_name_and_may_be_kept_over_it(tmp_path: Path) -> None:
    asks = client(tmp_path)
    coach = Visitor(asks)
    first = coach.book
    assert coach.take(asks.post(f"{coach.path}/keep", json={"name": "ours"})) == 200
    assert coach.change({"kind": "line", "key": "title", "value": "Ours"}) == 200
    assert coach.take(asks.post(f"{coach.path}/keep", json={"name": "ours"})) == 200
    (book,) = [one for one in asks.get("/api/books").json()["data"] if one["name"] == "ours"]
    stamp = asks.get("/api/books/ours/versions").json()["data"][0]
    version = asks.get(f"/api/books/ours/versions/{stamp}").json()["data"]
    again = Visitor(asks, book="ours", text=version, stands=book["digest"])
    assert (again.floor["name"], again.floor["kept"], again.book) == ("ours", False, first)
    assert again.take(asks.post(f"{again.path}/keep", json={"name": "ours"})) == 200
    assert again.floor["kept"] is True
    unknown = Visitor(asks, book="ours", text=version.replace("Title: ", "Title: A "))
    assert unknown.take(asks.post(f"{unknown.path}/keep", json={"name": "ours"})) == 409


def test_the_address_of_a_floor_opens_what_is_on_it_also_before_anything_has_happened(tmp_path: Path) -> None:
    asks = client(tmp_path)
    coach = Visitor(asks, book="first-month")
    for keep in (len(coach.play["moves"]), 1, 0):
        assert coach.change({"kind": "cut", "keep": keep}) == 200
        again = Visitor(asks, **dict(parse_qsl(coach.floor["address"].removeprefix("/?"))))
        assert again.play["moves"] == coach.play["moves"]
        assert again.play["start"] == coach.play["start"]
