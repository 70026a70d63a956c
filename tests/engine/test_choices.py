"""Every value of every choice, and a possession that shows it. All values are common practice, no source."""

from __future__ import annotations

from itertools import combinations
from typing import Any, NamedTuple

import pytest

from backcut.offence.action import Kind, Route
from backcut.offence.choices import CHOICES

from .floor import FIVE, FOUR, book, played

#: Decided in metres or seconds, so no move list can show it: when a denial begins, how long a catch is held, what
#: the back cutter waits for.
TIMING = {"denial", "hold count", "signal"}


class Shown(NamedTuple):
    """A possession that shows a choice: what one player is told, beat by beat, under each value."""

    choice: str
    book: str
    start: str
    moves: str
    player: int
    told: dict[str, str]


SHOWN = [
    Shown(
        "exit",
        "four-out",
        "1:LW 2:LS 3:RS* 4:RW 5:Lb",
        "RS>RW",
        3,
        {
            "first open": "cut R front, -, -, -, come out RC, -",
            "end of the line": "cut R front, -, -, -, come out LW, -",
            "opposite corner": "cut R front, -, -, -, come out LC, fill LW along the arc, -",
            "fewest": "cut R front, -, -, -, come out LW, -",
            "opposite own": "cut R front, -, -, -, come out LC, fill LW along the arc, -",
            "filler's spot": "cut R front, -, -, -, come out LW, -",
        },
    ),
    Shown(
        "exit",
        "three-out",
        "1:T 2:RW* 3:RC 4:Lb 5:Re",
        "RW>T",
        2,
        {
            "first open": "cut R front, -, -, come out LW, -",
            "end of the line": "cut R front, -, -, come out RC, -",
            "opposite corner": "cut R front, -, -, no answer R",
            "fewest": "cut R front, -, -, come out LW, -",
            "opposite own": "cut R front, -, -, come out LC, fill LW along the arc, -",
            "filler's spot": "cut R front, -, -, come out RC, -",
        },
    ),
    Shown(
        "exit",
        "five-out",
        "1:T 2:RW 3:LW 4:RC* 5:LC",
        "RC>RW",
        4,
        {
            "first open": "cut R front, -, come out RC, -",
            "end of the line": "cut R front, -, come out RC, -",
            "opposite corner": "cut R front, -, no answer R",
            "fewest": "cut R front, -, come out RC, -",
            "opposite own": "cut R front, -, no answer R",
            "filler's spot": "cut R front, -, no answer R",
        },
    ),
    Shown(
        "who fills",
        "five-out",
        FIVE,
        "T>RW",
        5,
        {"chain": "-, -, -, fill LW along the arc, -, -", "nearest only": "-, -, -, -, -"},
    ),
    Shown(
        "when to fill",
        "five-out",
        FIVE,
        "T>RW",
        3,
        {
            "looked": "-, -, fill T along the arc, -, -, -",
            "at once": "-, fill T along the arc, -, -, -",
            "count of two": "-, -, fill T along the arc, -, -, -",
        },
    ),
    Shown(
        "when to fill",
        "four-out",
        "1:LS 2:RC 3:LW 4:RW* 5:Lb",
        "RW>LW",
        2,
        {
            "looked": "-, -, fill RW along the arc, -",
            "at once": "-, -, fill RW along the arc, -",
            "count of two": "-, -, -, fill RW along the arc, -",
        },
    ),
    Shown(
        "fill path",
        "five-out",
        FIVE,
        "T>RW",
        3,
        {path: f"-, -, fill T {path}, -, -, -" for path in ("along the arc", "through the elbow", "through the lane")},
    ),
    Shown(
        "corner passer",
        "three-out",
        "1:T 2:RW 3:RC* 4:Lb 5:Re",
        "RC>RW",
        3,
        {
            "come back": "cut R front, -, come out RC, -",
            "hold": "-, -",
            "cut through": "cut R front, -, come out LC, fill LW along the arc, -",
        },
    ),
    Shown(
        "skip passer",
        "five-out",
        FIVE,
        "T>RC",
        1,
        {"hold": "-, -", "cut": "cut R front, -, -, -, come out LC, -"},
    ),
    Shown(
        "front or rear",
        "five-out",
        FIVE,
        "T>RW, jump 1",
        1,
        {
            "read": "cut R rear, -, -, -, come out LC, -",
            "front": "cut R front, -, -, -, come out LC, -",
            "rear": "cut R rear, -, -, -, come out LC, -",
        },
    ),
    Shown(
        "front or rear",
        "five-out",
        FIVE,
        "T>RW",
        1,
        {
            "read": "cut R front, -, -, -, come out LC, -",
            "front": "cut R front, -, -, -, come out LC, -",
            "rear": "cut R rear, -, -, -, come out LC, -",
        },
    ),
    Shown(
        "cut taken away",
        "five-out",
        FIVE,
        "T>RW, jam 1",
        1,
        {
            "go behind": "cut R rear, -, -, come out LC, -",
            "screen away": "screen LW, -",
            "replace": "take back T, -",
        },
    ),
    Shown(
        "denied corner",
        "three-out",
        "1:T 2:RW* 3:RC 4:Rb 5:Le",
        "deny 3",
        3,
        {
            "back cut": "back cut R baseline, -, come out RC, -",
            "hold": "-",
            "go through": "back cut R baseline, -, come out LC, fill LW along the arc, -",
        },
    ),
    Shown(
        "denied filler",
        "five-out",
        FIVE,
        "T>RW, early deny 3",
        3,
        {
            "back cut": "fill T along the arc, back cut R behind the defender, -, -, come out LC, -",
            "hold": "fill T along the arc, -, -, -",
            "come to the ball": "fill T along the arc, come to the ball T, -, -",
        },
    ),
    Shown(
        "occupied block",
        "four-out",
        FOUR,
        "LS>RS",
        1,
        {
            "other side": "cut R far side, -, -, come out LW, -",
            "shallow": "shallow cut N front, -, -, come out LW, -",
            "screen": "screen R far side, -, -, come out LW, -",
        },
    ),
    Shown(
        "dribble at",
        "five-out",
        FIVE,
        "dribble 1>RW",
        2,
        {
            "back cut": "back cut R behind the defender, -, -, -, come out LC, -",
            "hand-off": "take the hand-off T, -, -, -, -, -",
            "slide on": "slide on RC along the arc, -, -, -, -, -",
        },
    ),
    Shown(
        "inside",
        "four-out",
        "1:LS 2:RS* 3:LW 4:RW 5:Re",
        "RS>RW",
        5,
        {
            "opposite": "move inside Lb, -, -, -, -, -",
            "follow": "move inside Rb, -, -, -, -, -",
            "stay": "-, -, -, -, -, -",
            "high": "-, -, -, -, -, -",
        },
    ),
    Shown(
        "inside",
        "four-out",
        "1:LS 2:RS* 3:LW 4:RW 5:Rb",
        "RS>RW",
        5,
        {
            "opposite": "move inside Lb, -, -, -, -, -",
            "follow": "-, -, -, -, -, -",
            "stay": "-, -, -, -, -, -",
            "high": "move inside Re, -, -, -, -, -",
        },
    ),
    Shown(
        "two inside",
        "three-out",
        "1:T* 2:RW 3:LW 4:Re 5:Lb",
        "T>RW",
        5,
        {"opposite levels": "move inside Le, -, -, -, -", "opposite sides": "-, -, -, -, -"},
    ),
]

_SILENT = frozenset({Kind.HOLD, Kind.BALL})


def told(shown: Shown, value: str) -> str:
    """What the player is told in every beat of the last step under a value; "-" where he stays."""
    base = book(shown.book, **{shown.choice: value})
    if shown.choice == "denied filler":
        base = book(shown.book, "denied filler", **{shown.choice: value})
    words = []
    for beat in played(base, shown.moves, shown.start)[-1].beats:
        action = next(a for a in beat.decision.actions if a.player == shown.player)
        route = "" if action.route is Route.PLAIN else f" {action.route}"
        words.append("-" if action.kind in _SILENT else f"{action.kind} {action.target}{route}")
    return ", ".join(words)


def case(shown: Shown, value: str) -> Any:
    """One row of the table."""
    return pytest.param(shown, value, id=f"{shown.choice}: {value}, {shown.moves}")


@pytest.mark.parametrize(("shown", "value"), [case(shown, value) for shown in SHOWN for value in shown.told])
def test_the_players_do_what_the_book_chose(shown: Shown, value: str) -> None:
    assert told(shown, value) == shown.told[value]


def test_every_choice_but_those_of_timing_has_a_possession_that_shows_it() -> None:
    assert {shown.choice for shown in SHOWN} == set(CHOICES) - TIMING


@pytest.mark.parametrize("choice", sorted(set(CHOICES) - TIMING))
def test_no_two_values_of_a_choice_come_to_the_same_thing(choice: str) -> None:
    possessions = [shown.told for shown in SHOWN if shown.choice == choice]
    names = [value.name for value in CHOICES[choice].values]
    for one, other in combinations(names, 2):
        assert any(shown[one] != shown[other] for shown in possessions), (one, other)


def test_first_open_and_end_of_the_line_are_the_same_on_five_spots_and_differ_on_six() -> None:
    # Common practice, computed: on a full ring only one spot is left when the others have moved up.
    for name, start, move, first_open, end in (
        ("five-out", FIVE, "T>RW", "LC", "LC"),
        ("four-out", FOUR, "LS>LW", "LC", "RW"),
    ):
        assert played(book(name, exit="first open"), move, start)[-1].after.player(1).at == first_open
        assert played(book(name, exit="end of the line"), move, start)[-1].after.player(1).at == end
