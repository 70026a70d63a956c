"""Read one sentence of a book: a grammar made from the phrases, and the nearest phrases where none fits."""

from __future__ import annotations

import difflib
import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedCharacters, UnexpectedInput

from backcut.offence.choices import CHOICES
from backcut.offence.phrase import Phrase, phrases

#: No sentence is half as long; looking for the nearest one in more would take minutes.
MOST_LETTERS = 400

CUE = re.compile(r"\s*([A-Z][\w' -]{0,30})\.\s+(?=\S)")


class UnknownSentence(Exception):  # noqa: N818  (not an error a user meets: it becomes a problem of the book)
    """No phrase reads like this; `at` is where it stops making sense, as an offset into the sentence."""

    def __init__(self, at: int, nearest: tuple[str, ...]) -> None:
        super().__init__(at, nearest)
        self.at = at
        self.nearest = nearest


@dataclass(frozen=True, slots=True)
class Read:
    """A sentence as read: its phrase, the choices said in it, and its cue word."""

    phrase: Phrase
    values: dict[str, str]
    cue: str | None


def _words(text: str) -> str:
    """A run of words as grammar: each word whole, in any case."""
    words = re.findall(r"[\w'-]+", text)
    return " ".join(f"/{re.escape(word)}(?![\\w'-])/i" for word in words)


def _rule(name: str) -> str:
    return re.sub(r"\W", "_", name)


def _grammar() -> str:
    lines = ["start: " + " | ".join(f"p_{_rule(name)}" for name in phrases())]
    for name, phrase in phrases().items():
        body = ""
        for part in re.split(r"(\[[^\]]*\]|\{[^}]*\})", phrase.says):
            if part.startswith("["):
                inner = part[1:-1].strip()
                body += f" [{' '.join(_slot_or_words(piece) for piece in _pieces(inner))}]"
            else:
                body += " " + _slot_or_words(part)
        lines.append(f"p_{_rule(name)}:{body}")
    for choice in CHOICES.values():
        names = [f"v_{_rule(choice.name)}__{i}" for i in range(len(choice.values))]
        lines.append(f"c_{_rule(choice.name)}: {' | '.join(names)}")
        lines += [f"{name}: {_words(value.words)}" for name, value in zip(names, choice.values, strict=True)]
    return "\n".join([*lines, "%ignore /[\\s,.;]+/"])


def _pieces(text: str) -> list[str]:
    return [piece for piece in re.split(r"(\{[^}]*\})", text) if piece.strip()]


def _slot_or_words(part: str) -> str:
    return f"c_{_rule(part[1:-1])}" if part.startswith("{") else _words(part)


@cache
def _parser() -> Lark:
    return Lark(_grammar(), parser="earley", lexer="dynamic", maybe_placeholders=False)


@cache
def _by_rule() -> dict[str, Phrase]:
    return {f"p_{_rule(name)}": phrase for name, phrase in phrases().items()}


def every_sentence(optional: bool = True) -> Iterator[str]:
    """Every sentence that can be written: each phrase with each of its values, its optional words in or left out."""
    for phrase in phrases().values():
        may = {slot for slot in phrase.slots if re.search(rf"\[[^\]]*\{{{re.escape(slot)}\}}", phrase.says)}
        ways: list[list[str | None]] = [
            ([None] if slot in may else [])
            + [value.name for value in CHOICES[slot].values if optional or slot not in may]
            for slot in phrase.slots
        ]
        for way in itertools.product(*ways):
            yield phrase.sentence({slot: value for slot, value in zip(phrase.slots, way, strict=True) if value})


@lru_cache(maxsize=512)
def sentence_from_text(text: str) -> Read:
    """Read one sentence, with or without a cue word in front ("Back. When I am ...").

    Raises: UnknownSentence with the place where no phrase goes on, and the three nearest sentences.
    """
    match = CUE.match(text)
    cue, body_at = (match[1], match.end()) if match else (None, 0)
    body = text[body_at:]
    plain = " ".join(body.split())
    if len(body) > MOST_LETTERS:
        raise UnknownSentence(body_at, _nearest(plain[:MOST_LETTERS]))
    try:
        tree: Tree[Token] = _parser().parse(body)
    except UnexpectedInput as error:
        # Where the text ends too early, its end is the place.
        at = error.pos_in_stream if isinstance(error, UnexpectedCharacters) else len(body.rstrip())
        raise UnknownSentence(body_at + (at or 0), _nearest(plain)) from None
    node: Any = tree.children[0]
    phrase = _by_rule()[str(node.data)]
    slots = [child for child in node.children if isinstance(child, Tree)]
    return Read(phrase, dict(_value(slot) for slot in slots), cue)


def _value(slot: Tree[Token]) -> tuple[str, str]:
    """The choice and the value that a slot of the parse tree says."""
    value: Any = slot.children[0]
    rule, number = str(value.data).removeprefix("v_").split("__")
    choice = next(choice for choice in CHOICES.values() if _rule(choice.name) == rule)
    return choice.name, choice.values[int(number)].name


@lru_cache(maxsize=256)
def _nearest(text: str) -> tuple[str, ...]:
    matcher = difflib.SequenceMatcher(b=text.lower())

    def likeness(sentence: str) -> float:
        matcher.set_seq1(sentence.lower())
        return matcher.ratio()

    return tuple(sorted(every_sentence(optional=False), key=likeness, reverse=True)[:3])
