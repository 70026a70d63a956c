"""Formations: rings, starts, smaller groups, and rings by choice."""

from __future__ import annotations

from itertools import combinations

import pytest

from backcut.court.spots import PERIMETER, Spot
from backcut.errors import NotationError, SituationError
from backcut.offence.formation import Formation, formation, formations
from backcut.offence.reading import book_from_text

from .one_problem import HEAD, REST

FOUR_SPOTS = (Spot.LW, Spot.LS, Spot.RS, Spot.RW)
THREE_SPOTS = (Spot.LW, Spot.T, Spot.RW)


@pytest.mark.parametrize(
    ("name", "spots", "outside", "inside"), [("five-out", 5, 5, 0), ("four-out", 6, 4, 1), ("three-out", 5, 3, 2)]
)
def test_every_formation_has_five_players_and_its_ring(name: str, spots: int, outside: int, inside: int) -> None:
    # Five spots five-out and three-out two-in, six four-out: common practice, no source.
    found = formation(name)
    assert (len(found.ring), len(found.start), len(found.inside)) == (spots, outside, inside)


@pytest.mark.parametrize("found", formations().values(), ids=formations())
def test_everybody_starts_on_a_spot_of_the_ring_or_inside_and_one_has_the_ball(found: Formation) -> None:
    start = found.situation()
    assert [player.number for player in start.players] == [1, 2, 3, 4, 5]
    assert len(set(start.spots().values())) == 5
    assert set(found.start) <= set(found.ring)
    assert not set(found.inside) & set(found.ring)
    assert start.holder.at is found.ball
    assert (start.ball, found.ball in found.ring) == (1, True)


@pytest.mark.parametrize(
    "said", ["five-out", "Five-Out", " five  out ", "open post", "four-out one-in", "three out two in"]
)
def test_a_formation_is_found_as_a_coach_says_it(said: str) -> None:
    assert formation(said).title


def test_a_misspelt_formation_is_told_the_nearest_and_all() -> None:
    with pytest.raises(NotationError, match=r'"for-out"\. Did you mean four-out\? .* five-out, four-out, three-out'):
        formation("for-out")


@pytest.mark.parametrize("players", [2, 3, 4])
@pytest.mark.parametrize("found", formations().values(), ids=formations())
def test_smaller_groups_stand_side_by_side_with_the_ball_among_them(found: Formation, players: int) -> None:
    small = found.on_ring(found.ring, players)
    places = sorted(found.ring.index(spot) for spot in small.start)
    assert len(places) == players
    assert small.ball in small.start
    assert small.situation().holder.number == 1
    if players != len(found.start):
        assert places == list(range(places[0], places[0] + players))


@pytest.mark.parametrize("size", [2, 3, 4, 5, 6, 7])
def test_any_ring_takes_two_players_to_as_many_as_it_has_spots(size: int) -> None:
    for ring in combinations(PERIMETER, size):
        for players in range(2, size + 1):
            small = formation("five-out").on_ring(ring, players)
            assert small.ring == ring
            assert len(set(small.start)) == players
            assert set(small.start) <= set(ring)
            assert small.ball is small.start[0]


@pytest.mark.parametrize(("size", "players"), [(3, 4), (3, 1), (5, 0), (1, 1), (1, 2)])
def test_a_ring_takes_no_fewer_and_no_more(size: int, players: int) -> None:
    with pytest.raises(SituationError, match=f"A ring of {size} spots takes 2 to {size} players, not {players}"):
        formation("five-out").on_ring(PERIMETER[:size], players)


@pytest.mark.parametrize("ring", [(Spot.T, Spot.LW), (Spot.LW, Spot.LW), (Spot.LW, Spot.N), (Spot.R, Spot.RB)])
def test_a_ring_names_perimeter_spots_from_left_to_right_each_once(ring: tuple[Spot, ...]) -> None:
    with pytest.raises(SituationError, match="is no ring: name perimeter spots from left to right"):
        formation("five-out").on_ring(ring, 2)


def test_four_out_is_a_book_on_four_spots_too() -> None:
    inside = "When I play inside, I go opposite the ball.\n"
    book, problems = book_from_text(
        HEAD.replace("five-out", "four-out") + "Ring: LW LS RS RW\nPlayers: 4\n" + inside + REST
    )
    assert problems == ()
    assert book.formation.ring == FOUR_SPOTS
    assert book.start().spots() == {1: Spot.LS, 2: Spot.RS, 3: Spot.LW, 4: Spot.RW, 5: Spot.RB}


@pytest.mark.parametrize("ring", ["LW T RW", "lw, t, rw", "left wing, top, right wing", "LW T RW."])
def test_three_out_is_a_book_on_three_spots_too(ring: str) -> None:
    two = "When two of us play inside, we keep opposite levels.\n"
    book, problems = book_from_text(HEAD.replace("five-out", "three-out") + f"Ring: {ring}\n" + two + REST)
    assert problems == ()
    assert book.formation.ring == THREE_SPOTS
    assert book.start().spots() == {1: Spot.T, 2: Spot.RW, 3: Spot.LW, 4: Spot.RB, 5: Spot.LE}


def test_eight_children_are_two_fours() -> None:
    book, problems = book_from_text(HEAD + "Players: 4\n" + REST)
    assert problems == ()
    assert len(book.start().players) == 4
    assert len(book.formation.ring) == 5


def test_a_shorter_ring_without_a_number_of_players_is_filled() -> None:
    book, problems = book_from_text(HEAD + "Ring: LW T RW\n" + REST)
    assert problems == ()
    assert book.start().spots() == {1: Spot.T, 2: Spot.RW, 3: Spot.LW}
