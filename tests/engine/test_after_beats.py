"""A move "after 2 beats" comes after exactly so many beats of answers: decide and follow, so many times."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.engine.advance import follow, happen
from backcut.engine.decide import decide
from backcut.engine.play import Stage, comes_early, one_step, play, settle
from backcut.engine.possession import Step
from backcut.errors import MoveError
from backcut.offence.book import Book
from backcut.offence.event import MOST_BEATS, Event, EventKind
from backcut.offence.moves import move_text, moves_from_text
from backcut.offence.situation import Doing, Situation

from .floor import FIVE, book, played
from .random_play import books, can_come, one_of

#: No test passes or fails by the clock or by luck.
SELDOM = settings(deadline=None, derandomize=True, database=None, max_examples=60)


def beat_by_beat(this: Book, situation: Situation, beats: int) -> Situation:
    """The plain meaning: decide and follow, so many times."""
    for _ in range(beats):
        situation = follow(this, situation, decide(this, situation))
    return situation


# T>RW in five-out under the plain book: the cut, the run to the rim, two who move up one after the other, the way out.
@pytest.mark.parametrize(
    ("beats", "doing"),
    [
        (0, ["standing"] * 5),
        (1, ["cutting", *["standing"] * 4]),
        (2, ["in the lane", *["standing"] * 4]),
        (3, ["in the lane", "standing", "filling", "standing", "standing"]),
        (4, ["in the lane", "standing", "standing", "standing", "filling"]),
        (5, ["coming out", *["standing"] * 4]),
    ],
)
def test_the_next_move_meets_everybody_as_far_as_so_many_beats_bring_them(beats: int, doing: list[str]) -> None:
    this = book()
    word = "beat" if beats == 1 else "beats"
    first, second = played(this, f"T>RW, after {beats} {word} sag 4", FIVE)
    after_pass = happen(this, this.start(), Event(EventKind.PASS, 1, 2))
    assert first.after == beat_by_beat(this, after_pass, beats)
    assert [str(player.doing) for player in first.after.players] == doing
    assert len(first.beats) == beats
    assert second.before == first.after
    assert second.text == f"after {beats} {word} sag 4"


def test_when_all_have_settled_sooner_the_move_comes_then() -> None:
    waited = played(book(), "T>RW, RW>RC", FIVE)
    for beats in (6, 7, MOST_BEATS):
        steps = played(book(), f"T>RW, after {beats} beats RW>RC", FIVE)
        assert [step.beats for step in steps] == [step.beats for step in waited]
        assert [step.after for step in steps] == [step.after for step in waited]


def test_after_no_beat_nobody_has_answered_and_the_second_passer_alone_cuts() -> None:
    steps = played(book(), "T>RW, after 0 beats RW>RC", FIVE)
    assert steps[0].beats == ()
    assert {player.number for player in steps[1].beats[1].before.players if player.doing is Doing.CUTTING} == {2}


def test_after_one_beat_the_pass_finds_the_cutter_on_the_way_and_early_finds_the_cutter_in_the_lane() -> None:
    for when, doing in (("after 1 beat", Doing.CUTTING), ("early", Doing.LANE)):
        catch = played(book(), f"T>RW, {when} RW>cutter", FIVE)[-1]
        assert catch.event.kind is EventKind.TO_CUTTER
        assert catch.before.player(1).doing is doing


def test_the_number_of_beats_goes_before_what_its_kind_would_say() -> None:
    for kind in EventKind:
        for early in (False, True):
            assert comes_early(Event(kind, 1, early=early, after=3)) == 3
            assert comes_early(Event(kind, 1, early=early, after=0)) == 0
    assert comes_early(Event(EventKind.JAM, 1)) is Stage.CUTTING


def test_a_cut_is_taken_away_while_it_is_run_and_no_beat_later() -> None:
    assert played(book(), "T>RW, after 1 beat jam 1", FIVE) == [
        replace(step, text=step.text.replace("jam", "after 1 beat jam"), event=replace(step.event, after=after))
        for step, after in zip(played(book(), "T>RW, jam 1", FIVE), (None, 1), strict=True)
    ]
    with pytest.raises(MoveError, match=r'Move "after 2 beats jam 1" \(column 7\): 1 is in the lane already'):
        played(book(), "T>RW, after 2 beats jam 1", FIVE)


def test_a_filler_is_denied_on_the_way_where_the_beat_says_so() -> None:
    [_, denied] = played(book(), "T>RW, after 3 beats deny 3", FIVE)
    assert denied.before.player(3).doing is Doing.FILLING
    assert denied.beats[1].before.player(3).doing is Doing.CUTTING


@SELDOM
@given(books(), st.integers(0, 12), st.data())
def test_so_many_beats_are_so_many_times_decide_and_follow(this: Book, beats: int, data: st.DataObject) -> None:
    event = data.draw(one_of(can_come(this, this.start(), None)))
    situation = happen(this, this.start(), event)
    told, after = settle(this, situation, beats)
    everything, at_rest = settle(this, situation)
    if beats < len(everything):
        assert after == beat_by_beat(this, situation, beats)
        assert told == everything[:beats]
    else:
        assert (told, after) == (everything, at_rest)


@SELDOM
@given(books(), st.lists(st.integers(0, 8) | st.just(MOST_BEATS), min_size=2, max_size=6), st.data())
def test_a_possession_written_with_its_beats_is_played_the_same_again(
    this: Book, whens: list[int], data: st.DataObject
) -> None:
    steps: list[Step] = []
    situation = this.start()
    for when, then in zip([None, *whens], [*whens, None], strict=True):
        event = replace(data.draw(one_of(can_come(this, situation, None))), after=when)
        steps.append(one_step(this, situation, event, then))
        situation = steps[-1].after
    text = ", ".join(move_text(step.event) for step in steps)
    again = play(this, this.start(), moves_from_text(text))
    assert [(step.before, step.after, step.beats, step.text) for step in again] == [
        (step.before, step.after, step.beats, step.text) for step in steps
    ]
