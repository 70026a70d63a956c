"""The whole book to hand over to an assistant or to next year's coach: sentences, choices, reasons."""

from __future__ import annotations

from typing import Any

from backcut.engine.gym import USUAL_SQUAD
from backcut.language import say
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES
from backcut.teaching.care import age_of, care
from backcut.teaching.sheets.paper import Paper, Stamp, day_words
from backcut.teaching.sheets.poster import how_it_is_read, key_pictures
from backcut.teaching.sheets.press import printed


def choices_of(book: Book, rank: int) -> list[str]:
    """The names of the choices a sentence makes or reads, those said in it first."""
    sentence = book.sentences[rank]
    return list(dict.fromkeys((*sentence.values, *sorted(sentence.phrase.uses))))


def booklet_pdf(book: Book, stamp: Stamp, paper: Paper) -> bytes:
    """The booklet of a book."""
    pictures = key_pictures(book)
    told: set[str] = set()
    sentences: list[dict[str, Any]] = []
    for rank, sentence in enumerate(book.sentences):
        names = [name for name in choices_of(book, rank) if name not in told]
        told |= set(names)
        sentences.append(
            {
                "letter": str(letter(rank)),
                "cue": book.cue(rank),
                "sentence": sentence.text,
                "notes": [
                    (say("Why"), sentence.why or sentence.phrase.why),
                    (say("Mistake"), sentence.mistake or sentence.phrase.mistake),
                ],
                "choices": [_choice(book, name) for name in names],
                "picture": pictures[rank].data() if rank in pictures else None,
                "silent": say("This sentence never speaks: another one is asked before it."),
            }
        )
    data: dict[str, Any] = {
        "book": book.title,
        "about": f"{book.formation.title}. {how_it_is_read(book)}",
        "read": _read(book),
        "sentences": sentences,
        "rest-head": say("Choices that no sentence of this book reads"),
        "rest": [_choice(book, name) for name in CHOICES if name not in told],
        "change": say(
            "This is text {version}, printed on {day}. Another text has another number. Changes since:",
            version=stamp.version,
            day=day_words(stamp.dated),
        ),
        "care": care(age_of(book.squad or USUAL_SQUAD)),
    }
    return printed("booklet", paper, stamp, data)


def _read(book: Book) -> list[str]:
    lines = [
        say(
            "Every player asks the sentences from A down and does what the first one that fits says. "
            "What stands higher wins."
        ),
        say("Everybody asks again whenever something happens: a pass, a dribble, a denial, a cut that is over."),
    ]
    kept = (
        (book.exceptions.stays_inside, say("Stays inside:")),
        (book.exceptions.never_corner, say("Never fills a corner:")),
        (book.exceptions.never_cuts, say("Never cuts:")),
    )
    lines += [f"{words} {say(', ').join(map(str, sorted(numbers)))}." for numbers, words in kept if numbers]
    return lines


def _choice(book: Book, name: str) -> dict[str, str]:
    """A choice as it is made: the words of the library go through the catalogue like any other of ours."""
    choice = CHOICES[name]
    value = choice.value(book.values[name])
    words = say(value.words)
    return {"asks": say(choice.asks), "value": f"{words[:1].upper()}{words[1:]}.", "who": say(value.who)}
