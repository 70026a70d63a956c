"""Start the server, say where it is, open the page, and stop cleanly."""

from __future__ import annotations

import os
import signal
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable
from pathlib import Path

import uvicorn
from platformdirs import user_data_path

from backcut.errors import BackcutError
from backcut.web.app import make_app
from backcut.web.guard import is_loopback
from backcut.web.shelf import Shelf

#: The port that is tried first, and how many after it (own design; not a well-known one).
PORT, TRIED = 8765, 20
#: How long running requests may go on when the server is stopped, in seconds: a save takes a few milliseconds.
LAST_S = 5


def usual_folder() -> Path:
    """Where books are kept unless another folder is named."""
    return user_data_path("backcut", appauthor=False) / "books"


def serve(
    shelf: Shelf,
    *,
    book: str,
    host: str = "127.0.0.1",
    port: int | None = None,
    browse: bool = True,
    say: Callable[[str], None] = print,
) -> None:
    """Serve the floor until Ctrl-C or a request to stop. Raises: BackcutError for an address that cannot be had."""
    listening = listen(host, port)
    taken = int(listening.getsockname()[1])
    address = f"http://{'127.0.0.1' if host in ('0.0.0.0', '::') else _bracketed(host)}:{taken}/"
    app = make_app(shelf, port=taken, host=host, began_with=book)
    config = uvicorn.Config(
        app, log_level="warning", access_log=False, timeout_graceful_shutdown=LAST_S, server_header=False
    )
    server = uvicorn.Server(config)
    # uvicorn stops cleanly at either signal and then passes it on: to this, which only stops it once more.
    for one in (signal.SIGINT, signal.SIGTERM):
        signal.signal(one, lambda *_: setattr(server, "should_exit", True))
    say(f"The floor is at {address}")
    say(f"Books are kept in {shelf.folder}" + (f", {shelf.own.name} in {shelf.own}" if shelf.own else ""))
    if not is_loopback(host):
        say(
            "Anybody on this network can open this page, change what is on it and keep books here. "
            "Leave --host out to have it for this machine alone."
        )
    say("Ctrl-C stops it.")
    if browse and _has_browser():
        threading.Timer(0.4, webbrowser.open, (address,)).start()
    try:
        server.run(sockets=[listening])
    finally:
        listening.close()
    say("Stopped. What was kept is kept.")


def listen(host: str, port: int | None) -> socket.socket:
    """A socket on this port, or on the first free one from the usual port on. Raises: BackcutError if there is none."""
    if not host:
        raise BackcutError("--host names no address. Leave it out, or name one of this machine's, such as 0.0.0.0.")
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    wanted = range(PORT, PORT + TRIED) if port is None else (port,)
    why = ""
    for number in wanted:
        # Named as TCP, so that short answers are not held back for more to come.
        one = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
        if sys.platform != "win32":
            one.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            one.bind((host, number))
            one.listen(128)
        except OSError as error:
            one.close()
            why = error.strerror or str(error)
            if isinstance(error, socket.gaierror):
                break  # no such name, whatever the port
            continue
        except (OverflowError, TypeError, UnicodeError) as error:  # no port, no name at all
            one.close()
            why = str(error)
            break
        return one
    ports = f"port {port}" if port is not None else f"any port from {PORT} to {PORT + TRIED - 1}"
    raise BackcutError(f"{host}, {ports}: the floor cannot be served there ({why}). Name another --port or --host.")


def _bracketed(host: str) -> str:
    return f"[{host}]" if ":" in host else host


def _has_browser() -> bool:
    """Whether there is a screen to open a browser on."""
    if sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))
