"""`backcut prove A B`: how two books differ, and whether the younger stays true in the older."""

from __future__ import annotations

from .told import backcut


def test_the_younger_book_stays_true_in_the_older_one_and_they_differ() -> None:
    said = backcut("prove", "first-month", "school-team")
    assert (said.code, said.err) == (1, "")
    assert said.out.startswith("School team instead of First month: other runs in ")
    assert "\n\nFirst month stays true in School team.\n" in said.out
    data = backcut("prove", "first-month", "school-team", "--json").data
    differ = data["differences"]
    assert f"other runs in {differ['differing']:,} of {differ['moments']:,} moments" in said.out
    assert {one["sort"] for one in data["contradictions"]["differences"]} <= {"way", "time"}


def test_the_older_book_does_not_stay_true_in_the_younger_one() -> None:
    said = backcut("prove", "school-team", "first-month")
    assert said.code == 1
    assert "\n\nSchool team does not stay true in First month:\n" in said.out


def test_a_book_does_not_differ_from_itself() -> None:
    said = backcut("prove", "school-team", "school-team")
    assert (said.code, said.err) == (0, "")
    assert "other runs in 0 of " in said.out
    assert "School team, the first book stays true in School team, the second book." in said.out


def test_books_on_other_spots_are_told_so_once() -> None:
    said = backcut("prove", "five-out", "four-out")
    assert said.code == 1
    assert said.out.count("do not share a ring") == 1
