"""An invented possession to write as a file in any frame: five out on a FIBA court, one pass, one back cut."""

from __future__ import annotations

import gzip
from dataclasses import dataclass, field, replace
from pathlib import Path

#: invented, metres of the house frame, x to the right and y down from the basket: five attackers, then five defenders
START = ((0.0, 7.5), (5.2, 5.2), (6.9, 0.2), (-5.2, 5.2), (-6.9, 0.2))
GUARDS = tuple((x * 0.7, y * 0.7) for x, y in START)
NAMES = ("1", "2", "3", "4", "5", "X1", "X2", "X3", "X4", "X5")
LENGTH_M, WIDTH_M, BASKET_M = 28.0, 15.0, 1.575  # FIBA rules art. 2


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the sample, still in metres of the house frame."""

    t: float
    entity: str
    team: str
    x: float
    y: float


def rows() -> list[Row]:
    """3 s at 10 pictures a second: 1 holds for a second, passes to 2, then X2's man is 2 and 1 cuts to the basket."""
    result = []
    for t in (round(i * 0.1, 1) for i in range(31)):
        places = [*START, *GUARDS]
        cut = min(max(t - 1.5, 0.0), 1.5) * 4.0
        places[0] = (0.0, 7.5 - cut)
        flown = min(max(t - 1.0, 0.0), 0.5) / 0.5
        ball = (5.2 * flown, 7.5 + (5.2 - 7.5) * flown)
        result.append(Row(t, "ball", "ball", *ball))
        result += [
            Row(t, name, "offence" if i < 5 else "defence", *place)
            for i, (name, place) in enumerate(zip(NAMES, places, strict=True))
        ]
    return result


def seen_from(x: float, y: float, origin: str, attack: str) -> tuple[float, float]:
    """A house place as a source with y up sees it, written out by hand from a drawing and not from the code tested."""
    if origin == "basket":
        return x, y
    along, across = (LENGTH_M - BASKET_M - y, WIDTH_M / 2 - x) if attack == "right" else (BASKET_M + y, WIDTH_M / 2 + x)
    return (along, across) if origin == "corner" else (along - LENGTH_M / 2, across - WIDTH_M / 2)


@dataclass(frozen=True, slots=True)
class Sample:
    """The invented possession, to be changed and written."""

    folder: Path
    origin: str = "corner"
    attack: str = "right"
    per_metre: float = 1.0
    header: tuple[str, ...] = ("court: fiba",)
    rows: tuple[Row, ...] = field(default_factory=lambda: tuple(rows()))
    cells: tuple[tuple[int, str, str], ...] = ()

    def having(self, **changes: object) -> Sample:
        """The same with something changed."""
        return replace(self, **changes)  # type: ignore[arg-type]

    def lines(self) -> list[str]:
        """The lines of the CSV file; `cells` (data row, column, text) are put in last."""
        body = []
        for row in self.rows:
            x, y = seen_from(row.x, row.y, self.origin, self.attack)
            body.append([f"{row.t:g}", row.entity, row.team, f"{x * self.per_metre:.4f}", f"{y * self.per_metre:.4f}"])
        names = ["t", "entity", "team", "x", "y"]
        for i, column, text in self.cells:
            body[i][names.index(column)] = text
        return [*(f"# {line}" for line in self.header), ",".join(names), *(",".join(line) for line in body)]

    def csv(self, name: str = "sample.csv") -> Path:
        """Writes it and says where."""
        return self.write("\n".join(self.lines()) + "\n", name)

    def write(self, text: str, name: str = "sample.csv") -> Path:
        """Writes any text under a name."""
        path = self.folder / name
        path.write_bytes(gzip.compress(text.encode()) if name.endswith(".gz") else text.encode())
        return path
