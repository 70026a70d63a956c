"""The exit "the spot the filler left", and three books whose way out is one line. Computed; no federation prints it."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise, permutations
from pathlib import Path

import pytest

from backcut.court.spots import Spot
from backcut.engine.play import one_step
from backcut.offence.action import Kind
from backcut.offence.book import Book
from backcut.offence.event import Event
from backcut.offence.formation import formations
from backcut.offence.library import open_book
from backcut.offence.situation import Situation

from .everywhere import every_step
from .floor import answer, book, fills, full_ring, opened, played, ran, stands, troubles
from .likeness import decision_likeness, renumbered

RING = (Spot.LC, Spot.LW, Spot.T, Spot.RW, Spot.RC)
PASSES = [pass_ for one, other in pairwise(RING) for pass_ in ((one, other), (other, one))]
BOOKS = Path(__file__).parent.parent / "books"
NEAREST_FILLS = str(BOOKS / "nearest-fills.txt")


def full(ball: Spot) -> Situation:
    """Five on the full ring, 1 in the left corner to 5 in the right, the ball on a spot."""
    return full_ring(RING, ball)


def verdicts(this: Book) -> Counter[str]:
    """What comes of the passer on the eight neighbour passes: five spots, silent or clash."""
    found: Counter[str] = Counter()
    for begin, end in PASSES:
        [step] = played(this, f"{begin}>{end}", full(begin))
        kinds = {kind for kind, _ in troubles(step)}
        assert {player for _, player in troubles(step)} <= {RING.index(begin) + 1}
        assert bool(kinds) != (sorted(stands(step).values()) == sorted(RING))
        found[kinds.pop() if kinds else "five spots"] += 1
    return found


# Of eight neighbour passes (common practice, computed).
@pytest.mark.parametrize(
    ("name", "verdict"),
    [
        ("nearest-fills", {"five spots": 6, "silent": 2}),
        ("opposite-corner", {"five spots": 4, "silent": 2, "clash": 2}),
        ("opposite-own", {"five spots": 2, "silent": 2, "clash": 4}),
    ],
)
def test_a_book_with_a_one_line_way_out_reads_clean_and_breaks_on_the_floor(name: str, verdict: dict[str, int]) -> None:
    this, problems = open_book(str(BOOKS / f"{name}.txt"))
    assert problems == ()
    assert [sentence.phrase.name for sentence in this.sentences] == ["cut", "come out", "fill", "hold"]
    assert verdicts(this) == verdict


def test_every_book_of_the_tests_says_that_it_is_invented() -> None:
    files = sorted(BOOKS.glob("*.txt"))
    assert len(files) >= 3
    for file in files:
        assert file.read_text(encoding="utf-8").startswith("# Invented for the tests.")


@pytest.mark.parametrize(("begin", "end"), PASSES)
def test_one_player_moves_up_and_the_cutter_takes_that_players_spot(begin: Spot, end: Spot) -> None:
    [step] = played(opened(NEAREST_FILLS), f"{begin}>{end}", full(begin))
    passer = RING.index(begin) + 1
    if begin in (Spot.LC, Spot.RC):
        assert (fills(step), troubles(step)) == (set(), {("silent", passer)})
        assert answer(step, passer, len(step.beats) - 1).kind is Kind.NO_ANSWER
        return
    [filled] = fills(step)
    left, moved_into = filled.split(">")
    assert moved_into == begin
    assert ran(step)[passer] == ["cut R", f"come out {left}"]


def test_when_all_behind_move_up_it_is_the_spot_the_last_of_them_left() -> None:
    [step] = played(book(exit="filler's spot"), "T>RW", full(Spot.T))
    assert ran(step)[3] == ["cut R", "come out LC"]


def test_of_all_twenty_passes_it_is_silent_on_those_out_of_a_corner() -> None:
    this = book(exit="filler's spot", skip_passer="cut")
    for begin, end in permutations(RING, 2):
        [step] = played(this, f"{begin}>{end}", full(begin))
        silent = {("silent", RING.index(begin) + 1)} if begin in (Spot.LC, Spot.RC) else set()
        assert troubles(step) == silent, (begin, end)


def test_a_denied_player_takes_the_spot_of_the_one_who_fills_behind_and_in_the_corner_nobody_does() -> None:
    this = book(exit="filler's spot")
    [step] = played(this, "deny 4", full(Spot.T))
    assert ran(step)[4] == ["back cut R", "come out RC"]
    [step] = played(this, "deny 5", full(Spot.RW))
    assert troubles(step) == {("silent", 5)}


def test_dribbled_at_the_cutter_goes_on_the_way_of_the_dribble_first() -> None:
    this = book("three-out", exit="filler's spot")
    for spot, cutter, corner in ((Spot.RW, 2, Spot.RC), (Spot.LW, 3, Spot.LC)):
        [step] = played(this, f"dribble T>{spot}", "1:T* 2:RW 3:LW 4:Rb 5:Le")
        assert ran(step)[cutter] == ["back cut R", f"come out {corner}"]


@pytest.mark.parametrize("name", formations())
@pytest.mark.parametrize("who_fills", ["chain", "nearest only"])
def test_nobody_shares_a_spot_and_left_is_the_mirror_of_right_whoever_wears_which_number(
    name: str, who_fills: str
) -> None:
    this = book(name, exit="filler's spot", who_fills=who_fills)
    numbers = {1: 4, 2: 1, 3: 5, 4: 2, 5: 3}
    for step in every_step(this):
        for beat in step.beats:
            standing = [player.at for player in beat.before.players if player.at is not Spot.R]
            assert len(standing) == len(set(standing)), (step.before, step.text)
        across = one_step(this, step.before.mirrored(), mirrored(step.event))
        others = one_step(this, renumbered(step.before, numbers), called(step.event, numbers))
        for beat, mirror, other in zip(step.beats, across.beats, others.beats, strict=True):
            assert decision_likeness(mirror.decision) == decision_likeness(beat.decision, mirrored=True)
            assert decision_likeness(other.decision) == decision_likeness(beat.decision, numbers=numbers)


def mirrored(event: Event) -> Event:
    """The same event seen from the other side of the floor."""
    return Event(event.kind, event.player, event.receiver, event.spot and event.spot.mirror)


def called(event: Event, numbers: dict[int, int]) -> Event:
    """The same event under other numbers."""
    receiver = None if event.receiver is None else numbers[event.receiver]
    return Event(event.kind, numbers[event.player], receiver, event.spot)


@pytest.mark.parametrize("denied", ["1+5", "5+1", "3+5", "2+4"])
def test_two_who_cut_together_take_two_spots_whatever_their_numbers(denied: str) -> None:
    for ball in (Spot.T, Spot.RW, Spot.LW):
        if str(RING.index(ball) + 1) in denied:
            continue
        this = book(exit="filler's spot")
        [step] = played(this, f"deny {denied}", full(ball))
        standing = [spot for spot in stands(step).values() if spot != "R"]
        assert len(standing) == len(set(standing))


def test_the_sentence_is_read_and_the_silence_named() -> None:
    this = opened(NEAREST_FILLS)
    assert this.values["exit"] == "filler's spot"
    [step] = played(this, "RC>RW", full(Spot.RC))
    [trouble] = step.beats[-1].decision.troubles
    assert trouble.text == "No sentence says what 5 does, in the lane."
