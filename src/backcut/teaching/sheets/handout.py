"""One sentence on one page, for the wall or the pocket."""

from __future__ import annotations

from typing import Any

from backcut.engine.gym import USUAL_SQUAD
from backcut.language import say
from backcut.offence.action import letter
from backcut.teaching.care import age_of, care
from backcut.teaching.examples import Example
from backcut.teaching.sheets.decisions import Picture, Told, told
from backcut.teaching.sheets.paper import Paper, Stamp
from backcut.teaching.sheets.picture import REACH_CM, SHEET, Drawn, paper_still
from backcut.teaching.sheets.press import printed


def drawn(one: Told, picture: Picture, *, size: float = SHEET, names: bool = True, reach_cm: float = REACH_CM) -> Drawn:
    """A picture of a told sentence, drawn for paper."""
    return paper_still(
        one.show,
        picture.moment,
        size=size,
        names=names,
        tabs=dict(picture.tabs),
        defenders=picture.defenders,
        reach_cm=reach_cm,
    )


def handout_pdf(example: Example, stamp: Stamp, paper: Paper) -> bytes:
    """The handout of an example's sentence. Raises: CourtError or MotionError where it cannot be put in time."""
    book, rank, one = example.book, example.rank, told(example)
    sentence = book.sentences[rank]
    data: dict[str, Any] = {
        "book": stamp.short_title,
        "place": say("Sentence {letter} of {n}", letter=letter(rank), n=len(book.sentences)),
        "cue": book.cue(rank),
        "sentence": sentence.text,
        "letter": str(letter(rank)),
        "pictures": [
            {"head": p.head, "words": p.words, "aside": p.aside, "picture": drawn(one, p).data()} for p in one.pictures
        ],
        "says": [
            (say("Say"), say("“{cue}.”", cue=book.cue(rank).rstrip("."))),
            (say("Mistake"), sentence.mistake or sentence.phrase.mistake),
        ],
        "why": [(say("Why"), sentence.why or sentence.phrase.why)],
        "care": care(age_of(book.squad or USUAL_SQUAD)),
    }
    return printed("handout", paper, stamp, data)
