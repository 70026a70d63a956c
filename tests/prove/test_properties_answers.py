"""One to a spot, an answer for everybody, an order between sentences."""

from __future__ import annotations

from dataclasses import replace

from tests.engine.floor import opened
from tests.prove.judged import CUT, FILL, HOLD, causes, here, shown, written

from backcut.court.spots import Spot
from backcut.engine.possession import Decision
from backcut.offence.action import Action, Claim, Kind
from backcut.prove.depth import Depth

OPPOSITE_CORNER = written(CUT, "When my cut is over, I come out to the corner opposite the ball.", FILL, HOLD)
FIVE = "1:T* 2:RW 3:LW 4:RC 5:LC"


def test_the_corner_opposite_the_ball_is_taken_after_a_pass_out_of_the_corner() -> None:
    assert causes("one to a spot", OPPOSITE_CORNER) == {"B (Out) sends a player in the lane to a spot that is taken."}


def test_with_the_first_open_spot_nobody_is_sent_where_somebody_stands() -> None:
    assert causes("one to a spot", opened("school-team"), Depth.SETTLED, Depth.DENIED) == set()


def test_a_clash_names_the_players_and_the_spot_and_what_follows_from_it_is_not_told_again() -> None:
    book = written("When the ball is dribbled at me, I slide on.", CUT, FILL, HOLD)
    seen = shown(book, "1:T* 2:RW 3:LW 4:RC 5:LC(forgets) | dribble by 1 from T to LW just now")
    assert {trouble.player for trouble in seen.decision.troubles} == {1, 3}
    (told,) = here("one to a spot", seen)
    assert told.text == "3 is sent to the left corner, where 5 already is."
    assert (told.players, told.habits, told.spot) == ((3,), (0,), Spot.LC)


def test_two_sentences_that_send_two_to_one_spot_are_both_named() -> None:
    # 1 is to take the top back, and 2, left in the lane after a kick-out, comes out to it at the same time.
    jammed = (
        "1:R(cutting from T, right of the ball, in 1, because passed, jammed) "
        "2:R(in the lane from RW, right of the ball, because kicked out) 3:LW* 4:Re 5:Lb"
    )
    (told,) = here("one to a spot", shown(opened("two-bigs"), jammed))
    assert told.cause == "E (Jammed) sends the cutter and F (Out) sends a player in the lane to one spot."
    assert (set(told.players), set(told.habits), told.spot) == ({1, 2}, {4, 5}, Spot.T)


def test_the_corner_opposite_the_ball_says_nothing_while_the_ball_is_at_the_top() -> None:
    assert causes("an answer for everybody", OPPOSITE_CORNER) == {"B (Out) names no spot to come out to."}


def test_without_otherwise_whoever_is_not_asked_to_move_has_no_answer() -> None:
    (told, *_) = here("an answer for everybody", shown(written(CUT, FILL), FIVE))
    assert told.cause == "No sentence says what the player one pass away does."
    assert told.text == "No sentence says what 2 does, at the right wing."


def test_in_the_school_teams_book_everybody_has_an_answer() -> None:
    assert causes("an answer for everybody", opened("school-team"), Depth.SETTLED, Depth.DENIED) == set()


def test_two_sentences_of_one_rank_are_told() -> None:
    seen = shown(written(CUT, FILL, HOLD), FIVE)
    twice = Action(2, Kind.HOLD, Spot.RW, Spot.RW, 1, (Claim(1, Kind.FILL, Spot.T),))
    (told,) = here("an order between sentences", replace(seen, decision=Decision((twice,))))
    assert told.cause == "Two sentences claim the player one pass away, and neither stands above the other."
    assert told.habits == (1,)


def test_a_sentence_that_beats_those_below_it_is_in_order() -> None:
    seen = shown(written(CUT, FILL, HOLD), FIVE)
    once = Action(2, Kind.CUT, Spot.RW, Spot.R, 0, (Claim(1, Kind.FILL, Spot.T), Claim(2, Kind.HOLD, Spot.RW)))
    assert here("an order between sentences", replace(seen, decision=Decision((once,)))) == []
    assert causes("an order between sentences", opened("two-bigs")) == set()
