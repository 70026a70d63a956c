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
#: Longer names are no help to anybody.
LETTERS = 60


def share_routes(desk: Desk) -> APIRouter:
    """Files of a floor, to be kept or sent."""
    route = APIRouter(prefix="/share/{ident}", tags=["share"], default_response_class=Response)

    @route.get("/page.html")
    def page(ident: Id) -> Response:
        """The possession as one page that needs no network."""
        here = told(desk.find(ident).floor)
        return _file(possession_page(_plain(here)), "text/html", f"{here.show.title}.html", policy=PAGE_POLICY)

    @route.get("/moment.svg")
    def drawing(
        ident: Id,
        stop: Annotated[int, Query(ge=0, le=400)] = 0,
        light: Literal["day", "night", "print"] = "day",
        save: bool = False,
    ) -> Response:
        """One moment as a drawing, its style and fonts inside."""
        here = told(desk.find(ident).floor)
        if stop >= len(here.stops):
            raise BackcutError(f"There is no decision {stop + 1}: this possession has {len(here.stops)}.")
        text = standalone(here.show, stop, light=light)
        name = f"{here.show.title} {stop + 1}.svg" if save else ""
        return _file(text, "image/svg+xml", name, policy=OWN_POLICY)

    @route.get("/book.txt")
    def book(ident: Id) -> Response:
        """The book as its text."""
        floor = desk.find(ident).floor
        return _file(floor.text, "text/plain", f"{told(floor).show.title}.txt", policy=OWN_POLICY)

    return route


def _plain(here: Told) -> Show:
    """The show without the stops only a live floor needs: the start before anything has happened."""
    moments = here.show.moments
    return replace(here.show, moments=moments[1:]) if len(moments) > 1 else here.show


def _file(text: str, kind: str, name: str, *, policy: str) -> Response:
    headers = {"content-security-policy": policy}
    if name:
        headers["content-disposition"] = _saved_as(name)
    return Response(text.encode("utf-8", "replace"), media_type=f"{kind}; charset=utf-8", headers=headers)


def _saved_as(name: str) -> str:
    """The header that names a file to be saved: plain letters for all, and the true name (RFC 6266, RFC 8187)."""
    stem, _, ending = name.rpartition(".")
    true = " ".join(re.sub(r'[\x00-\x1f\x7f/\\:*?"<>|]+', " ", stem).split())[:LETTERS].strip(". ") or "book"
    plain = unicodedata.normalize("NFKD", true).encode("ascii", "ignore").decode().strip() or "book"
    return f"attachment; filename=\"{plain}.{ending}\"; filename*=UTF-8''{quote(f'{true}.{ending}', safe='')}"
