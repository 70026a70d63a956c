"""A floor as the page needs it: every drawing and every word made here, none in the page."""

from __future__ import annotations

from functools import lru_cache
from urllib.parse import urlencode

from backcut.engine.gym import gym
from backcut.engine.words import event_words
from backcut.files import digest
from backcut.offence.situation_text import situation_text
from backcut.page.data import contents
from backcut.page.document import below, court, shape
from backcut.picture.floor import floor as drawn_floor
from backcut.web.book_view import book_data
from backcut.web.desk import Open
from backcut.web.difference import difference
from backcut.web.envelope import BookData, FloorData, MoveData, PlayData, SeenData, StopData
from backcut.web.floor import Floor, read
from backcut.web.stops import Told, told


def floor_data(
    here: Open, seen: SeenData, *, was: Floor | None = None, stop: int | None = None, runs: bool = False
) -> FloorData:
    """Everything the page shows of an open floor.

    With `was`, the floor before a change of the book, also where the possession first goes otherwise; `stop` is where
    the page should look, `runs` whether the possession runs from there.
    Raises: BackcutError where the floor cannot be placed or timed.
    """
    now = told(here.floor)
    return FloorData(
        id=here.id,
        revision=here.revision,
        undo=here.undo,
        redo=here.redo,
        name=here.name,
        kept=here.stands == digest(here.floor.text),
        stands=here.stands,
        address=address(here),
        stop=stop,
        runs=runs,
        play=_play(here.floor),
        book=_book(here.floor.text),
        differs=difference(told(was), now) if was is not None else None,
        seen=seen,
    )


def address(here: Open) -> str:
    """The address that opens this possession of this book again."""
    floor = here.floor
    start = floor.start or ("" if floor.moves else situation_text(told(floor).played.begins))  # else it is the demo
    asked = {"book": here.name, "start": start, "moves": ", ".join(floor.moves)}
    return f"/?{urlencode({key: value for key, value in asked.items() if value})}"


@lru_cache(maxsize=64)
def _book(text: str) -> BookData:
    book, problems = read(text)
    return book_data(text, book, problems, gym(book))


#: Undo and redo walk between floors that have been shown: they are not drawn again.
@lru_cache(maxsize=64)
def _play(floor: Floor) -> PlayData:
    now = told(floor)
    show = now.show
    drawn = drawn_floor(show.court, show.denial_word)
    played = {step.text: event_words(step) for step in now.played.steps}
    return PlayData(
        start=situation_text(now.played.begins),
        moves=[MoveData(text=move, words=played.get(move, move)) for move in floor.moves],
        stuck=now.played.stuck,
        story=contents(show, drawn.room),
        stops=[_stop(now, place) for place in range(len(show.moments))],
        shape=shape(show, drawn),
        floor=court(show, drawn),
        ground=drawn.svg,
        below=below(show),
        notes=list(show.notes),
    )


def _stop(now: Told, place: int) -> StopData:
    stop = now.stops[place]
    return StopData(
        step=stop.step,
        stands=stop.stands,
        cells=now.cells(place),
        can=now.cans(place),
        right=now.right(place),
    )
