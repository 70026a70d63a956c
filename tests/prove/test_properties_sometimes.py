"""Sentences that speak, choices that matter, spots and line-ups that come, the ball on both sides."""

from __future__ import annotations

from tests.engine.floor import opened
from tests.prove.judged import BACK, CUT, FILL, HOLD, OUT, SKIP, causes, written

FLASH = "When both players beside the ball are denied and I am farthest from it, I flash to the high post."
TWO_INSIDE = "When two of us play inside, we keep opposite levels."
ON_FOUR_SPOTS = ["Ring: LW LS RS RW", "Inside players: 0"]


def test_with_three_outside_nobody_is_left_to_flash() -> None:
    three = written(FLASH, BACK, CUT, OUT, FILL, TWO_INSIDE, HOLD, formation="three-out")
    assert causes("every sentence speaks", three) == {"A (Flash) never speaks."}
    four = written(FLASH, BACK, CUT, OUT, FILL, "When I play inside, I follow the ball.", HOLD, formation="four-out")
    assert causes("every sentence speaks", four) == set()


def test_a_sentence_below_the_one_that_always_answers_first_never_speaks() -> None:
    corner = "When I am denied in the corner, I back cut on the baseline side."
    below = written(CUT, OUT, FILL, BACK, corner, HOLD)
    assert causes("every sentence speaks", below) == {
        "E (Corner) never speaks: wherever it could, D (Back) is asked before it."
    }
    assert causes("every sentence speaks", written(CUT, OUT, FILL, corner, BACK, HOLD)) == set()


def test_a_choice_about_the_block_changes_nothing_where_nobody_plays_inside() -> None:
    book = written(CUT, OUT, FILL, HOLD, lines=["Occupied block: shallow"])
    assert causes("every choice matters", book) == {'The choice "occupied block" changes nothing: nobody plays inside.'}


def test_a_choice_about_the_corner_changes_nothing_on_a_ring_without_one() -> None:
    book = written(CUT, OUT, FILL, HOLD, formation="four-out", lines=[*ON_FOUR_SPOTS, "Corner passer: hold"])
    assert causes("every choice matters", book) == {
        'The choice "corner passer" changes nothing: this ring has no corner.'
    }


def test_every_choice_the_school_team_says_changes_what_is_done_or_when() -> None:
    assert causes("every choice matters", opened("school-team")) == set()


def test_a_signal_and_a_hold_count_show_in_time() -> None:
    fist = "When I am one pass away and my defender denies me, I back cut after showing a fist."
    catch = "When I catch the ball, I face the rim and hold for a count of two."
    assert causes("every choice matters", written(fist, CUT, OUT, catch, HOLD)) == set()
    late = written(CUT, OUT, HOLD, fist, catch)
    assert causes("every choice matters", late) == {
        'The choice "signal" changes nothing: whatever it says, everybody is told the same.',
        'The choice "hold count" changes nothing: whatever it says, everybody is told the same.',
    }


def test_what_the_book_leaves_unsaid_is_not_asked() -> None:
    assert causes("every choice matters", written(CUT, HOLD)) == set()


def test_two_players_leave_corners_empty_and_five_use_every_spot() -> None:
    assert "Nobody ever stands at the corner." in causes("every spot is used", written(HOLD, lines=["Players: 2"]))
    assert causes("every spot is used", opened("first-month")) == set()


def test_who_holds_for_ever_never_gets_to_the_others_spots() -> None:
    assert causes("everybody everywhere", written(HOLD)) == {
        f"Not everybody gets to the {spot}." for spot in ("corner", "wing", "top")
    }
    assert causes("everybody everywhere", opened("first-month")) == set()


def test_one_who_never_fills_a_corner_need_not_get_there() -> None:
    assert causes("everybody everywhere", written("4 never fills a corner.", CUT, OUT, FILL, HOLD)) == set()


def test_four_out_on_four_spots_reaches_half_of_its_line_ups_by_passes_to_the_next_spot() -> None:
    walked = written(CUT, OUT, FILL, HOLD, formation="four-out", lines=ON_FOUR_SPOTS)
    assert causes("every line-up", walked) == {"Some line-ups never come."}
    skips = written(SKIP, CUT, OUT, FILL, HOLD, formation="four-out", lines=ON_FOUR_SPOTS)
    assert causes("every line-up", skips) == set()


def test_on_half_a_ring_the_ball_never_gets_to_the_other_side() -> None:
    half = written(CUT, OUT, FILL, HOLD, lines=["Ring: LC LW T", "Players: 3"])
    assert causes("both sides", half) == {"The ball never gets to the other side."}
    assert causes("both sides", opened("first-month")) == set()
