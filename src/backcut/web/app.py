"""The server: one process, one envelope, Python the only place where rules run."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable
from contextlib import AbstractAsyncContextManager, asynccontextmanager
from dataclasses import asdict
from threading import Thread
from typing import Annotated, Any

from fastapi import APIRouter, FastAPI, Query, Request
from fastapi import Path as InPath
from fastapi.exceptions import RequestValidationError
from fastapi.responses import HTMLResponse, JSONResponse, Response
from pydantic import BaseModel, ConfigDict, Field
from starlette.exceptions import HTTPException
from starlette.middleware.gzip import GZipMiddleware
from starlette.staticfiles import StaticFiles

from backcut import __version__
from backcut.errors import BackcutError, ConflictError, GoneError
from backcut.offence.completion import completions
from backcut.web.answers import answers_at, sayings_at
from backcut.web.book_view import options
from backcut.web.changes import Change, Letters, Text
from backcut.web.envelope import AnswerData, CompletionData, FloorData, KeptData, OptionData, Refused, SayingData, Told
from backcut.web.evening import DEMO_BOOK, Evening
from backcut.web.guard import Guard
from backcut.web.page import page
from backcut.web.practice import practice_routes
from backcut.web.proof import BusyError, Proofs
from backcut.web.proof_routes import proof_routes
from backcut.web.share import share_routes
from backcut.web.shelf import Shelf
from backcut.web.tidy import Heard, Tidy

Id = Annotated[str, InPath(max_length=40, pattern=r"^[\w-]+$")]
REFUSALS: dict[int | str, dict[str, Any]] = {
    code: {"model": Refused} for code in (400, 403, 404, 405, 409, 413, 415, 421, 422)
}

_UNREADABLE = {
    "json_invalid": "from here on it is no JSON",
    "missing": "this is missing",
    "extra_forbidden": "nothing of this name is asked for",
    "string_unicode": "half a letter stands in it (a lone surrogate), which no text holds",
}


class Asked(BaseModel):
    """What to put on a new floor; nothing asked is the demo."""

    model_config = ConfigDict(extra="forbid")
    book: Letters = ""
    text: Text = ""
    start: Letters = ""
    moves: Letters = ""
    stands: Letters = ""


class Changing(BaseModel):
    """A change, and the revision of the floor it was made on."""

    model_config = ConfigDict(extra="forbid")
    revision: Annotated[int, Field(ge=0)]
    change: Change


class Going(BaseModel):
    """Undo or redo, on this revision."""

    model_config = ConfigDict(extra="forbid")
    revision: Annotated[int, Field(ge=0)]


class Keeping(BaseModel):
    """The name to keep a book under."""

    model_config = ConfigDict(extra="forbid")
    name: Letters


class Typed(BaseModel):
    """The beginning of a sentence."""

    model_config = ConfigDict(extra="forbid")
    text: Letters


class Pointed(BaseModel):
    """A player at a decision, and the answer that would be right in this team."""

    model_config = ConfigDict(extra="forbid")
    stop: Annotated[int, Field(ge=0, le=400)]
    player: Annotated[int, Field(ge=0, le=999)]
    answer: Letters


def make_app(shelf: Shelf, *, port: int, host: str = "127.0.0.1", began_with: str = DEMO_BOOK) -> FastAPI:
    """The whole server over a shelf of books; it answers only to its own host and port."""
    evening, proofs, tidy = Evening(shelf, began_with), Proofs(), Tidy()
    app = FastAPI(
        title="Backcut",
        version=__version__,
        description="The live floor: what is on it, what can happen, and why. Every answer is one envelope.",
        lifespan=_beside(evening, proofs, tidy),
        openapi_url="/api/openapi.json",
        docs_url=None,
        redoc_url=None,
        swagger_ui_oauth2_redirect_url=None,
    )
    _answer_in_one_form(app)
    app.include_router(floor_routes(evening), prefix="/api", responses=REFUSALS)
    app.include_router(book_routes(evening), prefix="/api", responses=REFUSALS)
    app.include_router(proof_routes(evening.desk, proofs), prefix="/api", responses=REFUSALS)
    app.include_router(share_routes(evening.desk), responses=REFUSALS)
    app.include_router(practice_routes(evening.desk), responses=REFUSALS)

    @app.get("/", include_in_schema=False)
    def floor_page() -> HTMLResponse:
        return HTMLResponse(page())

    app.mount("/static", StaticFiles(packages=[("backcut.page", "static"), ("backcut.web", "static")]))
    app.add_middleware(GZipMiddleware, minimum_size=2_000, compresslevel=4)
    app.add_middleware(Guard, host=host, port=port)
    app.add_middleware(Heard, tidy=tidy)
    return app


def _beside(evening: Evening, proofs: Proofs, tidy: Tidy) -> Callable[[FastAPI], AbstractAsyncContextManager[None]]:
    """What begins and ends with the server: the first floor is got ready, memory tidied, and no proof goes on after."""

    @asynccontextmanager
    async def running(_: FastAPI) -> AsyncIterator[None]:
        Thread(target=evening.get_ready, daemon=True).start()
        with tidy.instead():
            tidying = asyncio.create_task(tidy.go())
            yield
            tidying.cancel()
        proofs.close()

    return running


def _written(data: FloorData, said: str = "") -> Response:
    """A floor in the envelope, written at once: it was checked when it was made, and it is long."""
    return Response(Told[FloorData](said=said, data=data).model_dump_json(), media_type="application/json")


def floor_routes(evening: Evening) -> APIRouter:
    """Floors: open one, look at it, change it, go back and on."""
    route = APIRouter(prefix="/floors", tags=["floors"])

    @route.post("", response_model=Told[FloorData])
    def open_floor(asked: Asked) -> Response:
        """Put a book and a possession on a new floor."""
        return _written(evening.open(**asked.model_dump()))

    @route.get("/{ident}", response_model=Told[FloorData])
    def look(ident: Id) -> Response:
        """What is on a floor."""
        return _written(evening.look(ident))

    @route.post("/{ident}/changes", response_model=Told[FloorData])
    def change(ident: Id, asked: Changing) -> Response:
        """Change what is on a floor."""
        return _written(evening.change(ident, asked.revision, asked.change))

    @route.post("/{ident}/undo", response_model=Told[FloorData])
    def undo(ident: Id, asked: Going) -> Response:
        """Take the last change back."""
        return _written(evening.back(ident, asked.revision, -1))

    @route.post("/{ident}/redo", response_model=Told[FloorData])
    def redo(ident: Id, asked: Going) -> Response:
        """Do again what was taken back."""
        return _written(evening.back(ident, asked.revision, +1))

    @route.post("/{ident}/keep", response_model=Told[FloorData])
    def keep(ident: Id, asked: Keeping) -> Response:
        """Keep the book on the shelf."""
        return _written(evening.keep(ident, asked.name), f"Kept as {asked.name}.")

    @route.get("/{ident}/answers")
    def could(
        ident: Id, stop: Annotated[int, Query(ge=0, le=400)], player: Annotated[int, Query(ge=0, le=999)]
    ) -> Told[list[AnswerData]]:
        """What a player is told at a decision, first, then what one change of the book would say instead."""
        return Told(data=answers_at(evening.desk.find(ident).floor, stop, player))

    @route.post("/{ident}/answers")
    def says(ident: Id, asked: Pointed) -> Told[list[SayingData]]:
        """The changes of the book that would say this answer, and what else they change."""
        return Told(data=sayings_at(evening.desk.find(ident).floor, asked.stop, asked.player, asked.answer))

    return route


def book_routes(evening: Evening) -> APIRouter:
    """Books on the shelf, and the words a book is made of."""
    route = APIRouter(tags=["books"])

    @route.get("/books")
    def books() -> Told[list[KeptData]]:
        """Every book that can be opened."""
        return Told(data=[KeptData(**asdict(kept)) for kept in evening.books()])

    @route.get("/books/{name}/versions")
    def versions(name: Annotated[str, InPath(max_length=255)]) -> Told[list[str]]:
        """The versions of a book that were put by, the newest first."""
        return Told(data=[str(stamp) for stamp in evening.shelf.versions(name)])

    @route.get("/books/{name}/versions/{stamp}")
    def version(
        name: Annotated[str, InPath(max_length=255)], stamp: Annotated[str, InPath(max_length=40)]
    ) -> Told[str]:
        """The text of a version."""
        return Told(data=evening.shelf.version(name, stamp))

    @route.get("/options")
    def what_there_is() -> Told[dict[str, list[OptionData]]]:
        """The formations, courts and squads there are."""
        return Told(data=options())

    @route.post("/words")
    def words(typed: Typed) -> Told[list[CompletionData]]:
        """How a sentence can go on."""
        found = completions(typed.text)
        return Told(data=[CompletionData(insert=one.insert, whole=one.whole, who=one.who) for one in found])

    return route


def _answer_in_one_form(app: FastAPI) -> None:
    """Every refusal in the envelope, one sentence each."""

    def refused(code: int, said: str) -> JSONResponse:
        return JSONResponse(Refused(said=said).model_dump(), status_code=code)

    @app.exception_handler(BackcutError)
    def _ours(request: Request, error: BackcutError) -> Response:
        code = 404 if isinstance(error, GoneError) else 409 if isinstance(error, (ConflictError, BusyError)) else 422
        return refused(code, str(error))

    @app.exception_handler(RequestValidationError)
    def _unreadable(request: Request, error: RequestValidationError) -> Response:
        first = error.errors()[0]
        place = ".".join(str(part) for part in first["loc"] if part not in ("body", "path", "query"))
        return refused(422, f"{place or 'The request'}: {_UNREADABLE.get(first['type'], first['msg'])}.")

    @app.exception_handler(HTTPException)
    def _nothing_here(request: Request, error: HTTPException) -> Response:
        said = {
            400: "This cannot be read as JSON: it is no UTF-8, nested too deep, or a number in it is too long.",
            404: "There is nothing at this address.",
            405: "This address does not take that.",
        }
        return refused(error.status_code, said.get(error.status_code, str(error.detail)))
