"""Every change: what it makes of the floor, that it lands where it belongs, and that nothing else is touched."""

from __future__ import annotations

from difflib import ndiff

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.web.floors import floor

from backcut.court.spots import Spot as Place
from backcut.errors import BackcutError
from backcut.offence.choices import CHOICES
from backcut.offence.library import presets
from backcut.offence.problems import Code
from backcut.web.changes import Change, Choose, Cut, Draw, Happen, Line, Role, Sentence, Show, Spot, Write, changed
from backcut.web.evening import DEMO
from backcut.web.floor import MOST_LINES, MOST_MOVES, Floor, book_text, played, read
from backcut.web.mark_line import mark_text


def demo(book: str = "school-team") -> Floor:
    return floor(", ".join(DEMO), book=book, start="1 T*; 2 RW; 3 LW; 4 RC; 5 LC")


def lines(before: str, after: str) -> list[str]:
    """What is another in the text, line by line: "- gone" and "+ new"."""
    return [line for line in ndiff(before.splitlines(), after.splitlines()) if line[:1] in "+-"]


def line(key: str, value: str | None) -> Line:
    return Line(kind="line", key=key, value=value)


def spot(name: str, x_m: float | None = None, y_m: float | None = None) -> Spot:
    return Spot(kind="spot", spot=name, x_m=x_m, y_m=y_m)


def role(words: str, on: bool) -> Role:
    return Role(kind="role", role=words, on=on)


# ── moves ───────────────────────────────────────────────────────────────


def test_a_move_cuts_off_what_came_after_the_moment_it_is_made_at() -> None:
    here = floor("1>2, 2>3, deny 4")
    assert changed(here, Happen(kind="happen", keep=1, move="2>1")).moves == ("1>2", "2>1")
    assert changed(here, Happen(kind="happen", keep=3, move="shot")).moves[:3] == here.moves


def test_a_move_may_name_spots_and_is_kept_as_it_was_made() -> None:
    then = changed(floor(), Happen(kind="happen", keep=0, move="T>RW"))
    assert played(then).steps[0].event.receiver == 2
    assert [step.text for step in played(then).steps] == list(then.moves)


def test_several_moves_at_once_come_one_after_the_other() -> None:
    assert len(changed(floor(), Happen(kind="happen", keep=0, move="1>2, 2>3, deny 4")).moves) == 3


@pytest.mark.parametrize("move", ["2>1", "jam 1", "deny 9", "1>1", "1>2, 1>2", "lay-up 1, 1>2", "early 1>cutter"])
def test_a_move_that_cannot_be_made_changes_nothing_and_says_why(move: str) -> None:
    with pytest.raises(BackcutError) as why:
        changed(floor(), Happen(kind="happen", keep=0, move=move))
    assert 'Move "' in str(why.value)
    assert str(why.value).endswith(".")


def test_the_book_is_never_touched_by_a_move() -> None:
    here = demo()
    for change in (
        Happen(kind="happen", keep=1, move="2>1"),
        Cut(kind="cut", keep=2),
        Draw(kind="draw", seed=3),
        Show(kind="show", moves="1>2"),
    ):
        assert changed(here, change).text == here.text


def test_to_go_back_leaves_the_moves_before_it() -> None:
    for keep in range(len(DEMO) + 2):
        assert changed(demo(), Cut(kind="cut", keep=keep)).moves == DEMO[:keep]


def test_the_same_seed_draws_the_same_possession_and_another_seed_others() -> None:
    drawn = [changed(floor(), Draw(kind="draw", seed=seed)).moves for seed in range(12)]
    assert drawn == [changed(floor(), Draw(kind="draw", seed=seed)).moves for seed in range(12)]
    assert len(set(drawn)) > 6


def test_another_possession_has_its_own_start_and_moves() -> None:
    then = changed(demo(), Show(kind="show", start=" 1 RW*; 2 T; 3 LW; 4 RC; 5 LC ", moves="1>2,, 2>3,"))
    assert (then.start, then.moves) == ("1 RW*; 2 T; 3 LW; 4 RC; 5 LC", ("1>2", "2>3"))


def test_a_possession_has_an_end() -> None:
    there_and_back = ("1>2", "2>1") * (MOST_MOVES // 2)
    here = Floor(floor().text, "", there_and_back)
    with pytest.raises(BackcutError, match=f"{MOST_MOVES} moves"):
        changed(here, Happen(kind="happen", keep=MOST_MOVES, move="shot"))
    with pytest.raises(BackcutError, match=f"{MOST_MOVES} moves"):
        changed(here, Show(kind="show", moves=", ".join([*there_and_back, "shot"])))


# ── the book ────────────────────────────────────────────────────────────


@pytest.mark.parametrize("book", presets())
@pytest.mark.parametrize(
    ("change", "new"),
    [
        (line("title", "Tuesday"), "Title: Tuesday"),
        (line("court", "NBA"), "Court: NBA"),
        (line("denial mark", "4.50 m"), "Denial mark: 4.50 m"),
        (spot("LW", -5.0, 3.5), "Left wing: 5.00 m left, 3.50 m out"),
        (role("4 never cuts", True), "4 never cuts."),
    ],
)
def test_a_line_lands_in_the_text_and_only_there(book: str, change: Change, new: str) -> None:
    here = demo(book)
    then = changed(here, change)
    assert (then.start, then.moves) == (here.start, here.moves)
    other = [text for text in lines(here.text, then.text) if text[2:].strip()]
    added = [text for text in other if text[0] == "+"]
    assert len(added) == 1
    key = new.partition(":")[0] if ":" in new else new
    assert added[0][2:].startswith(key)
    assert all(text[2:].startswith(key) for text in other)


@pytest.mark.parametrize("book", presets())
def test_what_is_put_back_leaves_the_book_as_it_means_now(book: str) -> None:
    here = demo(book)
    before, _ = read(here.text)
    for on, off in (
        (spot("LC", -6.0, 0.5), spot("LC")),
        (role("5 never cuts", True), role("5 never cuts", False)),
    ):
        there = changed(here, on)
        assert read(there.text)[0] != before
        back, problems = read(changed(there, off).text)
        assert back == before
        assert problems == ()


def test_a_moved_spot_is_where_the_coach_put_it() -> None:
    book, problems = read(changed(demo(), spot("LW", -5.25, 4.0)).text)
    assert problems == ()
    assert book.moved[Place.LW] == pytest.approx((-5.25, 4.0))


@pytest.mark.parametrize("mark_m", [-1.5, -0.05, 0.0, 0.35, 2.0])
def test_a_dragged_denial_mark_is_a_line_of_the_book(mark_m: float) -> None:
    here = demo()
    then = changed(here, line("denial mark", mark_text(mark_m)))
    book, problems = read(then.text)
    assert problems == ()
    assert book.mark_m == pytest.approx(mark_m)
    assert (then.start, then.moves) == (here.start, here.moves)
    assert all("ark" in text for text in lines(here.text, then.text) if text[2:].strip())


def test_half_a_place_is_none() -> None:
    for half in (spot("LW", -5.0), spot("LW", None, 4.0)):
        with pytest.raises(BackcutError, match="both x_m and y_m"):
            changed(demo(), half)


def test_an_exception_is_on_or_off_however_often_it_is_said() -> None:
    once = changed(demo(), role("4 never cuts", True))
    assert read(changed(once, role("4 never cuts", True)).text)[0] == read(once.text)[0]
    assert 4 in read(once.text)[0].exceptions.never_cuts
    assert changed(changed(once, role("4 never cuts", False)), role("4 never cuts", False)).text == demo().text


@pytest.mark.parametrize("name", CHOICES)
def test_a_choice_is_made_and_no_other(name: str) -> None:
    here = demo()
    before = read(here.text)[0].values
    for value in CHOICES[name].values:
        then = changed(here, Choose(kind="choose", name=name, value=value.name))
        book, problems = read(then.text)
        assert dict(book.values) == {**before, name: value.name}
        assert {problem.code for problem in problems} <= {Code.UNUSED_CHOICE}  # where no sentence asks for it yet
        assert (then.start, then.moves) == (here.start, here.moves)


@pytest.mark.parametrize("book", presets())
def test_a_sentence_off_and_on_again_is_the_same_book(book: str) -> None:
    here = demo(book)
    for place in range(len(read(here.text)[0].sentences)):
        off = changed(here, Sentence(kind="sentence", place=place, do="off"))
        assert len(read(off.text)[0].sentences) == len(read(here.text)[0].sentences) - 1
        on = changed(off, Sentence(kind="sentence", place=place, do="on"))
        assert read(on.text) == read(here.text)


@pytest.mark.parametrize("book", presets())
def test_a_sentence_moved_and_moved_back_is_the_same_book(book: str) -> None:
    here = demo(book)
    many = len(read(here.text)[0].sentences)
    for place in range(many):
        for to in range(many):
            there = changed(here, Sentence(kind="sentence", place=place, do="move", to=to))
            names = [sentence.phrase.name for sentence in read(there.text)[0].sentences]
            was = [sentence.phrase.name for sentence in read(here.text)[0].sentences]
            was.insert(to, was.pop(place))
            assert names == was
            back = changed(there, Sentence(kind="sentence", place=to, do="move", to=place))
            assert read(back.text)[0] == read(here.text)[0]


def test_a_note_is_a_note_of_its_sentence_and_the_rules_stay() -> None:
    here = demo()
    noted = changed(here, Sentence(kind="sentence", place=1, do="why", words="So that the corner is never empty."))
    assert read(noted.text)[0].sentences[1].why == "So that the corner is never empty."
    assert read(noted.text)[0].rules == read(here.text)[0].rules


def test_a_text_is_the_book_as_it_was_written_with_even_line_ends() -> None:
    wrote = "\ufeffTitle: Ours\r\nFormation: five-out\r\rWide. Otherwise I hold, wide, feet set."
    text = changed(demo(), Write(kind="text", text=wrote)).text
    assert text == "Title: Ours\nFormation: five-out\n\nWide. Otherwise I hold, wide, feet set.\n"


def test_a_book_longer_than_a_book_is_refused_however_it_gets_so_long() -> None:
    long = "#" + "é" * 31_990 + "\n"  # not 64 kB yet
    here = Floor(book_text(long), "", ())
    with pytest.raises(BackcutError, match="64 kB"):
        changed(here, Sentence(kind="sentence", place=0, do="add", words="Wide. Otherwise I hold, wide, feet set."))
    for text in (long + "x" * 100, "a\n" * (MOST_LINES + 1)):
        with pytest.raises(BackcutError, match="a few pages"):
            changed(here, Write(kind="text", text=text))


def test_half_a_book_can_be_put_on_the_floor_and_says_what_is_wrong_with_it() -> None:
    then = changed(demo(), Write(kind="text", text="When the moon is full, I howl."))
    assert read(then.text)[1]
    assert played(then).stuck or played(then).steps


@settings(max_examples=200, deadline=None)
@given(st.text(alphabet=st.characters(exclude_categories=["Cs"]), max_size=300))
def test_what_a_book_was_made_even_to_stays_as_it_is(text: str) -> None:
    try:
        even = book_text(text)
    except BackcutError:
        assert "\0" in text
        return
    assert book_text(even) == even
    assert even.endswith("\n")
    assert "\r" not in even
