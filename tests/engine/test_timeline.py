"""A possession in time: who starts when, when the ball leaves, and what the defenders do meanwhile."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from backcut.court.courts import COURTS
from backcut.court.placing import place_spots
from backcut.court.spots import Spot
from backcut.engine.possession import Beat, Decision, Step
from backcut.engine.timeline import build
from backcut.errors import MotionError
from backcut.motion.pace import LEAD_IN_S, MEETS_S, READ_S, SIGNAL_S
from backcut.motion.squads import SQUADS
from backcut.motion.timeline import Run, Timeline, pose
from backcut.offence.action import Action, Kind, Route
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import Guard, Last, Player, Situation

SPOTS = place_spots(COURTS["fiba"])
SQUAD = SQUADS["boys-u16"]
REACTION_S = SQUAD.runner.reaction_s
FIVE_OUT = {1: Spot.T, 2: Spot.RW, 3: Spot.LW, 4: Spot.RC, 5: Spot.LC}
TICK_S = 0.04


def situation(at: dict[int, Spot], ball: int, **guards: Guard) -> Situation:
    return Situation(tuple(Player(n, s, guard=guards.get(f"x{n}", Guard.PLAIN)) for n, s in sorted(at.items())), ball)


def step(event: Event, before: Situation, after: Situation, *beats: tuple[Action, ...]) -> Step:
    """One step whose every beat is asked in the situation after the event, which is all that motion looks at."""
    asked = replace(before, ball=event.receiver or before.ball)
    return Step(event, "", before, tuple(Beat(asked, Decision(actions)) for actions in beats), after)


def top_to_wing(*, before: Situation | None = None) -> Step:
    """In five-out 1 passes from the top to the right wing and cuts; 3 and 5 move up; 1 comes out in the left corner."""
    return step(
        Event(EventKind.PASS, 1, 2),
        before or situation(FIVE_OUT, 1),
        situation({1: Spot.LC, 2: Spot.RW, 3: Spot.T, 4: Spot.RC, 5: Spot.LW}, 2),
        (Action(1, Kind.CUT, Spot.T, Spot.R, 0, route=Route.FRONT), Action(2, Kind.BALL, Spot.RW, Spot.RW, 1)),
        (Action(3, Kind.FILL, Spot.LW, Spot.T, 2),),
        (Action(5, Kind.FILL, Spot.LC, Spot.LW, 2),),
        (Action(1, Kind.EXIT, Spot.R, Spot.LC, 3),),
    )


def wing_to_corner(before: Situation) -> Step:
    return step(
        Event(EventKind.PASS, 2, 4),
        before,
        situation({1: Spot.LW, 2: Spot.LC, 3: Spot.RW, 4: Spot.RC, 5: Spot.T}, 4),
        (Action(2, Kind.CUT, Spot.RW, Spot.R, 0, route=Route.FRONT),),
        (Action(3, Kind.FILL, Spot.T, Spot.RW, 2),),
        (Action(5, Kind.FILL, Spot.LW, Spot.T, 2),),
        (Action(1, Kind.FILL, Spot.LC, Spot.LW, 2),),
        (Action(2, Kind.EXIT, Spot.R, Spot.LC, 3),),
    )


def played(*steps: Step, hold_s: float = 1.0, fill_timing: str = "looked", **more: object) -> Timeline:
    return build(steps, SPOTS, SQUAD, hold_s=hold_s, fill_timing=fill_timing, **more)  # type: ignore[arg-type]


def run_of(timeline: Timeline, player: int, kind: Kind, step_number: int = 0) -> Run:
    (run,) = [r for r in timeline.runs if (r.player, r.kind, r.step) == (player, kind, step_number)]
    return run


def where(timeline: Timeline, player: int, t_s: float) -> tuple[float, float]:
    return pose(timeline, t_s).players[player]


def test_everybody_ends_on_the_spot_the_rules_say() -> None:
    first = top_to_wing()
    timeline = played(first)
    for number, spot in first.after.spots().items():
        assert where(timeline, number, timeline.duration_s) == pytest.approx(SPOTS[spot], abs=0.01)


def test_the_passer_cuts_a_reaction_after_the_ball_has_left() -> None:
    timeline = played(top_to_wing())
    assert timeline.flights[0].start_s == pytest.approx(LEAD_IN_S)
    assert run_of(timeline, 1, Kind.CUT).start_s == pytest.approx(timeline.flights[0].start_s + REACTION_S)


def test_the_pass_takes_its_time_to_the_wing() -> None:
    flight = played(top_to_wing()).flights[0]
    length = float(np.hypot(*(np.array(SPOTS[Spot.T]) - SPOTS[Spot.RW])))
    assert flight.end_s - flight.start_s == pytest.approx(length / SQUAD.chest_m_s)
    assert (flight.from_player, flight.to_player, flight.kind) == (1, 2, "pass")


def test_at_once_the_first_filler_starts_a_reaction_after_the_cutter() -> None:
    timeline = played(top_to_wing(), fill_timing="at once")
    assert run_of(timeline, 3, Kind.FILL).start_s == pytest.approx(run_of(timeline, 1, Kind.CUT).start_s + REACTION_S)


def test_when_the_catcher_looks_first_the_filler_waits_until_the_cutter_is_in_the_lane() -> None:
    timeline = played(top_to_wing(), fill_timing="looked")
    x, y = where(timeline, 1, run_of(timeline, 3, Kind.FILL).start_s)
    assert abs(x) < 2.45  # FIBA Art. 2.4.3: lane 4.90 m wide, free-throw line 4.225 m from the ring's centre
    assert 1.2 < y < 4.225


def test_a_looked_fill_is_neither_early_nor_late() -> None:
    # From the cutter 6 ft off the spot to the filler within 4 ft of it, 1.5 to 3.0 s: common practice, no source.
    timeline = played(top_to_wing(), fill_timing="looked")
    spot = where(timeline, 1, 0.0)
    t = np.arange(0.0, timeline.duration_s, 0.02)
    gone = next(s for s in t if np.hypot(*np.subtract(where(timeline, 1, s), spot)) > 6 * 0.3048)
    there = next(s for s in t if np.hypot(*np.subtract(where(timeline, 3, s), spot)) < 4 * 0.3048)
    assert 1.5 <= there - gone <= 3.0


def test_after_a_count_of_two_the_filler_starts_two_seconds_after_the_catch() -> None:
    timeline = played(top_to_wing(), fill_timing="count of two")
    assert run_of(timeline, 3, Kind.FILL).start_s == pytest.approx(timeline.flights[0].end_s + 2.0)


@pytest.mark.parametrize("fill_timing", ["at once", "looked", "count of two"])
def test_the_chain_moves_one_after_another(fill_timing: str) -> None:
    timeline = played(top_to_wing(), fill_timing=fill_timing)
    first, second = run_of(timeline, 3, Kind.FILL), run_of(timeline, 5, Kind.FILL)
    assert second.start_s == pytest.approx(first.start_s + REACTION_S)


@pytest.mark.parametrize("fill_timing", ["at once", "looked", "count of two"])
def test_the_cutter_comes_out_when_he_has_been_at_the_rim_and_his_spot_is_left(fill_timing: str) -> None:
    timeline = played(top_to_wing(), fill_timing=fill_timing)
    out = run_of(timeline, 1, Kind.EXIT)
    assert out.start_s >= run_of(timeline, 1, Kind.CUT).end_s
    assert out.start_s >= run_of(timeline, 5, Kind.FILL).start_s
    assert where(timeline, 1, out.start_s) == pytest.approx(SPOTS[Spot.R], abs=0.01)


def test_the_ball_moves_on_after_the_hold_and_not_when_everybody_stands() -> None:
    first = top_to_wing()
    timeline = played(first, wing_to_corner(first.after))
    catch_s, release_s = timeline.flights[0].end_s, timeline.flights[1].start_s
    assert release_s == pytest.approx(catch_s + 1.0)
    assert run_of(timeline, 1, Kind.EXIT).end_s > release_s
    assert run_of(timeline, 5, Kind.FILL).end_s > release_s


def test_the_ball_waits_until_its_receiver_can_meet_it_at_his_spot() -> None:
    first = top_to_wing()
    back = step(Event(EventKind.PASS, 2, 3), first.after, replace(first.after, ball=3))
    timeline = played(first, back, hold_s=0.0)
    fill = run_of(timeline, 3, Kind.FILL)
    assert timeline.flights[1].end_s == pytest.approx(fill.end_s)
    assert timeline.flights[1].path_m[-1] == pytest.approx(SPOTS[Spot.T])


def test_a_filler_aims_anew_when_the_ball_moves_and_never_jumps() -> None:
    first = top_to_wing()
    timeline = played(first, wing_to_corner(first.after), fill_timing="at once", hold_s=0.5)
    earlier, later = run_of(timeline, 3, Kind.FILL, 0), run_of(timeline, 3, Kind.FILL, 1)
    assert earlier.end_s == later.start_s
    assert earlier.path_m[-1] == pytest.approx(later.path_m[0], abs=0.02)
    assert where(timeline, 3, timeline.duration_s) == pytest.approx(SPOTS[Spot.RW], abs=0.03)


def test_every_answer_that_moves_is_a_run_with_its_sentence() -> None:
    first = top_to_wing()
    second = wing_to_corner(first.after)
    timeline = played(first, second)
    asked = [
        (action.player, str(action.kind), action.habit, number, beat)
        for number, told in enumerate((first, second))
        for beat, answers in enumerate(told.beats)
        for action in answers.decision.actions
        if action.moves
    ]
    assert [(r.player, r.kind, r.habit, r.step, r.beat) for r in timeline.runs] == asked


def denied_wing(kind: Kind = Kind.BACK_CUT, route: Route = Route.BEHIND_DEFENDER) -> tuple[Step, Step]:
    before = situation(FIVE_OUT, 1)
    after = situation({**FIVE_OUT, 2: Spot.R}, 1)
    deny = Step(
        Event(EventKind.DENY, 2),
        "",
        before,
        (Beat(situation(FIVE_OUT, 1, x2=Guard.DENIES), Decision((Action(2, kind, Spot.RW, Spot.R, 0, route=route),))),),
        after,
    )
    find = step(Event(EventKind.TO_CUTTER, 1, 2), after, replace(after, ball=2))
    return deny, find


@pytest.mark.parametrize(("signal", "later_s"), [("none", 0.0), ("fist", SIGNAL_S), ("eyes", SIGNAL_S)])
def test_a_back_cut_starts_a_reaction_after_the_denial_is_seen_and_half_a_second_after_a_signal(
    signal: str, later_s: float
) -> None:
    timeline = played(denied_wing()[0], signal=signal)
    assert run_of(timeline, 2, Kind.BACK_CUT).start_s == pytest.approx(LEAD_IN_S + READ_S + REACTION_S + later_s)


def test_the_denier_is_in_the_lane_when_the_back_cut_starts_and_behind_when_it_arrives() -> None:
    timeline = played(*denied_wing())
    run = run_of(timeline, 2, Kind.BACK_CUT)
    x, y, _ = pose(timeline, run.start_s + 0.3).defenders[2]
    lane = np.array(SPOTS[Spot.RW]) - SPOTS[Spot.T]
    across = np.array([-lane[1], lane[0]]) / np.hypot(*lane)
    assert abs((np.array([x, y]) - SPOTS[Spot.T]) @ across) < 3 * 0.3048
    there = pose(timeline, run.start_s + 0.85 * (run.end_s - run.start_s))
    assert np.hypot(*there.players[2]) < np.hypot(*there.defenders[2][:2])


def test_the_pass_meets_the_back_cutter_at_the_rim_and_the_lay_up_goes_in() -> None:
    deny, find = denied_wing()
    end = step(Event(EventKind.LAY_UP, 2), find.after, find.after)
    timeline = played(deny, find, end)
    catch, shot = timeline.flights
    assert catch.end_s == pytest.approx(run_of(timeline, 2, Kind.BACK_CUT).end_s)
    assert catch.path_m[-1] == pytest.approx(SPOTS[Spot.R], abs=0.01)
    assert shot.to_player is None
    assert pose(timeline, shot.end_s).ball == pytest.approx((0.0, 0.0, 3.05), abs=0.02)
    assert pose(timeline, shot.start_s + 0.01).holder is None


def test_a_filler_is_denied_when_he_is_about_to_arrive() -> None:
    first = top_to_wing()
    denied = first.after.with_players(replace(first.after.player(3), guard=Guard.DENIES))
    cut = (Action(3, Kind.BACK_CUT, Spot.T, Spot.R, 0, route=Route.BEHIND_DEFENDER),)
    deny = Step(Event(EventKind.DENY, 3), "", first.after, (Beat(denied, Decision(cut)),), first.after)
    timeline = played(first, deny)
    fill, back = run_of(timeline, 3, Kind.FILL), run_of(timeline, 3, Kind.BACK_CUT, 1)
    assert back.start_s == pytest.approx(fill.end_s - MEETS_S + READ_S + REACTION_S)


def test_a_defender_who_jumped_to_the_ball_is_cut_behind() -> None:
    before = situation(FIVE_OUT, 1)
    caught = replace(before, ball=2, last=Last(EventKind.PASS, 1, Spot.T))
    passed = Step(Event(EventKind.PASS, 1, 2), "", before, (), caught)
    jumped = caught.with_players(replace(caught.player(1), guard=Guard.JUMPED))
    cut = (Action(1, Kind.CUT, Spot.T, Spot.R, 0, route=Route.REAR),)
    jump = Step(Event(EventKind.JUMP, 1), "", caught, (Beat(jumped, Decision(cut)),), jumped)
    timeline = played(passed, jump)
    run = run_of(timeline, 1, Kind.CUT, 1)
    assert run.start_s < timeline.flights[0].end_s, "he reads the jump while the ball is in the air"
    assert run.path_m[:, 0].min() < -0.3


def dribble_at(answer: Action, after: Situation, *more: tuple[Action, ...]) -> Step:
    first = (Action(1, Kind.DRIBBLE, Spot.T, Spot.RW), answer)
    return step(Event(EventKind.DRIBBLE, 1, spot=Spot.RW), situation(FIVE_OUT, 1), after, first, *more)


def test_the_ball_travels_with_the_dribbler_along_the_arc() -> None:
    after = situation({**FIVE_OUT, 1: Spot.RW, 2: Spot.LC}, 1)
    cut = Action(2, Kind.BACK_CUT, Spot.RW, Spot.R, 0, route=Route.BEHIND_DEFENDER)
    timeline = played(dribble_at(cut, after))
    run = run_of(timeline, 1, Kind.DRIBBLE)
    assert np.hypot(*run.path_m.T).min() > 6.75  # FIBA Art. 2: the arc
    for t_s in np.linspace(run.start_s, run.end_s, 9):
        now = pose(timeline, float(t_s))
        assert now.holder == 1
        assert now.ball[:2] == pytest.approx(now.players[1], abs=0.02)
    assert [held.dribbled for held in timeline.held] == [False, True, False]


def test_a_hand_off_changes_hands_where_the_two_meet() -> None:
    after = situation({**FIVE_OUT, 1: Spot.RW, 2: Spot.T}, 2)
    taken = Action(2, Kind.HAND_OFF, Spot.RW, Spot.T, 0)
    timeline = played(dribble_at(taken, after, (Action(1, Kind.CUT, Spot.RW, Spot.R, 1, route=Route.FRONT),)))
    (flight,) = timeline.flights
    now = pose(timeline, flight.start_s)
    assert (flight.from_player, flight.to_player) == (1, 2)
    assert np.hypot(*np.subtract(now.players[1], now.players[2])) < 1.1
    assert pose(timeline, timeline.duration_s).holder == 2
    assert run_of(timeline, 1, Kind.CUT).start_s >= flight.end_s


def test_a_jammed_cutter_plants_and_goes_behind() -> None:
    before = situation(FIVE_OUT, 1)
    cut = (Action(1, Kind.CUT, Spot.T, Spot.R, 0, route=Route.FRONT),)
    after = situation({**FIVE_OUT, 1: Spot.R}, 2)
    again = (Action(1, Kind.CUT, Spot.R, Spot.R, 1, route=Route.REAR),)
    timeline = played(
        step(Event(EventKind.PASS, 1, 2), before, after, cut), step(Event(EventKind.JAM, 1), after, after, again)
    )
    first, second = run_of(timeline, 1, Kind.CUT, 0), run_of(timeline, 1, Kind.CUT, 1)
    stopped = where(timeline, 1, first.end_s)
    assert first.end_s == second.start_s
    assert 2.5 < np.hypot(*stopped) < 6.0
    assert where(timeline, 1, second.end_s) == pytest.approx(SPOTS[Spot.R], abs=0.03)


def test_forgetting_takes_a_moment_and_moves_nobody() -> None:
    before = situation(FIVE_OUT, 1)
    timeline = played(step(Event(EventKind.FORGET, 3), before, before))
    assert timeline.runs == ()
    assert timeline.duration_s > LEAD_IN_S


def test_two_in_the_lane_stand_beside_each_other() -> None:
    first = top_to_wing()
    early = replace(first, beats=first.beats[:1], after=situation({**FIVE_OUT, 1: Spot.R}, 2))
    second = step(
        Event(EventKind.PASS, 2, 4, early=True),
        early.after,
        situation({**FIVE_OUT, 1: Spot.R, 2: Spot.R}, 4),
        (Action(2, Kind.CUT, Spot.RW, Spot.R, 0, route=Route.FRONT),),
    )
    timeline = played(early, second)
    apart = np.subtract(where(timeline, 1, timeline.duration_s), where(timeline, 2, timeline.duration_s))
    assert np.hypot(*apart) >= 0.85


def test_somebody_holds_the_ball_whenever_it_is_not_in_the_air() -> None:
    first = top_to_wing()
    timeline = played(first, wing_to_corner(first.after))
    for t_s in np.arange(0.0, timeline.duration_s, TICK_S):
        flying = any(f.start_s < t_s < f.end_s for f in timeline.flights)
        now = pose(timeline, float(t_s))
        assert (now.holder is None) == flying
        if now.holder is not None:
            assert now.ball[:2] == pytest.approx(now.players[now.holder], abs=0.02)


def test_the_same_steps_give_the_same_timeline() -> None:
    first, second = played(top_to_wing()), played(top_to_wing())
    assert first.duration_s == second.duration_s
    for number in FIVE_OUT:
        assert (first.players[number].place_m == second.players[number].place_m).all()
        assert (first.defenders[number].place_m == second.defenders[number].place_m).all()


def test_the_mirrored_possession_is_the_mirror_of_the_possession() -> None:
    def flip(told: Step) -> Step:
        beats = tuple(
            Beat(
                beat.before.mirrored(),
                Decision(
                    tuple(replace(a, origin=a.origin.mirror, target=a.target.mirror) for a in beat.decision.actions)
                ),
            )
            for beat in told.beats
        )
        return replace(told, before=told.before.mirrored(), after=told.after.mirrored(), beats=beats)

    right, left = played(top_to_wing()), played(flip(top_to_wing()))
    for t_s in np.linspace(0.0, right.duration_s, 40):
        a, b = pose(right, float(t_s)), pose(left, float(t_s))
        for number in FIVE_OUT:
            assert a.players[number] == pytest.approx((-b.players[number][0], b.players[number][1]), abs=0.03)


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"hold_s": -1.0}, "zero or more"),
        ({"fill_timing": "whenever"}, "count of two"),
    ],
)
def test_a_timing_that_cannot_be_is_refused(more: dict[str, object], says: str) -> None:
    with pytest.raises(MotionError, match=says):
        played(top_to_wing(), **more)  # type: ignore[arg-type]


def test_a_possession_without_steps_or_places_is_refused() -> None:
    with pytest.raises(MotionError, match="one step or more"):
        played()
    with pytest.raises(MotionError, match="left corner"):
        build([top_to_wing()], {s: p for s, p in SPOTS.items() if s is not Spot.LC}, SQUAD, hold_s=1.0)
