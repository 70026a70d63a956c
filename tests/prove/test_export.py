"""A walk written for an outside model checker: what the text says, and what is said of a model that cannot be."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from tests.engine.floor import FOUR_SPOTS, THREE_SPOTS, on_ring

from backcut.court.spots import Spot
from backcut.errors import ModelError
from backcut.offence.situation import Situation
from backcut.prove.depth import Depth
from backcut.prove.export import Command, Model, Other, Reward, Variable, jani, model_of, prism
from backcut.prove.fold import Turn
from backcut.prove.walk import Walk, walk

#: The values of a model's variables, in their order.
State = tuple[int, ...]

SPOT = Variable("spot", 0, 5, 2)
WORN = Variable("worn", 1, 5, 1)
GO = Command("go", {"spot": 2}, [(0.25, {"spot": 3, "worn": Other("worn")}), (0.75, {})])
STAY = Command("stay", {"worn": (2, 4)}, [(1.0, {"spot": "worn"})])
SMALL = Model(
    "mdp",
    [SPOT, WORN],
    [GO, STAY],
    {"near": [{"spot": (1, 3)}, {"spot": 5, "worn": 1}], "never": [], "always": [{}]},
    {"steps": [Reward(1.0, action="go"), Reward(0.5, {"spot": 3})]},
)


def test_a_small_model_is_written_command_by_command() -> None:
    assert (
        prism(SMALL)
        == """\
mdp

module possession
  spot : [0..5] init 2;
  worn : [1..5] init 1;
  [go] spot=2 -> 0.25:(spot'=3)&(worn'=6-worn) + 0.75:true;
  [stay] worn>=2&worn<=4 -> 1.0:(spot'=worn);
endmodule

label "near" = (spot>=1&spot<=3)|(spot=5&worn=1);
label "never" = false;
label "always" = true;

rewards "steps"
  [go] true : 1.0;
  spot=3 : 0.5;
endrewards
"""
    )


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (replace(SMALL, commands=[replace(GO, updates=[(0.25, {}), (0.7, {})])]), r"\[go\] at spot=2.*0.25, 0.7.*to 1"),
        (replace(SMALL, commands=[replace(GO, updates=[(1.5, {}), (-0.5, {})])]), r"1.5, -0.5 must be 0 or more"),
        (replace(SMALL, commands=[replace(GO, updates=[])]), "sum to 1"),
        (replace(SMALL, commands=[replace(GO, guard={"side": 1})]), "no variable side; there are spot, worn"),
        (replace(SMALL, commands=[replace(GO, updates=[(1.0, {"spot": "side"})])]), "no variable side"),
        (replace(SMALL, commands=[replace(GO, updates=[(1.0, {"spot": 6})])]), "spot cannot be 6; it goes from 0 to 5"),
        (replace(SMALL, commands=[replace(GO, updates=[(1.0, {"worn": "spot"})])]), "worn cannot be 0 to 5"),
        (replace(SMALL, commands=[replace(GO, guard={"spot": (3, 2)})]), "spot cannot be 3 to 2"),
        (replace(SMALL, labels={"far": [{"spot": 9}]}), 'the label "far": spot cannot be 9'),
        (replace(SMALL, labels={"far off": []}), "label cannot be called 'far off': write letters"),
        (replace(SMALL, variables=[replace(SPOT, start=7), WORN]), "spot starts at 7, but goes from 0 to 5"),
        (replace(SMALL, variables=[SPOT, WORN, SPOT]), "Two variables are called spot"),
        (replace(SMALL, rewards={"steps": [Reward(1.0, action="run")]}), r"\[run\], but no command is called that"),
    ],
)
def test_a_model_that_cannot_be_is_refused_in_both_languages(wrong: Model, said: str) -> None:
    with pytest.raises(ModelError, match=said):
        prism(wrong)
    with pytest.raises(ModelError, match=said):
        jani(wrong, at="spot")


def test_a_command_without_a_place_has_no_location() -> None:
    with pytest.raises(ModelError, match=r"\[stay\] must say which value of spot it leads from and to"):
        jani(SMALL, at="spot")
    with pytest.raises(ModelError, match="no variable picture"):
        jani(SMALL)


def test_a_walk_that_was_stopped_is_not_written() -> None:
    book = on_ring("three-out", THREE_SPOTS)
    with pytest.raises(ModelError, match=r"stopped with [1-9][0-9]* situations not looked at"):
        model_of(walk(book, most=5))


def test_every_way_on_is_one_command_and_every_event_is_worth_one() -> None:
    found = walk(on_ring("three-out", THREE_SPOTS))
    model = model_of(found)
    begins = [command for command in model.commands if command.action.startswith("begin_")]
    rests = [command for command in model.commands if command.action == "rest"]
    assert len(begins) == sum(map(len, found.begun.values()))
    assert [command.guard["picture"] for command in rests] == [n for n, edges in enumerate(found.edges) if not edges]
    assert len(model.commands) - len(begins) - len(rests) == sum(map(len, found.edges))
    paid = {part.action: part.worth for part in model.rewards["events"]}
    assert sum(paid.get(command.action, 0) for command in model.commands if command not in begins) == found.moves
    assert [paid.get(command.action, 0) for command in begins] == [
        start.far for begun in found.begun.values() for start, _ in begun
    ]


def test_told_apart_has_a_number_for_each_player_and_a_side_only_where_sides_are_folded() -> None:
    book = on_ring("three-out", THREE_SPOTS)
    names = {
        mirrored: [v.name for v in model_of(walk(book, mirrored=mirrored), told_apart=True).variables]
        for mirrored in (True, False)
    }
    assert names[False] == ["picture", "worn_1", "worn_2", "worn_3"]
    assert names[True] == [*names[False], "side"]


def test_the_locations_of_jani_are_the_pictures() -> None:
    model = model_of(walk(on_ring("three-out", THREE_SPOTS)), told_apart=True)
    written = json.loads(jani(model))
    (automaton,) = written["automata"]
    assert len(automaton["locations"]) == model.variables[0].high + 1
    assert automaton["initial-locations"] == [str(model.variables[0].start)]
    assert len(automaton["edges"]) == len(model.commands)
    assert [variable["name"] for variable in written["variables"]] == [v.name for v in model.variables[1:]]


def played(model: Model) -> set[tuple[State, State]]:
    """Every way on from every state that the commands reach, found by carrying them out one by one."""
    names = [variable.name for variable in model.variables]
    ends = {variable.name: variable.low + variable.high for variable in model.variables}
    by_picture: dict[object, list[Command]] = {}
    for command in model.commands:
        by_picture.setdefault(command.guard["picture"], []).append(command)
    first = tuple(variable.start for variable in model.variables)
    found, waiting = {first}, [first]
    ways: set[tuple[State, State]] = set()
    while waiting:
        state = waiting.pop()
        now = dict(zip(names, state, strict=True))
        for command in by_picture[now["picture"]]:
            if any(now[name] != value for name, value in command.guard.items()):
                continue
            ((_, update),) = command.updates
            then = dict(now)
            for name, value in update.items():
                match value:
                    case int():
                        then[name] = value
                    case str():
                        then[name] = now[value]
                    case Other(turned):
                        then[name] = ends[turned] - now[turned]
            after = tuple(then.values())
            ways.add((state, after))
            if after not in found:
                found.add(after)
                waiting.append(after)
    return ways


def on_the_floor(found: Walk, state: State) -> Situation | None:
    """The situation a state stands for; None before the start."""
    picture, *worn = state
    if picture == len(found.situations):
        return None
    side = worn.pop() if found.mirror else 0
    return Turn(tuple(worn), bool(side)).situation(found.situations[picture])


@pytest.mark.parametrize(("name", "ring"), [("three-out", THREE_SPOTS), ("four-out", FOUR_SPOTS)])
@pytest.mark.parametrize("depth", [Depth.SETTLED, Depth.DENIED])
def test_every_command_leads_to_the_very_players_the_rules_lead_to(
    name: str, ring: tuple[Spot, ...], depth: Depth
) -> None:
    book = on_ring(name, ring)
    folded, apart = walk(book, depth), walk(book, depth, told_apart=True, mirrored=False)
    by_the_rules: set[tuple[Situation | None, Situation | None]] = set()
    for situation, edges in zip(apart.situations, apart.edges, strict=True):
        by_the_rules |= {(situation, apart.situations[edge.target]) for edge in edges} or {(situation, situation)}
    by_the_rules |= {(None, apart.situations[node]) for node in apart.begun}
    assert {
        (on_the_floor(folded, before), on_the_floor(folded, after))
        for before, after in played(model_of(folded, told_apart=True))
    } == by_the_rules
