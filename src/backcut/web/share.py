"""What leaves the floor: a page, a drawing, the book; names of files are plain, names of players never occur."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace
from typing import Annotated, Literal
from urllib.parse import quote

from fastapi import APIRouter, Query
from fastapi import Path as InPath
from fastapi.responses import Response

from backcut.errors import BackcutError
from backcut.page import possession_page
from backcut.page.standalone import standalone
from backcut.picture.show import Show
from backcut.web.desk import Desk
from backcut.web.stops import Told, told

Id = Annotated[str, InPath(max_length=40, pattern=r"^[\w-]+$")]
#: A shared file is opened on its own, so it may do what it holds itself and nothing else.
OWN_POLICY = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; sandbox"
#: The page's own policy, in the file, allows its script by its hash; it is always saved, never shown from here.
PAGE_POLICY = "sandbox"
#: Longer names are no help to anybody (own design).
LETTERS = 60
#: How wide a drawing may be asked for, in pixels (own design: a thumbnail to a poster's screen).
NARROWEST_PX, WIDEST_PX = 200, 4000


def share_routes(desk: Desk) -> APIRouter:
    """Files of a floor, to be kept or sent."""
    route = APIRouter(prefix="/share/{ident}", tags=["share"], default_response_class=Response)

    @route.get("/page.html")
    def page(ident: Id) -> Response:
        """The possession as one page that needs no network."""
        here = told(desk.find(ident).floor)
        moves = ", ".join(step.text for step in here.played.steps).replace(">", "-")
        name = saved_as(here.show.title, "html", moves)
        return _file(possession_page(_played_alone(here)), "text/html", name, policy=PAGE_POLICY)

    @route.get("/moment.svg")
    def drawing(
        ident: Id,
        stop: Annotated[int, Query(ge=0, le=400)] = 0,
        light: Literal["day", "night", "print"] = "day",
        wide: Annotated[int, Query(ge=NARROWEST_PX, le=WIDEST_PX)] = 1600,
        save: bool = False,
    ) -> Response:
        """One moment as a drawing, its style and fonts inside."""
        here = told(desk.find(ident).floor)
        if stop >= len(here.stops):
            raise BackcutError(f"There is no decision {stop + 1}: this possession has {len(here.stops)}.")
        text = standalone(here.show, stop, light=light, wide_px=wide)
        name = saved_as(here.show.title, "svg", str(stop + 1)) if save else ""
        return _file(text, "image/svg+xml", name, policy=OWN_POLICY)

    @route.get("/book.txt")
    def book(ident: Id) -> Response:
        """The book as its text."""
        floor = desk.find(ident).floor
        return _file(floor.text, "text/plain", saved_as(told(floor).show.title, "txt"), policy=OWN_POLICY)

    return route


def _played_alone(here: Told) -> Show:
    """What happened, from its first decision on; where nothing has happened yet, how they stand."""
    moments = here.show.moments
    return replace(here.show, moments=moments[1:]) if len(moments) > 1 else here.show


def _file(text: str, kind: str, disposition: str, *, policy: str) -> Response:
    return as_file(text.encode("utf-8", "replace"), f"{kind}; charset=utf-8", disposition, policy)


def as_file(data: bytes, kind: str, disposition: str, policy: str = OWN_POLICY) -> Response:
    """A file as an answer, saved where there is a `disposition`, under a content policy of its own."""
    headers = {"content-security-policy": policy}
    if disposition:
        headers["content-disposition"] = disposition
    return Response(data, media_type=kind, headers=headers)


def saved_as(title: str, ending: str, about: str = "") -> str:
    """The header that names a file to be saved: plain letters for all, and the true name (RFC 6266, RFC 8187)."""
    true = _file_name(title, about)
    plain = _file_name(_ascii(title), about)
    whole = quote(f"{true}.{ending}", safe="")
    return f"attachment; filename=\"{plain}.{ending}\"; filename*=UTF-8''{whole}"


def _ascii(text: str) -> str:
    return unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()


def _file_name(title: str, about: str) -> str:
    """A name that stays where it is put on any system, without signs that are not seen or that turn the writing."""
    seen = "".join(" " if unicodedata.category(c) in ("Cc", "Cf", "Cn", "Co", "Cs") else c for c in title)
    words = " ".join(re.sub(r'[/\\:*?"<>|\uFFFD]+', " ", seen).split())
    name = words[:LETTERS].strip(". ") or "book"
    return f"{name} {about}"[: 2 * LETTERS].strip(" ,") if about else name
