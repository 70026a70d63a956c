"""What a proof in time finds, and that what it shows can be played."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pytest
from tests.prove.books import SHIPPED, named
from tests.prove.judged import CUT, FILL, HOLD, OUT, written

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.engine.gym import gym
from backcut.engine.gym import timed as in_time
from backcut.engine.play import play
from backcut.motion.pace import LOOKED_SHARE
from backcut.offence.action import Action, Kind, Route
from backcut.offence.book import Book
from backcut.offence.moves import moves_from_text
from backcut.offence.situation import Doing, Situation
from backcut.page.finding import Asked, Heading, Item
from backcut.page.findings import findings_page
from backcut.picture.story import show
from backcut.prove.depth import Depth
from backcut.prove.fold import fold, plain
from backcut.prove.properties.holes_are_filled import Beside, beside
from backcut.prove.property import Numbers, Property, properties
from backcut.prove.replay import replay
from backcut.prove.ticks import TickWalk, walk_in_ticks
from backcut.prove.timed import TimedBroken, TimedResult, judge_timed
from backcut.prove.timing import LOOKS, timing
from backcut.prove.walk import walk

TWO = "When the next spot toward the ball is empty, I fill it after a count of two."
LANE = "When the next spot toward the ball is empty, I fill it through the lane at once."
LINE = "When my cut is over, I come out to the end of the line."
WAITS = "The cutter waits in the lane until the others have moved up."


def _wanted(name: str, **numbers: float) -> list[tuple[Property, Numbers]]:
    prop = properties()[name]
    return [(prop, {**prop.numbers, **numbers})]


def _judged(book: Book, name: str, depth: Depth = Depth.OVERLAPPED, **numbers: float) -> list[TimedBroken]:
    found = judge_timed(book, depth, _wanted(name, **numbers))
    assert found is not None
    assert not found.stopped
    assert found.covered.waiting == 0
    return found.broken


def _causes(broken: list[TimedBroken]) -> set[str]:
    return {cause.breach.cause for cause in broken}


# What a coach is told.


def test_a_slow_squad_that_fills_after_a_count_of_two_keeps_the_cutter_waiting() -> None:
    slow = written(CUT, OUT, TWO, HOLD, lines=("Squad: girls-u13",))
    found = next(cause for cause in _judged(slow, "three seconds") if cause.breach.cause == WAITS)
    assert found.possession.seen.player(found.breach.players[0]).doing is Doing.LANE
    assert "3.25 seconds" in found.breach.text


def test_a_slow_squad_that_fills_at_once_keeps_nobody_waiting() -> None:
    slow = written(CUT, OUT, FILL, HOLD, lines=("Squad: girls-u13",))
    assert not _judged(slow, "three seconds")


def test_under_twelves_on_a_long_court_cannot_make_a_run_through_the_lane_that_men_make() -> None:
    children, men = (
        written(CUT, OUT, LANE, HOLD, formation="four-out", lines=(f"Squad: {squad}", "Court: nba"))
        for squad in ("boys-u12", "men")
    )
    late = _judged(children, "runs in time", Depth.SETTLED, seconds=3.5)
    assert "C (Fill) asks for a run that takes too long, from the slot to the wing." in _causes(late)
    assert not _judged(men, "runs in time", Depth.SETTLED, seconds=3.5)
    # The same children on a court for children.
    mini = written(CUT, OUT, LANE, HOLD, formation="four-out", lines=("Squad: boys-u12", "Court: mini"))
    assert not _judged(mini, "runs in time", Depth.SETTLED, seconds=3.5)


def test_a_ball_that_moves_twice_leaves_the_one_filler_a_long_way() -> None:
    book = named("school-team")
    assert not _judged(book, "holes are filled", Depth.SETTLED)
    found = _judged(book, "holes are filled")
    assert _causes(found) == {"The hole beside the ball is filled late, because nobody is right behind it."}
    assert found[0].far == 2
    assert found[0].possession.moves == "1>3, 3>5 (after 1.75 s)"


def test_a_fill_at_once_comes_within_three_seconds_and_a_fill_after_the_look_does_not() -> None:
    once, looked = named("first-month"), named("school-team")
    assert not _judged(once, "holes are filled", Depth.SETTLED, seconds=3.0)
    assert _judged(looked, "holes are filled", Depth.SETTLED, seconds=3.0)


def test_a_hole_that_nobody_fills_stays() -> None:
    book = written(CUT, LINE, HOLD, formation="four-out")
    found = _judged(book, "holes are filled", Depth.SETTLED)
    stays = next(cause for cause in found if cause.breach.cause.startswith("The hole beside the ball stays"))
    assert stays.breach.text.startswith("Nobody fills the ")
    with_fill = _judged(written(CUT, LINE, FILL, HOLD, formation="four-out"), "holes are filled", Depth.SETTLED)
    assert not any("stays" in cause for cause in _causes(with_fill))


def test_the_time_of_a_hole_counts_from_the_catch() -> None:
    """One pass from the top to the wing, put in time by the engine: from the catch until the filler stands there."""
    book = named("school-team")
    steps = play(book, book.start(), moves_from_text("1>3"))
    line = in_time(book, steps, gym(book))
    fill = next(run for run in line.runs if run.kind == Kind.FILL)
    took_s = fill.end_s - line.flights[0].end_s
    assert not _judged(book, "holes are filled", Depth.SETTLED, seconds=took_s + 0.75)
    assert _judged(book, "holes are filled", Depth.SETTLED, seconds=took_s - 0.25)


@pytest.mark.parametrize("name", SHIPPED)
def test_a_shipped_book_keeps_its_times_while_the_ball_waits(name: str) -> None:
    found = judge_timed(named(name), Depth.SETTLED, [(prop, prop.numbers) for prop in properties().values()])
    assert found is not None
    assert not found.broken


@pytest.mark.parametrize("name", SHIPPED)
def test_more_time_never_finds_more(name: str) -> None:
    for prop in ("runs in time", "holes are filled"):
        counts = [
            sum(cause.situations for cause in _judged(named(name), prop, Depth.SETTLED, seconds=seconds))
            for seconds in (1.0, 2.0, 3.0, 5.0)
        ]
        assert counts == sorted(counts, reverse=True)
        assert counts[0] > counts[-1]


def test_only_two_depths_are_put_in_time() -> None:
    book, wanted = named("first-month"), _wanted("three seconds")
    told = {depth for depth in Depth if judge_timed(book, depth, wanted) is not None}
    assert told == {Depth.SETTLED, Depth.OVERLAPPED}
    assert judge_timed(book, Depth.SETTLED, _wanted("one to a spot")) is None


# The possession that shows it.


@cache
def _shown() -> list[tuple[Book, TimedBroken]]:
    shown = []
    for name in SHIPPED:
        book = named(name)
        names = ("three seconds", "runs in time", "holes are filled")
        wanted = [pair for prop in names for pair in _wanted(prop, seconds=2.0)]
        for depth in (Depth.SETTLED, Depth.OVERLAPPED):
            found = judge_timed(book, depth, wanted)
            assert found is not None
            shown += [(book, cause) for cause in found.broken]
    return shown


def test_every_cause_is_shown_by_a_possession_in_which_it_is_seen() -> None:
    shown = _shown()
    assert len(shown) > 20
    for book, cause in shown:
        possession = cause.possession
        assert cause.breach.text
        if not possession.steps:
            continue
        last = possession.steps[-1]
        assert last.beats[possession.beat].before == possession.seen
        assert possession.steps[0].before == possession.start
        assert all(one.after == other.before for one, other in pairwise(possession.steps))
        assert possession.steps[0].wait_s is None
        assert all(step.wait_s is None or step.wait_s > 0 for step in possession.steps)
        # Merged ticks: in each beat but the first, the last and the one seen somebody is told to go.
        for step in possession.steps:
            for place, beat in enumerate(step.beats[1:-1], 1):
                assert beat.decision.moves or (step is last and place == possession.beat)
        assert not decide(book, last.after).moves
        assert possession.timed == any("after" in step.text for step in possession.steps)


def test_a_ball_that_waits_is_told_as_a_move_list_that_plays_the_same() -> None:
    played = 0
    for book, cause in _shown():
        possession = cause.possession
        if possession.timed or not possession.steps:
            continue
        steps = play(book, possession.start, moves_from_text(possession.moves))
        assert [step.after.spots() for step in steps] == [step.after.spots() for step in possession.steps]
        played += 1
    assert played > 10


def test_what_was_found_can_be_seen_on_the_page() -> None:
    book = named("school-team")
    found = _judged(book, "three seconds") + _judged(book, "holes are filled")
    items = [
        Item(
            title=cause.breach.cause,
            property=cause.prop.name,
            lines=(),
            count="",
            moves=cause.possession.moves,
            steps=cause.possession.steps,
            book=book,
            at=(len(cause.possession.steps) - 1, cause.possession.beat),
            here=cause.breach.text,
            players=cause.breach.players,
            spot=cause.breach.spot,
            start=cause.possession.start,
        )
        for cause in found
    ]
    page = findings_page(Heading(book, (), tuple(Asked(item.property, "") for item in items)), items)
    assert page.count('<template id="possession-') == len(items)
    for cause in found:
        told = show(book, cause.possession.steps)
        assert len(told.moments) >= len(cause.possession.steps)
        assert not any(answer.kind == Kind.NO_ANSWER for moment in told.moments for answer in moment.answers)


@pytest.mark.parametrize("name", ["school-team", "two-bigs"])
def test_a_possession_comes_to_the_timed_situation_it_shows(name: str) -> None:
    book = named(name)
    made = walk_in_ticks(book)
    for index in range(0, len(made), 97):
        possession, turn = replay(made, index)
        situation = made.pictures[made.timed(index)[0]]
        assert plain(book, possession.seen) == turn.situation(situation)
        assert fold(plain(book, possession.seen), made.table.role, made.table.mirror)[0] == situation


# A cut is finished first.


def _told_early(made: TickWalk) -> list[int]:
    """The timed situations in which the rules send out somebody who is not at the rim yet."""
    found = []
    for index in range(len(made)):
        picture, clocks, *_ = made.timed(index)
        players = made.pictures[picture].players
        told: dict[int, Action] = {action.player: action for action in made.table.decisions[picture].actions}
        if any(
            player.doing is Doing.LANE and clock > made.table.timing.lane and told[player.number].moves
            for player, clock in zip(players, clocks, strict=True)
        ):
            found.append(index)
    return found


def test_a_cutter_is_at_the_rim_before_he_comes_out() -> None:
    book = named("school-team")
    made = walk_in_ticks(book, time=timing(book, gym(book), tick_s=0.25))
    early = _told_early(made)
    assert early
    for index in early[::20]:
        possession, _ = replay(made, index)
        beats = possession.steps[-1].beats[possession.beat :]
        late = {p.number for p in possession.seen.players if p.doing is Doing.LANE and p.number != possession.seen.ball}
        told = {action.player for action in beats[0].decision.actions if action.moves}
        raw = {action.player for action in decide(book, possession.seen).actions if action.moves}
        assert (raw - told) & late


@pytest.mark.parametrize("tick_s", [0.5, 0.25])
def test_the_filler_goes_when_the_catcher_has_looked_not_when_the_cutter_is_at_the_rim(tick_s: float) -> None:
    book = named("school-team")
    here = gym(book)
    made = walk_in_ticks(book, time=timing(book, here, tick_s=tick_s))
    steps = play(book, book.start(), moves_from_text("1>3"))
    line = in_time(book, steps, here)
    cut, fill = (next(run for run in line.runs if run.kind == kind) for kind in (Kind.CUT, Kind.FILL))
    released_s = line.flights[0].start_s
    looked_s = cut.start_s + LOOKED_SHARE * (cut.end_s - cut.start_s) - released_s
    assert fill.start_s - released_s == pytest.approx(looked_s)
    # The same pass in ticks: from the release until the fill is told.
    start = next(i for i, begun in made.begun.items() if any(s.situation == book.start() for s, _ in begun))
    passes = [i for i in np.flatnonzero(made.parent == start).tolist() if made.move[i] >= 0]
    after = next(i for i in passes if made.table.events[int(made.move[i])].kind == "pass")
    way = [after, *(edge.target for edge in made.wait_from(after, 40))]
    told = next(
        i
        for i, at in enumerate(way)
        if any(action.kind is Kind.FILL for action in made.table.decisions[made.timed(at)[0]].actions)
    )
    arrives = next(
        i
        for i, at in enumerate(way)
        if any(
            player.doing is Doing.LANE and clock <= made.table.timing.lane
            for player, clock in zip(made.pictures[made.timed(at)[0]].players, made.timed(at)[1], strict=True)
        )
    )
    assert abs(told * tick_s - looked_s) <= tick_s
    assert told < arrives
    assert abs(arrives * tick_s - (cut.end_s - released_s)) <= 0.5


def test_the_slowest_cut_of_any_squad_fits_its_clock() -> None:
    book = named("four-out-school-team")
    for squad in ("girls-u13", "girls-u14", "boys-u12"):
        where = gym(book, "nba", squad)
        time, start = timing(book, where, tick_s=0.25), book.start()
        for origin in where.placing.ring:
            for ball in where.placing.ring:
                situation = start.with_players(replace(start.holder, at=ball))
                action = Action(2, Kind.CUT, origin, Spot.R, route=Route.FRONT)
                clock = time.cut(situation, action)
                looks, rest = divmod(clock, LOOKS)
                assert looks + rest + 2 == time.run(situation, action)


# The ball that waits.


@pytest.mark.parametrize("name", SHIPPED)
def test_a_ball_that_waits_comes_to_the_settled_situations_of_the_beats(name: str) -> None:
    book = named(name)
    made = walk_in_ticks(book, until_all_stand=True)
    still = {made.pictures[made.timed(i)[0]] for i in range(len(made)) if made.stands(i)}
    beats = walk(book, Depth.SETTLED)
    # Without dribbles and shots, which are not put in time; the count is read by no sentence any more.
    passes = walk(
        book,
        may=lambda situation, decision, rest: made.table.may(situation) if rest else iter(()),
    )
    settled = {s for s, rest in zip(passes.situations, passes.settled, strict=True) if rest and s.ended is None}
    assert {_no_count(s) for s in still} == {_no_count(s) for s in settled}
    assert {_no_count(s) for s in settled} <= {_no_count(s) for s in beats.situations}


def _no_count(situation: Situation) -> Situation:
    return replace(situation, count=0)


def test_a_ball_that_waits_passes_in_fewer_timed_situations() -> None:
    book = named("school-team")
    assert len(walk_in_ticks(book, until_all_stand=True)) < len(walk_in_ticks(book))


def test_a_spot_beside_the_ball_is_filled_when_somebody_stands_there() -> None:
    book = named("school-team")
    made = walk_in_ticks(book)
    told = {side for situation in made.pictures for side in beside(book, situation)}
    assert told == set(Beside)
    for situation in made.pictures:
        for here, there in zip(beside(book, situation), reversed(beside(book, situation.mirrored())), strict=True):
            assert here is there


# Stopped.


def test_a_judge_who_is_stopped_says_how_much_was_waiting() -> None:
    book, wanted = named("four-out-school-team"), _wanted("holes are filled")
    full = judge_timed(book, Depth.OVERLAPPED, wanted, most=500)
    assert full is not None
    assert full.covered.waiting > 0
    assert not full.stopped

    def stop(found: int) -> None:
        if found > 500:
            raise KeyboardInterrupt

    stopped: TimedResult | None = judge_timed(book, Depth.OVERLAPPED, wanted, progress=stop)
    assert stopped is not None
    assert stopped.stopped
    assert stopped.covered.waiting > 0


def test_left_and_right_told_apart_find_the_same_causes_and_as_many_situations() -> None:
    book, wanted = named("school-team"), _wanted("holes are filled") + _wanted("three seconds")
    folded, apart = (judge_timed(book, Depth.OVERLAPPED, wanted, sided=sided) for sided in (False, True))
    assert folded is not None
    assert apart is not None
    count = {cause.breach.cause: cause.situations for cause in folded.broken}
    assert count
    assert {cause.breach.cause: cause.situations for cause in apart.broken} == count
