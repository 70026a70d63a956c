"""The report of a played possession: whose sentence gets the credit, and what is refused."""

from __future__ import annotations

import pytest

from backcut.engine.report import answers
from backcut.errors import MoveError
from backcut.offence.action import Kind

from .floor import FIVE, book, played


def credited(name: str, moves: str, player: int, **choices: str) -> str:
    """The phrase that is credited with a player's answer in the last step."""
    this = book(name, **choices)
    told = next(action for action in answers(played(this, moves, FIVE)[-1]) if action.player == player)
    return "" if told.habit is None else this.sentences[told.habit].phrase.name


def test_who_holds_after_a_skip_holds_because_of_the_skip_sentence() -> None:
    assert credited("school-team", "T>LC", 1) == "skip pass"


def test_who_holds_in_the_corner_holds_because_of_the_corner_sentence() -> None:
    this = book("five-out", "corner pass", corner_passer="hold")
    told = next(a for a in answers(played(this, "T>RW, RW>RC, RC>RW", FIVE)[-1]) if a.player == 4)
    assert told.kind is Kind.HOLD
    assert this.sentences[told.habit or 0].phrase.name == "corner pass"


def test_who_has_nothing_to_do_holds_because_of_the_last_sentence() -> None:
    assert credited("school-team", "T>RW", 4) == "hold"


def test_everybody_is_in_the_report_of_every_step() -> None:
    for step in played(book("school-team"), "T>RW, deny 3, 2>5, shot", FIVE):
        assert {action.player for action in answers(step)} == {1, 2, 3, 4, 5}


def test_only_the_passers_own_defender_can_jump_to_a_pass_in_the_air() -> None:
    with pytest.raises(MoveError, match="1 did"):
        played(book("school-team"), "T>RW, jump 3", FIVE)
    assert played(book("school-team"), "jump 1, T>RW", FIVE)[-1].after.player(1).at == "LC"
