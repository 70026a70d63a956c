"""Every sentence is shown by a possession in which it really speaks, the shortest there is."""

from __future__ import annotations

import pytest
from tests.engine.second import Asked, ruled, start_of
from tests.teaching.books import book, every, shown

from backcut.engine.play import play
from backcut.errors import BackcutError
from backcut.motion.squads import SQUADS
from backcut.offence.action import Kind
from backcut.offence.event import EventKind
from backcut.offence.library import preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.teaching.examples import NoExampleError, example, rank_of


@pytest.mark.parametrize(("name", "rank"), every())
def test_the_sentence_tells_the_player_what_is_shown(name: str, rank: int) -> None:
    one = shown(name)[rank]
    assert one.action.habit == rank
    assert one.action.player == one.player
    played = play(book(name), one.possession.start, moves_from_text(one.possession.moves))
    assert [step.after for step in played] == [step.after for step in one.possession.steps]
    assert not any(beat.decision.troubles for step in one.possession.steps for beat in step.beats)


#: What the engine calls an action, and what the second reading calls it.
SAME = {Kind.CUT: "cut", Kind.FILL: "fill", Kind.EXIT: "come out", Kind.HOLD: "hold", Kind.BACK_CUT: "back cut"}


@pytest.mark.parametrize("name", ["first-month", "school-team"])
def test_the_second_reading_of_the_rules_says_the_same(name: str) -> None:
    where, _ = start_of(book(name))
    judged = 0
    for one in shown(name).values():
        steps, action = one.possession.steps, one.action
        event = steps[0].event
        if len(steps) > 1 or action.kind not in SAME or steps[0].before.with_players() != one.possession.start:
            continue
        move = {EventKind.PASS: "pass", EventKind.SKIP: "skip", EventKind.DENY: "deny"}.get(event.kind)
        if move is None or event.also or (move == "deny" and "flash" in book(name).rules.names):
            continue
        ball = one.possession.start.ball
        whom = event.receiver if move != "deny" else event.player
        assert whom is not None
        outcome = ruled(book(name), where, ball, Asked(move, whom))
        assert (SAME[action.kind], str(action.target)) in [(kind, end) for kind, _, end in outcome.did[one.player]]
        judged += 1
    assert judged >= 3


def test_a_sentence_that_never_speaks_is_said() -> None:
    twice = preset_text("first-month") + "\nHold. Otherwise I hold, wide, feet set.\n"
    read, _ = book_from_text(twice, SQUADS)
    last = len(read.sentences) - 1
    with pytest.raises(NoExampleError, match="never tells anybody what to do in this book"):
        example(read, last)


def test_a_sentence_is_named_by_letter_cue_word_or_phrase() -> None:
    one = book("school-team")
    assert rank_of(one, "i") == rank_of(one, "Fill.") == rank_of(one, " fill ") == 8
    assert rank_of(one, "cut taken away") == rank_of(one, "Jammed")
    with pytest.raises(BackcutError, match=r'"Zig" is no sentence of this book\. Name one .*: A Dribble, B Flash'):
        rank_of(one, "Zig")
