"""Nobody is asked for a run that the squad cannot make in the time."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.prove.property import Always, Breach, Numbers, Seen
from backcut.prove.who import plain_title, said_by


def _looks(seen: Seen, numbers: Numbers) -> Iterator[Breach]:
    if seen.run_s is None:
        return
    for action in seen.decision.actions:
        if not action.moves or (took_s := seen.run_s(action)) <= numbers["seconds"]:
            continue
        way = f"from the {plain_title(action.origin)} to the {plain_title(action.target)}"
        yield Breach(
            f"{said_by(seen.book, action.habit)} asks for a run that takes too long, {way}.",
            f"{action.player} needs {took_s:.3g} seconds from the {action.origin.title} to the {action.target.title}.",
            (action.player,),
            () if action.habit is None else (action.habit,),
            action.target,
        )


PROPERTY = Always(
    name="runs in time",
    says="Nobody is asked for a run that takes the squad longer than {seconds} seconds.",
    why=(
        "Who holds the ball for longer than four seconds is stuck, so a run that takes longer comes too late for "
        "every next pass. Three is the mark for a fill alone. Common practice, no source."
    ),
    numbers={"seconds": 4.0},
    timed=True,
    looks=_looks,
)
