"""What a book gives for practice, made from what is on the floor: cards, handouts, tonight's page, a clip, a quiz."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Annotated, Literal

from fastapi import APIRouter, Query
from fastapi import Path as InPath
from fastapi.responses import Response

from backcut.errors import BackcutError
from backcut.offence.book import Book
from backcut.teaching.examples import Example, example
from backcut.web.desk import Desk
from backcut.web.floor import read
from backcut.web.share import PAGE_POLICY, as_file, saved_as

Id = Annotated[str, InPath(max_length=40, pattern=r"^[\w-]+$")]
Rank = Annotated[int, Query(ge=0, le=200)]
Many = Annotated[int, Query(ge=0, le=60)]
Sheets = Literal["poster", "bench", "booklet", "quiz"]
Size = Literal["a4", "letter"]


def practice_routes(desk: Desk) -> APIRouter:
    """Files to save. What they take is loaded when the first is asked for: paper and film need large libraries."""
    route = APIRouter(prefix="/practice/{ident}", tags=["practice"])

    def on_floor(ident: str) -> tuple[Book, str]:
        text = desk.find(ident).floor.text
        return read(text)[0], text

    def pdf(ident: str, about: str, paper: str, make: Callable[..., bytes]) -> Response:
        from backcut.teaching.sheets import paper_named, stamp

        book, text = on_floor(ident)
        data = make(book, stamp(book, date.today(), text), paper_named(paper))
        return as_file(data, "application/pdf", saved_as(book.title, "pdf", about))

    @route.get("/handout.pdf")
    def handout(ident: Id, rank: Rank, paper: Size = "a4") -> Response:
        """One sentence on a page."""
        from backcut.teaching.sheets import handout_pdf

        return pdf(ident, "handout", paper, lambda book, mark, on: handout_pdf(_shown(book, rank), mark, on))

    @route.get("/card.pdf")
    def card(
        ident: Id, rank: Rank, paper: Size = "a4", players: Many = 8, baskets: Many = 1, balls: Many = 4
    ) -> Response:
        """The drill of a sentence at every stage, as cards to cut."""
        from backcut.teaching.drills.drill import Hall, drills
        from backcut.teaching.sheets import cards_pdf
        from backcut.teaching.sheets.drilled import card_of

        hall = Hall(players, baskets, balls)
        return pdf(
            ident,
            "cards",
            paper,
            lambda book, mark, on: cards_pdf([card_of(one) for one in drills(_shown(book, rank), hall)], mark, on),
        )

    @route.get("/tonight.pdf")
    def tonight(
        ident: Id,
        paper: Size = "a4",
        players: Many = 8,
        baskets: Many = 1,
        balls: Many = 4,
        minutes: Annotated[int, Query(ge=0, le=600)] = 60,
    ) -> Response:
        """Tonight's running order."""
        from backcut.teaching.drills.drill import Hall
        from backcut.teaching.sheets import page_pdf
        from backcut.teaching.sheets.drilled import plan_of
        from backcut.teaching.tonight.plan import evening

        hall = Hall(players, baskets, balls)
        return pdf(
            ident, "tonight", paper, lambda book, mark, on: page_pdf(plan_of(evening(book, hall, minutes)), mark, on)
        )

    @route.get("/sheet.pdf")
    def whole(ident: Id, kind: Sheets, paper: Size = "a4") -> Response:
        """The whole book: a poster, the bench sheet, the booklet, or a quiz on paper with its key."""
        from backcut.teaching.sheets import Sheet, sheets

        return pdf(ident, kind, paper, lambda book, mark, on: next(iter(sheets(book, Sheet(kind), mark, on))).pdf)

    @route.get("/clip.mp4")
    def clip(ident: Id, rank: Rank, wide: bool = False) -> Response:
        """A sentence as a clip for the phone."""
        from backcut.teaching.clips.clip import clip as clip_of
        from backcut.teaching.clips.told import told_example

        book, _ = on_floor(ident)
        made = clip_of(told_example(_shown(book, rank)), wide=wide)
        return as_file(made.mp4, "video/mp4", saved_as(book.title, "mp4", book.cue(rank)))

    @route.get("/quiz.html")
    def quiz(ident: Id, seed: Annotated[int, Query(ge=0, le=1_000_000)] = 1) -> Response:
        """Questions for the phone, one page that needs no network."""
        from backcut.teaching.quizzes import quiz as drawn
        from backcut.teaching.quizzes import quiz_page

        book, _ = on_floor(ident)
        page = quiz_page(book, drawn(book, 10, seed))
        return as_file(page.encode(), "text/html; charset=utf-8", saved_as(book.title, "html", "quiz"), PAGE_POLICY)

    return route


def _shown(book: Book, rank: int) -> Example:
    if rank >= len(book.sentences):
        raise BackcutError(f"There is no sentence {rank + 1}: this book has {len(book.sentences)}.")
    return example(book, rank)
