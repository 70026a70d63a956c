"""The book beside the floor, as data: sentences in their pieces, choices, lines, exceptions, and what is wrong."""

from __future__ import annotations

from functools import lru_cache

from backcut.court.courts import COURTS
from backcut.court.units import in_metres
from backcut.engine.gym import USUAL_SQUAD, Gym
from backcut.files import digest
from backcut.motion.squads import SQUADS
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.choices import CHOICES
from backcut.offence.formation import formations
from backcut.offence.pieces import Written, phrase_list, written
from backcut.offence.problems import Problem
from backcut.picture.story import subtitle
from backcut.web.envelope import (
    BookData,
    ChoiceData,
    OptionData,
    PairData,
    PhraseData,
    PieceData,
    ProblemData,
    SentenceData,
    ValueData,
    WaveData,
)


def book_data(text: str, book: Book, problems: tuple[Problem, ...], here: Gym) -> BookData:
    """The whole book as the page shows it on this court and with this squad."""
    sentences = [_sentence(one) for one in written(text)]
    exceptions = book.exceptions
    roles = [
        *(f"{n} stays inside" for n in sorted(exceptions.stays_inside)),
        *(f"{n} never fills a corner" for n in sorted(exceptions.never_corner)),
        *(f"{n} never cuts" for n in sorted(exceptions.never_cuts)),
    ]
    return BookData(
        title=book.title,
        subtitle=subtitle(book),
        text=text,
        digest=digest(text),
        court=here.court.title,
        sentences=sentences,
        choices=_choices(book),
        problems=[ProblemData(line=p.line, column=p.column, wrong=p.wrong, right=p.right) for p in problems],
        lines={
            "title": book.title,
            "formation": book.formation.name,
            "court": here.court.name,
            "squad": book.squad or USUAL_SQUAD,
            "mark_m": f"{book.mark_m:g}",
        },
        roles=roles,
        numbers=sorted(player.number for player in book.formation.situation().players),
        phrases=[
            PhraseData(name=one.name, cue=one.cue, text=one.text, why=one.why, said=one.said)
            for one in phrase_list(book)
        ],
        spots={
            str(spot): [round(x * 100), round(y * 100)]
            for spot, (x, y) in here.placing.spots.items()
            if spot in book.formation.ring
        },
        spot_names={str(spot): spot.title for spot in book.formation.ring},
        pairs=[
            PairData(
                spots=f"{pair.a.title} and {pair.b.title}",
                distance=in_metres(pair.distance_m),
                band=f"{pair.low_m:.2f} to {in_metres(pair.high_m)}",
                within=pair.low_m <= pair.distance_m <= pair.high_m,
            )
            for pair in here.placing.pairs
        ],
    )


def _sentence(one: Written) -> SentenceData:
    return SentenceData(
        place=one.place,
        rank=one.rank,
        letter=None if one.rank is None else letter(one.rank),
        off=one.off,
        cue=one.cue,
        text=one.text,
        pieces=[PieceData(text=text, choice=choice) for text, choice in one.parts],
        why=one.why,
        mistake=one.mistake,
        written=f"{one.cue}. {one.text}" if one.cue else one.text,
        waves=[WaveData(start=w.start, end=w.end, wrong=w.wrong, right=w.right) for w in one.waves],
    )


def _choices(book: Book) -> list[ChoiceData]:
    read = {use for sentence in book.sentences for use in (*sentence.phrase.uses, *sentence.phrase.slots)}
    return [
        ChoiceData(
            name=choice.name,
            asks=choice.asks,
            value=book.values[choice.name],
            values=[ValueData(name=value.name, words=value.words, who=value.who) for value in choice.values],
            read=choice.name in read,
        )
        for choice in CHOICES.values()
    ]


@lru_cache(maxsize=1)
def options() -> dict[str, list[OptionData]]:
    """What formation, court and squad can be switched to."""
    return {
        "formation": [OptionData(name=one.name, title=one.title) for one in formations().values()],
        "court": [OptionData(name=name, title=court.title) for name, court in COURTS.items()],
        "squad": [OptionData(name=name, title=squad.title) for name, squad in SQUADS.items()],
    }
