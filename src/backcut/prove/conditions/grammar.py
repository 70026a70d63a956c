"""The grammar of a coach's own properties, made from the facts.

Each way to say a fact gives its plain form ("somebody is denied"), its form with "not", and after "never" the form of a
question ("Never is somebody denied").
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cache

from backcut.offence.spot_words import SPOT_WORDS
from backcut.prove.conditions.facts import ALL_FACTS, PLAYER_FACTS, SPOT_FACTS
from backcut.prove.conditions.place import KINDS
from backcut.prove.conditions.subject import BOUNDS, COUNTS

ALWAYS, NEVER, SOMETIMES = "always", "never", "sometimes"
#: The words a property begins with.
BEGINS = ("Always", "Never", "Sometimes", "Whenever")


@dataclass(slots=True)
class Grammar:
    """Rules and terminals, made while they are named.

    `said` is what a terminal is called in a message, `phrases` are all the words there are.
    """

    rules: list[str] = field(default_factory=list)
    terms: dict[str, str] = field(default_factory=dict)
    said: dict[str, str] = field(default_factory=dict)
    phrases: set[str] = field(default_factory=set)

    def term(self, *ways: str, keep: str = "") -> str:
        """The terminal for any of these phrases, in any case; it stays in the tree only under a name of its own."""
        longest_first = sorted(ways, key=len, reverse=True)
        patterns = "|".join(re.escape(way).replace(r"\ ", r"\s+") for way in longest_first)
        name = self.terms.setdefault(rf"/({patterns})(?![\w'-])/i", keep or f"_W{len(self.terms)}")
        self.said.setdefault(name, f'"{ways[0]}"')
        self.phrases.update(ways)
        return name

    def pattern(self, name: str, pattern: str, said: str) -> None:
        """A terminal by its pattern."""
        self.terms[pattern] = name
        self.said[name] = said

    def phrase(self, text: str) -> str:
        """Words with {place} and {side} in them: a terminal for each run of words."""
        parts = [part.strip() for part in re.split(r"(\{\w+\})", text)]
        return " ".join(part[1:-1] if part.startswith("{") else self.term(part) for part in parts if part)

    def text(self) -> str:
        """The whole grammar."""
        terms = [f"{name}: {pattern}" for pattern, name in self.terms.items()]
        return "\n".join([*self.rules, *terms, r"%ignore /[\s,.;]+/"])


@cache
def grammar() -> Grammar:
    """The grammar of a coach's own properties."""
    g = Grammar()
    always, never, sometimes = (g.term(word) for word in (ALWAYS, NEVER, SOMETIMES))
    when = g.term("when", "whenever", "while", "if", "once")
    soon = g.term("in the end", "sooner or later", "soon", "later")
    and_, or_, either = g.term("and"), g.term("or"), g.term("either")
    g.rules += [
        "start: always | when_always | never | when_never | sometimes | when_sometimes | soon",
        f"always: {always} cond [{when} cond]",
        f"when_always: {always} {when} cond cond | {when} cond [{always}] cond",
        f"never: {never} asked [{when} cond]",
        f"when_never: {never} {when} cond asked | {when} cond {never} asked",
        f"sometimes: {sometimes} cond [{when} cond]",
        f"when_sometimes: {sometimes} {when} cond cond | {when} cond {sometimes} cond",
        f"soon: {when} cond {soon} cond",
        "?asked: cond | question | asked_and | asked_or",
        f"asked_and: question ({and_} leaf)+",
        f"asked_or: question ({or_} both)+",
        f"?cond: [{either}] both ({or_} both)*",
        f"?both: leaf ({and_} leaf)*",
    ]
    _whom(g, and_, or_, either)
    _where(g)
    leaves = [*_players(g), *_spots(g), *_all(g)]
    g.rules.append(f"?leaf: {' | '.join(name for name in leaves if not name.startswith('q'))}")
    g.rules.append(f"?question: {' | '.join(name for name in leaves if name.startswith('q'))}")
    return g


def _whom(g: Grammar, and_: str, or_: str, either: str) -> None:
    numbers = "|".join(COUNTS)
    g.pattern("NUMBER", r"/\d{1,3}(?![\w'-])/", "a player's number")
    g.pattern("COUNT", rf"/(\d|{numbers})(?![\w'-])/i", "how many")
    g.term(*BOUNDS, keep="BOUND")
    g.rules += [
        "?who: somebody | nobody | everybody | counted | one | all_of | one_of | holder | that",
        f"somebody: {g.term('somebody', 'someone', 'a player')}",
        f"nobody: {g.term('nobody', 'no one', 'none of us', 'no player')}",
        f"everybody: {g.term('everybody', 'everyone', 'all of us', 'every player')}",
        f"counted: [BOUND] COUNT {g.term('of us', 'players', 'player')}",
        "one: NUMBER",
        f"all_of: [{g.term('both')}] NUMBER ({and_} NUMBER)+",
        f"one_of: [{either}] NUMBER ({or_} NUMBER)+",
        f"holder: {g.term('the player with the ball', 'the holder')}",
        f"that: {g.term('that player', 'the same player')}",
        f"ball: {g.term('the ball')}",
    ]


def _where(g: Grammar) -> None:
    kinds = "|".join(sorted((kind.replace(" ", r"\s+") for kind in KINDS), key=len, reverse=True))
    g.pattern("SPOT", rf"/(the\s+)?({SPOT_WORDS})(?![\w'-])/i", 'a spot ("the left corner")')
    g.pattern("KIND", rf"/({kinds})s?(?![\w'-])/i", f"a kind of spot ({', '.join(KINDS)})")
    some = g.term("a", "an", "either", "some")
    beside = g.term("spot beside the ball", "spots beside the ball", "spot one pass away", "spots one pass away")
    g.rules += [
        f"?place: named | {some} kind | {g.term('the')} kind | near | far",
        "named: SPOT",
        "kind: KIND",
        f"near: {g.term('the ball-side', 'the ball side')} KIND",
        f"far: {g.term('the far', 'the far-side')} KIND",
        "?side: left | right | ball_side | far_side",
        f"left: {g.term('the left side', 'the left')}",
        f"right: {g.term('the right side', 'the right')}",
        f"ball_side: {g.term('the ball side', 'the side of the ball')}",
        f"far_side: {g.term('the far side', 'the side away from the ball')}",
        "?which: the | some | no | every",
        "the: named | near | far",
        f"some: {some} pool",
        f"no: {g.term('no', 'neither')} pool",
        f"every: {g.term('every', 'both', 'each', 'all')} pool",
        "?pool: kind | beside | ring",
        f"beside: {beside}",
        f"ring: {g.term('spot', 'spots')}",
    ]


def _players(g: Grammar) -> Iterable[str]:
    """A rule for each fact about players, as it is said, with "not", and as a question."""
    for i, fact in enumerate(PLAYER_FACTS):
        plain, negated, asked = [], [], []
        for way in fact.says:
            head, _, rest = way.partition(" ")
            end = g.phrase(rest)
            who = "(who | ball)" if fact.of_ball and head == "are" else "who"
            do = g.term("does", "do")
            match head:
                case "are":
                    verb, no = g.term("is", "are"), g.term("is not", "are not", "isn't", "aren't")
                    asked.append(f"{verb} {who} {end}")
                case _:
                    verb = g.term("has", "have") if head == "have" else g.term(f"{head}s", head)
                    no = g.term(*(f"{do} {head}" for do in ("does not", "do not", "doesn't", "don't")))
                    asked.append(f"{do} {who} {g.term(head)} {end}")
                    if head == "have":
                        asked.append(f"{verb} {who} {end}")
            plain.append(f"{who} {verb} {end}")
            negated.append(f"{who} {no} {end}")
        yield from _rules(g, "player", i, plain, [] if fact.whole else negated, asked)


def _spots(g: Grammar) -> Iterable[str]:
    is_, is_not = g.term("is", "are"), g.term("is not", "are not", "isn't", "aren't")
    for i, fact in enumerate(SPOT_FACTS):
        state = g.term(*(way.removeprefix("are ") for way in fact.says))
        yield from _rules(g, "spot", i, [f"which {is_} {state}"], [f"which {is_not} {state}"], [f"{is_} which {state}"])


def _all(g: Grammar) -> Iterable[str]:
    for i, fact in enumerate(ALL_FACTS):
        yield from _rules(g, "all", i, [g.term(*fact.says)], [g.term(*fact.says_not)], [])


def _rules(g: Grammar, about: str, i: int, plain: list[str], negated: list[str], asked: list[str]) -> Iterable[str]:
    for form, ways in (("p", plain), ("n", negated), ("q", asked)):
        if ways:
            name = f"{form}_{about}_{i}"
            g.rules.append(f"{name}: {' | '.join(dict.fromkeys(ways))}")
            yield name
