"""The second reading where the ring has room, in the corners, under denial and with a dribble.

Each case was worked out by hand from the written rules (common practice, no source).
"""

from __future__ import annotations

import pytest

from .exits import exit_spot
from .reading import RIM, after_denial, after_denials, after_dribble, after_pass, line_up
from .starts import FIVE, FOUR, SIX, THREE
from .test_oracle_alone import comes_out_at, fills, passed

FULL = line_up(*FIVE)
THREE_ON_THE_RIGHT = line_up("T", "RW", "RC")


def test_the_four_out_slot_passer_comes_out_in_the_open_corner_beside_the_ball() -> None:
    outcome = after_pass(SIX, line_up(*FOUR), 3, 4)
    assert fills(outcome) == {"LS": "RS", "LW": "LS"}
    assert comes_out_at(outcome) == "RC"


def test_to_the_end_of_the_line_he_goes_to_the_wing_left_empty_whatever_is_beside_the_ball() -> None:
    assert comes_out_at(after_pass(SIX, line_up(*FOUR), 3, 4, {"exit": "end of the line"})) == "LW"


def test_of_two_open_spots_beside_the_ball_he_takes_the_side_he_came_from() -> None:
    where = line_up("LS", "RS")
    assert comes_out_at(after_pass(SIX, where, 1, 2)) == "LS"
    assert comes_out_at(after_pass(SIX, where, 2, 1)) == "RS"


def test_with_three_on_one_side_the_cutter_goes_to_the_side_with_fewest() -> None:
    outcome = after_pass(SIX, line_up("RS", "RW", "RC", "LS"), 1, 2, {"exit": "fewest"})
    assert fills(outcome) == {"LS": "RS"}
    assert comes_out_at(outcome) == "LS"


def test_the_side_with_fewest_says_the_wing_and_from_there_he_moves_up_to_the_top() -> None:
    outcome = after_pass(FIVE, THREE_ON_THE_RIGHT, 2, 3, {"exit": "fewest"})
    assert fills(outcome) == {"T": "RW", "LW": "T"}
    assert outcome.did[2] == [("cut", "RW", "R"), ("come out", "R", "LW"), ("fill", "LW", "T")]


def test_with_as_many_on_either_side_he_takes_the_first_open_spot() -> None:
    assert comes_out_at(after_pass(FIVE, line_up("LC", "LW", "T", "RW"), 1, 2, {"exit": "fewest"})) == "LC"
    assert comes_out_at(after_pass(FIVE, line_up("LW", "T", "RW", "RC"), 4, 3, {"exit": "fewest"})) == "RC"


def test_when_the_side_with_fewest_is_full_he_takes_the_first_open_spot() -> None:
    lopsided = ("LW", "T", "RS", "RW", "RC")
    assert comes_out_at(after_denial(lopsided, line_up(*lopsided), 1, 2, {"exit": "fewest"})) == "RC"


def test_a_cutter_out_in_the_opposite_corner_moves_up_until_the_line_is_closed() -> None:
    outcome = after_pass(SIX, line_up(*FOUR), 3, 4, {"exit": "opposite corner"})
    assert outcome.did[3] == [("cut", "RS", "R"), ("come out", "R", "LC"), ("fill", "LC", "LW")]


def test_a_ring_without_corners_has_no_corner_opposite_the_ball() -> None:
    outcome = passed(FOUR, "RS", "RW", {"exit": "opposite corner"})
    assert outcome.unanswered == {3}
    assert outcome.where[3] == RIM


def test_when_only_the_nearest_fills_the_cutter_takes_what_he_left() -> None:
    outcome = passed(FIVE, "T", "RW", {"fillers": "nearest only"})
    assert fills(outcome) == {"LW": "T"}
    assert comes_out_at(outcome) == "LW"


def test_the_corner_passer_comes_back() -> None:
    assert passed(FIVE, "RC", "RW").did[5] == [("cut", "RC", "R"), ("come out", "R", "RC")]


def test_the_corner_passer_told_to_hold_stays() -> None:
    assert passed(FIVE, "RC", "RW", {"corner passer": "hold"}).did[5] == [("hold", "RC", "RC")]


def test_the_wing_passer_at_the_end_of_a_short_ring_is_no_corner_passer() -> None:
    assert passed(THREE, "RW", "T", {"corner passer": "hold"}).did[3][0] == ("cut", "RW", "R")


def test_cutting_through_has_no_room_on_a_full_ring_and_he_comes_back() -> None:
    assert comes_out_at(passed(FIVE, "RC", "RW", {"corner passer": "cut through"})) == "RC"


def test_the_corner_passer_cuts_through_to_the_far_spot_and_moves_up_from_there() -> None:
    outcome = after_pass(FIVE, THREE_ON_THE_RIGHT, 3, 2, {"corner passer": "cut through"})
    assert outcome.did[3] == [("cut", "RC", "R"), ("come out", "R", "LC"), ("fill", "LC", "LW")]


def test_cutting_through_is_to_the_other_side_of_the_ball_though_his_own_corner_is_farther() -> None:
    choices = {"corner passer": "cut through", "skip passer": "cut"}
    assert comes_out_at(after_pass(FIVE, line_up("LW", "T", "RW", "RC"), 4, 1, choices)) == "LC"


def test_a_denied_wing_back_cuts_the_corner_fills_and_he_comes_out_in_the_corner() -> None:
    outcome = after_denial(FIVE, FULL, 3, 4)
    assert outcome.did[4] == [("back cut", "RW", "R"), ("come out", "R", "RC")]
    assert fills(outcome) == {"RC": "RW"}
    assert outcome.ball == 3


def test_with_nobody_behind_him_the_denied_player_comes_back_to_the_spot_he_left() -> None:
    assert after_denial(FIVE, FULL, 4, 5).did[5] == [("back cut", "RC", "R"), ("come out", "R", "RC")]


def test_denied_two_passes_away_is_no_reason_to_move() -> None:
    outcome = after_denial(FIVE, FULL, 3, 5)
    assert outcome.where == FULL
    assert outcome.did[5] == [("hold", "RC", "RC")]


def test_a_denied_corner_may_be_told_to_hold() -> None:
    assert after_denial(FIVE, FULL, 4, 5, {"denied corner": "hold"}).did[5] == [("hold", "RC", "RC")]


def test_a_denied_corner_told_to_go_through_goes_to_the_far_side() -> None:
    outcome = after_denial(FIVE, THREE_ON_THE_RIGHT, 2, 3, {"denied corner": "go through"})
    assert outcome.did[3] == [("back cut", "RC", "R"), ("come out", "R", "LC"), ("fill", "LC", "LW")]


def test_when_the_one_who_filled_is_denied_next_the_first_cutter_fills_for_him_and_they_have_changed_places() -> None:
    first = after_denial(FIVE, FULL, 3, 4)
    assert (first.where[5], first.where[4]) == ("RW", "RC")
    second = after_denial(FIVE, first.where, 3, 5)
    assert second.did[4] == [("fill", "RC", "RW")]
    assert second.where == FULL


def test_both_wings_denied_both_corners_fill_and_each_cutter_comes_out_on_his_own_side() -> None:
    outcome = after_denials(FIVE, FULL, 3, (4, 2))
    assert fills(outcome) == {"LC": "LW", "RC": "RW"}
    assert outcome.where == {1: "LW", 2: "LC", 3: "T", 4: "RC", 5: "RW"}


@pytest.mark.parametrize("denied", [(3, 5), (5, 3)])
def test_of_two_cutters_who_want_one_spot_the_one_from_its_side_has_it_and_the_other_asks_again(
    denied: tuple[int, int],
) -> None:
    outcome = after_denials(FIVE, FULL, 4, denied)
    assert outcome.where == {1: "LW", 2: "T", 3: "LC", 4: "RW", 5: "RC"}


@pytest.mark.parametrize("denied", [(2, 4), (4, 2)])
def test_two_cutters_sent_to_the_one_corner_opposite_the_ball_both_stay_in_the_lane(denied: tuple[int, int]) -> None:
    where = line_up("LW", "LS", "RS", "RW")
    outcome = after_denials(SIX, where, 3, denied, {"exit": "opposite corner"})
    assert outcome.unanswered == set(denied)


def test_of_a_pair_the_one_two_passes_away_holds() -> None:
    assert after_denials(FIVE, FULL, 3, (4, 1)).did[1] == [("hold", "LC", "LC")]


def test_he_takes_the_spot_the_filler_left() -> None:
    exit_ = {"exit": "filler's spot", "fillers": "nearest only"}
    outcome = passed(FIVE, "RW", "RC", exit_)
    assert fills(outcome) == {"T": "RW"}
    assert comes_out_at(outcome) == "T"


def test_when_all_behind_him_moved_up_the_spot_the_fillers_left_is_the_end_of_their_line() -> None:
    assert comes_out_at(after_pass(SIX, line_up(*FOUR), 3, 4, {"exit": "filler's spot"})) == "LW"


def test_where_the_line_behind_him_is_full_the_spot_the_filler_left_is_on_the_other_side() -> None:
    # Nobody can have filled but a player from behind, so this is a floor drawn for the sentence alone.
    where = {1: "LW", 2: "T", 3: "RW", 4: "RC", 5: RIM}
    assert exit_spot(FIVE, where, "LW", "T", 1, "filler's spot") == "LC"


@pytest.mark.parametrize("corner", ["LC", "RC"])
def test_where_nobody_filled_there_is_no_spot_a_filler_left(corner: str) -> None:
    outcome = passed(FIVE, corner, corner[0] + "W", {"exit": "filler's spot"})
    assert {outcome.where[player] for player in outcome.unanswered} == {RIM}


def test_dribbled_at_the_wing_back_cuts_and_the_line_behind_the_ball_moves_up() -> None:
    outcome = after_dribble(FIVE, FULL, 3, "RW")
    assert outcome.where == {1: "LW", 2: "T", 3: "RW", 4: "LC", 5: "RC"}
    assert outcome.did[4] == [("back cut", "RW", "R"), ("come out", "R", "LC")]
    assert outcome.ball == 3


def test_dribbled_at_with_an_open_corner_behind_him_he_comes_out_there() -> None:
    assert after_dribble(FIVE, line_up(*THREE), 2, "RW").where == {1: "T", 2: "RW", 3: "RC"}


def test_dribbled_at_with_both_spots_beside_the_ball_open_he_goes_on_the_way_of_the_dribble() -> None:
    assert comes_out_at(after_dribble(SIX, line_up("LS", "RS"), 1, "RS")) == "RW"


def test_after_a_hand_off_the_giver_cuts_like_a_passer_to_a_neighbour() -> None:
    outcome = after_dribble(FIVE, FULL, 3, "RW", {"dribble at": "hand-off"})
    assert outcome.did[4] == [("take the hand-off", "RW", "T")]
    assert outcome.did[3] == [("cut", "RW", "R"), ("come out", "R", "RC")]
    assert fills(outcome) == {"RC": "RW"}
    assert outcome.ball == 4


def test_sliding_on_pushes_the_next_one_too_and_the_one_without_room_back_cuts() -> None:
    outcome = after_dribble(FIVE, FULL, 3, "RW", {"dribble at": "slide on"})
    assert outcome.did[4] == [("slide on", "RW", "RC")]
    assert outcome.did[5] == [("back cut", "RC", "R"), ("come out", "R", "LC")]
    assert outcome.where == {1: "LW", 2: "T", 3: "RW", 4: "RC", 5: "LC"}


def test_sliding_on_where_there_is_room_sends_nobody_to_the_rim() -> None:
    outcome = after_dribble(SIX, line_up(*FOUR), 3, "RW", {"dribble at": "slide on"})
    assert outcome.where == {1: "LS", 2: "RS", 3: "RW", 4: "RC"}


def test_a_dribble_to_an_empty_spot_only_draws_the_line_behind_it() -> None:
    assert after_dribble(FIVE, line_up(*THREE), 3, "RC").where == {1: "T", 2: "RW", 3: "RC"}


def test_an_unknown_choice_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="exit: nearest bench"):
        after_pass(FIVE, FULL, 3, 4, {"exit": "nearest bench"})


def test_nobody_passes_to_himself_is_denied_his_own_ball_or_dribbles_over_a_team_mate() -> None:
    with pytest.raises(ValueError, match="cannot pass it to himself"):
        after_pass(FIVE, FULL, 3, 3)
    with pytest.raises(ValueError, match="cannot be denied it"):
        after_denial(FIVE, FULL, 3, 3)
    with pytest.raises(ValueError, match="not the very next spot"):
        after_dribble(FIVE, FULL, 3, "RC")
