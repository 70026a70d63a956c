"""The forms of what is told about a proof and about the denial mark."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

State = Literal["none", "looking", "done", "stopped", "refused"]
DepthName = Literal["settled", "denied", "overlapped", "disturbed"]


class Looking(BaseModel):
    """How far to look; `apart` also counts with the players told apart."""

    model_config = ConfigDict(extra="forbid")
    depths: Annotated[list[DepthName], Field(min_length=1, max_length=4)] = ["settled"]
    apart: bool = False


class FindingData(BaseModel):
    """One finding. `kind` names its sign, `word` says the same.

    It shows in the `beat` of the `step` of the possession `start` and `moves`; `plays` says whether there is one.
    `letters` are the sentences behind it, `still` the moment as markup.
    """

    number: int
    kind: str
    word: str
    property: str
    title: str
    when: str
    letters: list[str]
    begins: str
    lines: list[str]
    here: str
    count: str
    note: str
    plays: bool
    start: str
    moves: str
    step: int
    beat: int
    still: str


class HoldsData(BaseModel):
    """One thing that has to hold, what became of it, and the findings that break it."""

    kind: str
    name: str
    sentence: str
    verdict: str
    findings: list[int]


class UnseenData(BaseModel):
    """What was not looked at, and the depth that would (empty where there is none)."""

    depth: str
    said: str


class WayData(BaseModel):
    """A change that removes a finding: the book's text with it, and what else it changes."""

    says: str
    text: str
    differs: int
    moments: int
    changed: list[str]
    leaves: int
    changes: str


class WaysData(BaseModel):
    """How far the search for ways out of one finding is."""

    state: State
    said: str
    ways: list[WayData]


class ProofData(BaseModel):
    """How far a proof is, what it found, and what was changed in the book since (`changed`, empty for nothing)."""

    state: State
    said: str
    version: int
    digest: str
    changed: str
    title: str
    depths: list[DepthName]
    findings: list[FindingData]
    covered: list[str]
    holds: list[HoldsData]
    not_looked_at: list[UnseenData]
    ways: dict[str, WaysData]


class PlaceData(BaseModel):
    """A place in centimetres of the house frame."""

    x_cm: int
    y_cm: int


class FootData(PlaceData):
    """A foot of the defender of `player`, and how far past the mark it is."""

    player: int
    foot: Literal["front", "back"]
    past_m: float
    over: bool


class GoesData(BaseModel):
    """What a player does because of a denial, and the letter of the sentence."""

    player: int
    words: str
    letter: str | None


class MarkData(BaseModel):
    """The denial mark at a depth: `line` is what the book would say; `path` and `teeth` are path data in cm."""

    mark_m: float
    line: str
    words: str
    how: Literal["foot", "hand", "either"]
    limits_m: tuple[float, float]
    path: str
    teeth: str
    handle: PlaceData
    feet: list[FootData]
    denied: list[int]
    cuts: list[GoesData]
