"""A possession that a book plays against moves drawn by lot."""

from __future__ import annotations

import pytest

from backcut.engine.choose import LONG_ENOUGH, allowed, possession
from backcut.engine.possession import Step
from backcut.errors import MoveError
from backcut.offence.event import EventKind
from backcut.offence.library import presets
from backcut.offence.situation_text import situation_text

from .floor import book, played

SEEDS = range(15)
EACH_BOOK = pytest.mark.parametrize("name", ["five-out", "four-out", "three-out", *presets()])


def drawn(name: str, seed: int) -> list[Step]:
    """One possession; empty where a known fault lets no end be found."""
    try:
        return possession(book(name), book(name).start(), seed)
    except MoveError:  # the shot that never settles: see the tests of the ends
        return []


@EACH_BOOK
def test_one_seed_draws_one_possession(name: str) -> None:
    for seed in SEEDS:
        assert drawn(name, seed) == drawn(name, seed)


@EACH_BOOK
def test_a_drawn_possession_ends_with_a_lay_up_or_a_shot(name: str) -> None:
    for seed in SEEDS:
        for number, step in enumerate(steps := drawn(name, seed), 1):
            ends = step.event.kind in (EventKind.LAY_UP, EventKind.SHOT)
            assert ends == (number == len(steps))
        assert len(steps) <= LONG_ENOUGH + 2


@EACH_BOOK
def test_a_drawn_possession_can_be_written_down_and_played_again(name: str) -> None:
    for seed in SEEDS:
        steps = drawn(name, seed)
        if not steps:
            continue
        again = played(book(name), ", ".join(step.text for step in steps))
        assert [situation_text(step.after) for step in again] == [situation_text(step.after) for step in steps]


def test_no_move_is_drawn_that_the_book_has_no_answer_to() -> None:
    young = book("first-month")
    kinds = {event.kind for event in allowed(young, young.start())}
    assert kinds == {EventKind.PASS}


def test_no_pass_is_drawn_to_a_player_who_is_denied() -> None:
    situation = played(book(without=["back cut"]), "deny 2")[-1].after
    receivers = {event.receiver for event in allowed(book(), situation)}
    assert 2 not in receivers


def test_many_seeds_draw_many_possessions() -> None:
    texts = {" ".join(step.text for step in drawn("five-out", seed)) for seed in SEEDS}
    assert len(texts) > len(SEEDS) / 2


def test_a_drawn_pass_to_the_cutter_played_again_still_finds_him_at_the_rim() -> None:
    steps = next(s for s in (drawn("five-out", n) for n in SEEDS) if EventKind.TO_CUTTER in {x.event.kind for x in s})
    again = played(book(), ", ".join(step.text for step in steps))
    assert [step.event.kind for step in again] == [step.event.kind for step in steps]
