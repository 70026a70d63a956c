"""One number of a court: its value, the edge of the line it is taken to, and where it comes from."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from backcut.errors import CourtError


class Edge(StrEnum):
    """The edge of the painted line that a number is taken to.

    Outer is the edge farther from what the line encloses: for the arc the edge away from the basket, for the
    free-throw line the far edge seen from the baseline. Inner is the other one. Some numbers belong to no line.
    """

    INNER = "inner"
    OUTER = "outer"
    CENTRE = "centre"
    NO_LINE = "no line"


class Status(StrEnum):
    """How a number is known: read in the rule book itself, restated by somebody who read it, and so on."""

    READ = "read"
    RESTATED = "restated"
    MEMORY = "from memory"
    COMPUTED = "computed"
    SCALED = "scaled"
    TAPE = "measured"


@dataclass(frozen=True, slots=True)
class Source:
    """Edition and clause of a number; `via` names the public source that restates it."""

    edition: str
    clause: str
    status: Status
    via: str = ""

    def __str__(self) -> str:
        """The source in one line."""
        known = f"{self.status}, {self.via}" if self.via else str(self.status)
        return f"{', '.join(part for part in (self.edition, self.clause) if part)} ({known})"


@dataclass(frozen=True, slots=True)
class Measure:
    """One number in metres; `value_m` is None where the court has no such thing."""

    value_m: float | None
    edge: Edge
    source: Source
    note: str = ""

    @property
    def m(self) -> float:
        """The number in metres. Raises: CourtError where the court has no such thing."""
        if self.value_m is None:
            raise CourtError(f"This court has no such line ({self.source}); give its measure first.")
        return self.value_m

    def times(self, factor: float, why: str) -> Measure:
        """The same measure made larger or smaller, its source saying so."""
        if self.value_m is None:
            return self
        source = replace(self.source, status=Status.SCALED, via=why)
        # a note that names another length no longer holds once this one has changed
        note = "" if any(letter.isdigit() for letter in self.note) else self.note
        return replace(self, value_m=self.value_m * factor, source=source, note=note)


@dataclass(frozen=True, slots=True)
class Rulebook:
    """One edition of one rule book; says a measure with the edition already beside it."""

    edition: str
    status: Status = Status.READ
    via: str = ""

    def says(
        self,
        value_m: float | None,
        edge: Edge,
        clause: str,
        *,
        status: Status | None = None,
        via: str | None = None,
        note: str = "",
    ) -> Measure:
        """A measure of this edition, in metres. `status` and `via` where they differ from the rest of the record."""
        known_from = (self.via if status is None else "") if via is None else via
        return Measure(value_m, edge, Source(self.edition, clause, status or self.status, known_from), note)

    def has_none(self, clause: str, *, note: str = "") -> Measure:
        """The measure of something that this court does not have."""
        return self.says(None, Edge.NO_LINE, clause, note=note)
