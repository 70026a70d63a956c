"""Read a coach's own property, such as "Always, when all have settled, somebody stands at the top"."""

from __future__ import annotations

import difflib
import re
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedCharacters, UnexpectedEOF, UnexpectedInput

from backcut.court.spots import Spot, spot_from_text
from backcut.prove.conditions.condition import All, Condition, Joined, Leaf, Players, Spots
from backcut.prove.conditions.facts import ALL_FACTS, PLAYER_FACTS, SPOT_FACTS
from backcut.prove.conditions.grammar import NEVER, SOMETIMES, grammar
from backcut.prove.conditions.place import KINDS, RING, SIDES, Place, spot_place
from backcut.prove.conditions.subject import (
    BALL,
    COUNTS,
    EVERYBODY,
    HOLDER,
    NOBODY,
    SOMEBODY,
    THAT,
    Who,
    counted,
    numbered,
)

#: No property is half as long; reading more would take seconds.
MOST_LETTERS = 400
#: How alike a phrase and what was written must be (difflib's ratio), and how many words before may belong to it.
_NEARLY = 0.8  # estimate: one wrong letter in five
_WORDS_BACK = 4

SOON = "in the end"


class NotRead(Exception):  # noqa: N818  (not an error a user meets: it becomes a problem of the book)
    """No property reads like this; `at` is where it stops making sense, as an offset.

    `may` is what could stand there, `meant` a phrase that was nearly said.
    """

    def __init__(self, at: int, may: tuple[str, ...], meant: str | None) -> None:
        super().__init__(at, may, meant)
        self.at = at
        self.may = may
        self.meant = meant


@dataclass(frozen=True, slots=True)
class OwnSentence:
    """A property as read: always, never, sometimes or in the end `then`, wherever `when` holds (None: everywhere)."""

    kind: str
    then: Condition
    when: Condition | None = None

    def leaves(self) -> list[Leaf]:
        """The single conditions in it."""
        return [*(self.when.leaves() if self.when is not None else ()), *self.then.leaves()]

    def words(self) -> str:
        """All its conditions in words."""
        return " and ".join(part.words() for part in (self.when, self.then) if part is not None)

    @property
    def points(self) -> bool:
        """Whether it speaks of "that player"."""
        return any(leaf.subject is THAT for leaf in self.leaves())

    @property
    def names(self) -> Condition | None:
        """Where the "somebody" stands that "that player" points at; None where there can be none."""
        return self.then if self.when is None and self.kind in (NEVER, SOMETIMES) else self.when

    def bound(self) -> OwnSentence:
        """The same with "that player" in place of the "somebody" it points at."""
        if not self.points:
            return self
        if self.when is None:
            return replace(self, then=self.then.bound())
        return replace(self, when=self.when.bound())


@cache
def _parser() -> Lark:
    return Lark(grammar().text(), parser="earley", lexer="dynamic", maybe_placeholders=False)


def own_from_text(text: str) -> OwnSentence:
    """Read one property in a coach's own words. Raises: NotRead with the place, and what could stand there."""
    if len(text) > MOST_LETTERS:
        raise NotRead(MOST_LETTERS, (), None)
    try:
        tree: Tree[Token] = _parser().parse(text)
    except UnexpectedInput as error:
        raise _not_read(text, error) from None
    node: Any = tree.children[0]
    name, conditions = str(node.data), [_condition(child) for child in node.children]
    if name == "soon":
        return OwnSentence(SOON, conditions[1], conditions[0])
    if name.startswith("when_"):
        return OwnSentence(name.removeprefix("when_"), conditions[1], conditions[0])
    return OwnSentence(name, *conditions)


def _not_read(text: str, error: UnexpectedInput) -> NotRead:
    at, allowed = len(text), set[str]()
    if isinstance(error, UnexpectedCharacters):
        at, allowed = error.pos_in_stream or 0, set(error.allowed or ())
    elif isinstance(error, UnexpectedEOF):
        at, allowed = len(text.rstrip(" .\n\t")), set(error.expected)
    while at < len(text) and text[at] in " \t\n,.;":
        at += 1
    said = grammar().said
    return NotRead(at, tuple(dict.fromkeys(said[name] for name in said if name in allowed)), _meant(text, at))


def _meant(text: str, at: int) -> str | None:
    """The phrase that was nearly said where a text stops making sense; it may have begun a few words before."""
    starts = [match.start() for match in re.finditer(r"\S+", text) if match.start() <= at][-_WORDS_BACK:]
    near = [
        (difflib.SequenceMatcher(None, said, phrase).ratio(), len(phrase), phrase)
        for start in starts
        for phrase in grammar().phrases
        if at < start + len(phrase) and (said := text[start : start + len(phrase)].lower()) != phrase
    ]
    likeness, _, phrase = max(near, default=(0.0, 0, None))
    return phrase if likeness >= _NEARLY else None


def _condition(node: Any) -> Condition:
    """The condition that a part of the tree says."""
    name = str(node.data)
    if name in ("cond", "asked_or", "both", "asked_and"):
        return Joined(tuple(_condition(child) for child in node.children), name in ("both", "asked_and"))
    form, about, i = name.split("_")
    so, children = form != "n", node.children
    if about == "all":
        return All(ALL_FACTS[int(i)], so)
    if about == "spot":
        return _these_spots(children[0], int(i), so)
    fact = PLAYER_FACTS[int(i)]
    return Players(_who(children[0]), fact, _place(children[1]) if len(children) > 1 else None, so)


_WHO = {
    "somebody": SOMEBODY,
    "nobody": NOBODY,
    "everybody": EVERYBODY,
    "holder": HOLDER,
    "that": THAT,
    "ball": BALL,
}


def _who(node: Any) -> Who:
    name = str(node.data)
    if name in _WHO:
        return _WHO[name]
    words = [" ".join(token.lower().split()) for token in node.children]
    if name == "counted":
        count = words[-1]
        return counted(words[0] if len(words) > 1 else "", int(count) if count.isdigit() else COUNTS.index(count) + 1)
    return numbered(tuple(sorted({int(word) for word in words})), every=name != "one_of")


def _place(node: Any) -> Place:
    match str(node.data):
        case "named":
            return spot_place(spot_from_text(str(node.children[0])))
        case "left" | "right" as side:
            return Place(f"the {side} side", SIDES[-1 if side == "left" else 1])
        case "ball_side" | "far_side" as side:
            words = side.replace("_", " ")
            return Place(f"the {words}", frozenset(Spot), toward=1 if side == "ball_side" else -1)
        case "beside":
            return Place("spot beside the ball", RING, beside=True)
        case "ring":
            return Place("spot", RING)
    kind = " ".join(node.children[0].lower().split()).removesuffix("s")
    match str(node.data):
        case "near":
            return Place(f"the ball-side {kind}", KINDS[kind], toward=1)
        case "far":
            return Place(f"the far {kind}", KINDS[kind], toward=-1)
    return Place(f"a{'n' * (kind[0] in 'aeiou')} {kind}", KINDS[kind])


def _these_spots(node: Any, i: int, so: bool) -> Spots:
    which, place = str(node.data), _place(node.children[0])
    if which != "the":
        words = place.words.removeprefix("an ").removeprefix("a ")
        place = Place(words, place.among, place.toward, place.beside)
    return Spots("some" if which == "the" else which, place, SPOT_FACTS[i], so)
