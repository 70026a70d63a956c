"""The board and Python read one possession alike: Python writes what both must say, and `node --test` reads it.

The file lies in `tests/js/contract/`. After a change of the motion or of the packing it is written anew:

    .venv/bin/python -m tests.page.test_board_contract
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from backcut.engine.play import play
from backcut.motion.squads import SQUADS
from backcut.motion.timeline import Timeline, pose
from backcut.offence.library import open_book
from backcut.offence.moves import moves_from_text
from backcut.page.data import held
from backcut.page.tracks import packed_timeline
from backcut.picture.show import Show
from backcut.picture.story import show

CONTRACT = Path(__file__).parents[1] / "js" / "contract" / "possession.json"

#: The possession of the README: a pass and cut, a back cut against a denial, a lay-up.
MOVES = "T>RW, RW>T, deny 4, T>cutter, lay-up"
TIMES = 61


@cache
def possession() -> Show:
    """The possession as a page shows it."""
    book, _ = open_book("school-team", SQUADS)
    return show(book, play(book, book.start(), moves_from_text(MOVES)))


def sampled(timeline: Timeline, t_s: float) -> dict[str, Any]:
    """Everybody's place in cm and every defender's heading at a time, by Python."""
    here = pose(timeline, t_s)
    return {
        "t": round(t_s * 100, 1),
        "players": {str(n): [round(v * 100, 2) for v in place] for n, place in here.players.items()},
        "defenders": {str(n): [round(v * 100, 2) for v in place[:2]] for n, place in here.defenders.items()},
        "ball": [round(v * 100, 2) for v in here.ball[:2]],
        "holder": here.holder,
    }


def contract() -> dict[str, Any]:
    """The packed tracks that a page carries, and what Python says of them at `TIMES` times."""
    told = possession()
    line = told.timeline
    times = np.linspace(0.0, line.duration_s, TIMES)
    return {
        "moves": MOVES,
        "tracks": packed_timeline(line),
        "held": held(told),
        "moments": [round(moment.t_s * 100) for moment in told.moments],
        "poses": [sampled(line, round(float(t), 3)) for t in times],
    }


def text(data: dict[str, Any]) -> str:
    """The contract with one line a pose, so that a change can be read."""
    rows = ",\n  ".join(json.dumps(row) for row in data["poses"])
    rest = json.dumps({name: value for name, value in data.items() if name != "poses"})
    return f'{rest[:-1]},\n "poses": [\n  {rows}\n]}}\n'


def test_the_contract_says_what_python_says_today() -> None:
    written = json.loads(CONTRACT.read_text(encoding="utf-8"))
    today = json.loads(json.dumps(contract()))
    assert written["moves"] == today["moves"]
    assert written["moments"] == today["moments"]
    assert written["tracks"] == today["tracks"], "Write the contract anew: see the head of this file."
    assert written["held"] == today["held"]
    for there, here in zip(written["poses"], today["poses"], strict=True):
        assert there["holder"] == here["holder"]
        for group in ("players", "defenders"):
            for name, place in here[group].items():
                assert there[group][name] == pytest.approx(place, abs=0.02)


if __name__ == "__main__":
    CONTRACT.parent.mkdir(parents=True, exist_ok=True)
    CONTRACT.write_text(text(contract()), encoding="utf-8")
    print(f"Written: {CONTRACT}")
