"""What has been walked through this evening, counted against everything the book can come to."""

from __future__ import annotations

from itertools import pairwise

import pytest

from backcut.engine.explore import KINDS, explore
from backcut.engine.play import play
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.offence.library import open_book, preset_text
from backcut.offence.moves import moves_from_text
from backcut.offence.reading import book_from_text
from backcut.web.seen import Seen, reachable


def named(name: str) -> Book:
    book, problems = open_book(name)
    assert not problems
    return book


def written(text: str) -> Book:
    book, problems = book_from_text(text)
    assert not problems
    return book


def walked(book: Book, moves: str, before: Seen | None = None) -> Seen:
    return (before or Seen()).with_steps(book, play(book, book.start(), moves_from_text(moves)))


def row(seen: Seen, book: Book, kind: str) -> tuple[int, int]:
    found = next(row for row in seen.rows(book) if row["kind"] == kind)
    return found["seen"], found["all"]


@pytest.mark.parametrize("name", ["first-month", "school-team", "four-out-school-team", "two-bigs"])
def test_every_line_up_that_counting_finds_one_by_one_is_there_and_no_other(name: str) -> None:
    book = named(name)
    kinds = {EventKind.PASS, EventKind.DENY}
    kinds |= {EventKind.SKIP} if "skip pass" in book.rules.names else set()
    kinds |= {EventKind.DRIBBLE} if "dribble at" in book.rules.names else set()
    assert kinds <= set(KINDS)
    _, found = explore(book, frozenset(kinds))
    assert reachable(book).line_ups == set(found)


def test_who_is_excepted_by_number_is_told_apart() -> None:
    book = written(preset_text("four-out-school-team") + "\n4 never fills a corner.\n")
    kinds = frozenset({EventKind.PASS, EventKind.SKIP, EventKind.DENY, EventKind.DRIBBLE})
    assert reachable(book).line_ups == set(explore(book, kinds)[1])


def test_five_spots_have_eight_neighbour_passes_and_twelve_skips() -> None:
    """Counted by hand: four pairs of neighbours and six pairs farther apart, each both ways."""
    seen, book = Seen(), named("school-team")
    assert row(seen, book, "pass") == (0, 8)
    assert row(seen, book, "skip") == (0, 12)
    assert row(seen, book, "deny") == (0, 8)


def test_a_book_without_a_sentence_for_skips_counts_none() -> None:
    assert [row["kind"] for row in Seen().rows(named("first-month"))] == ["pass"]


def test_the_boxes_are_the_neighbour_passes_from_left_to_right() -> None:
    book = named("school-team")
    rows = Seen().rows(book)[0]
    ring = [spot.title for spot in book.formation.ring]
    both = [f"{a} to {b}" for a, b in pairwise(ring)] + [f"{b} to {a}" for a, b in pairwise(ring)]
    assert sorted(box["label"] for box in rows["boxes"]) == sorted(both)
    assert [box["label"] for box in rows["boxes"]][:2] == ["left corner to left wing", "left wing to left corner"]


def test_each_pass_fills_its_own_box_and_twice_the_same_fills_one() -> None:
    book = named("school-team")
    once = walked(book, "T>RW")
    assert row(once, book, "pass") == (1, 8)
    assert row(walked(book, "T>RW", once), book, "pass") == (1, 8)
    assert row(walked(book, "T>LW", once), book, "pass") == (2, 8)
    assert sum(once.to_dict(book)["boxes"]) == 1


def test_a_skip_is_no_neighbour_pass() -> None:
    book = named("school-team")
    seen = walked(book, "T>RC")
    assert (row(seen, book, "pass"), row(seen, book, "skip")) == ((0, 8), (1, 12))


def test_two_denials_at_once_are_two() -> None:
    book = named("school-team")
    assert row(walked(book, "deny 2+3"), book, "deny") == (2, 8)


def test_the_words_count_the_passes_first_and_the_line_ups_last() -> None:
    book = named("first-month")
    said = walked(book, "T>RW, RW>T").words(book)
    assert said == "2 of 8 neighbour passes. 3 of 600 line-ups."


def test_a_possession_that_was_seen_before_changes_nothing() -> None:
    book = named("school-team")
    seen = walked(book, "T>RW, RW>RC")
    assert walked(book, "T>RW", seen) is seen


def test_an_edit_of_the_book_keeps_what_was_walked_through() -> None:
    before = named("school-team")
    after = written(preset_text("school-team").replace("the first open spot", "the end of the line"))
    seen = walked(before, "T>RW, RW>T")
    assert row(seen, after, "pass") == (2, 8)


def test_another_formation_counts_only_what_it_has_too() -> None:
    seen = walked(named("school-team"), "T>RW, RW>RC")
    four = named("four-out-school-team")
    # There is no top in four-out, and wing to corner is a neighbour pass in both.
    assert row(seen, four, "pass")[0] == 1


def test_behind_a_hole_nothing_counts_as_within_reach_but_the_pass_itself_does() -> None:
    book = written(preset_text("first-month").replace("first open spot", "corner opposite where I came from"))
    assert len(reachable(book).line_ups) < 600
    assert row(Seen(), book, "pass") == (0, 8)


def test_a_pass_that_was_interrupted_is_no_line_up_yet() -> None:
    book = named("school-team")
    whole, early = walked(book, "T>RW, RW>RC"), walked(book, "T>RW, after 1 beat RW>RC")
    assert len(early.line_ups) < len(whole.line_ups)
    assert row(early, book, "pass") == row(whole, book, "pass")


def test_a_book_that_cannot_be_started_has_nothing_to_walk_through() -> None:
    book, problems = book_from_text(preset_text("school-team") + "\n4 stays inside.\n")
    assert problems
    told = Seen().to_dict(book)
    assert (told["words"], told["boxes"]) == ("", [])
