"""Who may ask, and how much: the server answers only to its own address, and takes changes only from its own page.

A page of somebody else's that is open in the same browser can send requests to this machine. It is kept out three ways:
its name in the Host header is another (a name that was pointed here afterwards too), its Origin is another, and what it
can send without asking first is not JSON.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from contextlib import suppress
from ipaddress import ip_address

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

#: A book has at most 64 kB; escaped in JSON it may take a few times that (own design).
MOST_BYTES = 256_000

LOOPBACK = ("127.0.0.1", "localhost", "[::1]")
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data: blob:; "
    "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}
READS = frozenset({"GET", "HEAD", "OPTIONS"})


class TooMuch(Exception):  # noqa: N818  (not an error a user meets: it becomes an answer)
    """A body that goes on for longer than any book."""


class Guard:
    """The door of the server. `host` is the address it listens on; `port` the port in its own name."""

    def __init__(self, app: ASGIApp, *, host: str, port: int) -> None:
        self.app = app
        self.port = port
        self.open = not is_loopback(host)
        self.names = {*LOOPBACK, f"[{host}]" if ":" in host else host.lower()}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request in, or answer why not."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        refusal = self._refusal(scope["method"], Headers(scope=scope))
        if refusal is not None:
            await _refuse(scope, send, *refusal)
            return
        taken, begun = 0, False

        async def measured() -> Message:
            nonlocal taken
            message = await receive()
            taken += len(message.get("body", b""))
            if taken > MOST_BYTES:
                raise TooMuch
            return message

        async def guarded(message: Message) -> None:
            nonlocal begun
            if taken > MOST_BYTES and not begun:
                return  # whatever is said of a body that was not read to its end
            if message["type"] == "http.response.start":
                begun = True
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers.setdefault(name, value)
                # A shared file brings the policy it needs; everything else has the floor's.
                headers.setdefault("content-security-policy", POLICY)
                headers.setdefault("cache-control", "no-cache" if scope["path"].startswith("/static/") else "no-store")
            await send(message)

        try:
            with suppress(TooMuch):
                await self.app(scope, measured, guarded)
        except Exception:  # a fault of ours: its story is for the terminal, a sentence for the page
            if not begun:
                await _refuse(scope, send, 500, "Backcut could not do that, by a fault of its own. Go on from here.")
            raise
        if taken > MOST_BYTES and not begun:
            await _refuse(scope, send, 413, _too_much())

    def _refusal(self, method: str, headers: Mapping[str, str]) -> tuple[int, str] | None:
        host = headers.get("host", "")
        name, _, port = host.rpartition(":") if not host.endswith("]") else (host, "", "")
        if not self._is_own(name or host, port):
            right = f"http://127.0.0.1:{self.port}/"
            if self.open:
                right = f"this machine by its address in numbers, with :{self.port} after it, or on it for {right}"
            return 421, f'This is not "{host[:80]}". Ask for {right} instead.'
        if method in READS:
            return None
        site, origin = headers.get("sec-fetch-site"), headers.get("origin")
        # A browser always says where a write comes from; a script on this machine says nothing, and must send JSON,
        # which no foreign page can without being asked about first.
        if origin is not None and origin != f"http://{host}":
            return 403, "Another page asked for this change. Only the floor's own page may."
        if origin is None and site not in (None, "same-origin"):
            return 403, "Another page asked for this change. Only the floor's own page may."
        length = headers.get("content-length", "0")
        if length.isdecimal() and (len(length) > 9 or int(length) > MOST_BYTES):
            return 413, _too_much()
        kind = headers.get("content-type", "").partition(";")[0].strip().lower()
        if kind != "application/json" and (origin is None or length != "0" or "transfer-encoding" in headers):
            return 415, "Send JSON, with the content type application/json."
        return None

    def _is_own(self, name: str, port: str) -> bool:
        if port != str(self.port) and not (port == "" and self.port == 80):
            return False
        return name.lower() in self.names or (self.open and _is_address(name))


def _is_address(name: str) -> bool:
    """Whether it is an address in numbers: no name can be pointed elsewhere then."""
    try:
        ip_address(name.strip("[]"))
    except ValueError:
        return False
    return True


def is_loopback(host: str) -> bool:
    """Whether an address is this machine alone."""
    return host == "localhost" or (_is_address(host) and ip_address(host.strip("[]")).is_loopback)


def _too_much() -> str:
    return f"That is more than {MOST_BYTES // 1000} kB; a book is a few pages of text."


async def _refuse(scope: Scope, send: Send, code: int, said: str) -> None:
    """The refusal in the form that whoever asks can read."""
    if scope["path"].startswith("/api"):
        kind, body = b"application/json", json.dumps({"ok": False, "said": said, "data": None}).encode()
    else:
        kind, body = b"text/plain; charset=utf-8", f"{said}\n".encode()
    extra = [(name.encode(), value.encode()) for name, value in HEADERS.items()]
    headers = [(b"content-type", kind), (b"content-length", str(len(body)).encode()), *extra]
    headers += [(b"content-security-policy", POLICY.encode()), (b"cache-control", b"no-store")]
    await send({"type": "http.response.start", "status": code, "headers": headers})
    await send({"type": "http.response.body", "body": b"" if scope["method"] == "HEAD" else body})
