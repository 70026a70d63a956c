"""Every kind of problem in a book: where it is, what is wrong, what would be right; all of them at once."""

from __future__ import annotations

import pytest

from backcut.motion.squads import SQUADS
from backcut.offence.problems import Code, Problem
from backcut.offence.reading import book_from_text

from .invented import SOUND
from .one_problem import CUT, FOUR, HEAD, INSIDE, ONE_PROBLEM, REST, TWO_INSIDE


def problems(text: str) -> tuple[Problem, ...]:
    return book_from_text(text, SQUADS)[1]


def test_a_sound_book_has_no_problems() -> None:
    assert problems(SOUND) == ()


@pytest.mark.parametrize(
    ("text", "line", "column", "code", "wrong", "right"), list(ONE_PROBLEM.values()), ids=list(ONE_PROBLEM)
)
def test_a_problem_names_its_place_what_is_wrong_and_what_would_be_right(
    text: str, line: int, column: int, code: Code, wrong: str, right: str
) -> None:
    (problem,) = problems(text)
    assert (problem.line, problem.column, problem.code) == (line, column, code)
    assert wrong in problem.wrong
    assert right in problem.right


def test_no_kind_of_problem_is_without_a_book_that_shows_it() -> None:
    assert {row[3] for row in ONE_PROBLEM.values()} == set(Code)


def test_three_nearest_sentences_are_offered() -> None:
    (problem,) = problems(HEAD + REST + "When I pass, I cut.\n")
    assert problem.right.startswith('The nearest sentences are: "When ')
    assert problem.right.count('"') == 6


def test_all_problems_are_listed_at_once_in_order_of_place() -> None:
    found = problems(
        "Formation: six-out\n"
        "Exit: nowhere\n"
        "7 never cuts.\n"
        "  Why: nobody knows\n"
        "Jump. When I pass to the next spot, I jump.\n"
        "Otherwise I hold, wide, feet set.\n"
        "When I skip the ball, I cut to the rim.\n"
        "Denial mark: 3\n"
        "!\n"
    )
    assert [(problem.line, problem.column, problem.code) for problem in found] == [
        (1, 1, Code.MISSING),
        (1, 1, Code.UNKNOWN_VALUE),
        (2, 1, Code.UNKNOWN_VALUE),
        (3, 1, Code.NOBODY),
        (4, 3, Code.NOTE_ALONE),
        (5, 39, Code.UNKNOWN_SENTENCE),
        (7, 1, Code.NEVER_FIRES),
        (8, 1, Code.UNKNOWN_VALUE),
        (9, 1, Code.UNKNOWN_WORD),
    ]


def test_a_misspelt_sentence_is_not_told_again_as_missing() -> None:
    found = problems(HEAD + "When to fill: at once\nWhen the next spot is empty, I fill it.\nOtherwise I sit.\n")
    assert [problem.code for problem in found] == [Code.UNKNOWN_SENTENCE, Code.UNKNOWN_SENTENCE]


def test_the_note_of_a_misspelt_sentence_is_not_given_to_the_one_above() -> None:
    book, found = book_from_text(
        HEAD + CUT + "  Why: the pass\nOtherwise I sit.\n  Why: tired\n  Mistake: asleep\n" + REST
    )
    assert [problem.code for problem in found] == [Code.UNKNOWN_SENTENCE]
    assert (book.sentences[0].why, book.sentences[0].mistake) == ("the pass", None)


def test_a_number_that_stays_inside_takes_the_inside_place_and_is_no_problem() -> None:
    book, found = book_from_text(FOUR + "3 stays inside.\n" + INSIDE + REST)
    assert found == ()
    assert book.start().player(3).at == "Rb"
    assert book.start().player(5).at == "LW"


def test_two_sentences_for_two_inside_are_wanted_where_two_are_inside() -> None:
    three = HEAD.replace("five-out", "three-out")
    assert problems(three + TWO_INSIDE + REST) == ()
    assert [problem.code for problem in problems(three + INSIDE + REST)] == [Code.NEVER_FIRES]


def test_a_problem_is_said_in_one_line_with_its_place() -> None:
    (problem,) = problems(SOUND + "Court: moon\n")
    assert str(problem).startswith('9:1  No court is called "moon"')
    assert problem.to_dict()["code"] == "unknown value"


def test_two_sentences_that_choose_differently_contradict_each_other() -> None:
    found = problems(
        SOUND.replace(
            "I fill it.",
            "I fill it at once.\nWhen the next spot toward the ball is empty, I fill it after a count of two.",
        )
    )
    assert [(problem.line, problem.code) for problem in found] == [(7, Code.SAID_TWICE), (7, Code.CONTRADICTION)]
    assert 'C chooses "count of two" for when to fill, B chose "at once"' in found[1].wrong


@pytest.mark.parametrize(
    ("general", "special"),
    [
        (CUT, "When I pass out of the corner, I cut and come back."),
        (
            "When I am one pass away and my defender denies me, I back cut.",
            "When I am denied in the corner, I go through.",
        ),
        (
            "When I am one pass away and my defender denies me, I back cut.",
            "When I am denied on my way to fill, I back cut.",
        ),
        (
            "When I catch the ball, I face the rim and hold for a count of one.",
            "When I have the ball and both players beside me are denied, I dribble at one of them.",
        ),
    ],
)
def test_a_special_case_below_the_general_sentence_can_never_speak(general: str, special: str) -> None:
    general = general.strip()
    (problem,) = problems(f"{HEAD}\n{general}\n{special}\n{REST}\n")
    assert problem.code is Code.NEVER_FIRES
    assert "B can never speak: A above it" in problem.wrong
    assert problems(f"{HEAD}\n{special}\n{general}\n{REST}\n") == ()


def test_a_corner_that_holds_speaks_from_below_the_cut() -> None:
    assert problems(f"{HEAD}\n{CUT}\nWhen I pass out of the corner, I hold.\n{REST}\n") == ()
