"""An outside model checker reads our walks, explores them itself, and comes to the same numbers.

The checker is Storm (stormchecker.org), by its Python package stormpy. Every state it finds is counted with one more
than ours: the state before the start.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from tests.engine.floor import FOUR_SPOTS, THREE_SPOTS, book, excepting, on_ring, opened

from backcut.offence.book import Book
from backcut.prove.depth import Depth
from backcut.prove.export import Command, Model, Reward, Variable, jani, model_of, prism
from backcut.prove.walk import Walk, walk

stormpy: Any = pytest.importorskip("stormpy")

BOOKS: dict[str, Callable[[], Book]] = {
    "three on LW T RW": lambda: on_ring("three-out", THREE_SPOTS),
    "four on LW LS RS RW": lambda: on_ring("four-out", FOUR_SPOTS),
    "five-out": lambda: opened("five-out"),
    "five-out with holes": lambda: book(exit="opposite corner"),
    "three, and 2 never cuts": lambda: excepting(on_ring("three-out", THREE_SPOTS), never_cuts=2),
}
#: Small enough to be walked through with everybody told apart, as every depth of the three-player ring is.
WALKS = [
    *(("three on LW T RW", depth) for depth in Depth),
    ("four on LW LS RS RW", Depth.SETTLED),
    ("four on LW LS RS RW", Depth.DENIED),
    ("five-out", Depth.SETTLED),
    ("five-out with holes", Depth.SETTLED),
    ("three, and 2 never cuts", Depth.OVERLAPPED),
]


class Checked:
    """A model as Storm built it from our text."""

    def __init__(self, model: Model, folder: Path) -> None:
        path = folder / "model.prism"
        path.write_text(prism(model), encoding="utf-8")
        self.program = stormpy.parse_prism_program(str(path))
        self.built = stormpy.build_model(self.program)

    @property
    def states(self) -> int:
        """How many states Storm found."""
        return int(self.built.nr_states)

    def labelled(self, label: str) -> int:
        """How many of them have this label."""
        return int(self.built.labeling.get_states(label).get_number_of_set_bits())

    def value(self, asked: str) -> float:
        """What Storm answers to a property, in the state before the start."""
        (wanted,) = stormpy.parse_properties(asked, self.program)
        return float(stormpy.model_checking(self.built, wanted).get_value(self.built.initial_states[0]))


def toy_game() -> Model:
    """An invented game of eight ticks; its numbers of states and its two values were found by two other solvers.

    In every tick somebody chooses whether the ball handler's man denies or sags. Denied, the cut is good (worth 1.4)
    with 0.55, a turnover with 0.10, and else the ball is held one tick more. Sagged, it is a poor shot (worth 0.8) with
    0.45, else held. Who holds in the eighth tick takes the poor shot. States: hold, denied, sagged, good, poor and
    turnover in each of the eight ticks, and one when it is over: 6 x 8 + 1 = 49.
    """
    hold, denied, sagged, good, poor, turnover, over = range(7)
    commands = []
    for tick in range(1, 9):
        held = {"at": hold, "tick": tick + 1} if tick < 8 else {"at": poor}
        cut = [(0.55, {"at": good}), (0.10, {"at": turnover}), (0.35, held)]
        commands += [
            Command("deny", {"at": hold, "tick": tick}, [(1.0, {"at": denied})]),
            Command("sag", {"at": hold, "tick": tick}, [(1.0, {"at": sagged})]),
            Command("cut", {"at": denied, "tick": tick}, cut),
            Command("look", {"at": sagged, "tick": tick}, [(0.45, {"at": poor}), (0.55, held)]),
        ]
    commands += [Command("end", {"at": end}, [(1.0, {"at": over, "tick": 1})]) for end in (good, poor, turnover)]
    commands.append(Command("rest", {"at": over}, [(1.0, {})]))
    return Model(
        "mdp",
        [Variable("at", hold, over, hold), Variable("tick", 1, 8, 1)],
        commands,
        {"over": [{"at": over}]},
        {"points": [Reward(1.4, {"at": good}), Reward(0.8, {"at": poor})]},
    )


def test_the_toy_game_has_its_49_states_and_its_two_values(tmp_path: Path) -> None:
    game = Checked(toy_game(), tmp_path)
    assert game.states == 49
    assert game.value('R{"points"}min=? [F "over"]') == pytest.approx(0.8000, abs=5e-5)
    assert game.value('R{"points"}max=? [F "over"]') == pytest.approx(1.1845, abs=5e-5)


def test_going_round_in_beats_for_nothing_is_neither_taken_for_an_end_nor_paid(tmp_path: Path) -> None:
    """Without this, a least number of events could be read off a loop that never leaves: 0, or never."""
    commands = [
        Command("beat", {"at": 0}, [(1.0, {"at": 1})]),
        Command("beat", {"at": 1}, [(1.0, {"at": 0})]),
        Command("pass", {"at": 1}, [(1.0, {"at": 2})]),
        Command("rest", {"at": 2}, [(1.0, {})]),
    ]
    labels = {"caught": [{"at": 2}], "off": [{"at": 3}]}
    rewards = {"events": [Reward(1.0, action="pass")]}
    round_ = Checked(Model("mdp", [Variable("at", 0, 3, 0)], commands, labels, rewards), tmp_path)
    assert round_.value('R{"events"}min=? [F "caught"]') == 1
    assert round_.value('R{"events"}min=? [F "off"]') == float("inf")


def least(found: Walk, label: str) -> float:
    """The fewest events to a situation of this kind by our own walk; infinite where there is none."""
    kinds: dict[str, Callable[[int], bool]] = {
        "settled": lambda node: found.settled[node],
        "ended": lambda node: found.situations[node].ended is not None,
        "trouble": lambda node: bool(found.decisions[node].troubles),
    }
    spots = label.removeprefix("ball_").split("_or_")
    kinds.setdefault(label, lambda node: found.situations[node].holder.at in spots)
    return min((found.far[node] for node in range(len(found.situations)) if kinds[label](node)), default=float("inf"))


@pytest.mark.parametrize(("name", "depth"), WALKS)
def test_storm_explores_as_many_pictures_and_needs_as_few_events(name: str, depth: Depth, tmp_path: Path) -> None:
    found = walk(BOOKS[name](), depth)
    model = model_of(found)
    checked = Checked(model, tmp_path)
    assert checked.states == len(found.situations) + 1
    fewest = {label: checked.value(f'R{{"events"}}min=? [F "{label}"]') for label in model.labels}
    assert fewest == {label: least(found, label) for label in model.labels}


def test_storm_needs_as_few_events_to_every_single_picture(tmp_path: Path) -> None:
    found = walk(on_ring("three-out", THREE_SPOTS), Depth.DENIED)
    model = model_of(found)
    each = {f"p{node}": [{"picture": node}] for node in range(len(found.situations))}
    checked = Checked(Model(model.kind, model.variables, model.commands, each, model.rewards), tmp_path)
    assert [checked.value(f'R{{"events"}}min=? [F "p{node}"]') for node in range(len(found.far))] == found.far


@pytest.mark.parametrize(("name", "depth"), WALKS)
def test_storm_unfolds_numbers_and_sides_to_what_was_never_folded(name: str, depth: Depth, tmp_path: Path) -> None:
    asked = BOOKS[name]()
    apart = walk(asked, depth, told_apart=True, mirrored=False)
    plain = model_of(apart)
    for mirrored in (True, False):
        model = model_of(walk(asked, depth, mirrored=mirrored), told_apart=True)
        checked = Checked(model, tmp_path)
        assert checked.states == len(apart.situations) + 1
        assert set(model.labels) == set(plain.labels)
        for label in model.labels:
            ours = [guard["picture"] for guard in plain.labels[label]]
            wide = sum(1 if isinstance(run, int) else run[1] - run[0] + 1 for run in ours)
            assert checked.labelled(label) == wide, label
            assert checked.value(f'R{{"events"}}min=? [F "{label}"]') == least(apart, label), label


def test_both_languages_say_the_same(tmp_path: Path) -> None:
    model = model_of(walk(on_ring("four-out", FOUR_SPOTS), Depth.DENIED), told_apart=True)
    read, _ = stormpy.parse_jani_model_from_string(jani(model))
    built = stormpy.build_model(read)
    one = Checked(model, tmp_path).built
    assert (built.nr_states, built.nr_transitions) == (one.nr_states, one.nr_transitions)
