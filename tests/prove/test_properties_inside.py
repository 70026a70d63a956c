"""Two inside, three seconds, runs in time."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.engine.floor import opened
from tests.prove.judged import CUT, FILL, HOLD, OUT, causes, here, shown, waiting, written

from backcut.court.spots import Spot
from backcut.offence.action import Action, Kind
from backcut.prove.depth import Depth

IN_THE_LANE = (
    "1:R(in the lane from T, left of the ball, because passed) 2:RW* 3:LW(filling from LC) 4:RC | pass by 1 from T"
)


@pytest.mark.parametrize(
    ("spots", "wrong"),
    [
        ("4:Rb 5:Le", None),
        ("4:Rsc 5:N", None),
        ("4:Rb 5:Lb", "The two inside players both stand low."),
        ("4:Re 5:Le", "The two inside players both stand high."),
        ("4:Rm 5:Rb", "The two inside players both stand low, on one side."),
    ],
)
def test_on_opposite_levels_one_is_high_and_one_is_low(spots: str, wrong: str | None) -> None:
    book = written(CUT, HOLD, formation="three-out", lines=["Two inside: opposite levels"])
    found = here("two inside", shown(book, f"1:T* 2:RW 3:LW {spots}"))
    assert [told.cause for told in found] == ([wrong] if wrong else [])


@pytest.mark.parametrize(("spots", "breaks"), [("4:Rb 5:Lb", False), ("4:Rb 5:Re", True), ("4:N 5:Lb", True)])
def test_on_opposite_sides_one_is_left_and_one_is_right(spots: str, breaks: bool) -> None:
    book = written(CUT, HOLD, formation="three-out", lines=["Two inside: opposite sides"])
    found = here("two inside", shown(book, f"1:T* 2:RW 3:LW {spots}"))
    assert [told.cause for told in found] == ["The two inside players do not stand on opposite sides."] * breaks


def test_the_two_bigs_keep_their_levels() -> None:
    assert causes("two inside", opened("two-bigs"), Depth.SETTLED, Depth.DENIED) == set()


def test_a_cutter_who_waits_four_seconds_for_the_others_waits_too_long() -> None:
    book = written(CUT, OUT, FILL, HOLD)
    (told,) = here("three seconds", waiting(book, IN_THE_LANE.replace("3:LW(filling from LC)", "3:LW"), {1: 4.0}))
    assert told.cause == "The cutter waits in the lane until the others have moved up."
    assert told.text.startswith("1 has been in the lane for 4 seconds")
    assert here("three seconds", waiting(book, IN_THE_LANE, {1: 2.5})) == []
    assert len(here("three seconds", waiting(book, IN_THE_LANE, {1: 2.5}), seconds=2)) == 1


def test_whoever_is_left_in_the_lane_when_all_stand_is_told_to_stay_there() -> None:
    # From one inside player to the other: nobody can say from where on the ring the ball went in.
    inside = (
        "1:R(in the lane from T, left of the ball, because kicked out) 2:RW 3:LW 4:Rb 5:Le* "
        "| pass inside by 4 from Rb | count 1"
    )
    (told,) = here("three seconds", shown(written(CUT, OUT, FILL, HOLD, formation="three-out"), inside))
    assert told.cause == "The player who kicked out waits in the lane while the ball is inside."
    assert told.text == "1 is told to stay in the lane, while the ball is inside."


def test_who_dropped_the_ball_inside_comes_out_as_seen_from_where_the_drive_began() -> None:
    dropped = (
        "1:R(in the lane from LS, left of the ball, because kicked out) 2:RS 3:LW 4:RW 5:Rb* "
        "| pass inside by 1 from R | count 1"
    )
    seen = shown(written(CUT, OUT, FILL, HOLD, formation="four-out"), dropped)
    assert here("three seconds", seen) == []
    (out,) = (action for action in seen.decision.actions if action.moves)
    assert (out.player, out.kind, out.target) == (1, Kind.EXIT, Spot.LC)  # beside the left slot both spots are taken


def test_a_run_that_takes_the_squad_too_long_is_told_with_its_sentence() -> None:
    seen = shown(written(CUT, OUT, FILL, HOLD), "1:RW* 2:LW 3:RC 4:LC")

    def slow_s(action: Action) -> float:
        return 4.5 if action.kind is Kind.FILL else 1.0

    (first, *_) = here("runs in time", replace(seen, run_s=slow_s))
    assert first.cause == "C (Fill) asks for a run that takes too long, from the wing to the top."
    assert first.text == "2 needs 4.5 seconds from the left wing to the top."
    assert here("runs in time", replace(seen, run_s=slow_s), seconds=5) == []
    assert here("runs in time", seen) == []
