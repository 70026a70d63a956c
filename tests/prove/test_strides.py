"""How long runs and passes take in a gym agrees with the possession in time, and with the mirror."""

from __future__ import annotations

import pytest
from tests.prove.books import SHIPPED, named

from backcut.court.spots import Spot
from backcut.engine.gym import gym, timed
from backcut.engine.play import play
from backcut.offence.action import Kind, Route
from backcut.offence.event import EventKind
from backcut.offence.moves import moves_from_text
from backcut.prove.strides import Strides
from backcut.prove.timing import in_ticks


@pytest.mark.parametrize(("name", "moves"), [("school-team", "T>RW"), ("two-bigs", "T>RW"), ("four-out", "LS>RS")])
def test_the_cut_and_the_pass_take_as_long_as_in_the_possession_in_time(name: str, moves: str) -> None:
    book = named(name)
    floor, steps = gym(book), play(book, book.start(), moves_from_text(moves))
    shown, strides = timed(book, steps, floor), Strides(floor)
    cut = next(run for run in shown.runs if run.kind == Kind.CUT)
    told = next(action for action in steps[0].beats[0].decision.actions if action.kind is Kind.CUT)
    passer, receiver = steps[0].before.holder.at, steps[0].beats[0].before.holder.at
    run_s = strides.run_s(told.kind, told.origin, told.target, told.route, receiver)
    assert run_s - floor.squad.runner.reaction_s == pytest.approx(cut.end_s - cut.start_s, abs=0.01)
    flight = shown.flights[0]
    assert strides.pass_s(EventKind.PASS, passer, receiver) == pytest.approx(flight.end_s - flight.start_s, abs=0.01)


@pytest.mark.parametrize("name", SHIPPED)
def test_a_run_and_its_mirror_image_take_the_same_time(name: str) -> None:
    book = named(name)
    strides = Strides(gym(book))
    for origin in book.formation.ring:
        for ball in book.formation.ring:
            for route in (Route.FRONT, Route.REAR, Route.FAR_SIDE, Route.BEHIND_DEFENDER, Route.BASELINE):
                here = strides.run_s(Kind.CUT, origin, Spot.R, route, ball)
                assert here == strides.run_s(Kind.CUT, origin.mirror, Spot.R, route, ball.mirror)


def test_a_longer_way_takes_longer_and_a_cut_is_run_harder_than_a_fill() -> None:
    strides = Strides(gym(named("school-team")))
    assert strides.run_s(Kind.FILL, Spot.LC, Spot.T) > strides.run_s(Kind.FILL, Spot.LC, Spot.LW)
    assert strides.run_s(Kind.CUT, Spot.T, Spot.R) < strides.run_s(Kind.FILL, Spot.T, Spot.R)


def test_who_runs_on_through_a_spot_is_sooner_there_than_who_stops_on_it() -> None:
    strides = Strides(gym(named("school-team")))
    on_s = strides.on_s(Kind.FILL, Spot.LW, Spot.T)
    assert 0 < on_s < strides.run_s(Kind.FILL, Spot.LW, Spot.T)
    assert strides.longest_s(Kind.FILL, Spot.T) >= strides.run_s(Kind.FILL, Spot.LC, Spot.T)


def test_who_is_there_already_only_looks_up() -> None:
    floor = gym(named("school-team"))
    assert Strides(floor).run_s(Kind.FILL, Spot.T, Spot.T) == floor.squad.runner.reaction_s


def test_who_threw_the_ball_in_from_the_corner_is_soon_on_the_floor() -> None:
    strides = Strides(gym(named("school-team")))
    assert strides.throw_in_s(Spot.RC) == pytest.approx(strides.throw_in_s(Spot.LC), abs=1e-9)
    assert strides.throw_in_s(Spot.RC) < strides.run_s(Kind.EXIT, Spot.R, Spot.RC)


def test_a_second_and_a_bit_is_three_ticks_and_nothing_is_one() -> None:
    assert [in_ticks(seconds, 0.5) for seconds in (0.0, 0.5, 1.0, 1.01)] == [1, 1, 2, 3]
