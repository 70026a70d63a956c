"""The story of a possession: its moments, what everybody answers in each, and the words under the floor."""

from __future__ import annotations

import pytest

from backcut.engine.choose import possession
from backcut.engine.play import play
from backcut.offence.library import open_book, presets
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.picture.show import ArrowKind, Show, Stance
from backcut.picture.story import show


def told(moves: str, name: str = "school-team") -> Show:
    book, _ = open_book(name)
    return show(book, play(book, book.start(), moves_from_text(moves)))


@pytest.mark.parametrize("name", presets())
@pytest.mark.parametrize("seed", range(10))
def test_every_moment_says_what_each_of_the_five_does(name: str, seed: int) -> None:
    book, _ = open_book(name)
    story = show(book, possession(book, book.start(), seed))
    times = [moment.t_s for moment in story.moments]
    assert times == sorted(times)
    for moment in story.moments:
        assert {answer.player for answer in moment.answers} == {1, 2, 3, 4, 5}
        assert all(answer.text for answer in moment.answers)
        assert moment.caption.endswith(".")
        # At most four arrows a picture for the players, and the ball's own.
        runs = [a for a in moment.arrows if a.kind not in (ArrowKind.PASS, ArrowKind.SHUT)]
        assert len(runs) <= 5


def test_the_sentence_that_won_stands_beside_the_move_it_caused() -> None:
    story = told("T>RW")
    first = story.moments[0]
    assert first.event == "1 passes to 2"
    lit = [answer for answer in first.answers if answer.lit]
    assert [(a.player, a.text) for a in lit] == [(1, "cuts to the rim")]
    sentence = next(s for s in story.sentences if s.letter == lit[0].letter)
    assert sentence.cue == "Cut"
    arrow = next(a for a in first.arrows if a.lit)
    assert (arrow.player, arrow.letter, arrow.kind) == (1, sentence.letter, ArrowKind.CUT)


def test_a_beaten_sentence_is_named_with_what_it_wanted() -> None:
    first = told("T>RW").moments[0]
    cutter = next(answer for answer in first.answers if answer.player == 1)
    assert cutter.beat[-1].cue == "Wide"
    assert cutter.beat[-1].text == "which wanted 1 to hold"
    assert cutter.beat[-1].why == "It speaks only when nothing else does."


def test_a_denial_shows_the_shut_lane_and_how_far_past_the_mark() -> None:
    story = told("T>RW, deny 3")
    moment = next(m for m in story.moments if m.event == "X3 denies 3")
    assert moment.guards[3] is Stance.DENIES
    assert any(a.kind is ArrowKind.SHUT and a.to_player == 3 for a in moment.arrows)
    assert moment.caption == "X3 denies 3, so 3 back cuts."
    cutter = next(answer for answer in moment.answers if answer.player == 3)
    assert "one pass from 2" in cutter.note


def test_a_hole_is_said_in_the_caption() -> None:
    book, _ = open_book("school-team")
    silent = play(book, book.start(), moves_from_text("T>RW"))
    assert all("No sentence" not in moment.caption for moment in show(book, silent).moments)
    text = "Title: Hole\nFormation: five-out\nCut. When I pass to the next spot, I cut to the rim.\n"
    text += "Out. When my cut is over, I come out to the corner opposite the ball.\n"
    text += "Fill. When the next spot toward the ball is empty, I fill it at once.\n"
    text += "Wide. Otherwise I hold, wide, feet set.\n"
    holed, problems = book_from_text(text)
    assert problems == ()
    steps = play(holed, holed.start(), moves_from_text("T>RW, RW>T"))
    captions = [moment.caption for moment in show(holed, steps).moments]
    assert any("No sentence says what 2 does" in caption for caption in captions)


def test_the_denial_mark_is_lettered_only_where_a_sentence_reads_it() -> None:
    assert told("T>RW").denial_word == "denied from 6.75 m"
    assert told("T>RW", "first-month").denial_word == ""


def test_so_is_said_only_of_an_answer_to_the_event() -> None:
    captions = [moment.caption for moment in told("T>RW, deny 3, 2>5, early deny 4").moments]
    assert "X3 denies 3, so 3 back cuts." in captions
    assert not any("X4 denies 4, so 4 fills" in caption for caption in captions)


def test_a_hole_is_a_moment_of_its_own_with_the_player_marked() -> None:
    text = "Title: Hole\nFormation: five-out\nCut. When I pass to the next spot, I cut to the rim.\n"
    text += "Out. When my cut is over, I come out to the corner opposite the ball.\n"
    text += "Fill. When the next spot toward the ball is empty, I fill it.\nWide. Otherwise I hold, wide, feet set.\n"
    book, _ = book_from_text(text)
    last = show(book, play(book, book.start(), moves_from_text("T>RW, RW>T"))).moments[-1]
    assert last.caption == "No sentence says what 2 does, in the lane."
    lost = next(answer for answer in last.answers if answer.player == 2)
    assert (lost.kind, lost.lit, lost.letter) == ("no answer", True, None)
