"""What is wrong with a book as a whole: sentences that repeat or never speak, choices nobody reads, spots it lacks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from backcut.court.spots import Spot
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.inside import INSIDE_PLACES
from backcut.offence.problems import Code
from backcut.offence.rules import CORNERS
from backcut.offence.settings import SPOT_KEYS
from backcut.offence.start import lacks, start_troubles

#: A problem before its place is known as line and column: offset, code, what is wrong, what would be right.
Found = tuple[int, Code, str, str]

#: An exception by number: what is asked, of which number, and its offset.
Role = tuple[str, int, int]


def checks(book: Book, sentences: Sequence[int], settings: Mapping[str, int], roles: Sequence[Role]) -> Iterator[Found]:
    """Every problem that shows only when the whole book is read. The numbers are offsets into its text."""
    yield from _repeated(book, sentences)
    yield from _never_speaks(book, sentences)
    yield from _choices(book, sentences, settings)
    yield from _spots(book, settings)
    yield from _roles(book, roles)
    if not book.sentences:
        yield (
            0,
            Code.MISSING,
            "The book has no sentences.",
            'Most books start with: "When I pass to the next spot, I cut to the rim."',
        )
    elif not any(sentence.phrase.covers_rest for sentence in book.sentences):
        yield (
            sentences[-1],
            Code.NOT_COVERED,
            "No sentence covers a player whom no other sentence asks to move.",
            'Add as the last sentence: "Otherwise I hold, wide, feet set."',
        )


def _repeated(book: Book, at: Sequence[int]) -> Iterator[Found]:
    first: dict[str, int] = {}
    for rank, sentence in enumerate(book.sentences):
        name = sentence.phrase.name
        if name in first:
            yield (
                at[rank],
                Code.SAID_TWICE,
                f"{letter(rank)} says the same as {letter(first[name])}.",
                f"Keep one; {letter(first[name])} is asked first and always wins.",
            )
        first.setdefault(name, rank)


def _never_speaks(book: Book, at: Sequence[int]) -> Iterator[Found]:
    inside = len(book.formation.inside)
    covering = next((rank for rank, s in enumerate(book.sentences) if s.phrase.covers_rest), None)
    for rank, sentence in enumerate(book.sentences):
        name = sentence.phrase.name
        if covering is not None and rank > covering:
            yield (
                at[rank],
                Code.NEVER_FIRES,
                f"{letter(rank)} can never speak: {letter(covering)} above it covers everybody.",
                f'Put "{book.sentences[covering].text}" last.',
            )
        elif (name == "inside" and inside != 1) or (name == "two inside" and inside != 2):
            yield (
                at[rank],
                Code.NEVER_FIRES,
                f"{letter(rank)} can never speak: {book.formation.title} has {inside or 'nobody'} inside in this book.",
                "Take the sentence out, or change the formation.",
            )
        elif name in ("denied corner", "corner pass") and not CORNERS & set(book.formation.ring):
            yield (
                at[rank],
                Code.NEVER_FIRES,
                f"{letter(rank)} can never speak: this ring has no corner.",
                "Take the sentence out, or add the corners to the ring.",
            )
        elif (general := _asked_before(book, rank)) is not None:
            yield (
                at[rank],
                Code.NEVER_FIRES,
                f"{letter(rank)} can never speak: {letter(general)} above it answers the same moments.",
                f"Put it above {letter(general)}.",
            )
    names = {sentence.phrase.name for sentence in book.sentences}
    if inside and not names & {"inside", "two inside"}:
        yield (
            at[-1] if at else 0,
            Code.NOT_COVERED,
            f"{book.formation.title} has {inside} inside, but no sentence says what is done there.",
            'Add "When I play inside, I follow the ball." or "When two of us play inside, we keep opposite levels."',
        )


#: Values of a choice under which the more general sentence keeps silent and leaves the moment to the special one.
_STAYS = frozenset({"hold", "come to the ball"})


def _asked_before(book: Book, rank: int) -> int | None:
    """The rank of the more general sentence that takes every moment of this one."""
    phrase = book.sentences[rank].phrase
    if any(book.values[choice] in _STAYS for choice in phrase.slots):
        return None
    earlier = (i for i in range(rank) if book.sentences[i].phrase.name == phrase.special_case_of)
    return next(earlier, None)


def _choices(book: Book, at: Sequence[int], settings: Mapping[str, int]) -> Iterator[Found]:
    said: dict[str, tuple[str, int]] = {}
    for rank, sentence in enumerate(book.sentences):
        for name, value in sentence.values.items():
            other = said.get(name)
            if other is not None and other[0] != value:
                yield (
                    at[rank],
                    Code.CONTRADICTION,
                    f'{letter(rank)} chooses "{value}" for {name}, {letter(other[1])} chose "{other[0]}".',
                    "Say it in one of the two only.",
                )
            said.setdefault(name, (value, rank))
    used = {name for sentence in book.sentences for name in sentence.phrase.uses}
    cuts = any(sentence.phrase.ways_out for sentence in book.sentences)
    for name, value in book.choices.items():
        if name in said and said[name][0] != value:
            yield (
                settings[name],
                Code.CONTRADICTION,
                f'This line chooses "{value}" for {name}, sentence {letter(said[name][1])} chooses "{said[name][0]}".',
                "Keep one of the two.",
            )
        elif name not in used and not (name == "exit" and cuts):
            users = " or ".join(f'"{phrase}"' for phrase in _users(name))
            yield (
                settings[name],
                Code.UNUSED_CHOICE,
                f'No sentence of this book uses "{name}".',
                f"Take the line out, or add the sentence {users}.",
            )


def _users(choice: str) -> list[str]:
    from backcut.offence.phrase import phrases

    return [phrase.sentence({}) for phrase in phrases().values() if choice in phrase.uses]


def _spots(book: Book, settings: Mapping[str, int]) -> Iterator[Found]:
    there = set(book.formation.ring) | INSIDE_PLACES | {Spot.R}
    for spot in book.moved:
        if spot not in there:
            yield (settings[next(key for key, s in SPOT_KEYS.items() if s is spot)], *lacks(book, spot))
    if book.begins is not None:
        for trouble in start_troubles(book, book.begins):
            yield (settings["start"], *trouble)
        want = len(book.formation.start) + len(book.formation.inside)
        if len(book.begins.players) != want:
            yield (
                settings["start"],
                Code.IMPOSSIBLE,
                f"The start has {len(book.begins.players)} players, {book.formation.title} has {want} here.",
                f"Place {want} players.",
            )


def _roles(book: Book, roles: Sequence[Role]) -> Iterator[Found]:
    numbers = {player.number for player in (book.begins or book.formation.situation()).players}
    for _, number, at in roles:
        if number not in numbers:
            there = ", ".join(map(str, sorted(numbers)))
            yield at, Code.NOBODY, f"Nobody wears {number} in this book.", f"On the floor are {there}."
    inside, room = book.exceptions.stays_inside, len(book.formation.inside)
    if len(inside) > room:
        yield (
            next(at for role, _, at in reversed(roles) if role == "stays_inside"),
            Code.IMPOSSIBLE,
            f"{', '.join(map(str, sorted(inside)))} should stay inside, but {book.formation.title} has "
            f"{room or 'nobody'} inside.",
            "Take an exception out, or choose a formation with more players inside.",
        )
    if book.begins is not None:
        for role, number, at in roles:
            standing = book.begins.spots().get(number)
            if role == "stays_inside" and standing in book.formation.ring:
                yield (
                    at,
                    Code.CONTRADICTION,
                    f"{number} stays inside, but starts at the {standing.title}.",
                    f"Start {number} inside, or take the exception out.",
                )
    if book.exceptions.never_corner and not CORNERS & set(book.formation.ring):
        yield (
            next(at for role, _, at in roles if role == "never_corner"),
            Code.LACKING_SPOT,
            "This ring has no corner to keep away from.",
            "Take the exception out.",
        )
