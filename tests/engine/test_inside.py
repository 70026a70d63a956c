"""Inside players: they keep clear, and the perimeter plays as if they were not there. Common practice, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from backcut.court.spots import INSIDE
from backcut.engine.play import one_step
from backcut.engine.possession import Step
from backcut.offence.action import Kind, Route
from backcut.offence.book import Book
from backcut.offence.situation import Doing, Situation

from .everywhere import every_step, pictures
from .floor import FOUR, answer, book, played, stands, troubles

ONE = [book("four-out", inside=value) for value in ("opposite", "follow", "stay", "high")]
TWO = [book("three-out", two_inside=value) for value in ("opposite levels", "opposite sides")]
PRESETS = [book("four-out-school-team"), book("two-bigs")]
EACH_BOOK = pytest.mark.parametrize(
    "this", [*ONE, *TWO, *PRESETS], ids=lambda b: f"{b.title}: {b.values['inside']}, {b.values['two inside']}"
)


@EACH_BOOK
def test_an_inside_player_never_stands_on_the_rim_and_never_leaves_the_inside(this: Book) -> None:
    inside = {player.number for player in this.start().players if player.at not in this.formation.ring}
    for step in every_step(this):
        for beat in step.beats:
            for number in inside:
                assert beat.before.player(number).at in INSIDE
                assert beat.before.player(number).doing is Doing.STANDING


@EACH_BOOK
def test_nobody_clashes_over_an_inside_spot(this: Book) -> None:
    for step in every_step(this):
        assert troubles(step) == set(), (step.before, step.text)


def perimeter(step: Step, numbers: set[int]) -> list[list[tuple[int, Kind, str]]]:
    return [
        [(a.player, Kind.CUT if a.kind in (Kind.SCREEN, Kind.SHALLOW_CUT) else a.kind, str(a.target)) for a in acts]
        for beat in step.beats
        if (acts := [a for a in beat.decision.actions if a.player in numbers and a.moves])
    ]


@pytest.mark.parametrize("this", [*ONE, *TWO], ids=lambda b: f"{b.values['inside']}, {b.values['two inside']}")
def test_the_perimeter_plays_as_if_nobody_were_inside(this: Book) -> None:
    """Only the side of the rim a cut goes to may differ: where somebody holds the block, the cutter goes round."""
    numbers = {player.number for player in this.start().players if player.at in this.formation.ring}

    def alone(situation: Situation) -> Situation:
        return replace(situation, players=tuple(p for p in situation.players if p.number in numbers))

    for step in every_step(this):
        without = one_step(this, alone(step.before), step.event)
        assert perimeter(step, numbers) == perimeter(without, numbers), (step.before, step.text)


@pytest.mark.parametrize("ball", ["LS>LW", "LS>RS", "LS>RS, RS>RW"])
def test_the_inside_player_keeps_opposite_the_ball(ball: str) -> None:
    step = played(book("four-out"), ball, FOUR)[-1]
    assert step.after.player(5).at.side == -step.after.holder.at.side


def test_the_inside_player_follows_the_ball() -> None:
    step = played(book("four-out", inside="follow"), "LS>RS, RS>LS", FOUR)[-1]
    assert stands(step)[5] == "Lb"


def test_the_inside_player_stays_high_on_the_balls_side() -> None:
    step = played(book("four-out", inside="high"), "LS>RS", FOUR)[-1]
    assert stands(step)[5] == "Re"


@pytest.mark.parametrize(
    ("start", "move", "clears"),
    [
        ("1:LS 2:RS 3:RC* 4:RW 5:Rb", "RC>RW", "Rsc"),
        ("1:LS 2:RS 3:RC 4:RW* 5:Rm", "RW>RS", "Rsc"),
        ("1:LC* 2:LW 3:LS 4:RS 5:Lb", "LC>LW", "Lsc"),
    ],
)
def test_an_inside_player_in_the_cutters_path_clears_it(start: str, move: str, clears: str) -> None:
    [step] = played(book("four-out", inside="stay"), move, start)
    told = [answer(step, 5, beat) for beat in range(len(step.beats))]
    assert clears in {action.target for action in told if action.kind is Kind.CLEAR}


def test_at_the_high_post_he_clears_the_cut_from_the_top_away_from_the_ball() -> None:
    [step] = played(book("three-out"), "T>RW", "1:T* 2:RW 3:LW 4:Rb 5:N")
    assert Kind.CLEAR in {answer(step, 5, beat).kind for beat in range(len(step.beats))}
    assert stands(step)[5] == "Le"


def test_two_inside_are_never_on_one_level_and_never_on_one_side() -> None:
    for this in (TWO[0], PRESETS[1]):
        for situation in pictures(this):
            four, five = situation.player(4).at, situation.player(5).at
            low = {four.value[1:], five.value[1:]} - {"e"}
            # The low one may still be a step aside, in the short corner, for a cutter who has just gone by.
            assert low in ({"b"}, {"sc"})
            assert four.side == -five.side


def test_with_two_inside_the_low_one_is_on_the_balls_side() -> None:
    for situation in pictures(TWO[0]):
        if side := situation.holder.at.side:
            low = next(player for player in situation.players if player.at.value.endswith("b"))
            assert low.at.side == side


def test_two_who_play_with_the_back_to_the_basket_hold_a_block_each() -> None:
    step = played(book("three-out", two_inside="opposite sides"), "T>LW")[-1]
    assert (stands(step)[4], stands(step)[5]) == ("Rb", "Lb")


@pytest.mark.parametrize(
    ("choice", "kind", "target", "route"),
    [
        ("other side", Kind.CUT, "R", Route.FAR_SIDE),
        ("shallow", Kind.SHALLOW_CUT, "N", Route.FRONT),
        ("screen", Kind.SCREEN, "R", Route.FAR_SIDE),
    ],
)
def test_where_the_block_on_the_balls_side_is_held_the_book_decides_the_cut(
    choice: str, kind: Kind, target: str, route: Route
) -> None:
    cut = answer(played(book("four-out", occupied_block=choice), "LS>RS", FOUR)[0], 1)
    assert (cut.kind, cut.target, cut.route) == (kind, target, route)


def test_where_the_block_is_free_the_cut_is_the_usual_one() -> None:
    cut = answer(played(book("four-out", occupied_block="shallow"), "LS>LW", FOUR)[0], 1)
    assert (cut.kind, cut.target) == (Kind.CUT, "R")


def test_the_ball_goes_inside_and_out_again() -> None:
    steps = played(book("three-out"), "RW>4, 4>T", "1:T 2:RW* 3:LW 4:Rb 5:Le")
    assert [step.event.kind for step in steps] == ["pass inside", "kick out"]
    assert [troubles(step) for step in steps] == [set(), set()]


def test_with_the_ball_inside_nobody_holds_the_rim() -> None:
    # The rim is run to, never held.
    step = played(book("four-out"), "LS>RS, early RS>5", FOUR)[-1]
    assert step.after.player(1).at != "R"


def test_a_screen_under_the_rim_does_not_clash_with_a_cutter_there() -> None:
    steps = played(book("four-out", occupied_block="screen", inside="stay"), "deny 3, early LS>RS", FOUR)
    assert [troubles(step) for step in steps] == [set(), set()]
