"""The one form of every answer: whether it went well, a sentence for a person, and the data."""

from __future__ import annotations

from typing import Any, Generic, TypeVar

from pydantic import BaseModel, ConfigDict

Data = TypeVar("Data")


class Told(BaseModel, Generic[Data]):
    """What went well: a sentence (empty where there is nothing to say) and the data."""

    model_config = ConfigDict(extra="forbid", json_schema_extra={"description": "What went well, with the data."})
    ok: bool = True
    said: str = ""
    data: Data


class Refused(BaseModel):
    """What was not done, in one sentence that says what would be right. `data` is always null."""

    model_config = ConfigDict(extra="forbid")
    ok: bool = False
    said: str
    data: None = None


class CellData(BaseModel):
    """A place of the floor as the keyboard walks it; centimetres of the house frame."""

    id: str
    x: int
    y: int
    label: str
    player: int | None
    ball: bool


class CanData(BaseModel):
    """A move that can be made: after the first `keep` steps, whatever came after them before is cut off.

    `player` is who it is about first: who has the ball, or whose defender acts. `to` catches, `spot` is where it ends;
    `early` moves come while players are still on the way; `key` makes it for the player in hand.
    """

    move: str
    words: str
    kind: str
    player: int
    keep: int
    to: int | None
    spot: str | None
    early: bool
    key: str


class StopData(BaseModel):
    """What the page knows of a moment besides its drawing; `right` is where each player may go, in words."""

    step: int
    stands: bool
    cells: list[CellData]
    can: list[CanData]
    right: dict[str, list[str]]


class MoveData(BaseModel):
    """One step: the move as it is written, and in words; whether the book can play it."""

    text: str
    words: str


class PlayData(BaseModel):
    """The possession: where it starts, its moves, its story (drawing and words of every moment), the floor's markup."""

    start: str
    moves: list[MoveData]
    stuck: str
    story: dict[str, Any]
    stops: list[StopData]
    shape: dict[str, str]
    floor: str
    ground: str
    below: str
    notes: list[str]


class PieceData(BaseModel):
    """A run of words of a sentence, and the choice it says, if it says one."""

    text: str
    choice: str | None


class WaveData(BaseModel):
    """What is wrong with a sentence: from which letter to which, what, and what would be right."""

    start: int
    end: int
    wrong: str
    right: str


class SentenceData(BaseModel):
    """A sentence of the book as written. `rank` and `letter` are null where it is off or cannot be read."""

    place: int
    rank: int | None
    letter: str | None
    off: bool
    cue: str
    text: str
    pieces: list[PieceData]
    why: str
    mistake: str
    written: str
    waves: list[WaveData]


class ValueData(BaseModel):
    """One way to choose."""

    name: str
    words: str
    who: str


class ChoiceData(BaseModel):
    """A question on which coaches differ, and how this book answers it; `read` by a sentence of the book or by none."""

    name: str
    asks: str
    value: str
    values: list[ValueData]
    read: bool


class ProblemData(BaseModel):
    """Something wrong in the text that belongs to no sentence, or to one."""

    line: int
    column: int
    wrong: str
    right: str


class OptionData(BaseModel):
    """Something that can be picked: its name in the book's text, and what a coach calls it."""

    name: str
    title: str


class PhraseData(BaseModel):
    """A sentence the book could say."""

    name: str
    cue: str
    text: str
    why: str
    said: bool


class PairData(BaseModel):
    """Two neighbouring spots, how far apart they lie, and the band coaches use."""

    spots: str
    distance: str
    band: str
    within: bool


class BookData(BaseModel):
    """The book beside the floor."""

    title: str
    subtitle: str
    text: str
    digest: str
    court: str
    sentences: list[SentenceData]
    choices: list[ChoiceData]
    problems: list[ProblemData]
    lines: dict[str, str]
    roles: list[str]
    numbers: list[int]
    phrases: list[PhraseData]
    spots: dict[str, list[int]]
    spot_names: dict[str, str]
    pairs: list[PairData]


class SideData(BaseModel):
    """One of two small floors: whose it is, the drawing, the picture in words, and what is said there."""

    head: str
    still: str
    said: str


class DifferenceData(BaseModel):
    """The first moment in which the possession goes otherwise than before a change; `stop` is where that is now."""

    said: str
    stop: int
    before: SideData
    after: SideData


class SeenData(BaseModel):
    """What has been walked through this evening."""

    words: str
    boxes: list[bool]


class FloorData(BaseModel):
    """Everything the page shows of a floor. A change names the `revision` it was made on.

    `stands` is the digest of what stands on the shelf, as far as this floor knows; `stop` is where to look now, null to
    stay in time; `runs` where the possession should run from there.
    """

    id: str
    revision: int
    undo: str
    redo: str
    name: str
    kept: bool
    stands: str
    address: str
    stop: int | None
    runs: bool
    play: PlayData
    book: BookData
    differs: DifferenceData | None
    seen: SeenData


class AnswerData(BaseModel):
    """An answer a player could have."""

    id: str
    words: str


class SayingData(BaseModel):
    """A change of the book that would say it, and what else it changes."""

    says: str
    text: str
    changes: str


class KeptData(BaseModel):
    """A book that can be opened."""

    name: str
    title: str
    shipped: bool
    digest: str


class CompletionData(BaseModel):
    """A way a sentence can go on."""

    insert: str
    whole: str
    who: str
