"""Write the golden counts anew, from the second reading: `python -m tests.engine.count_again`."""

from __future__ import annotations

import json
from pathlib import Path

from backcut.offence.formation import formations
from backcut.offence.library import presets

from .floor import book
from .second import count

COUNTS = Path(__file__).parent / "counts"

#: The events counted together.
MOVES = (("pass",), ("pass", "skip"), ("pass", "deny"), ("pass", "skip", "deny"))


def names() -> tuple[str, ...]:
    """Every plain book and every shipped book."""
    return (*formations(), *presets())


def main() -> None:
    """Write one file a book: moves -> [situations, moves tried, longest shortest way]."""
    for name in names():
        counts = {", ".join(moves): count(book(name), moves) for moves in MOVES}
        lines = [f'  "{moves}": {json.dumps(found)}' for moves, found in counts.items()]
        (COUNTS / f"{name}.json").write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
