"""`drill` works for every sentence of every book, at every stage, and says what to do where too little is there."""

from __future__ import annotations

import pytest
from tests.teaching.books import book, every, shown

from backcut.errors import BackcutError
from backcut.offence.event import EventKind
from backcut.teaching.drills.chains import MOST_DENIALS, chains
from backcut.teaching.drills.drill import Hall, ShortError, drill, drills
from backcut.teaching.drills.reps import MOST_WAIT_S
from backcut.teaching.drills.stages import Stage
from backcut.teaching.drills.team import ball, teams


@pytest.mark.parametrize(("name", "rank"), every())
def test_every_sentence_has_a_drill_at_every_stage_for_ten_players(name: str, rank: int) -> None:
    made = drills(shown(name)[rank], Hall(players=10, baskets=2, balls=4))
    assert [one.stage for one in made] == list(Stage)
    for one in made:
        assert one.piece.rank == rank
        assert one.lines.players == 10
        assert one.lines.size in (one.piece.size, one.piece.size + one.defenders)
        assert one.each > 0
        assert one.false
        assert one.false_turns


def test_in_a_block_everybody_decides_eight_times_and_nobody_waits_long() -> None:
    """At least eight decisions in a block, and no wait over 40 s: common practice, no source."""
    for rank in shown("first-month"):
        made = [drill(book("first-month"), rank, Hall(players=8, baskets=1, balls=4), stage) for stage in Stage]
        assert made[0].each >= 8
        assert all(one.lines.wait_s <= MOST_WAIT_S for one in made)


def test_where_players_are_few_a_coach_stands_for_the_defenders() -> None:
    one = drill(book("first-month"), 2, Hall(players=3, baskets=1, balls=2), Stage.LIVE)
    assert one.coach_defends
    assert one.lines.counts == (3,)


@pytest.mark.parametrize(
    ("hall", "said"),
    [
        (Hall(players=1), "takes 3 players, and there is 1. Let a coach"),
        (Hall(players=2), "takes 3 players, and there are 2. Let a coach"),
        (Hall(players=8, balls=0), "takes a ball, and there is none. Walk through it"),
        (Hall(players=8, baskets=0), "ends at a rim, and there is no basket. Lay a hoop or a cone"),
    ],
)
def test_too_little_of_anything_says_what_can_be_done_instead(hall: Hall, said: str) -> None:
    with pytest.raises(ShortError, match=said):
        drill(book("first-month"), 2, hall)


@pytest.mark.parametrize("hall", [{"players": 0}, {"players": 8, "baskets": -1}, {"players": 8, "balls": -1}])
def test_less_than_nothing_is_said(hall: dict[str, int]) -> None:
    with pytest.raises(BackcutError, match="there cannot be fewer than"):
        Hall(**hall)


def test_thirty_players_are_all_in_it() -> None:
    one = drill(book("school-team"), 8, Hall(players=30, baskets=2, balls=10))
    assert one.lines.players == 30


@pytest.mark.parametrize("name", ["school-team", "four-out-school-team", "two-bigs"])
def test_chains_have_none_to_three_denials_both_sides_false_cues_and_every_ending(name: str) -> None:
    made = chains(book(name), 12)
    assert len(made) == 12
    assert {one.denials for one in made} == set(range(MOST_DENIALS + 1))
    assert {-1, 1} <= {one.side for one in made}
    assert {one.ending for one in made} == {EventKind.LAY_UP, EventKind.SHOT, EventKind.PASS}
    assert {one.has_a_false_cue for one in made} == {True, False}
    assert len({one.moves for one in made}) == 12
    assert made == chains(book(name), 12)
    assert made != chains(book(name), 12, seed=2)
    for one in made:
        assert not any(beat.decision.troubles for step in one.steps for beat in step.beats)


def test_a_book_without_an_answer_to_a_denial_has_no_chain_of_them() -> None:
    with pytest.raises(BackcutError, match="answers a denial"):
        chains(book("first-month"), 3)


@pytest.mark.parametrize("players", range(3, 31))
def test_in_the_whole_team_form_everybody_is_in_a_team_of_three_to_five(players: int) -> None:
    made = teams(book("first-month"), Hall(players=players, baskets=1, balls=2))
    assert made.players == players
    assert all(3 <= count <= 5 for count in made.counts)
    assert max(made.counts) - min(made.counts) <= 1


def test_the_walk_through_gives_each_child_fifteen_pass_cuts() -> None:
    """Eight children, one basket, eight minutes: at least 15 pass-cuts each. Common practice, no source."""
    first = book("first-month")
    made = teams(first, Hall(players=8, baskets=1, balls=4))
    assert made.counts == (4, 4)
    assert made.each(8 * 60, 0) >= 15


def test_two_are_too_few_for_a_team() -> None:
    with pytest.raises(ShortError, match="too few to move a ball as a team"):
        teams(book("first-month"), Hall(players=2))


def test_in_every_book_passes_take_a_few_seconds_and_move_somebody() -> None:
    for name in ("first-month", "school-team", "four-out-school-team", "two-bigs"):
        moves = ball(book(name))
        assert 1.0 < moves.pass_s < 8.0
        assert max(moves.answers) > 0.5
