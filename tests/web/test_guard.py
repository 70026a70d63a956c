"""Who may ask, and how much: only the floor's own page, on this machine, and no more than a book."""

from __future__ import annotations

import asyncio
import json
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from starlette.testclient import TestClient
from starlette.types import ASGIApp, Message, Receive, Scope, Send
from tests.web.floors import PORT, client

from backcut.web.guard import MOST_BYTES, Guard, is_loopback

HOME = f"http://127.0.0.1:{PORT}"


@pytest.fixture(scope="module")
def asks(tmp_path_factory: pytest.TempPathFactory) -> TestClient:
    return client(tmp_path_factory.mktemp("shelf"))


async def nothing() -> Message:
    return {"type": "http.request", "body": b"", "more_body": False}


def answered(app: ASGIApp, headers: list[tuple[bytes, bytes]], receive: Receive = nothing) -> list[Message]:
    """What the guard sends for a POST that no client would write."""
    sent: list[Message] = []

    async def send(message: Message) -> None:
        sent.append(message)

    host = (b"host", f"localhost:{PORT}".encode())
    scope = {"type": "http", "method": "POST", "path": "/api/floors", "headers": [host, *headers]}
    asked = Guard(app, host="127.0.0.1", port=PORT)(scope, receive, send)
    with ThreadPoolExecutor(1) as aside:  # another test's browser may keep a loop running in this thread
        aside.submit(asyncio.run, asked).result()
    return sent


def refused(answer: Any, status: int) -> str:
    assert answer.status_code == status, answer.text
    told = answer.json()
    assert told["ok"] is False
    assert told["data"] is None
    return str(told["said"])


@pytest.mark.parametrize("name", ["127.0.0.1", "localhost", "[::1]"])
def test_this_machine_is_let_in_by_each_of_its_names(asks: TestClient, name: str) -> None:
    assert asks.get("/api/books", headers={"host": f"{name}:{PORT}"}).status_code == 200


# A name that is pointed at this machine afterwards keeps its own Host header: RFC 9110, section 7.2.
@pytest.mark.parametrize(
    "host", ["evil.example:8765", "127.0.0.1:9", "127.0.0.1", "127.0.0.1.evil.example:8765", "[::1]"]
)
def test_another_name_is_turned_away_even_if_it_points_here(asks: TestClient, host: str) -> None:
    assert HOME in refused(asks.get("/api/books", headers={"host": host}), 421)


@pytest.mark.parametrize("origin", ["http://evil.example", "null", "https://127.0.0.1:8765", "http://127.0.0.1:8766"])
def test_another_page_may_not_change_anything(asks: TestClient, origin: str) -> None:
    assert "Another page" in refused(asks.post("/api/floors", json={}, headers={"origin": origin}), 403)


@pytest.mark.parametrize("site", ["cross-site", "same-site", "none"])
def test_a_browser_that_says_it_comes_from_elsewhere_is_believed(asks: TestClient, site: str) -> None:
    assert "Another page" in refused(asks.post("/api/floors", json={}, headers={"sec-fetch-site": site}), 403)


def test_the_own_page_and_a_script_on_this_machine_may(asks: TestClient) -> None:
    assert (
        asks.post("/api/floors", json={}, headers={"origin": HOME, "sec-fetch-site": "same-origin"}).status_code == 200
    )
    assert asks.post("/api/floors", json={}).status_code == 200


# What a foreign page can send without asking first is a form or plain text: the Fetch standard's "simple" requests.
@pytest.mark.parametrize("kind", ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""])
def test_what_is_not_json_is_not_read(asks: TestClient, kind: str) -> None:
    assert "JSON" in refused(asks.post("/api/floors", content=b"{}", headers={"content-type": kind}), 415)


def test_more_than_any_book_is_not_read_whether_its_length_is_told_or_not(asks: TestClient) -> None:
    big = b'{"text": "' + b"x" * MOST_BYTES + b'"}'
    assert "kB" in refused(asks.post("/api/floors", content=big), 413)
    assert "kB" in refused(asks.post("/api/floors", content=(big[i : i + 9999] for i in range(0, len(big), 9999))), 413)


@pytest.mark.parametrize("length", ["²", "9" * 30, "9" * 5_000, "-1", "1e9", "x", ""])
def test_a_length_that_is_none_is_not_believed(asks: TestClient, length: str) -> None:
    headers = [(b"content-length", length.encode("latin-1"))]
    answer = asks.post("/api/floors", content=b"{}", headers=headers)
    assert answer.status_code in (200, 413)
    assert set(answer.json()) == {"ok", "said", "data"}


def test_a_body_of_any_length_is_stopped_before_it_has_been_taken_in_whole() -> None:
    taken = 0

    async def app(scope: Scope, receive: Receive, send: Send) -> None:
        while (await receive())["more_body"]:
            pass

    async def endless() -> Message:
        nonlocal taken
        taken += 1
        return {"type": "http.request", "body": b"x" * 10_000, "more_body": True}

    assert answered(app, [(b"content-type", b"application/json")], endless)[0]["status"] == 413
    assert taken <= MOST_BYTES / 10_000 + 2


def test_every_answer_keeps_foreign_script_out(asks: TestClient) -> None:
    for path in ("/", "/api/books", "/static/floor/app.js", "/nothing", "/api/nothing"):
        headers = asks.get(path).headers
        policy = dict(part.strip().partition(" ")[::2] for part in headers["content-security-policy"].split(";"))
        assert policy["default-src"] == "'none'"
        assert policy["script-src"] == "'self'"
        assert policy["style-src"] == "'self'"
        assert policy["frame-ancestors"] == "'none'"
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["cross-origin-resource-policy"] == "same-origin"
    assert asks.get("/api/books").headers["cache-control"] == "no-store"


def test_the_page_itself_holds_no_script_and_no_style_of_its_own(asks: TestClient) -> None:
    page = asks.get("/").text
    assert "<style" not in page
    assert " style=" not in page
    assert page.count("<script") == 1
    assert 'src="/static/floor/app.js"' in page
    assert "http://" not in page.replace("http://www.w3.org/", "")


def test_an_open_network_is_reached_by_its_address_but_not_by_a_name() -> None:
    async def app(scope: Scope, receive: Receive, send: Send) -> None:
        await send({"type": "http.response.start", "status": 200, "headers": []})
        await send({"type": "http.response.body", "body": b""})

    asks = TestClient(Guard(app, host="0.0.0.0", port=PORT), base_url=f"http://192.0.2.7:{PORT}")
    assert asks.get("/").status_code == 200
    assert asks.get("/", headers={"host": f"[2001:db8::7]:{PORT}"}).status_code == 200
    foreign = asks.get("/", headers={"host": f"evil.example:{PORT}"})
    assert foreign.status_code == 421
    assert foreign.text.startswith("This is not")
    assert "by its address in numbers" in foreign.text
    named = TestClient(Guard(app, host="Bench.example", port=PORT), base_url=f"http://bench.example:{PORT}")
    assert named.get("/").status_code == 200


def test_a_head_is_told_what_a_get_is_and_nothing_more(asks: TestClient) -> None:
    evil = {"host": "evil.example:8765"}
    for path in ("/api/books", "/"):
        got, head = asks.get(path, headers=evil), asks.head(path, headers=evil)
        assert (head.status_code, head.content) == (421, b"")
        assert head.headers["content-length"] == got.headers["content-length"] == str(len(got.content))


# A browser asks first (OPTIONS) before it sends JSON elsewhere: the Fetch standard, "CORS-preflight request".
def test_a_foreign_page_that_asks_first_gets_no_leave(asks: TestClient) -> None:
    first = {
        "origin": "http://evil.example",
        "access-control-request-method": "POST",
        "access-control-request-headers": "content-type",
    }
    answer = asks.options("/api/floors", headers=first)
    refused(answer, 405)
    assert [name for name in answer.headers if name.startswith("access-control")] == []


@pytest.mark.parametrize("length", ["9" * 5000, str(MOST_BYTES + 1), "\u00b2", "-1", "x", ""])
def test_whatever_length_is_told_it_is_answered(length: str) -> None:
    async def app(scope: Scope, receive: Receive, send: Send) -> None:
        await receive()
        await send({"type": "http.response.start", "status": 200, "headers": []})

    headers = [(b"content-type", b"application/json"), (b"content-length", length.encode("latin-1"))]
    assert answered(app, headers)[0]["status"] == (413 if len(length) > 3 else 200)


def test_a_fault_of_ours_is_one_sentence_too_and_its_story_goes_to_the_terminal() -> None:
    async def app(scope: Scope, receive: Receive, send: Send) -> None:
        raise RuntimeError("a fault")

    server = Guard(app, host="127.0.0.1", port=PORT)
    calm = TestClient(server, base_url=HOME, raise_server_exceptions=False)
    answer = calm.get("/api/books")
    assert "fault of its own" in refused(answer, 500)
    assert "a fault" not in answer.text.replace("a fault of its own", "")
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    with pytest.raises(RuntimeError, match="a fault"):
        TestClient(server, base_url=HOME).get("/api/books")


@pytest.mark.parametrize(
    ("host", "alone"), [("127.0.0.1", True), ("::1", True), ("localhost", True), ("0.0.0.0", False)]
)
def test_loopback_is_this_machine_alone(host: str, alone: bool) -> None:
    assert is_loopback(host) is alone


@pytest.mark.parametrize(
    "body", [b"", b"{", b"[]", b"null", b"\xff\xfe", b'{"revision": 1e400}', json.dumps("x").encode()]
)
def test_any_body_gets_one_clear_sentence(asks: TestClient, body: bytes) -> None:
    ident = asks.post("/api/floors", json={}).json()["data"]["id"]
    answer = asks.post(f"/api/floors/{ident}/changes", content=body)
    assert refused(answer, 422).endswith(".")
