"""Every change there is to what is on the floor, and what each makes of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from backcut.court.spots import spot_from_text
from backcut.engine.choose import possession
from backcut.errors import NotationError
from backcut.offence import edit
from backcut.offence.book_text import MOST_BYTES
from backcut.offence.choices import CHOICES
from backcut.offence.moves import moves_from_text
from backcut.web.floor import MOST_MOVES, Floor, book_text, played

Letters = Annotated[str, Field(max_length=2_000)]
Text = Annotated[str, Field(max_length=MOST_BYTES)]
Place = Annotated[int, Field(ge=0, le=400)]


class _Change(BaseModel):
    model_config = ConfigDict(extra="forbid")


class Happen(_Change):
    """A move after the first `keep` steps; what came after them is cut off."""

    kind: Literal["happen"]
    keep: Annotated[int, Field(ge=0, le=MOST_MOVES)]
    move: Letters


class Cut(_Change):
    """Only the first `keep` steps stay."""

    kind: Literal["cut"]
    keep: Annotated[int, Field(ge=0, le=MOST_MOVES)]


class Show(_Change):
    """Another possession: its start (empty: the book's own) and its moves as one list; the step and beat to look at."""

    kind: Literal["show"]
    start: Letters = ""
    moves: Letters = ""
    step: Place | None = None
    beat: Place = 0


class Draw(_Change):
    """A possession the book plays against moves drawn by seed."""

    kind: Literal["draw"]
    seed: Annotated[int, Field(ge=0, le=2**31)]


class Write(_Change):
    """The whole text of the book, as the coach wrote it."""

    kind: Literal["text"]
    text: Text


class Sentence(_Change):
    """One sentence of the book: off, on, out, to another place, other words, another note."""

    kind: Literal["sentence"]
    place: Place
    do: Literal["off", "on", "out", "move", "write", "add", "why", "mistake"]
    to: Place = 0
    words: Letters = ""


class Choose(_Change):
    """Another value of a choice."""

    kind: Literal["choose"]
    name: Letters
    value: Letters


class Line(_Change):
    """A line of the book: title, formation, court, squad, denial mark; null takes it out."""

    kind: Literal["line"]
    key: Letters
    value: Letters | None = None


class Spot(_Change):
    """A spot put elsewhere, in metres of the house frame; null puts it back."""

    kind: Literal["spot"]
    spot: Letters
    x_m: Annotated[float, Field(ge=-20, le=20, allow_inf_nan=False)] | None = None
    y_m: Annotated[float, Field(ge=-5, le=30, allow_inf_nan=False)] | None = None


class Role(_Change):
    """An exception by number, such as "4 never cuts", on or off."""

    kind: Literal["role"]
    role: Letters
    on: bool


Change = Annotated[
    Happen | Cut | Show | Draw | Write | Sentence | Choose | Line | Spot | Role, Field(discriminator="kind")
]


def changed(floor: Floor, change: Change) -> Floor:
    """The floor after a change. Raises: BackcutError, one clear sentence, where the change cannot be."""
    match change:
        case Happen():
            return _happen(floor, change)
        case Cut():
            return _with_moves(floor, floor.moves[: change.keep])
        case Show():
            return _show(floor, change)
        case Draw():
            seen = played(Floor(floor.text, floor.start))
            steps = possession(seen.book, seen.begins, change.seed)
            return _with_moves(floor, tuple(step.text for step in steps))
        case _:
            return Floor(book_text(_text(floor.text, change)), floor.start, floor.moves)


def _with_moves(floor: Floor, moves: tuple[str, ...]) -> Floor:
    if len(moves) > MOST_MOVES:
        raise NotationError(f"The possession has {MOST_MOVES} moves already. Go back to an earlier moment to go on.")
    return Floor(floor.text, floor.start, moves)


def _happen(floor: Floor, change: Happen) -> Floor:
    told = moves_from_text(change.move)
    made = _with_moves(floor, (*floor.moves[: change.keep], *(move.text for move in told)))
    seen = played(made)
    if len(seen.steps) < len(made.moves):
        raise NotationError(seen.stuck)
    return _with_moves(floor, tuple(step.text for step in seen.steps))


def _show(floor: Floor, change: Show) -> Floor:
    moves = tuple(part.strip() for part in change.moves.split(",") if part.strip())
    made = _with_moves(Floor(floor.text, change.start.strip()), moves)
    played(made)  # refuses moves that cannot be read
    return made


def _text(text: str, change: Change) -> str:
    match change:
        case Write():
            return change.text
        case Sentence():
            return _DO[change.do](text, change)
        case Choose():
            if change.name not in CHOICES:
                raise NotationError(f'"{change.name}" is no choice of a book. There are: {", ".join(CHOICES)}.')
            if change.value not in (known := [value.name for value in CHOICES[change.name].values]):
                raise NotationError(f'"{change.value}" is no way to choose. There are: {", ".join(known)}.')
            return edit.choose(text, change.name, change.value)
        case Line():
            return edit.set_line(text, change.key, change.value)
        case Spot():
            if (change.x_m is None) is not (change.y_m is None):
                raise NotationError("A place needs both x_m and y_m; without both the spot is put back.")
            at = None if change.x_m is None or change.y_m is None else (change.x_m, change.y_m)
            return edit.set_spot(text, spot_from_text(change.spot), at)
        case Role():
            return edit.set_role(text, change.role, change.on)
        case _:
            raise AssertionError(change)


_DO: dict[str, Callable[[str, Sentence], str]] = {
    "off": lambda text, s: edit.switch_off(text, s.place),
    "on": lambda text, s: edit.switch_on(text, s.place),
    "out": lambda text, s: edit.take_out_at(text, s.place),
    "move": lambda text, s: edit.move_to(text, s.place, s.to),
    "write": lambda text, s: edit.rewrite(text, s.place, s.words),
    "add": lambda text, s: edit.put_in_text(text, s.place, s.words),
    "why": lambda text, s: edit.note(text, s.place, "why", s.words),
    "mistake": lambda text, s: edit.note(text, s.place, "mistake", s.words),
}
