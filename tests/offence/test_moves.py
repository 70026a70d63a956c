"""The move list: every form a coach may write, and one clear error with its column for what cannot be read."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from backcut.court.spots import PERIMETER, Spot
from backcut.errors import NotationError
from backcut.offence.event import MOST_BEATS, PASSES, Event, EventKind
from backcut.offence.formation import formation
from backcut.offence.meanings import EVENT_MEANINGS
from backcut.offence.moves import Move, move_text, moves_from_text
from backcut.offence.situation_text import situation_from_text

from .invented import CALMLY

START = formation("five-out").situation()
#: 1 has passed to 2 and waits in the lane, 3 follows on the way to the rim.
CUTTERS = situation_from_text(
    "1:R(in the lane from T, left of the ball) 2:RW* 3:R(cutting from LW, left of the ball, in 1) 4:RC 5:LC"
)


def read(text: str) -> Move:
    (move,) = moves_from_text(text)
    return move


def forms_in_the_error() -> list[str]:
    with pytest.raises(NotationError) as error:
        moves_from_text("?")
    return [form for form in re.findall(r'"([^"]+)"', str(error.value)) if form not in ("?", "early", "after 2 beats")]


@pytest.mark.parametrize("form", forms_in_the_error())
def test_every_form_the_error_offers_is_read(form: str) -> None:
    assert read(form).text == form
    early = read(f"early {form}")
    assert early == replace(read(form), text=f"early {form}", early=True)
    after = read(f"after 2 beats {form}")
    assert after == replace(read(form), text=f"after 2 beats {form}", after=2)


def test_the_error_offers_a_form_for_every_kind_of_event() -> None:
    kinds = {read(form).kind for form in forms_in_the_error()} - {EventKind.PASS}
    assert kinds == set(EventKind) - PASSES


@pytest.mark.parametrize("kind", EventKind)
def test_the_form_in_the_reference_is_read(kind: EventKind) -> None:
    assert read(EVENT_MEANINGS[kind].written).kind is (EventKind.PASS if kind in PASSES else kind)


@pytest.mark.parametrize(
    ("text", "passer", "catcher"),
    [
        ("T>RW", 1, 2),
        ("1>2", 1, 2),
        ("top>right wing", 1, 2),
        ("the top > the right  wing", 1, 2),
        ("t>rw", 1, 2),
        ("1>Left Corner", 1, 5),
        ("1>LC", 1, 5),
    ],
)
def test_players_are_named_by_number_by_id_or_by_the_coachs_name(text: str, passer: int, catcher: int) -> None:
    assert read(text).event(START) == Event(EventKind.PASS, passer, catcher)


@pytest.mark.parametrize("text", ["1>3", "1>cutter", "RW>cutter", "2>CUTTER"])
def test_the_cutter_is_the_first_one_in(text: str) -> None:
    event = read(text.replace("1>3", "2>1").replace("1>cutter", "2>cutter")).event(CUTTERS)
    assert (event.player, event.receiver) == (2, 1)


@pytest.mark.parametrize(
    ("text", "event"),
    [
        ("deny 2", Event(EventKind.DENY, 2)),
        ("deny RW+LW", Event(EventKind.DENY, 2, also=(3,))),
        ("DENY 2 + left wing + 5", Event(EventKind.DENY, 2, also=(3, 5))),
        ("sag rc", Event(EventKind.SAG, 4)),
        ("jump T", Event(EventKind.JUMP, 1)),
        ("free right corner", Event(EventKind.FREE, 4)),
        ("jam 1", Event(EventKind.JAM, 1)),
        ("forget 4+5", Event(EventKind.FORGET, 4, also=(5,))),
        ("dribble 1>RW", Event(EventKind.DRIBBLE, 1, spot=Spot.RW)),
        ("dribble top>right wing", Event(EventKind.DRIBBLE, 1, spot=Spot.RW)),
        ("dribble 1>2", Event(EventKind.DRIBBLE, 1, spot=Spot.RW)),
        ("early dribble 1 > rs", Event(EventKind.DRIBBLE, 1, spot=Spot.RS, early=True)),
        ("lay-up", Event(EventKind.LAY_UP, 1)),
        ("layup", Event(EventKind.LAY_UP, 1)),
        ("Shot", Event(EventKind.SHOT, 1)),
        ("shot 2", Event(EventKind.SHOT, 2)),
        ("turnover", Event(EventKind.TURNOVER, 1)),
        ("early deny 3", Event(EventKind.DENY, 3, early=True)),
        ("after 2 beats 1>RW", Event(EventKind.PASS, 1, 2, after=2)),
        ("after 1 beat deny 2+3", Event(EventKind.DENY, 2, also=(3,), after=1)),
        ("after 0 beats dribble T>RW", Event(EventKind.DRIBBLE, 1, spot=Spot.RW, after=0)),
        ("After  60 Beats shot", Event(EventKind.SHOT, 1, after=60)),
        ("after 1 beats jam 1", Event(EventKind.JAM, 1, after=1)),
        ("after3beatsT>RW", Event(EventKind.PASS, 1, 2, after=3)),
    ],
)
def test_every_move_says_its_event(text: str, event: Event) -> None:
    assert read(text).event(START) == event


_NUMBERS = st.integers(1, 5)
_KINDS = sorted(set(EventKind) - PASSES - {EventKind.DRIBBLE})
_WHATS = (
    st.builds(Event, st.just(EventKind.PASS), _NUMBERS, _NUMBERS)
    | st.builds(Event, st.just(EventKind.DRIBBLE), _NUMBERS, spot=st.sampled_from(PERIMETER))
    | st.builds(Event, st.sampled_from(_KINDS), _NUMBERS)
    | st.builds(Event, st.just(EventKind.DENY), _NUMBERS, also=st.lists(_NUMBERS, max_size=3).map(tuple))
)
#: Early, or after some beats, or neither: never both.
_WHENS = st.booleans() | st.integers(0, MOST_BEATS)
EVENTS = st.builds(
    lambda what, when: replace(what, early=when) if isinstance(when, bool) else replace(what, after=when),
    _WHATS,
    _WHENS,
)


@CALMLY
@given(st.lists(EVENTS, min_size=1, max_size=6), st.sampled_from((",", ", ", " ,  ", ",\n")))
def test_a_written_move_list_is_read_back(events: list[Event], comma: str) -> None:
    text = comma.join(map(move_text, events))
    moves = moves_from_text(text)
    assert [move.event(START) for move in moves] == events
    assert [move.text for move in moves] == [move_text(event) for event in events]
    for move in moves:
        assert text[move.column - 1 :].startswith(move.text)


def test_a_pass_to_a_cutter_is_written_so_that_it_comes_while_the_cutter_is_in_the_lane() -> None:
    move = read(move_text(Event(EventKind.TO_CUTTER, 2, 1)))
    assert (move.text, move.early) == ("early 2>1", True)


@pytest.mark.parametrize(
    ("beats", "text"), [(0, "after 0 beats 2>1"), (1, "after 1 beat 2>1"), (7, "after 7 beats 2>1")]
)
def test_what_comes_after_so_many_beats_is_not_written_early_too(beats: int, text: str) -> None:
    for event in (Event(EventKind.TO_CUTTER, 2, 1), Event(EventKind.PASS, 2, 1, early=True)):
        move = read(move_text(replace(event, after=beats)))
        assert (move.text, move.early, move.after) == (text, False, beats)


@pytest.mark.parametrize("what", ["1>cutter", "T>RW", "deny 3", "shot"])
def test_a_move_says_when_it_comes_before_its_situation_is_known(what: str) -> None:
    plain, early, after = (read(f"{when}{what}").to_come() for when in ("", "early ", "after 3 beats "))
    assert (plain.early, plain.after) == (False, None)
    assert early == replace(plain, early=True)
    assert after == replace(plain, after=3)


@pytest.mark.parametrize("beats", [61, 999])
def test_more_beats_than_any_book_needs_are_refused_with_the_move_and_its_column(beats: int) -> None:
    with pytest.raises(NotationError) as error:
        moves_from_text(f"T>RW, after {beats} beats RW>T")
    assert str(error.value) == (
        f'Move "after {beats} beats RW>T" (column 7): All have settled long before {beats} beats. '
        "Write 60 or fewer, or leave it out: then the move comes when all have settled."
    )


def test_a_comma_at_the_end_does_no_harm() -> None:
    assert len(moves_from_text("T>RW, RW>T,")) == 2


@pytest.mark.parametrize(
    ("text", "column", "here"),
    [
        ("T>RW, pass 3", 7, '"pass 3"'),
        ("T>RW RW>T", 6, '"RW>T"'),
        ("T>RW,, RW>T", 6, '", RW>T"'),
        ("T>XX", 3, '"XX"'),
        ("deny", 5, "it ends too early"),
        ("T>RW, 1>  ", 9, "it ends too early"),
        ("deny 2+", 8, "it ends too early"),
        ("deny 2 3", 8, '"3"'),
        ("dribble 1", 10, "it ends too early"),
        ("jam²", 4, '"²"'),
        ("T>RW; RW>T", 5, '"; RW>T"'),
        ("early", 6, "it ends too early"),
        ("after 2 beats", 14, "it ends too early"),
        ("after T>RW", 7, '"T>RW"'),
        ("after beats T>RW", 7, '"beats T>RW"'),
        ("after 2 T>RW", 9, '"T>RW"'),
        ("after 1000 beats T>RW", 7, '"1000 beats T>RW"'),
        ("after -1 beats T>RW", 7, '"-1 beats T>RW"'),
        ("early after 2 beats T>RW", 7, '"after 2 beats T>RW"'),
        ("after 2 beats early T>RW", 15, '"early T>RW"'),
        ("1>" + "9" * 5000, 3, '"' + "9" * 24 + '"'),
    ],
)
def test_what_cannot_be_read_is_shown_with_its_column(text: str, column: int, here: str) -> None:
    with pytest.raises(NotationError) as error:
        moves_from_text(text)
    assert str(error.value).startswith(f"The move list cannot be read at column {column}: {here}. A move is ")


@pytest.mark.parametrize("text", ["", "  ", "\n"])
def test_an_empty_list_is_no_list(text: str) -> None:
    with pytest.raises(NotationError, match="The move list is empty"):
        moves_from_text(text)


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("T>RW, 1>9", r'Move "1>9" \(column 7\): Nobody wears 9; on the floor are 1, 2, 3, 4, 5\.'),
        ("early deny 9", r'Move "early deny 9" \(column 1\): Nobody wears 9'),
        ("T>RW, T > LS", r'Move "T > LS" \(column 7\): Nobody stands at the left slot; there are 1 T, 2 RW'),
        ("1>cutter", r'Move "1>cutter" \(column 1\): Nobody is cutting'),
        ("1>rim", r'Move "1>rim" \(column 1\): Nobody stands at the rim'),
    ],
)
def test_a_player_who_is_not_there_is_named_with_the_move_and_its_column(text: str, error: str) -> None:
    with pytest.raises(NotationError, match=error):
        [move.event(START) for move in moves_from_text(text)]


#: Texts about time only: none of them ends in a move.
_ODD_WHENS = st.lists(st.sampled_from(("early ", "after ", "2 ", "0", " beats ", "beat")), max_size=6).map("".join)


@CALMLY
@given(st.text(alphabet="TRWLC123>+,-! denysagjmpfrlbituovh²", max_size=30) | st.text(max_size=30) | _ODD_WHENS)
@example("early early T>RW")
def test_no_text_is_too_odd_for_one_clear_error(text: str) -> None:
    told = ""
    try:
        assert moves_from_text(text)
    except NotationError as error:
        told = str(error)
    assert not told or told.startswith("The move list ")
