"""The story of a possession: everything a page shows of it."""

from __future__ import annotations

from collections.abc import Sequence

from backcut.court.record import Court
from backcut.engine.gym import gym, timed
from backcut.engine.possession import Step
from backcut.language import far, say
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.picture import show as shown
from backcut.picture.telling import moments


def show(
    book: Book,
    steps: Sequence[Step],
    *,
    court_name: str | None = None,
    squad_name: str | None = None,
) -> shown.Show:
    """Everything a page shows of a played possession.

    Raises: CourtError or MotionError for a court or squad that is not known, or steps that cannot be timed.
    """
    here = gym(book, court_name, squad_name)
    timeline = timed(book, steps, here)
    return shown.Show(
        title=book.title,
        subtitle=subtitle(book),
        court=here.court,
        spots=here.placing.spots,
        sentences=tuple(
            shown.Sentence(
                str(letter(rank)),
                book.cue(rank),
                sentence.text,
                sentence.why or sentence.phrase.why,
                sentence.mistake or sentence.phrase.mistake,
            )
            for rank, sentence in enumerate(book.sentences)
        ),
        moments=tuple(moments(book, steps, timeline, here)),
        timeline=timeline,
        notes=here.said,
        denial_word=_denial_word(book, here.court),
    )


def subtitle(book: Book) -> str:
    """What stands under a book's title: "Five-out. Five sentences, the first one that fits wins."."""
    return f"{book.formation.title}. {_count(len(book.sentences))}, the first one that fits wins."


def _denial_word(book: Book, ground: Court) -> str:
    """The lettering on the denial mark; none where the mark is not the painted arc or no sentence reads it."""
    reads_it = any("denial" in sentence.phrase.uses for sentence in book.sentences)
    if not reads_it or not ground.has_arc or book.mark_m or book.values["denial"] == "hand":
        return ""
    return say("denied from {far}", far=far(ground.arc_radius.m, exact=True))


def _count(sentences: int) -> str:
    words = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve")
    number = words[sentences] if sentences < len(words) else str(sentences)
    return f"{number} sentence{'s' * (sentences != 1)}"
