"""Reading load: how many pictures a player must tell apart, spot by spot."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from tests.engine.floor import book, opened

from backcut.offence.book import Book
from backcut.prove.depth import Depth
from backcut.prove.load import Load, load
from backcut.prove.walk import walk


def load_of(this: Book, depth: Depth = Depth.SETTLED) -> Load:
    """The reading load of a book at a depth."""
    return load(walk(this, depth))


def said(found: Load, spot: str) -> set[str]:
    """The pictures of a spot as a coach reads them."""
    return {f"{picture.letter} {picture.words}" for picture in found.spots[spot]}


def test_in_the_first_month_every_spot_has_three_pictures() -> None:
    # Counted by hand: I passed, so I cut; the next spot toward the ball is empty, so I move up; else I hold.
    found = load_of(opened("first-month"))
    assert said(found, "corner") == {"A cuts to the rim", "C moves up to the wing", "D holds"}
    assert said(found, "wing") == {"A cuts to the rim", "C moves up to the top", "D holds"}
    assert said(found, "top") == {"A cuts to the rim", "C moves up to the wing", "D holds"}
    assert (found.most, found.total) == (3, 9)
    assert found.line == "Reading load: corner 3, wing 3, top 3 (3 pictures at the most)"


@pytest.mark.parametrize("depth", [Depth.SETTLED, Depth.DENIED])
def test_the_first_month_asks_less_of_every_spot_than_the_school_team(depth: Depth) -> None:
    young, old = load_of(opened("first-month"), depth), load_of(opened("school-team"), depth)
    assert list(young.spots) == list(old.spots)
    assert all(len(young.spots[spot]) < len(old.spots[spot]) for spot in young.spots)
    assert young.most < old.most


def test_a_sentence_about_the_corner_alone_is_a_picture_of_the_corner_alone() -> None:
    plain, more = load_of(opened("five-out")), load_of(book("five-out", "corner pass"))
    # It takes the place of the cut there: as many pictures as before, and none for anybody else.
    assert {spot: len(pictures) for spot, pictures in plain.spots.items()} == {
        spot: len(pictures) for spot, pictures in more.spots.items()
    }
    assert "A cuts to the rim" in said(more, "corner")
    assert not any(picture.letter == "A" for spot in ("wing", "top") for picture in more.spots[spot])


def test_a_back_cut_is_a_picture_only_where_denials_are_looked_at() -> None:
    this = opened("five-out")
    settled, denied = load_of(this), load_of(this, Depth.DENIED)
    assert all(said(denied, spot) - said(settled, spot) == {"B back cuts"} for spot in ("corner", "wing", "top"))


def test_another_way_or_time_of_the_same_run_is_no_other_picture() -> None:
    # The four-out passer's defender jumps to the ball, and the cut goes behind: still one cut.
    found = said(load_of(opened("four-out-school-team"), Depth.DENIED), "slot")
    assert sum("cuts to the rim" in picture for picture in found) == 1


def test_inside_players_have_pictures_of_their_own_places() -> None:
    spots = list(load_of(opened("two-bigs")).spots)
    assert spots[:3] == ["corner", "wing", "top"]
    assert {"block", "elbow"} <= set(spots[3:])
    assert "J moves inside, to the block on the other side" in said(load_of(opened("four-out-school-team")), "block")


def test_left_and_right_are_one_picture_and_numbers_do_not_matter() -> None:
    this = opened("school-team")
    apart = load(walk(replace(this, title="unfolded"), Depth.SETTLED, mirrored=False))
    assert apart.spots == load_of(this).spots


def test_the_reading_load_as_data() -> None:
    data = json.loads(json.dumps(load_of(opened("first-month")).to_dict()))
    assert data["depth"] == "settled"
    assert (data["most"], data["total"]) == (3, 9)
    assert data["spots"]["top"][0] == {"letter": "A", "says": "cuts to the rim"}
