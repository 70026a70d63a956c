"""An edit never costs the book: whatever is sent, the floor stays as it was or is what was sent, and can be kept."""

from __future__ import annotations

import json
import string
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient
from tests.web.floors import Visitor, client

from backcut.offence.book_text import MOST_BYTES
from backcut.offence.library import preset_text
from backcut.web.changes import Line
from backcut.web.desk import MOST_FLOORS
from backcut.web.evening import Evening
from backcut.web.floor import MOST_LINES
from backcut.web.shelf import Shelf

WIDE = "Wide. Otherwise I hold, wide, feet set.\n"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("shelf")


@pytest.fixture(scope="module")
def asks(folder: Path) -> Iterator[TestClient]:
    with client(folder) as opened:
        yield opened


@pytest.fixture
def coach(asks: TestClient) -> Visitor:
    return Visitor(asks)


#: As they stand in JSON: letters that are none, that other programs trip over, and far too many.
LETTERS = {
    "half of a pair": '"\\ud800"',
    "the wrong half first": '"\\udc00\\ud800"',
    "nothing": '"\\u0000"',
    "a bell": '"\\u0007"',
    "right to left": '"\\u202eAbc"',
    "another language": '"كتاب الهجوم"',
    "a picture": '"🏀🏀"',
    "a mark over nothing": '"\\u0301"',
    "a line break": '"a\\nb"',
    "a line break of another kind": '"a\\u2028b"',
    "too many": f'"{"x" * 300_000}"',
    "more than a line": f'"{"x" * 2_001}"',
    "no text": "17",
    "no text either": '["a"]',
    "null": "null",
}
#: Where a text can stand, as JSON with %s for it.
CHANGES = {
    "happen": '{"kind":"happen","keep":0,"move":%s}',
    "show": '{"kind":"show","start":"","moves":%s}',
    "sentence": '{"kind":"sentence","place":0,"do":"write","words":%s}',
    "add": '{"kind":"sentence","place":0,"do":"add","words":%s}',
    "choose": '{"kind":"choose","name":"exit","value":%s}',
    "choose what": '{"kind":"choose","name":%s,"value":"chain"}',
    "line": '{"kind":"line","key":%s,"value":"4"}',
    "squad": '{"kind":"line","key":"squad","value":%s}',
    "spot": '{"kind":"spot","spot":%s,"x_m":1,"y_m":1}',
    "role": '{"kind":"role","role":%s,"on":true}',
    "kind": '{"kind":%s}',
    "name of a field": '{"kind":"cut","keep":0,%s:1}',
}


def is_one_sentence(said: str) -> bool:
    """One message for a person: it ends, and holds no name of a Python error."""
    return said.strip() == said != "" and said.endswith((".", '."')) and "Traceback" not in said and "Error" not in said


@pytest.mark.parametrize("letters", LETTERS.values(), ids=LETTERS)
@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES)
def test_letters_that_are_none_change_nothing_or_only_what_they_should(
    coach: Visitor, change: str, letters: str
) -> None:
    before = coach.shown()
    body = f'{{"revision":{coach.floor["revision"]},"change":{change % letters}}}'
    status = coach.take(coach.asks.post(f"{coach.path}/changes", content=body.encode()))
    if status == 200:
        assert coach.back("undo") == 200
    else:
        assert 400 <= status < 500
        assert is_one_sentence(coach.said), coach.said
    assert coach.take(coach.asks.get(coach.path)) == 200
    assert coach.shown() == before


@pytest.mark.parametrize("letters", LETTERS.values(), ids=LETTERS)
@pytest.mark.parametrize(
    ("path", "body"),
    [
        ("/api/floors", '{"text":%s}'),
        ("/api/floors", '{"start":%s}'),
        ("/api/floors", '{"moves":%s}'),
        ("/api/floors", '{"book":%s}'),
        ("/api/floors", "%s"),
        ("/api/words", '{"text":%s}'),
        ("keep", '{"name":%s}'),
        ("answers", '{"stop":0,"player":1,"answer":%s}'),
        ("undo", '{"revision":%s}'),
    ],
)
def test_letters_that_are_none_are_refused_in_one_sentence(
    coach: Visitor, folder: Path, path: str, body: str, letters: str
) -> None:
    here = path if path.startswith("/") else f"{coach.path}/{path}"
    answer = coach.asks.post(here, content=(body % letters).encode("utf-8", "surrogatepass"))
    assert answer.status_code == 200 or 400 <= answer.status_code < 500
    told = answer.json()
    assert set(told) == {"ok", "said", "data"}
    if answer.status_code != 200:
        assert is_one_sentence(told["said"]), told["said"]
    assert not (folder / "books" / "x.txt").exists()


REQUESTS: dict[str, bytes] = {
    "cut short": b'{"revision":0,"change":{"kind":"cut"',
    "no JSON": b"keep=0",
    "a byte that is no letter": b'{"revision":0,"change":{"kind":"text","text":"\xff"}}',
    "another encoding": json.dumps({"revision": 0}).encode("utf-16"),
    "a mark in front": b"\xef\xbb\xbf{}",
    "deep": b'{"revision":0,"change":' + b"[" * 50_000 + b"]" * 50_000 + b"}",
    "deep objects": b'{"a":' * 20_000 + b"1" + b"}" * 20_000,
    "a number with no end": b'{"revision":' + b"9" * 100_000 + b',"change":{"kind":"cut","keep":0}}',
    "a number beyond all": b'{"revision":0,"change":{"kind":"spot","spot":"LW","x_m":1e999,"y_m":1}}',
    "no number": b'{"revision":0,"change":{"kind":"spot","spot":"LW","x_m":NaN,"y_m":1}}',
    "endless": b'{"revision":0,"change":{"kind":"spot","spot":"LW","x_m":-Infinity,"y_m":1}}',
    "half a step": b'{"revision":0,"change":{"kind":"cut","keep":0.5}}',
    "before the first": b'{"revision":0,"change":{"kind":"cut","keep":-1}}',
    "far behind the last": b'{"revision":0,"change":{"kind":"cut","keep":99999999999999999999}}',
    "no such change": b'{"revision":0,"change":{"kind":"sing"}}',
    "no change": b'{"revision":0}',
    "something more": b'{"revision":0,"change":{"kind":"cut","keep":0},"and":1}',
    "yes for a number": b'{"revision":true,"change":{"kind":"cut","keep":"x"}}',
}


@pytest.mark.parametrize("body", REQUESTS.values(), ids=REQUESTS)
def test_what_is_no_request_is_refused_and_the_floor_stays(coach: Visitor, body: bytes) -> None:
    before = coach.shown()
    status = coach.take(coach.asks.post(f"{coach.path}/changes", content=body))
    assert status in (400, 422)
    assert is_one_sentence(coach.said), coach.said
    assert coach.take(coach.asks.get(coach.path)) == 200
    assert coach.shown() == before


def test_a_word_that_is_said_twice_counts_as_it_was_said_last(coach: Visitor) -> None:
    revision = coach.floor["revision"]
    body = f'{{"revision":9999,"revision":{revision},"change":{{"kind":"cut","keep":9,"keep":1}}}}'
    assert coach.take(coach.asks.post(f"{coach.path}/changes", content=body.encode())) == 200
    assert len(coach.play["moves"]) == 1
    assert coach.back("undo") == 200


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("x" * (MOST_BYTES + 1), "64000"),
        ("x" * MOST_BYTES, "64 kB"),  # with the line break that ends it, it is too long
        ("é" * (MOST_BYTES // 2), "64 kB"),
        ("🏀" * (MOST_BYTES // 4), "64 kB"),
        ("a\n" * (MOST_LINES + 1), f"{MOST_LINES} lines"),
        ("a\r" * (MOST_LINES + 1), f"{MOST_LINES} lines"),
        (f"{WIDE}\n\0", "Line 3"),
    ],
)
def test_what_could_not_be_read_again_is_no_book(coach: Visitor, asks: TestClient, text: str, says: str) -> None:
    before = coach.shown()
    assert coach.change({"kind": "text", "text": text}) == 422
    assert says in coach.said
    assert is_one_sentence(coach.said)
    assert coach.shown() == before
    assert asks.post("/api/floors", json={"text": text}).status_code == 422


@pytest.mark.parametrize(
    "text",
    [
        f"Title: Ours\r\n\r\n{WIDE}",
        f"Title: Ours\r\r{WIDE}",
        f"\ufeffTitle: Ours\n\n{WIDE}",
        WIDE.strip(),
        "كتاب\n🏀\n\u202e\n\x07\x0b\x0c\x85\u2028\n",
        "# nothing but a note",
        "x" * (MOST_BYTES - 1),
    ],
)
def test_what_is_kept_is_found_again_just_so_and_can_be_kept_again(asks: TestClient, text: str) -> None:
    name = f"kept {abs(hash(text))}"
    coach = Visitor(asks, text=text)
    path = coach.path
    for _ in range(2):
        assert coach.take(asks.post(f"{path}/keep", json={"name": name})) == 200
        assert coach.said == f"Kept as {name}."
        assert coach.floor["kept"] is True
    again = Visitor(asks, book=name)
    assert again.book == coach.book
    assert again.floor["kept"] is True
    assert name in [kept["name"] for kept in asks.get("/api/books").json()["data"]]


@settings(max_examples=60, deadline=None)
@given(st.text(alphabet=st.characters(exclude_categories=["Cs"]) | st.sampled_from("\r\n# :.\ufeff"), max_size=120))
def test_any_text_that_can_be_kept_is_found_again_just_so(asks: TestClient, text: str) -> None:
    answer = asks.post("/api/floors", json={"text": text or " "})
    if answer.status_code != 200:
        assert "\0" in text
        return
    coach = Visitor(asks, text=text or " ")
    for _ in range(2):
        status = coach.take(asks.post(f"{coach.path}/keep", json={"name": "any"}))
        if status == 409:  # another text was kept under this name before: it is not written over
            coach.floor["name"] = ""
            status = coach.take(asks.post(f"{coach.path}/keep", json={"name": _unused(asks)}))
        assert status == (200 if coach.book.strip() else 422), coach.said
        if status == 200:
            assert Visitor(asks, book=coach.floor["name"]).book == coach.book


def _unused(asks: TestClient) -> str:
    return f"any {len(asks.get('/api/books').json()['data'])}"


def test_an_empty_book_is_on_the_floor_but_is_not_kept(asks: TestClient, folder: Path) -> None:
    coach = Visitor(asks, text=" \n")
    coach.take(asks.post(f"{coach.path}/keep", json={"name": "empty"}))
    assert coach.said == '"empty" is not kept: there is nothing in it yet. Write a sentence first.'
    assert not (folder / "books" / "empty.txt").exists()


def test_what_is_kept_while_the_floor_changes_is_kept_and_can_be_kept_again(tmp_path: Path) -> None:
    """A change comes between the keeping and its answer, as it can from the same window."""

    class Slow(Shelf):
        def keep(self, *kept: Any) -> Any:
            done = Shelf.keep(self, *kept)
            evening.change(floor.id, 0, Line(kind="line", key="title", value="Changed"))
            return done

    evening = Evening(Shelf(tmp_path))
    floor = evening.open()
    evening.shelf = Slow(tmp_path)
    first = evening.keep(floor.id, "ours")
    assert (first.name, first.kept) == ("ours", False)
    assert evening.shelf.read("ours") == preset_text("school-team")
    evening.shelf = Shelf(tmp_path)
    assert evening.keep(floor.id, "ours").kept is True
    assert "Title: Changed\n" in evening.shelf.read("ours")


def test_a_floor_that_made_room_for_others_leaves_nothing_behind(tmp_path: Path) -> None:
    evening = Evening(Shelf(tmp_path))
    first = evening.open()
    for _ in range(MOST_FLOORS):
        evening.open()
    assert len(evening.desk.floors) == MOST_FLOORS
    assert set(evening.seen) == set(evening.desk.floors)
    with pytest.raises(Exception, match="not open here any more"):
        evening.look(first.id)


@pytest.mark.parametrize("name", ["our book (1).v2", "école", ".ours", "-", string.punctuation.replace("/", "")])
def test_a_file_of_any_name_that_was_named_is_opened_and_kept(tmp_path: Path, name: str) -> None:
    own = tmp_path / f"{name}.txt"
    own.write_text(f"Title: Ours\n\n{WIDE}")
    called = Shelf(tmp_path, own).own_name
    asks = client(tmp_path, own)
    coach = Visitor(asks, book=called)
    assert coach.floor["book"]["title"] == "Ours"
    assert coach.change({"kind": "line", "key": "title", "value": "Theirs"}) == 200
    assert coach.take(asks.post(f"{coach.path}/keep", json={"name": called})) == 200
    assert own.read_text().startswith("Title: Theirs\n")
