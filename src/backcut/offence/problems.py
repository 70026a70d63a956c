"""What a coach got wrong in a book: found all at once, each with its place, what is wrong, and what would be right."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from enum import StrEnum


class Code(StrEnum):
    """Every kind of problem; the value is what JSON says."""

    UNKNOWN_SENTENCE = "unknown sentence"
    UNKNOWN_WORD = "unknown word"
    UNKNOWN_VALUE = "unknown value"
    SAID_TWICE = "said twice"
    CONTRADICTION = "contradiction"
    UNUSED_CHOICE = "choice no sentence uses"
    LACKING_SPOT = "spot the formation lacks"
    NOBODY = "nobody wears this number"
    NEVER_FIRES = "sentence that can never speak"
    NOT_COVERED = "player no sentence covers"
    NOTE_ALONE = "note without a sentence"
    MISSING = "missing"
    IMPOSSIBLE = "impossible"


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem. `line` and `column` count from 1; `right` says what would be right."""

    line: int
    column: int
    code: Code
    wrong: str
    right: str

    def to_dict(self) -> dict[str, object]:
        """The problem as JSON."""
        return asdict(self)

    def __str__(self) -> str:
        return f"{self.line}:{self.column}  {self.wrong} {self.right}"
