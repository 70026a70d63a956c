"""The sheet for the bench: cue words, short sentences, boxes to tick, lines to write on."""

from __future__ import annotations

import re
from typing import Any

from backcut.language import say
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.teaching.sheets.paper import Paper, Stamp
from backcut.teaching.sheets.press import printed

_CONDITION = re.compile(
    r"When (?:I am (?=one|denied|farthest)|I (?!am)|the (?=next)|)(?P<when>[^,]+), (?:I )?(?P<does>.+)", re.S
)
_REST = re.compile(r"Otherwise I (?P<does>.+)", re.S)


def short(sentence: str) -> str:
    """A sentence of a book cut to what is read under noise: "Pass to the next spot: cut to the rim.".

    One in other words than those of the phrases stays whole.
    """
    if rest := _REST.fullmatch(sentence):
        return _capital(rest["does"])
    if said := _CONDITION.fullmatch(sentence):
        return f"{_capital(said['when'])}: {said['does']}"
    return sentence


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def bench_pdf(book: Book, stamp: Stamp, paper: Paper, *, large: bool = False) -> bytes:
    """The bench sheet: 14 pt, or 24 pt on two pages or more."""
    data: dict[str, Any] = {
        "book": stamp.short_title,
        "how": say("Tick whoever did it."),
        "large": large,
        "boxes": [str(player.number) for player in book.start().players],
        "notes": say("Notes"),
        "sentences": [
            {"letter": str(letter(rank)), "cue": book.cue(rank), "short": short(sentence.text)}
            for rank, sentence in enumerate(book.sentences)
        ],
    }
    return printed("bench", paper, stamp, data)
