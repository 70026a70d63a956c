"""The quiz on paper: a still that gives nothing away, and a key."""

from __future__ import annotations

import pytest
from tests.engine.floor import book

from backcut.offence.library import presets
from backcut.picture.still import still
from backcut.teaching.quizzes import Ask, paper_quiz, quiz


@pytest.mark.parametrize("name", presets())
def test_every_paper_question_can_be_drawn_and_has_its_answer(name: str) -> None:
    this = book(name)
    on_paper = paper_quiz(this, 12, 1)
    assert [one.question.name for one in on_paper] == [q.name for q in quiz(this, 12, 1)]
    for one in on_paper:
        drawn = still(one.show, one.moment, one.steps, one.about)
        assert drawn.drawn
        assert one.answer
        assert one.because
        if one.question.ask in (Ask.WHERE, Ask.WHO):
            assert one.choices == ()
            runs = [arrow for arrow in one.moment.arrows if arrow.letter is not None]
            assert runs == [], "no arrow of the picture says where anybody goes"
        else:
            assert 3 <= len(one.choices) <= 4
            line = int(one.answer.split()[1].rstrip("."))
            assert one.question.choices[line - 1].right
