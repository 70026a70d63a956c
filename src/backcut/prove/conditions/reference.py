"""The page of what a coach's own property can say, in Markdown, made from the facts."""

from __future__ import annotations

from collections.abc import Iterable

from backcut.prove.conditions.fact import PlayerFact
from backcut.prove.conditions.facts import ALL_FACTS, PLAYER_FACTS, SPOT_FACTS
from backcut.prove.conditions.place import KINDS

#: The kinds of property: how one is written, and what it asks for.
FORMS = (
    ("Always, no spot beside the ball is empty.", "it is so in every situation"),
    ("Always, when all have settled, somebody stands at the top.", "it is so wherever the other is"),
    ("Never are two of us in the lane.", "it is so nowhere"),
    ("Never is a corner empty when all have settled.", "it is so nowhere where the other is"),
    ("Sometimes 5 has the ball at the right corner.", "it is so somewhere"),
    ("Whenever somebody is denied, that player cuts.", 'of each player who is "somebody": it is so at once'),
    (
        "Whenever somebody is in the lane, in the end nobody is in the lane.",
        "it comes, whatever is played, in any time",
    ),
)
#: Of whom a condition speaks.
WHOM = (
    ("somebody", "one player or more"),
    ("nobody", "no player"),
    ("everybody", "all who are on the floor"),
    ("two of us", "two or more; just as well `at least two of us`"),
    ("at most two of us", "two or fewer; also `fewer than`, `more than`, `exactly`"),
    ("5", "the player who wears this number"),
    ("1 and 2", "both; `1 or 2`: at least one of them"),
    ("the player with the ball", "whoever has it"),
    ("that player", "the one who was `somebody` before"),
)
#: Where somebody can be.
PLACES = (
    ("the right corner", "this spot, by its name or its id (`RC`)"),
    ("a corner", f"either side; so are {', '.join(kind for kind in KINDS if kind != 'corner')}"),
    ("the ball-side corner", "the one on the ball's side; none while the ball is on the axis"),
    ("the far corner", "the one on the other side; none while the ball is on the axis"),
)
SIDES = ("the left side", "the right side", "the ball side", "the far side")
#: Of which spots it is said that they are empty or taken.
SPOTS = (
    ("the top", "this spot"),
    ("a corner", "one of them or more"),
    ("no corner", "none of them"),
    ("both corners", "all of them; also `every`"),
    ("a spot beside the ball", "of the spots one pass away"),
    ("every spot", "of the spots of the book's ring"),
)

_HEAD = """\
# What a property of your own can say

<!-- Made by scripts/make_reference.py from the code; do not edit by hand. -->

A line `Prove:` in a [book](book.md) says in one sentence what has to hold. Capital letters, commas and line breaks do
not matter. Conditions are joined with `and` and `or` (`and` binds closer), and each can be said with `not`: `5 is not
denied`, `two of us do not move`. After `Never` the words may stand as in a question.

A property that names a number or a side is proved with these players, or left and right, told apart.
"""


def conditions_page() -> str:
    """Every form, subject, place and fact of a coach's own property. Markdown."""
    lines = [
        _HEAD,
        *_section("The sentence", ("written", "asks for"), FORMS),
        *_section("Of whom", ("words", "means"), WHOM),
        *_section("What a player does, or where", ("words", "means", "for example"), map(_player, PLAYER_FACTS)),
        "The words are as of several players; of one it `is`, `has`, `cuts`.",
        "`The ball` can stand in place of a player before `is at`, `is on`, `is in the lane`, `is inside` and",
        "`is above the free-throw line`: it is where the player is who has it.",
        "",
        *_section("Where", ("words", "means"), PLACES),
        f"The sides are {', '.join(f'`{side}`' for side in SIDES)}.",
        "",
        *_section("Spots", ("words", "means"), SPOTS),
        *_table(("fact", "means", "for example"), ((_ways(f.says), f.means, f"`{f.shown.says}`") for f in SPOT_FACTS)),
        *_section(
            "All of it",
            ("words", "contrary", "means"),
            ((_ways(f.says), _ways(f.says_not), f.means) for f in ALL_FACTS),
        ),
    ]
    return "\n".join(lines).rstrip() + "\n"


def _player(fact: PlayerFact) -> tuple[str, str, str]:
    ways = (way.replace("{place}", "(place)").replace("{side}", "(side)") for way in fact.says)
    return _ways(ways), fact.means, f"`{fact.shown.says}`"


def _ways(ways: Iterable[str]) -> str:
    return ", ".join(f"`{way}`" for way in ways)


def _section(title: str, head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> list[str]:
    return [f"## {title}", "", *_table(head, rows)]


def _table(head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> list[str]:
    return [f"| {' | '.join(cells)} |" for cells in (head, ("---",) * len(head), *rows)] + [""]
