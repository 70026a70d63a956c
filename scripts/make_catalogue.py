"""Gather every message of the program into the catalogue that translators start from.

    python scripts/make_catalogue.py [FILE]

FILE is by default the catalogue that is shipped. Uses Babel, the reference library for gettext catalogues in Python.
"""

from __future__ import annotations

import io
import sys
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import write_po

from backcut import __version__
from backcut.court.spots import TITLES
from backcut.offence.choices import CHOICES

SOURCE = Path(__file__).parent.parent / "src" / "backcut"
SHIPPED = SOURCE / "locale" / "backcut.pot"
HEAD = """# The words of Backcut, for translators.
msgid ""
msgstr "Content-Type: text/plain; charset=UTF-8\\n"

"""
#: What marks a message: said, said for a number, or noted to be said later.
KEYWORDS = {"say": None, "say_many": (1, 2), "noted": None}


def catalogue() -> bytes:
    """The catalogue as a file: every message once, with the files it stands in; no dates, so that it is exact."""
    made = Catalog(project="Backcut", version=__version__, copyright_holder="the Backcut authors", fuzzy=False)
    found = extract_from_dir(str(SOURCE), method_map=[("**.py", "python")], keywords=KEYWORDS)
    for file, _, message, _, _ in sorted(found, key=lambda one: (one[0], one[1])):
        made.add(message, locations=[(file, 0)])
    for title in TITLES.values():
        made.add(title, locations=[("court/spots.py", 0)])
    for choice in CHOICES.values():
        for said in (choice.asks, *(text for value in choice.values for text in (value.words, value.who))):
            if said:
                made.add(said, locations=[("offence/choices.py", 0)])
    text = io.BytesIO()
    write_po(text, made, omit_header=True, include_lineno=False, sort_output=True)
    head = (
        b'# The words of Backcut, for translators.\nmsgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n"\n\n'
    )
    return head + text.getvalue()


def main(target: Path = SHIPPED) -> None:
    """Write the catalogue and say how much is in it."""
    target.parent.mkdir(parents=True, exist_ok=True)
    made = catalogue()
    target.write_bytes(made)
    print(f"{target.name}: {made.count(b'msgid ') - 1} messages")


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:2]))
