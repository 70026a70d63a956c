"""The result as a short code a player can show or send: no name, the number on the shirt, the book, right of asked.

A code is one number in letters and digits without I, L, O and U, in groups of four; the last two are check characters:
the number modulo a prime, so every single wrong character and every two that changed places are found. The number is
built from the end: version, book, shirt, the most asked of one sentence, then asked and right of each sentence, each
in as few values as it can take.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backcut.errors import BackcutError
from backcut.files import digest
from backcut.offence.book import Book

ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
#: The largest prime below 32 x 32: two characters hold what is left.
PRIME = 1021
VERSION = 1
#: Shirts go up to 99 in the rule books (FIBA 2024, 4.3.2: 0, 00 and 1 to 99).
SHIRTS = 100
BOOKS = 1 << 20
#: Sentences a book may have, and questions of one sentence, that a code can hold (own choice).
SENTENCES, ASKED = 64, 64
GROUP = 4
#: What a hand or an eye takes for another character.
_MEANT = str.maketrans({"O": "0", "I": "1", "L": "1", "-": "", " ": "", "\u00a0": "", "\u2013": "", ".": ""})


class CodeError(BackcutError):
    """A code that is mistyped."""


@dataclass(frozen=True, slots=True)
class Result:
    """What a code says: the shirt, the book's short number, and per sentence how many were right of how many asked."""

    shirt: int
    book: int
    counts: tuple[tuple[int, int], ...]


def book_number(book: Book) -> int:
    """A short number for a book as it plays: its title, formation, choices, exceptions and sentences."""
    choices = ";".join(f"{name}={value}" for name, value in sorted(book.values.items()))
    words = "|".join(f"{book.cue(rank)}:{sentence.text}" for rank, sentence in enumerate(book.sentences))
    return int(digest(f"{book.title}|{book.formation.name}|{choices}|{book.exceptions}|{words}"), 16) % BOOKS


def written(result: Result) -> str:
    """The code of a result. Raises: ValueError for what a code cannot hold."""
    most = max((asked for _, asked in result.counts), default=0)
    if not (0 <= result.shirt < SHIRTS and len(result.counts) < SENTENCES and most < ASKED):
        raise ValueError(f"A code cannot hold {result}.")
    parts = [(result.book, BOOKS), (result.shirt, SHIRTS), (len(result.counts), SENTENCES), (most, ASKED)]
    for right, asked in result.counts:
        parts += [(asked, most + 1), (right, asked + 1)]
    value = 0
    for part, sizes in reversed(parts):
        value = value * sizes + part
    value = value * 2 + VERSION
    body = _letters(value)
    return grouped(body + _letters(value % PRIME).rjust(2, "0"))


def grouped(code: str) -> str:
    """The code in groups of four."""
    return "-".join(code[i : i + GROUP] for i in range(0, len(code), GROUP))


def read(code: str) -> Result:
    """What a code says. Raises: CodeError where it is mistyped."""
    plain = code.upper().translate(_MEANT)
    if len(plain) < 3 or any(character not in ALPHABET for character in plain) or plain[0] == "0":
        raise CodeError(f"{code.strip()}: this is no code of a quiz, or a part of it is missing.")
    value = _number(plain[:-2])
    if value % PRIME != _number(plain[-2:]) or value % 2 != VERSION:
        raise CodeError(f"{code.strip()}: this code is mistyped. Compare it with the player's once more.")
    rest = value // 2
    rest, book = divmod(rest, BOOKS)
    rest, shirt = divmod(rest, SHIRTS)
    rest, many = divmod(rest, SENTENCES)
    rest, most = divmod(rest, ASKED)
    counts = []
    for _ in range(many):
        rest, asked = divmod(rest, most + 1)
        rest, right = divmod(rest, asked + 1)
        counts.append((right, asked))
    if rest:
        raise CodeError(f"{code.strip()}: this code is mistyped. Compare it with the player's once more.")
    return Result(shirt, book, tuple(counts))


def _letters(value: int) -> str:
    out = ""
    while value:
        value, digit = divmod(value, len(ALPHABET))
        out = ALPHABET[digit] + out
    return out


def _number(code: Sequence[str]) -> int:
    value = 0
    for character in code:
        value = value * len(ALPHABET) + ALPHABET.index(character)
    return value
