"""What federations and coaches teach, one rule a test, the source beside it.

WABC: the world coaches' manual of the World Association of Basketball Coaches, chapters on motion offence (2.1) as
published on wabc.fiba.com, level 1 unless a level is named. Where it gives no rule, the line says "common practice, no
source".
"""

from __future__ import annotations

from backcut.court.spots import INSIDE, Spot
from backcut.engine.explore import KINDS, moves
from backcut.engine.play import one_step
from backcut.offence.action import Kind, Route
from backcut.offence.library import presets
from backcut.offence.situation import Doing

from .everywhere import every_step, pictures
from .floor import FIVE, FOUR, answer, book, excepting, played, ran, stands

TEAM = book("school-team")
RIGHT = "1:T 2:RW* 3:LW 4:RC 5:LC"


def test_five_spots_with_one_player_each() -> None:
    # WABC, floor spacing: head, two hands, two feet.
    start = book().start()
    assert sorted(player.at for player in start.players) == ["LC", "LW", "RC", "RW", "T"]


def test_every_cut_goes_into_the_key_and_comes_out_to_a_free_spot() -> None:
    # WABC, pass and cut: the cut goes into the heart of the floor and out to a free place.
    for step in every_step(book()):
        for runs in ran(step).values():
            if runs[0] in ("cut R", "back cut R"):
                assert runs[1].startswith("come out")


def test_only_the_players_beside_the_ball_lead() -> None:
    # WABC: only the players next to the ball lead at first.
    for denied in (4, 5):
        assert ran(played(book(), f"deny {denied}", FIVE)[0]) == {}
    for denied in (2, 3):
        assert answer(played(book(), f"deny {denied}", FIVE)[0], denied).kind is Kind.BACK_CUT


def test_cuts_happen_one_at_a_time() -> None:
    # WABC: cuts happen one at a time. A pass starts one cut; the next one waits for the next event.
    for situation in pictures(book()):
        for event in moves(book(), situation, frozenset(KINDS)):
            for beat in one_step(book(), situation, event).beats:
                assert sum(player.doing is Doing.CUTTING for player in beat.before.players) <= 1


def test_a_player_who_is_denied_back_cuts() -> None:
    # WABC: a defender in the passing lane is a reason to step high, show hands and cut behind.
    cut = answer(played(TEAM, "deny 2", FIVE)[0], 2)
    assert (cut.kind, cut.route) == (Kind.BACK_CUT, Route.BEHIND_DEFENDER)


def test_when_the_defender_is_off_the_passer_cuts_to_the_basket() -> None:
    # WABC: a defender who is off the cutter is cut past, to the basket.
    cut = answer(played(TEAM, "T>RW, sag 1", FIVE)[0], 1)
    assert (cut.kind, cut.target) == (Kind.CUT, "R")


def test_young_players_pass_round_the_perimeter_and_every_pass_there_is_answered_by_a_cut() -> None:
    # WABC: young players pass short, round the perimeter, rather than across.
    young = book("first-month")
    for situation in pictures(young):
        for event in moves(young, situation, frozenset({KINDS[0]})):
            step = one_step(young, situation, event)
            assert ran(step)[event.player][0] == "cut R"


def test_four_out_one_in_has_perimeter_places_and_a_post() -> None:
    # Coaches' writing, not a federation's: four out, one in is four to six perimeter places and a post.
    form = book("four-out").formation
    assert 4 <= len(form.ring) <= 6
    assert [spot in INSIDE for spot in form.inside] == [True]


def test_the_filler_may_run_toward_the_key_and_then_out() -> None:
    # WABC, replacing the cutter: not merely along the arc, but toward the key, then out.
    [step] = played(book(fill_path="through the lane"), "T>RW", FIVE)
    filler = next(a for beat in step.beats for a in beat.decision.actions if a.kind is Kind.FILL)
    assert filler.route is Route.THROUGH_LANE


def test_the_cutter_is_replaced_by_the_nearest_and_the_others_balance() -> None:
    # WABC, replacing the cutter: the player nearest to the gap fills it, the others balance the floor.
    [step] = played(book(), "T>RW", FIVE)
    assert ran(step)[3] == ["fill T"]
    assert sorted(stands(step).values()) == ["LC", "LW", "RC", "RW", "T"]


def test_both_passes_shut_the_high_post_is_the_release() -> None:
    # WABC level 2, pressure release: the ball goes to the high post, the denied player cuts straight to the basket.
    [step] = played(TEAM, "deny 1+4", RIGHT)
    assert answer(step, 5).target is Spot.N
    assert [answer(step, denied).kind for denied in (1, 4)] == [Kind.BACK_CUT, Kind.BACK_CUT]


def test_after_passing_the_inside_cut_comes_first() -> None:
    # Common practice, no source.
    for step in every_step(book()):
        if step.event.kind == "pass":
            assert ran(step)[step.event.player][0] == "cut R"


def test_unsure_i_cut_in_front_and_behind_a_defender_who_jumped_to_the_ball() -> None:
    # Common practice, no source.
    assert answer(played(TEAM, "T>RW", FIVE)[0], 1).route is Route.FRONT
    assert answer(played(TEAM, "T>RW, jump 1", FIVE)[-1], 1).route is Route.REAR


def test_a_cut_that_is_taken_away_goes_behind() -> None:
    # Common practice, no source.
    jammed = answer(played(TEAM, "T>RW, jam 1", FIVE)[-1], 1)
    assert (jammed.kind, jammed.route) == (Kind.CUT, Route.REAR)


def test_nobody_cuts_to_an_occupied_spot() -> None:
    # Common practice, no source: with the ball-side block held, the cut goes round the rim.
    [step] = played(book("four-out"), "LS>RS", FOUR)
    assert answer(step, 1).route is Route.FAR_SIDE


def test_the_wing_that_passes_to_the_corner_cuts_and_the_whole_chain_fills() -> None:
    # Common practice, no source.
    [step] = played(book(), "RW>RC", RIGHT)
    assert ran(step) == {2: ["cut R", "come out LC"], 1: ["fill RW"], 3: ["fill T"], 5: ["fill LW"]}


def test_the_passer_out_of_the_corner_cuts_short_and_returns() -> None:
    # Common practice, no source.
    [step] = played(TEAM, "RC>RW", "1:T 2:RW 3:LW 4:RC* 5:LC")
    assert ran(step) == {4: ["cut R", "come out RC"]}


def test_the_corner_holds_while_the_ball_is_at_the_wing() -> None:
    # Common practice, no source.
    [step] = played(book(), "T>RW", FIVE)
    assert 4 not in ran(step)


def test_the_corner_two_passes_away_does_not_creep_up() -> None:
    # Common practice, no source.
    for moves_ in ("deny 2", "deny 4"):
        assert 5 not in ran(played(book(), moves_, FIVE)[0])


def test_the_filler_is_the_player_behind_the_hole_not_the_one_on_the_balls_side() -> None:
    # Common practice, no source.
    [step] = played(book(), "RW>T", RIGHT)
    assert ran(step) == {2: ["cut R", "come out RC"], 4: ["fill RW"]}


def test_the_skip_passer_holds_for_a_count_and_the_other_side_fills_from_behind() -> None:
    # Common practice, no source.
    [step] = played(book("four-out"), "RW>LW", "1:LS 2:RC 3:LW 4:RW* 5:Lb")
    assert answer(step, 4).kind is Kind.HOLD
    assert (ran(step)[4], ran(step)[2]) == (["fill RS"], ["fill RW"])


def test_after_every_single_event_at_most_one_hole_is_left_beside_the_ball_and_it_is_filled() -> None:
    # Common practice, no source.
    for name in ("five-out", "four-out", "three-out"):
        this = book(name)
        ring = this.formation.ring
        for step in every_step(this):
            taken = {ring.index(p.at) for p in step.after.players if p.at in ring}
            ball = ring.index(step.after.holder.at)
            for side in (1, -1):
                beyond = {place for place in taken if (place - ball) * side > 0}
                assert not beyond or ball + side in beyond, (step.before, step.text)


def test_the_ball_always_has_an_outlet_on_the_ring() -> None:
    # Common practice, no source: two outlets when nobody is denied, at the end of the ring one beside it and one over.
    for name in ("five-out", "four-out", "three-out"):
        this = book(name)
        for situation in pictures(this):
            passes = list(moves(this, situation, frozenset(KINDS[:2])))
            assert len(passes) >= 2


def test_nobody_is_told_to_stay_in_the_lane() -> None:
    # Common practice, no source; the rule of three seconds is in every rule book (from memory: FIBA rules, article 26).
    for name in ("five-out", "four-out", "three-out", *presets()):
        for step in every_step(book(name), KINDS[:2]):
            assert Spot.R not in stands(step).values()


def test_a_role_is_the_only_reason_to_treat_a_number_differently() -> None:
    # Common practice, no source.
    [plain], [role] = played(book(), "T>RW", FIVE), played(excepting(book(), never_cuts=1), "T>RW", FIVE)
    assert ran(plain)[1] == ["cut R", "come out LC"]
    assert ran(role) == {}


def test_every_habit_of_a_shipped_book_can_be_taught_from_its_text() -> None:
    # WABC: young teams should learn motion by principles, not by set patterns: every sentence says when, cue and why.
    for name in presets():
        for sentence in book(name).sentences:
            assert sentence.text.startswith(("When", "Otherwise"))
            assert sentence.cue or sentence.phrase.cue
            assert sentence.why or sentence.phrase.why
