"""The result as a code: what goes in comes out, and no slip of the pen gets through."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as some
from tests.engine.floor import book

from backcut.offence.library import presets
from backcut.teaching.quizzes import CodeError, Result, results
from backcut.teaching.quizzes.code import ALPHABET, ASKED, BOOKS, SENTENCES, SHIRTS, book_number, read, written

_COUNT = some.integers(0, ASKED - 1).flatmap(lambda asked: some.tuples(some.integers(0, asked), some.just(asked)))
RESULTS = some.builds(
    Result,
    some.integers(0, SHIRTS - 1),
    some.integers(0, BOOKS - 1),
    some.lists(_COUNT, max_size=SENTENCES - 1).map(tuple),
)


@given(RESULTS)
def test_a_code_says_what_was_put_into_it(result: Result) -> None:
    code = written(result)
    assert read(code) == result
    assert all(len(group) == 4 for group in code.split("-")[:-1])


@given(RESULTS, some.data())
def test_one_wrong_character_is_found(result: Result, data: some.DataObject) -> None:
    code = written(result)
    place = data.draw(some.integers(0, len(code) - 1))
    wrong = data.draw(some.sampled_from(ALPHABET))
    assume(code[place] != "-" and wrong != code[place])
    with pytest.raises(CodeError, match=r"mistyped|no code"):
        read(code[:place] + wrong + code[place + 1 :])


@given(RESULTS, some.data())
def test_two_characters_that_changed_places_are_found(result: Result, data: some.DataObject) -> None:
    code = written(result).replace("-", "")
    place = data.draw(some.integers(0, len(code) - 2))
    one, other = code[place], code[place + 1]
    assume(one != other)
    with pytest.raises(CodeError, match=r"mistyped|no code"):
        read(code[:place] + other + one + code[place + 2 :])


@pytest.mark.parametrize("code", ["", "ABC", "hello world, coach", "7EVR", "!!!!-!!!!", "0000-0000"])
def test_what_is_no_code_is_refused_in_one_sentence(code: str) -> None:
    with pytest.raises(CodeError) as told:
        read(code)
    assert "\n" not in str(told.value)


def test_small_letters_blanks_and_the_letters_that_look_like_digits_are_understood() -> None:
    result = Result(23, 1 << 19, ((1, 2), (3, 3)))
    code = written(result)
    assert read(code.lower().replace("-", " ")) == result
    assert read(code.replace("0", "O").replace("1", "l")) == result


def test_every_shipped_book_has_a_number_of_its_own() -> None:
    assert len({book_number(book(name)) for name in presets()}) == len(presets())


def test_codes_of_another_book_and_mistyped_ones_are_told_apart_and_the_last_of_a_shirt_counts() -> None:
    ours, theirs = book("first-month"), book("school-team")

    def code(shirt: int, right: int, number: int, many: int) -> str:
        return written(Result(shirt, number, ((right, 3),) + ((0, 0),) * (many - 1)))

    first, second = (code(7, right, book_number(ours), len(ours.sentences)) for right in (1, 3))
    stranger = code(8, 2, book_number(theirs), len(theirs.sentences))
    broken = first[:-1] + ("2" if first[-1] != "2" else "3")
    found = results([first, broken, stranger, "", second], [ours, theirs])
    assert found.book is ours
    assert found.by_shirt == {7: read(second)}
    assert [given for given, _ in found.mistyped] == [broken]
    assert found.other == [stranger]
    assert found.again == [7]
    assert found.total(0) == (3, 3)
    assert found.asked == [0]
