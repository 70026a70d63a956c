"""The whole book on the wall: one row a sentence."""

from __future__ import annotations

from typing import Any

from backcut.language import say_many
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.teaching.examples import examples
from backcut.teaching.sheets.decisions import told
from backcut.teaching.sheets.handout import drawn
from backcut.teaching.sheets.key import key
from backcut.teaching.sheets.paper import PAPERS, Paper, Stamp
from backcut.teaching.sheets.picture import SMALL, Drawn
from backcut.teaching.sheets.press import printed


def key_pictures(book: Book, *, size: float = SMALL, names: bool = False) -> dict[int, Drawn]:
    """The picture of each sentence's decision, by rank; a sentence that never speaks has none."""
    out: dict[int, Drawn] = {}
    for rank, example in examples(book).items():
        one = told(example)
        out[rank] = drawn(one, one.decision, size=size, names=names)
    return out


def how_it_is_read(book: Book) -> str:
    """How a book is read, in one line."""
    return say_many("{n} sentence.", "{n} sentences, the first one that fits wins.", len(book.sentences))


def poster_pdf(book: Book, stamp: Stamp, paper: Paper) -> bytes:
    """The poster of a book, on the large paper that goes with this one."""
    pictures = key_pictures(book)
    data: dict[str, Any] = {
        "book": stamp.short_title,
        "how": how_it_is_read(book),
        "key": key(),
        "sentences": [
            {
                "letter": str(letter(rank)),
                "cue": book.cue(rank),
                "sentence": sentence.text,
                "picture": pictures[rank].data() if rank in pictures else None,
            }
            for rank, sentence in enumerate(book.sentences)
        ],
    }
    return printed("poster", PAPERS[paper.large], stamp, data)
