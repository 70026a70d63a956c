"""The server as somebody starts and stops it: in a terminal, in a script, twice, and in the middle of a save."""

from __future__ import annotations

import json
import os
import pty
import re
import select
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from urllib.request import Request, urlopen

import pytest

from backcut.errors import BackcutError
from backcut.web.serve import listen, serve
from backcut.web.shelf import Shelf

WAITS_S = 60.0  # until a test gives up; no test measures time


class Terminal:
    """`backcut` with these words in a terminal of its own, and what it has said."""

    def __init__(self, *words: str) -> None:
        self.master, slave = pty.openpty()
        env = os.environ | {"COLUMNS": "200", "TERM": "dumb"}
        env.pop("DISPLAY", None)
        command = [sys.executable, "-m", "backcut", *words]
        self.process = subprocess.Popen(command, stdin=slave, stdout=slave, stderr=slave, env=env, close_fds=True)
        os.close(slave)
        self.said = ""

    def until(self, wanted: str) -> re.Match[str]:
        """Read on until this is said."""
        end = time.monotonic() + WAITS_S
        while time.monotonic() < end:
            if found := re.search(wanted, self.said):
                return found
            if select.select([self.master], [], [], 0.2)[0]:
                try:
                    self.said += os.read(self.master, 65536).decode().replace("\r\n", "\n")
                except OSError:  # the other end is closed
                    break
        found = re.search(wanted, self.said)
        assert found, self.said
        return found

    def stop(self, how: signal.Signals) -> int:
        """End it by its own process id, and wait. The exit code."""
        self.process.send_signal(how)
        return self.process.wait(WAITS_S)


@contextmanager
def terminal(*words: str) -> Iterator[Terminal]:
    made = Terminal(*words)
    try:
        yield made
    finally:
        if made.process.poll() is None:
            made.process.kill()
            made.process.wait(WAITS_S)
        os.close(made.master)


def ask(address: str, path: str, body: object = None) -> dict[str, Any]:
    data = None if body is None else json.dumps(body).encode()
    request = Request(f"{address}{path}", data, {"Content-Type": "application/json"})
    with urlopen(request, timeout=WAITS_S) as answer:
        told: dict[str, Any] = json.load(answer)
    return told


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_it_says_where_it_is_and_where_books_are_kept_and_stops_cleanly(tmp_path: Path, how: signal.Signals) -> None:
    with terminal("floor", "--books", str(tmp_path / "books"), "--no-browser") as here:
        address = here.until(r"The floor is at (http://127\.0\.0\.1:\d+)/\n")[1]
        assert f"Books are kept in {tmp_path / 'books'}\n" in here.until(r"[\s\S]*Ctrl-C stops it\.\n")[0]
        assert ask(address, "/api/floors", {})["ok"] is True
        assert here.stop(how) == 0
        here.until(r"Stopped\. What was kept is kept\.\n")
        assert "Traceback" not in here.said
        assert not (tmp_path / "books").exists()


def test_bare_it_opens_the_floor_and_two_at_once_take_two_ports(tmp_path: Path) -> None:
    with terminal() as first, terminal("floor", "--books", str(tmp_path)) as second:
        both = {here.until(r"The floor is at (http://127\.0\.0\.1:\d+)/\n")[1] for here in (first, second)}
        assert len(both) == 2
        named = {name: ask(address, "/api/floors", {})["data"]["play"]["stuck"] for name, address in enumerate(both)}
        assert set(named.values()) == {""}


def test_a_save_under_way_is_finished_when_it_is_stopped(tmp_path: Path) -> None:
    with terminal("floor", "--books", str(tmp_path), "--no-browser") as here:
        address = here.until(r"The floor is at (http://127\.0\.0\.1:\d+)/\n")[1]
        floor = ask(address, "/api/floors", {})["data"]
        body = json.dumps({"name": "ours"}).encode()
        with socket.create_connection(("127.0.0.1", int(address.rsplit(":", 1)[1])), timeout=WAITS_S) as line:
            head = [
                f"POST /api/floors/{floor['id']}/keep HTTP/1.1",
                f"Host: {address[7:]}",
                "Content-Type: application/json",
                f"Content-Length: {len(body)}",
                "Connection: close",
            ]
            line.sendall("\r\n".join([*head, "", ""]).encode() + body)
            here.process.send_signal(signal.SIGTERM)
            try:
                answer = line.makefile("rb").read()
            except ConnectionResetError:  # it was stopped before it had read what was asked
                answer = b""
        assert here.process.wait(WAITS_S) == 0
        kept = tmp_path / "ours.txt"
        # Either it was in time and the book is there whole, or it was refused and nothing is.
        assert (b" 200 " in answer) is kept.exists()
        if kept.exists():
            assert kept.read_text("utf-8") == floor["book"]["text"]


def test_an_open_network_is_told_what_that_means(tmp_path: Path) -> None:
    with terminal("floor", "--host", "0.0.0.0", "--books", str(tmp_path), "--no-browser") as here:
        here.until(r"Anybody on this network can open this page, change what is on it and keep books here\.")
        assert here.stop(signal.SIGTERM) == 0


def run(*words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "backcut", *words]
    env = os.environ | {"COLUMNS": "200"}
    return subprocess.run(command, capture_output=True, text=True, env=env, timeout=WAITS_S, check=False)


@pytest.mark.parametrize("words", [(), ("--once",), ("floor", "--once")])
def test_a_script_gets_the_report_of_the_main_job_and_an_end(
    words: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    done = run(*words)
    assert done.returncode == 0
    assert done.stderr == ""
    assert "The school team, with a hole: 2 findings." in done.stdout
    assert "X4 denies 4" in done.stdout
    assert list(tmp_path.iterdir()) == []


def test_once_in_a_terminal_prints_it_too() -> None:
    with terminal("floor", "--once", "five-out") as here:
        assert here.process.wait(WAITS_S) == 0
        here.until(r"Five-out: clean\.")


def test_a_port_that_is_taken_is_said_in_one_sentence(tmp_path: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with terminal("floor", "--port", str(port), "--books", str(tmp_path)) as here:
            assert here.process.wait(WAITS_S) == 2
            here.until(rf"127\.0\.0\.1, port {port}: the floor cannot be served there")
            assert "Traceback" not in here.said


def test_any_free_port_can_be_asked_for(tmp_path: Path) -> None:
    with terminal("floor", "--port", "0", "--books", str(tmp_path), "--no-browser") as here:
        address = here.until(r"The floor is at (http://127\.0\.0\.1:\d+)/\n")[1]
        assert ask(address, "/api/books")["ok"] is True
        assert here.stop(signal.SIGTERM) == 0


@pytest.mark.parametrize("port", ["-1", "65536", "first"])
def test_a_port_there_is_not_is_said_in_one_sentence(port: str) -> None:
    with terminal("floor", "--port", port, "--no-browser") as here:
        assert here.process.wait(WAITS_S) == 2
        here.until("Invalid value for '--port'")
        assert "Traceback" not in here.said


# Example addresses that no machine has: RFC 6761 (invalid), RFC 5737 (203.0.113.0/24).
@pytest.mark.parametrize("host", ["bench.invalid", "203.0.113.9", "\u00fc" * 90, "a b", "", "::g"])
def test_an_address_that_is_not_of_this_machine_is_said_in_one_sentence(host: str) -> None:
    for port in (None, 0):
        with pytest.raises(BackcutError, match=r"^--host.*\.$"):
            listen(host, port)


def test_the_address_for_other_devices_is_said_where_there_is_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("backcut.web.serve.uvicorn.Server.run", lambda *_, **__: None)
    monkeypatch.setattr("backcut.web.serve.signal.signal", lambda *_: None)
    monkeypatch.setattr("backcut.web.serve._own_address", lambda _: "192.0.2.7")
    for host, wanted in (("0.0.0.0", "From another device here: http://192.0.2.7:"), ("127.0.0.1", "")):
        said: list[str] = []
        serve(Shelf(tmp_path), book="school-team", host=host, port=0, browse=False, say=said.append)
        told = [line for line in said if line.startswith("From another device")]
        assert len(told) == bool(wanted)
        assert all(line.startswith(wanted) for line in told)


def test_a_book_there_is_not_starts_nothing(tmp_path: Path) -> None:
    with terminal("floor", str(tmp_path / "none.txt")) as here:
        assert here.process.wait(WAITS_S) == 2
        here.until("there is no such file")
    assert run("floor", "--once", "nothing").returncode == 2


def test_the_file_that_was_named_is_the_one_on_the_floor_and_the_one_that_is_kept(tmp_path: Path) -> None:
    own = tmp_path / "ours (week 2).txt"
    own.write_text("Title: Ours\nFormation: five-out\n\nWide. Otherwise I hold, wide, feet set.\n")
    with terminal("floor", str(own), "--books", str(tmp_path / "books"), "--no-browser") as here:
        address = here.until(r"The floor is at (http://127\.0\.0\.1:\d+)/\n")[1]
        floor = ask(address, "/api/floors", {})["data"]
        assert floor["book"]["title"] == "Ours"
        path = f"/api/floors/{floor['id']}"
        change = {"kind": "line", "key": "title", "value": "Theirs"}
        ask(address, f"{path}/changes", {"revision": 0, "change": change})
        ask(address, f"{path}/keep", {"name": "ours week 2"})
        assert own.read_text().startswith("Title: Theirs\n")
        assert here.stop(signal.SIGINT) == 0
