"""Not in our team: what a player could be told instead, the change that says it, and what else it changes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

import pytest
from tests.prove.books import SHIPPED, four, read

from backcut.court.spots import Spot
from backcut.engine.choose import possession
from backcut.engine.decide import decide
from backcut.engine.play import play, settle
from backcut.errors import SituationError
from backcut.offence.action import Action, Kind, Route
from backcut.offence.book import Book
from backcut.offence.edit import choose, set_role
from backcut.offence.library import preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.offence.situation import Situation
from backcut.prove.compare import compare
from backcut.prove.depth import Depth
from backcut.prove.instead import told_now
from backcut.prove.one_change import changes
from backcut.prove.wanted import OFFERED, Saying, Wanted, When, answers, right, sayings

SCHOOL = preset_text("school-team")
FIRST_MONTH = preset_text("first-month")
FOUR_OUT = preset_text("four-out-school-team")
TWO_BIGS = preset_text("two-bigs")
OPPOSITE = choose(SCHOOL, "exit", "opposite corner")


@cache
def book_of(text: str) -> Book:
    return read(text)


def asked(text: str, moves: str, beat: int = 0) -> Situation:
    """The situation before this beat of the last of these moves."""
    book = book_of(text)
    return play(book, book.start(), moves_from_text(moves))[-1].beats[beat].before


def words(text: str, moves: str, player: int, beat: int = 0) -> list[str]:
    return [wanted.words for wanted in answers(text, book_of(text), asked(text, moves, beat), player)]


def said(text: str, moves: str, player: int, wanted: str, beat: int = 0, when: When | None = None) -> list[Saying]:
    """The changes that say these words at this time; they must be among the answers, and not be the present one."""
    book, situation = book_of(text), asked(text, moves, beat)
    _, *others = answers(text, book, situation, player)
    (one,) = (other for other in others if other.words == wanted and when in (None, other.when))
    return sayings(text, book, situation, player, one)


# ── what a coach would expect ───────────────────────────────────────────


def test_the_corner_passer_holds_because_the_sentence_about_the_corner_says_so() -> None:
    moves = "T>RW, RW>RC, RC>RW"
    assert words(SCHOOL, moves, 4)[0] == "cuts to the rim"
    first, *_ = said(SCHOOL, moves, 4, "holds, right corner")
    assert first.says == 'Let D say: "When I pass out of the corner, I hold."'
    assert first.changed == ("the corner passer holds instead of cutting to the rim and coming back",)


def test_one_number_that_holds_after_a_pass_never_cuts() -> None:
    says = [saying.says for saying in said(SCHOOL, "T>RW, RW>RC, RC>RW", 4, "holds, right corner")]
    assert says[1] == 'Add the line "4 never cuts"'


def test_a_player_who_never_cuts_cuts_once_that_line_is_out() -> None:
    text = set_role(SCHOOL, "1 never cuts", True)
    (saying,) = said(text, "T>RW", 1, "cuts to the rim")
    assert saying.says == 'Take out the line "1 never cuts"'
    assert read(saying.text).exceptions == book_of(SCHOOL).exceptions


def test_the_cutter_comes_out_to_the_corner_when_all_move_up_behind_him() -> None:
    text = choose(SCHOOL, "who fills", "nearest only")
    (saying,) = said(text, "T>RW", 1, "then comes out to the left corner")
    assert saying.says.startswith('Let I say: "When the next spot toward the ball is empty wherever I stand, I fill it')


def test_a_cutter_who_has_no_answer_comes_out_to_the_first_open_spot() -> None:
    # With the ball at the top there is no corner opposite the ball.
    assert words(OPPOSITE, "T>RW, RW>T", 2, beat=2)[0] == "has no answer"
    says = [saying.says for saying in said(OPPOSITE, "T>RW, RW>T", 2, "comes out to the right corner", beat=2)]
    assert 'Let H say: "When my cut is over, I come out to the first open spot."' in says


def test_a_hole_is_no_answer_and_no_reason_to_offer_none() -> None:
    # The way out is missing as it was; the cut itself can still be another one.
    text = choose(OPPOSITE, "front or rear", "front")
    assert "cuts behind the defender to the rim" in words(text, "T>RW, RW>T", 2)
    for beat in range(3):
        assert "has no answer" not in " ".join(words(OPPOSITE, "T>RW, RW>T", 2, beat)[1:])
    # Where all is answered, a corner opposite the ball that is not there is not offered.
    book, situation = book_of(SCHOOL), asked(SCHOOL, "T>RW, RW>T")
    for player in book.start().spots():
        for wanted in answers(SCHOOL, book, situation, player)[1:]:
            for saying in sayings(SCHOOL, book, situation, player, wanted):
                told = settle(read(saying.text), situation)[0]
                assert not any(beat.decision.troubles for beat in told)


def test_the_denied_filler_comes_to_the_ball_where_a_sentence_says_so() -> None:
    moves = "T>RW, early deny 3"
    assert words(SCHOOL, moves, 3, beat=1)[0] == "back cuts"
    (saying,) = said(SCHOOL, moves, 3, "comes to the ball", beat=1)
    assert saying.says == 'Add as C: "When I am denied on my way to fill, I come to the ball."'
    assert saying.depth is Depth.DENIED


def test_a_first_month_team_that_is_denied_learns_to_back_cut_in_one_sentence() -> None:
    assert words(FIRST_MONTH, "deny 2", 2)[0] == "holds, right wing"
    (saying,) = said(FIRST_MONTH, "deny 2", 2, "back cuts")
    assert saying.says == 'Add as A: "When I am one pass away and my defender denies me, I back cut."'


def test_the_four_out_cutter_comes_out_behind_him_at_the_end_of_the_line() -> None:
    says = [saying.says for saying in said(FOUR_OUT, "LS>LW", 1, "then comes out to the right wing")]
    assert 'Let H say: "When my cut is over, I come out to the end of the line."' in says


def test_a_choice_on_a_line_is_changed_on_its_line() -> None:
    (saying,) = said(TWO_BIGS, "T>RW", 1, "cuts shallow, to the high post")
    assert saying.says == 'Let the line say "Occupied block: cut shallow"'


def test_two_bigs_who_take_a_hand_off_could_back_cut_or_slide_on() -> None:
    assert words(TWO_BIGS, "dribble 1>RW", 2)[1:] == ["back cuts", "slides on to the right corner"]
    (saying,) = said(TWO_BIGS, "dribble 1>RW", 2, "back cuts")
    assert saying.says == 'Let A say: "When the ball is dribbled at me, I back cut."'


def test_the_skip_passer_cuts_in_a_team_that_answers_every_pass_alike() -> None:
    (saying,) = said(SCHOOL, "T>RC", 1, "cuts to the rim")
    assert saying.says == 'Let E say: "When I skip the ball, I cut to the rim."'


def test_an_earlier_fill_is_another_answer_and_the_way_of_a_fill_is_one_too() -> None:
    assert words(SCHOOL, "T>RW", 3)[0] == "fills the top"
    (saying,) = said(SCHOOL, "T>RW", 3, "fills the top", when=When.SOONER)
    assert saying.says == 'Let I say: "When the next spot toward the ball is empty, I fill it at once."'
    # Nobody runs otherwise, only sooner: that is said, too.
    assert saying.differs == 0
    assert saying.retimed > 0
    assert saying.elsewhere.startswith(f"In {saying.retimed:,} of {saying.moments:,} moments the same is run")
    assert said(SCHOOL, "T>RW", 3, "fills the top, through the elbow")


def test_a_sentence_that_is_switched_off_is_switched_on_again() -> None:
    corner = "Corner pass. When I pass out of the corner, I cut and come back."
    text = SCHOOL.replace(corner, "Off: Corner pass. When I pass out of the corner, I hold.")
    saying = said(text, "T>RW, RW>RC, RC>RW", 4, "holds, right corner")[0]
    assert saying.says == 'Switch on, as D: "When I pass out of the corner, I hold."'
    assert saying.text == SCHOOL.replace(corner, "Corner pass. When I pass out of the corner, I hold.")


def test_no_sentence_sends_a_player_who_stands_wide_anywhere_else() -> None:
    moves = "T>RW, RW>RC, RC>RW"
    book, situation = book_of(SCHOOL), asked(SCHOOL, moves)
    (only,) = answers(SCHOOL, book, situation, 2)
    assert only.words == "holds, left corner"
    away = Wanted(Kind.BACK_CUT, Spot.R, Route.BEHIND_DEFENDER, When.NOW, "back cuts")
    assert sayings(SCHOOL, book, situation, 2, away) == []


def test_what_the_book_says_already_needs_no_change() -> None:
    book, situation = book_of(SCHOOL), asked(SCHOOL, "T>RW")
    for player in book.start().spots():
        present, *_ = answers(SCHOOL, book, situation, player)
        assert sayings(SCHOOL, book, situation, player, present) == []


def test_a_number_that_nobody_wears_is_said_to_be_none() -> None:
    with pytest.raises(SituationError, match="Nobody wears 9"):
        answers(SCHOOL, book_of(SCHOOL), asked(SCHOOL, "T>RW"), 9)


# ── every answer and every change, in possessions that the books play ──


def beats(text: str, seeds: range, most: int) -> Iterator[Situation]:
    """Situations in which everybody is asked, of possessions that the book plays against drawn moves."""
    book = book_of(text)
    for seed in seeds:
        for step in possession(book, book.start(), seed, most):
            yield from (beat.before for beat in step.beats)


@pytest.mark.parametrize("name", SHIPPED)
def test_every_change_of_the_text_gives_the_very_book_that_was_tried(name: str) -> None:
    # One sentence has no cue of its own, one number is excepted.
    text = set_role(preset_text(name).replace("\nCut. When", "\nWhen"), "2 never cuts", True)
    book = book_of(text)
    tried = 0
    for place, situation in enumerate(beats(text, range(3), 4)):
        player = 1 + place % len(situation.players)
        for change in changes(text, book, player, told_now(book, situation, player).beats):
            changed, problems = book_from_text(change.write(text))
            assert not problems, change.says
            assert replace(changed, proofs=()) == replace(change.book, proofs=()), change.says
            tried += 1
    assert tried > 500


def acts(book: Book, situation: Situation, player: int) -> list[Action]:
    """All the player is asked to run, or to look for, until all stand."""
    told = (next(a for a in b.decision.actions if a.player == player) for b in settle(book, situation)[0])
    return [action for action in told if action.moves or action.kind is Kind.LOOK_TO_DRIBBLE]


def gives(book: Book, situation: Situation, player: int, wanted: Wanted) -> bool:
    """Whether a book gives the wanted answer, asked anew."""
    runs = [(action.kind, action.target, action.route) for action in acts(book, situation, player)]
    (now,) = (action for action in decide(book, situation).actions if action.player == player)
    if wanted.kind in (Kind.HOLD, Kind.BALL):
        # Where he holds in the end, that is where his last run has led.
        return now.kind is not Kind.NO_ANSWER and (runs[-1][1] if runs else now.origin) is wanted.target
    if wanted.when is When.NOW:
        return (now.kind, now.target, now.route) == (wanted.kind, wanted.target, wanted.route)
    return (wanted.kind, wanted.target, wanted.route) in runs


@pytest.mark.parametrize("name", SHIPPED)
def test_whoever_reads_the_new_text_gives_the_wanted_answer_there(name: str) -> None:
    text = preset_text(name)
    book = book_of(text)
    offered = 0
    # Every fourth moment, one player each: enough to meet every kind of change, in a few seconds.
    for place, situation in enumerate(list(beats(text, range(20, 22), 5))[::4]):
        player = 1 + place % len(situation.players)
        _, *others = answers(text, book, situation, player)
        for wanted in others[:2]:
            found = sayings(text, book, situation, player, wanted)
            assert 0 < len(found) <= OFFERED
            assert [s.differs for s in found] == sorted(s.differs for s in found)
            for saying in found:
                assert gives(read(saying.text), situation, player, wanted), (saying.says, wanted)
                offered += 1
    assert offered > 5


@pytest.mark.parametrize(
    ("text", "moves", "player"), [(SCHOOL, "T>RW", 1), (FOUR_OUT, "LS>LW", 1), (TWO_BIGS, "T>RW", 1)]
)
def test_what_else_a_change_does_is_what_comparing_the_two_books_anew_says(text: str, moves: str, player: int) -> None:
    book, situation = book_of(text), asked(text, moves)
    for wanted in answers(text, book, situation, player)[1:]:
        for saying in sayings(text, book, situation, player, wanted):
            anew = compare(book, read(saying.text), (Depth.SETTLED,))
            assert (saying.differs, saying.retimed, saying.moments) == (anew.differing, anew.retimed, anew.moments)
            assert saying.changed == tuple(difference.text for difference in anew.differences[:2])


def test_what_is_asked_of_a_denied_player_is_compared_where_defenders_deny() -> None:
    book = book_of(SCHOOL)
    first, *_ = said(SCHOOL, "T>RW, deny 4", 4, "holds, right corner")
    assert compare(book, read(first.text), (Depth.SETTLED,)).differing == 0
    anew = compare(book, read(first.text), (Depth.DENIED,))
    assert (first.differs, first.moments) == (anew.differing, anew.moments)
    assert first.elsewhere.startswith(f"In {anew.differing:,} of {anew.moments:,} moments somebody runs otherwise")


def test_nothing_that_changes_less_than_the_first_is_left_out() -> None:
    # Tried by hand: every exit of the cutter, one by one.
    book, situation = book_of(OPPOSITE), asked(OPPOSITE, "T>RW, RW>T", 2)
    (wanted,) = (one for one in answers(OPPOSITE, book, situation, 2) if one.words == "comes out to the right corner")
    first, *_ = sayings(OPPOSITE, book, situation, 2, wanted)
    least = []
    for value in ("first open", "end of the line", "fewest", "opposite own", "filler's spot"):
        other = read(choose(OPPOSITE, "exit", value))
        if [action.target for action in acts(other, situation, 2)] == [Spot.RC]:
            least.append(compare(book, other, (Depth.SETTLED,)).differing)
    assert first.differs == min(least)


def test_each_change_that_is_compared_is_told() -> None:
    book, situation = book_of(SCHOOL), asked(SCHOOL, "T>RW")
    (wanted,) = (one for one in answers(SCHOOL, book, situation, 1) if one.words == "holds, top")
    told: list[int] = []
    found = sayings(SCHOOL, book, situation, 1, wanted, told.append)
    assert told == list(range(1, len(found) + 1))


# ── where do you go? ────────────────────────────────────────────────────


def test_the_cutter_is_right_with_the_rim_and_with_where_he_comes_out() -> None:
    assert right(book_of(SCHOOL), asked(SCHOOL, "T>RW"), 1) == {Spot.R, Spot.LC}


def test_who_waits_to_move_up_is_right_with_his_spot_and_with_the_next() -> None:
    assert right(book_of(SCHOOL), asked(SCHOOL, "T>RW"), 3) == {Spot.LW, Spot.T}


def test_who_holds_to_the_end_is_right_with_his_own_spot_only() -> None:
    assert right(book_of(SCHOOL), asked(SCHOOL, "T>RW"), 4) == {Spot.RC}
    assert right(four(), four().start(), 2) == {four().start().player(2).at}
