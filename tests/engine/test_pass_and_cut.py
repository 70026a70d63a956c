"""Pass, cut, fill, come out: the tables, and where a cutter ends.

The tables are common practice, computed by enumerating every pass; no federation prints them.
"""

from __future__ import annotations

from itertools import permutations

import pytest

from backcut.court.spots import Spot
from backcut.offence.action import Kind

from .floor import FIVE, FOUR, FOUR_SPOTS, THREE_SPOTS, answer, book, fills, full_ring, on_ring, played, ran, stands

FIVE_SPOTS = (Spot.LC, Spot.LW, Spot.T, Spot.RW, Spot.RC)
RINGS = {5: ("five-out", FIVE_SPOTS), 4: ("four-out", FOUR_SPOTS), 3: ("three-out", THREE_SPOTS)}

# Spots of the ring, pass, who moves up, where the cutter ends, how many move: the right side, mirrored for the left.
TABLE = [
    (5, "T>RW", "LW>T LC>LW", "LC", 3),
    (5, "RW>RC", "T>RW LW>T LC>LW", "LC", 4),
    (5, "RW>T", "RC>RW", "RC", 2),
    (5, "RC>RW", "", "RC", 1),
    (5, "RW>LW", "RC>RW", "RC", 2),
    (5, "T>RC", "LW>T LC>LW", "LC", 3),
    (5, "RC>T", "", "RC", 1),
    (5, "RC>LW", "", "RC", 1),
    (5, "RC>LC", "", "RC", 1),
    (5, "RW>LC", "RC>RW", "RC", 2),
    (4, "RS>RW", "LS>RS LW>LS", "LW", 3),
    (4, "RS>LS", "RW>RS", "RW", 2),
    (4, "RW>RS", "", "RW", 1),
    (4, "RW>LS", "", "RW", 1),
    (4, "RW>LW", "", "RW", 1),
    (4, "RS>LW", "RW>RS", "RW", 2),
    (3, "T>RW", "LW>T", "LW", 2),
    (3, "RW>T", "", "RW", 1),
    (3, "RW>LW", "", "RW", 1),
]


def across(text: str) -> str:
    """The same moves on the other side of the floor."""
    return " ".join(">".join(str(Spot(spot).mirror) for spot in move.split(">")) for move in text.split())


@pytest.mark.parametrize(("spots", "move", "moving_up", "ends", "movers"), TABLE)
@pytest.mark.parametrize("side", ["right", "left"])
def test_everybody_behind_the_passer_moves_up_and_he_takes_the_end_that_is_left(
    spots: int, move: str, moving_up: str, ends: str, movers: int, side: str
) -> None:
    if side == "left":
        move, moving_up, ends = across(move), across(moving_up), across(ends)
    name, ring = RINGS[spots]
    begin = move.split(">")[0]
    [step] = played(on_ring(name, ring, skip_passer="cut"), move, full_ring(ring, begin))
    passer = ring.index(Spot(begin)) + 1
    assert fills(step) == set(moving_up.split())
    assert stands(step)[passer] == ends
    assert ran(step)[passer] == ["cut R", f"come out {ends}"]
    assert len(ran(step)) == movers


@pytest.mark.parametrize(("name", "ring"), RINGS.values())
def test_after_any_pass_on_a_full_ring_every_spot_has_exactly_one_player(name: str, ring: tuple[Spot, ...]) -> None:
    plain = on_ring(name, ring, skip_passer="cut")
    for begin, end in permutations(ring, 2):
        [step] = played(plain, f"{begin}>{end}", full_ring(ring, begin))
        assert sorted(stands(step).values()) == sorted(ring), (begin, end)


def test_in_five_out_only_the_passer_in_the_corner_ends_where_he_began() -> None:
    # Common practice, computed.
    plain = book()
    home = {
        begin
        for begin, end in zip((*FIVE_SPOTS, *FIVE_SPOTS[1:]), (*FIVE_SPOTS[1:], *FIVE_SPOTS), strict=False)
        if begin is not end
        for step in played(plain, f"{begin}>{end}", full_ring(FIVE_SPOTS, begin))
        if stands(step)[FIVE_SPOTS.index(begin) + 1] == begin
    }
    assert home == {"LC", "RC"}


def test_in_four_out_three_may_share_a_side_for_a_pass_and_a_later_pass_restores_the_balance() -> None:
    # Common practice, no source.
    steps = played(book("four-out"), "LS>LW, LW>LS, LS>RS", FOUR)
    left = [sum(step.after.player(number).at.side < 0 for number in (1, 2, 3, 4)) for step in steps]
    assert left == [3, 3, 2]


def test_a_pass_over_an_empty_spot_is_a_skip() -> None:
    [step] = played(book("four-out"), "1>4", "1:LW* 2:LS 3:LC 4:RS 5:Rb")
    assert (step.event.kind, ran(step).get(1)) == ("skip", None)


def test_the_skip_passer_holds_and_is_then_a_perimeter_player_like_the_others() -> None:
    [step] = played(book(), "RW>LC", full_ring(FIVE_SPOTS, "RW"))
    assert ran(step) == {}
    # Where a hole lies between him and the ball he moves up like anybody (design of the rule: fills follow every pass).
    [step] = played(book("four-out"), "4>3", "1:LS 2:RC 3:LW 4:RW* 5:Rb")
    assert ran(step) == {4: ["fill RS"], 2: ["fill RW"]}


def test_the_others_move_up_before_the_cutter_comes_out() -> None:
    [step] = played(book(), "T>RW", FIVE)
    kinds = [{a.kind for a in beat.decision.actions if a.moves} for beat in step.beats]
    assert [k for k in kinds if k] == [{Kind.CUT}, {Kind.FILL}, {Kind.FILL}, {Kind.EXIT}]


def test_the_cutter_comes_out_beside_the_ball_where_there_is_room() -> None:
    [step] = played(book("four-out"), "RS>RW", "1:LW 2:LS 3:RS* 4:RW 5:Lb")
    assert ran(step)[3] == ["cut R", "come out RC"]


def test_of_two_open_spots_beside_the_ball_he_takes_the_side_he_came_from() -> None:
    two = on_ring("four-out", (Spot.LC, Spot.LW, Spot.LS, Spot.RS, Spot.RW, Spot.RC))
    assert ran(played(two, "1>2", "1:LS* 2:RS")[0])[1][-1] == "come out LS"
    assert ran(played(two, "1>2", "1:RW* 2:RS")[0])[1][-1] == "come out RW"


def test_a_passers_side_is_where_he_stood_from_the_balls_new_spot() -> None:
    [step] = played(book(), "T>RW", FIVE)
    assert {beat.before.player(1).side for beat in step.beats[1:3]} == {-1}


def test_a_back_cutters_side_is_where_he_stood_from_the_ball() -> None:
    [step] = played(book(), "deny 2", FIVE)
    assert {beat.before.player(2).side for beat in step.beats[1:3]} == {1}


def test_the_cut_owns_the_way_out_unless_the_book_says_it_in_a_sentence_of_its_own() -> None:
    plain, own = book(), book("five-out", "come out")
    for this, phrase in ((plain, "cut"), (own, "come out")):
        [step] = played(this, "T>RW", FIVE)
        leaving = next(a for beat in step.beats for a in beat.decision.actions if a.kind is Kind.EXIT)
        assert this.sentences[leaving.habit or 0].phrase.name == phrase


def test_the_back_cut_owns_the_way_out_of_a_back_cut() -> None:
    plain = book()
    [step] = played(plain, "deny 2", FIVE)
    leaving = next(a for beat in step.beats for a in beat.decision.actions if a.kind is Kind.EXIT)
    assert plain.sentences[leaving.habit or 0].phrase.name == "back cut"


def test_the_answer_names_the_sentences_it_beat() -> None:
    plain = book()
    [step] = played(plain, "T>RW", FIVE)
    cut = answer(step, 1)
    assert plain.sentences[cut.habit or 0].phrase.name == "cut"
    assert [plain.sentences[claim.habit].phrase.name for claim in cut.beat] == ["hold"]
