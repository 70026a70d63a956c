"""A walk written out for an outside model checker, in the PRISM language or in JANI.

Both are open, documented formats of the field for guarded commands over bounded whole numbers (prismmodelchecker.org,
manual, "The PRISM Language"; jani-spec.org). Written is the small part of them that a walk needs.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from backcut.court.spots import Spot
from backcut.errors import ModelError
from backcut.prove.fold import Turn
from backcut.prove.walk import Walk

#: What a guard asks: each variable has this value, or lies between these two. An empty guard always holds.
Guard = Mapping[str, int | tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Variable:
    """A whole number from `low` to `high`, both included, that is `start` at first."""

    name: str
    low: int
    high: int
    start: int


@dataclass(frozen=True, slots=True)
class Other:
    """The value at the other end of a variable's range: of a side 0 or 1, the other side."""

    variable: str


#: What an update gives each variable: a value, the value another variable had before, or the other end. The rest stays.
Update = Mapping[str, int | str | Other]


@dataclass(frozen=True, slots=True)
class Command:
    """Where `guard` holds, `action` can be taken; it leads on by one of the updates, each with its probability."""

    action: str
    guard: Guard
    updates: Sequence[tuple[float, Update]]


@dataclass(frozen=True, slots=True)
class Reward:
    """`worth` for each visit where `guard` holds; with an `action`, for each time it is taken there."""

    worth: float
    guard: Guard = field(default_factory=dict)
    action: str | None = None


@dataclass(frozen=True, slots=True)
class Model:
    """A Markov decision process ("mdp": somebody picks among the commands) or a Markov chain ("dtmc").

    A label holds where one of its guards does; a reward is the sum of its parts.
    """

    kind: Literal["mdp", "dtmc"]
    variables: Sequence[Variable]
    commands: Sequence[Command]
    labels: Mapping[str, Sequence[Guard]] = field(default_factory=dict)
    rewards: Mapping[str, Sequence[Reward]] = field(default_factory=dict)


def prism(model: Model) -> str:
    """The model in the PRISM language, one command a line.

    Raises: ModelError for the first thing that is wrong: where, what, and what would be right.
    """
    check(model)
    ranges = {variable.name: variable for variable in model.variables}
    lines = [model.kind, "", "module possession"]
    lines += [f"  {v.name} : [{v.low}..{v.high}] init {v.start};" for v in model.variables]
    lines += (f"  {_command(command, ranges)}" for command in model.commands)
    lines += ["endmodule", ""]
    lines += (f'label "{name}" = {_any([_guard(guard) for guard in guards])};' for name, guards in model.labels.items())
    for name, parts in model.rewards.items():
        lines += ["", f'rewards "{name}"']
        lines += (
            f"  {'' if part.action is None else f'[{part.action}] '}{_guard(part.guard)} : {part.worth!r};"
            for part in parts or [Reward(0.0)]
        )
        lines += ["endrewards"]
    return "\n".join(lines) + "\n"


def _command(command: Command, ranges: Mapping[str, Variable]) -> str:
    updates = " + ".join(f"{chance!r}:{_update(update, ranges)}" for chance, update in command.updates)
    return f"[{command.action}] {_guard(command.guard)} -> {updates};"


def _update(update: Update, ranges: Mapping[str, Variable]) -> str:
    def value(of: int | str | Other) -> int | str:
        if not isinstance(of, Other):
            return of
        turned = ranges[of.variable]
        return f"{turned.low + turned.high}-{turned.name}"

    return "&".join(f"({name}'={value(of)})" for name, of in update.items()) or "true"


def _guard(guard: Guard) -> str:
    def asks(name: str, value: int | tuple[int, int]) -> str:
        return f"{name}={value}" if isinstance(value, int) else f"{name}>={value[0]}&{name}<={value[1]}"

    return "&".join(asks(name, value) for name, value in guard.items()) or "true"


def _any(terms: Sequence[str]) -> str:
    """One of the terms holds: nested by halves, for a reader that goes one call deeper with every term in a row."""
    if len(terms) < 2:
        return terms[0] if terms else "false"
    half = len(terms) // 2
    return f"({_any(terms[:half])})|({_any(terms[half:])})"


def jani(model: Model, at: str = "picture") -> str:
    """The states and commands of the model in JANI, without labels and rewards.

    The values of the variable `at` become locations: a checker then looks only at the commands of one location in each
    state, where in the PRISM language it looks at all of them.

    Raises: ModelError as `prism` does, and where a command does not say which value of `at` it leads from and to.
    """
    check(model)
    ranges = {variable.name: variable for variable in model.variables}
    place = _known(at, ranges, "the locations")
    automaton = {
        "name": "possession",
        "locations": [{"name": str(value)} for value in range(place.low, place.high + 1)],
        "initial-locations": [str(place.start)],
        "edges": [_edge(command, ranges, at) for command in model.commands],
    }
    kind = {"kind": "bounded", "base": "int"}
    whole = {
        "jani-version": 1,
        "name": "possession",
        "type": model.kind,
        "actions": [{"name": action} for action in sorted({command.action for command in model.commands})],
        "variables": [
            {"name": v.name, "type": {**kind, "lower-bound": v.low, "upper-bound": v.high}, "initial-value": v.start}
            for v in model.variables
            if v.name != at
        ],
        "properties": [],
        "automata": [automaton],
        "system": {"elements": [{"automaton": "possession"}]},
    }
    return json.dumps(whole)


def _edge(command: Command, ranges: Mapping[str, Variable], at: str) -> dict[str, object]:
    source = command.guard.get(at)
    targets = [update.get(at, source) for _, update in command.updates]
    if not all(isinstance(place, int) for place in (source, *targets)):
        raise ModelError(f"The command [{command.action}] must say which value of {at} it leads from and to.")
    holds: object = True
    for name, value in command.guard.items():
        low, high = (value, value) if isinstance(value, int) else value
        for op, bound in (("≥", low), ("≤", high)) if name != at else ():
            holds = {"op": "∧", "left": holds, "right": {"op": op, "left": name, "right": bound}}

    def given(value: int | str | Other) -> object:
        if not isinstance(value, Other):
            return value
        turned = ranges[value.variable]
        return {"op": "-", "left": turned.low + turned.high, "right": turned.name}

    destinations = [
        {
            "location": str(target),
            "probability": {"exp": chance},
            "assignments": [{"ref": name, "value": given(of)} for name, of in update.items() if name != at],
        }
        for (chance, update), target in zip(command.updates, targets, strict=True)
    ]
    return {"location": str(source), "action": command.action, "guard": {"exp": holds}, "destinations": destinations}


_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
_NEAR_ENOUGH = 1e-9  # estimate: far above the rounding of a sum of floats, far below any chance that is meant


def check(model: Model) -> None:
    """Raises: ModelError for the first thing that is wrong: where, what, and what would be right."""
    ranges: dict[str, Variable] = {}
    for variable in model.variables:
        _check_name(variable.name, "A variable")
        if variable.name in ranges:
            raise ModelError(f"Two variables are called {variable.name}: give each a name of its own.")
        if not variable.low <= variable.start <= variable.high:
            raise ModelError(
                f"{variable.name} starts at {variable.start}, but goes from {variable.low} to {variable.high}."
            )
        ranges[variable.name] = variable
    actions = {command.action for command in model.commands}
    for command in model.commands:
        _check_name(command.action, "An action")
        _check_guard(command.guard, ranges, f"the command [{command.action}]")
        _check_updates(command, ranges)
    for name, guards in model.labels.items():
        _check_name(name, "A label")
        for guard in guards:
            _check_guard(guard, ranges, f'the label "{name}"')
    for name, parts in model.rewards.items():
        _check_name(name, "A reward")
        for part in parts:
            _check_guard(part.guard, ranges, f'the reward "{name}"')
            if part.action is not None and part.action not in actions:
                raise ModelError(f'The reward "{name}" is for [{part.action}], but no command is called that.')


def _check_name(name: str, what: str) -> None:
    if not _NAME.fullmatch(name):
        raise ModelError(f"{what} cannot be called {name!r}: write letters, digits and _, beginning with no digit.")


def _known(name: str, ranges: Mapping[str, Variable], where: str) -> Variable:
    if name not in ranges:
        raise ModelError(f"In {where}: there is no variable {name}; there are {', '.join(ranges) or 'none'}.")
    return ranges[name]


def _check_range(name: str, low: int, high: int, ranges: Mapping[str, Variable], where: str) -> None:
    known = _known(name, ranges, where)
    if not known.low <= low <= high <= known.high:
        said = f"{low}" if low == high else f"{low} to {high}"
        raise ModelError(f"In {where}: {name} cannot be {said}; it goes from {known.low} to {known.high}.")


def _check_guard(guard: Guard, ranges: Mapping[str, Variable], where: str) -> None:
    for name, value in guard.items():
        low, high = (value, value) if isinstance(value, int) else value
        _check_range(name, low, high, ranges, where)


def _check_updates(command: Command, ranges: Mapping[str, Variable]) -> None:
    where = f"the command [{command.action}] at {_guard(command.guard)}"
    for _, update in command.updates:
        for name, value in update.items():
            if isinstance(value, int):
                _check_range(name, value, value, ranges, where)
            else:
                source = _known(value.variable if isinstance(value, Other) else value, ranges, where)
                _check_range(name, source.low, source.high, ranges, where)
    chances = [chance for chance, _ in command.updates]
    if any(chance < 0 for chance in chances) or abs(sum(chances) - 1) > _NEAR_ENOUGH:
        raise ModelError(
            f"In {where}: the probabilities {', '.join(map(str, chances))} must be 0 or more and sum to 1."
        )


def model_of(walk: Walk, *, told_apart: bool = False) -> Model:
    """The walk as a model: a variable `picture` for the folded situation, and one command for each way on.

    `told_apart` adds, per folded player, the number he wears on the floor (`worn_1`, ...), and, where left and right
    were folded, the `side` (1: mirrored): its states are then the floor's situations, each once. The state before the
    start is the picture one past the last. Where nothing can happen any more, [rest] goes round for ever.

    Labels: "settled", "ended", "trouble", and where the ball is ("ball_LW"; "ball_LW_or_RW" where sides are not told
    apart). Reward "events": 1 for every event, none for a beat, and for [begin_2] the 2 events before such a start.

    Raises: ModelError if the walk was stopped before its end.
    """
    if walk.unfinished:
        raise ModelError(
            f"The walk was stopped with {walk.unfinished} situations not looked at; only a whole walk can be written."
        )
    sided = told_apart and walk.mirror
    last, numbers = len(walk.situations), walk.numbers
    variables = [Variable("picture", 0, last, last)]
    if told_apart:
        variables += (Variable(f"worn_{n}", min(numbers), max(numbers), n) for n in numbers)
    if sided:
        variables.append(Variable("side", 0, 1, 0))
    commands = list(_commands(walk, told_apart))
    worth = {command.action: 1 for command in commands} | {_BEAT: 0, _REST: 0}
    worth |= {_begin(start.far): start.far for begun in walk.begun.values() for start, _ in begun}
    events = [Reward(float(events), action=action) for action, events in sorted(worth.items()) if events]
    return Model("mdp", variables, commands, dict(_labels(walk, sided)), {"events": events})


_BEAT, _REST = "beat", "rest"


def _begin(far: int) -> str:
    return f"begin_{far}"


def _word(said: str) -> str:
    return re.sub(r"\W", "_", said)


def _commands(walk: Walk, told_apart: bool) -> Iterator[Command]:
    own = [walk.own_mirror(node) if told_apart else None for node in range(len(walk.situations))]

    def ways(action: str, source: int, target: int, turn: Turn) -> Iterator[Command]:
        mirror = own[target]
        if not told_apart:
            yield Command(action, {"picture": source}, [(1.0, {"picture": target})])
        elif mirror is None:
            yield Command(action, {"picture": source}, [(1.0, {"picture": target, **_turned(turn, walk.numbers)})])
        else:
            # What is its own mirror image lies on the floor in two ways that are one: side 0 stands for both.
            for side in (0, 1):
                straight = turn if turn.flipped == bool(side) else turn.then(mirror, walk.numbers)
                there = {"picture": target, **_turned(Turn(straight.worn), walk.numbers), "side": 0}
                yield Command(action, {"picture": source, "side": side}, [(1.0, there)])

    for node, begun in walk.begun.items():
        for start, turn in begun:
            yield from ways(_begin(start.far), len(walk.situations), node, turn)
    for node, edges in enumerate(walk.edges):
        for edge in edges:
            yield from ways(_BEAT if edge.event is None else _word(edge.event.kind), node, edge.target, edge.turn)
        if not edges:
            yield Command(_REST, {"picture": node}, [(1.0, {})])


def _turned(turn: Turn, numbers: Sequence[int]) -> Update:
    """What changes in the numbers worn and the side, when the next picture lies like this in the one before."""
    worn: Update = {f"worn_{n}": f"worn_{of}" for n, of in zip(numbers, turn.worn, strict=True) if n != of}
    return {**worn, "side": Other("side")} if turn.flipped else worn


def _labels(walk: Walk, sided: bool) -> Iterator[tuple[str, list[Guard]]]:
    situations = walk.situations
    yield "settled", _pictures(node for node, settled in enumerate(walk.settled) if settled)
    yield "ended", _pictures(node for node, situation in enumerate(situations) if situation.ended is not None)
    yield "trouble", _pictures(node for node, decision in enumerate(walk.decisions) if decision.troubles)
    ball: dict[Spot, list[int]] = {}
    for node, situation in enumerate(situations):
        ball.setdefault(situation.holder.at, []).append(node)
    spots = sorted({*ball, *(spot.mirror for spot in ball if walk.mirror)})
    for spot in spots:
        here, there = ball.get(spot, []), ball.get(spot.mirror, [])
        if sided:
            sides = ((0, here), (1, there))
            yield f"ball_{spot}", [{**guard, "side": side} for side, nodes in sides for guard in _pictures(nodes)]
        elif not walk.mirror or spot is spot.mirror:
            yield f"ball_{spot}", _pictures(here)
        elif spot < spot.mirror:
            yield f"ball_{spot}_or_{spot.mirror}", _pictures(sorted(here + there))


def _pictures(nodes: Iterable[int]) -> list[Guard]:
    """Where the picture is one of these, given in rising order: one guard for each unbroken run of them."""
    runs: list[tuple[int, int]] = []
    for node in nodes:
        if runs and runs[-1][1] == node - 1:
            runs[-1] = runs[-1][0], node
        else:
            runs.append((node, node))
    return [{"picture": low if low == high else (low, high)} for low, high in runs]
