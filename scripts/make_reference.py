"""Write the references from the code: phrases, moves, what a proof asks for, and a coach's own conditions.

    python scripts/make_reference.py [FOLDER]

FOLDER is by default the folder of the documents.
"""

from __future__ import annotations

import sys
from pathlib import Path

from backcut.offence.reference import moves_page, phrases_page
from backcut.prove.conditions.reference import conditions_page
from backcut.prove.reference import properties_page

DOCS = Path(__file__).parent.parent / "docs"
PAGES = {
    "phrases.md": phrases_page,
    "moves.md": moves_page,
    "properties.md": properties_page,
    "conditions.md": conditions_page,
}


def write(folder: Path) -> None:
    """Write every page into `folder`."""
    for name, page in PAGES.items():
        (folder / name).write_text(page(), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write(Path(sys.argv[1]) if len(sys.argv) > 1 else DOCS)
