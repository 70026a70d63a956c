"""Start the server, say where it is, open the page, and stop cleanly."""

from __future__ import annotations

import errno
import os
import signal
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable
from contextlib import suppress
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
#: Addresses that mean every network this machine is on.
ALL = ("0.0.0.0", "::")
#: Kept free for examples (RFC 5737, RFC 3849), so nobody is there.
NOBODY = {socket.AF_INET: "192.0.2.1", socket.AF_INET6: "2001:db8::1"}
#: Another port may be had where these are why this one cannot.
PORT_ONLY = (errno.EADDRINUSE, errno.EACCES)


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
    """Serve the floor until Ctrl-C or a request to stop. Raises: BackcutError for an address that cannot be had.

    Ports are tried from the usual one on where none is named; 0 takes any that is free.
    """
    host = host.strip().removeprefix("[").removesuffix("]")
    listening = listen(host, port)
    taken = int(listening.getsockname()[1])
    address = f"http://{'127.0.0.1' if host in ALL else _bracketed(host)}:{taken}/"
    app = make_app(shelf, port=taken, host=host, began_with=book)
    config = uvicorn.Config(
        app, log_level="warning", access_log=False, timeout_graceful_shutdown=LAST_S, server_header=False
    )
    server = uvicorn.Server(config)
    # uvicorn stops cleanly at the first two and then passes them on: to this, which only stops it once more.
    # The third comes when the terminal's window is closed.
    for one in (signal.SIGINT, signal.SIGTERM, getattr(signal, "SIGHUP", signal.SIGTERM)):
        signal.signal(one, lambda *_: setattr(server, "should_exit", True))
    say(f"The floor is at {address}")
    if host in ALL and (there := _own_address(host)):
        say(f"From another device here: http://{_bracketed(there)}:{taken}/")
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
    with suppress(OSError):  # nobody reads it where the window is closed
        say("Stopped. What was kept is kept.")


def listen(host: str, port: int | None) -> socket.socket:
    """A socket on this port, or on the first free one from the usual port on. Raises: BackcutError if there is none."""
    if not host:
        raise BackcutError("--host: name an address of this machine, such as 127.0.0.1, or leave it out.")
    wanted = range(PORT, PORT + TRIED) if port is None else (port,)
    for number in wanted:
        # Named as TCP, so that short answers are not held back for more to come.
        one = socket.socket(_family(host), socket.SOCK_STREAM, socket.IPPROTO_TCP)
        if sys.platform != "win32":
            one.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            one.bind((host, number))
            one.listen(128)
        except (OSError, TypeError, UnicodeError) as error:  # the last two: what cannot be a name of a machine
            one.close()
            if not isinstance(error, OSError) or error.errno not in PORT_ONLY:
                raise BackcutError(
                    f'--host "{host[:80]}": this is no address of this machine that can be listened on. Name one of '
                    "its own, 127.0.0.1 for this machine alone, or 0.0.0.0 for every network it is on."
                ) from None
            why = error.strerror
        else:
            return one
    ports = f"port {port}" if port is not None else f"any port from {PORT} to {PORT + TRIED - 1}"
    raise BackcutError(f"{host}, {ports}: the floor cannot be served there ({why}). Name another --port or --host.")


def _own_address(host: str) -> str:
    """The address of this machine as others on its network see it, empty where it is on none. Nothing is sent."""
    family = _family(host)
    with socket.socket(family, socket.SOCK_DGRAM) as one, suppress(OSError):
        one.connect((NOBODY[family], PORT))
        return str(one.getsockname()[0])
    return ""


def _family(host: str) -> socket.AddressFamily:
    return socket.AF_INET6 if ":" in host else socket.AF_INET


def _bracketed(host: str) -> str:
    return f"[{host}]" if ":" in host else host


def _has_browser() -> bool:
    """Whether there is a screen to open a browser on."""
    if sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))
