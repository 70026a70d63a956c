"""A tiny live page for the tests of the board: the floor of a show, made-up moves, and what the board told it.

The moves are no rules of the game: whoever has the ball passes to anybody or dribbles to any empty spot, and every
other player can be denied. The page keeps what the board told it in `told`, and its board in `board`.
"""

from __future__ import annotations

import json
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from importlib.resources import files
from typing import Any

from playwright.sync_api import Page

from backcut.motion.timeline import pose
from backcut.page.data import story
from backcut.page.document import main, shape
from backcut.picture.floor import floor
from backcut.picture.marks import defs
from backcut.picture.moment import NEAR_M
from backcut.picture.show import Moment, Show

#: Opens the live page of a show in the browser: see `conftest.py`.
Opener = Callable[..., Page]
#: As strict as the live page's own: nothing inline, nothing from elsewhere.
POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; connect-src 'self'; img-src data:"
KINDS = {"js": "text/javascript", "css": "text/css", "json": "application/json", "html": "text/html; charset=utf-8"}

SCRIPT = """
import { start } from "/static/board/start.js";
import { handle } from "/static/board/handles.js";
const data = await (await fetch("/data.json")).json();
for (const [name, value] of Object.entries(data.shape)) document.documentElement.style.setProperty("--" + name, value);
const stage = document.getElementById("stage");
window.told = [];
const live = { choose: (player) => told.push(["choose", player]), do: (can) => told.push(["do", can.move]) };
window.again = (options = {}) => {
  if (window.board) board.stop();
  stage.innerHTML = data.markup;
  window.board = start(document, { story: data.story, live, at: { moment: 0 }, ...options });
};
window.handle = handle;
again();
document.body.dataset.ready = "";
"""


def cells(show: Show, moment: Moment) -> list[dict[str, Any]]:
    """Everybody where he is, then the empty spots."""
    here = pose(show.timeline, moment.t_s)
    made: list[dict[str, Any]] = []
    for player, (x, y) in here.players.items():
        ball = player == here.holder
        label = f"player {player}{', has the ball' if ball else ''}"
        made.append(_cell(f"p{player}", x, y, label, player, ball))
    for spot, (x, y) in show.spots.items():
        near = [p for p in here.players.values() if (p[0] - x) ** 2 + (p[1] - y) ** 2 < NEAR_M**2]
        if not near:
            made.append(_cell(str(spot), x, y, f"{spot.title}, empty", None, False))
    return made


def _cell(name: str, x: float, y: float, label: str, player: int | None, ball: bool) -> dict[str, Any]:
    place = {"x": round(x * 100), "y": round(y * 100)}
    return {"id": name, **place, "label": label, "player": player, "ball": ball}


def cans(show: Show, moment: Moment) -> list[dict[str, Any]]:
    """Made-up moves: see above."""
    here = pose(show.timeline, moment.t_s)
    empty = [cell["id"] for cell in cells(show, moment) if cell["player"] is None]
    made = []
    for player in here.players:
        if player == here.holder:
            made += [_can(f"dribble {spot}", "dribble", player, None, spot, "g") for spot in empty]
        elif here.holder is not None:
            made.append(_can(f"{here.holder}>{player}", "pass", here.holder, player, None, "Enter"))
            made.append(_can(f"deny {player}", "deny", player, None, None, "d"))
    return made


def _can(move: str, kind: str, player: int, to: int | None, spot: str | None, key: str) -> dict[str, Any]:
    words = f"{player} passes to {to}" if kind == "pass" else move
    return {"move": move, "words": words, "kind": kind, "player": player, "to": to, "spot": spot, "key": key}


def data(show: Show) -> dict[str, Any]:
    """What the page fetches: markup, shape, and the story with its cells and moves."""
    drawn = floor(show.court, show.denial_word)
    told = json.loads(story(show, drawn.room))
    for moment, there in zip(show.moments, told["moments"], strict=True):
        there |= {"cells": cells(show, moment), "can": cans(show, moment)}
    return {"story": told, "shape": shape(show, drawn), "markup": main(show, drawn, symbols=defs())}


def pages(show: Show) -> dict[str, bytes]:
    """Every address of the page that is no static file."""
    html = (
        '<!doctype html><html lang="en" class="no-script"><head><meta charset="utf-8"><title>Live</title>'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        '<link rel="icon" href="data:,"><link rel="stylesheet" href="/static/style.css">'
        '<link rel="stylesheet" href="/static/board.css"><script type="module" src="/live.js"></script></head>'
        '<body class="live possession"><div id="stage"></div></body></html>'
    )
    return {"/page.html": html.encode(), "/live.js": SCRIPT.encode(), "/data.json": json.dumps(data(show)).encode()}


@contextmanager
def served(show: Show) -> Iterator[str]:
    """The page on the loopback while the block lasts; gives its address."""
    made = pages(show)

    class Answer(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            body = made.get(self.path)
            parts = self.path.split("/")[1:]
            if body is None and parts[0] == "static" and ".." not in parts:
                body = files("backcut.page").joinpath(*parts).read_bytes()
            self.send_response(200 if body is not None else 404)
            self.send_header("Content-Type", KINDS.get(self.path.rsplit(".", 1)[-1], "application/octet-stream"))
            self.send_header("Content-Security-Policy", POLICY)
            self.end_headers()
            self.wfile.write(body or b"")

        def log_message(self, format: str, *args: Any) -> None:
            """Nothing is printed for a page that came."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Answer)
    server.daemon_threads = True
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_address[1]}/page.html"
    finally:
        server.shutdown()
        server.server_close()
        thread.join(5)
