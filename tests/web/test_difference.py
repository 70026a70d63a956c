"""Before and now: the first moment in which the same possession goes otherwise is really the first."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from tests.web.floors import Visitor, client, floor

from backcut.engine.decide import decide
from backcut.engine.possession import Decision
from backcut.offence.choices import CHOICES
from backcut.offence.library import presets
from backcut.offence.reading import book_from_text
from backcut.web.changes import Change, Choose, Draw, Line, Role, Sentence, Show, changed
from backcut.web.difference import difference, first_difference
from backcut.web.evening import DEMO
from backcut.web.floor import Floor, played
from backcut.web.stops import told

ELBOW = Choose(kind="choose", name="fill path", value="through the elbow")
OPPOSITE = Choose(kind="choose", name="exit", value="opposite corner")


def demo(book: str = "school-team") -> Floor:
    return floor(", ".join(DEMO), book=book)


def edits(here: Floor) -> Iterator[Floor]:
    """The book with each other value of each choice, each sentence off, and each number kept from cutting."""
    sentences = len(played(here).book.sentences)
    every: list[Change] = [
        *(
            Choose(kind="choose", name=name, value=value.name)
            for name, choice in CHOICES.items()
            for value in choice.values
        ),
        *(Sentence(kind="sentence", place=place, do="off") for place in range(sentences)),
        *(Role(kind="role", role=f"{number} never cuts", on=True) for number in range(1, 6)),
    ]
    for change in every:
        yield changed(here, change)


def answers(decision: Decision) -> list[tuple[object, ...]]:
    return [(action.player, action.kind, action.target, action.route) for action in decision.actions]


@pytest.mark.parametrize("book", presets())
def test_the_first_difference_is_the_first_moment_the_new_book_decides_otherwise(book: str) -> None:
    """The old possession walked moment by moment, and the new book asked in each: it needs no second possession."""
    found = 0
    for here in (demo(book), changed(floor(book=book), Draw(kind="draw", seed=5))):
        was = played(here)
        for then in edits(here):
            new, _ = book_from_text(then.text)
            now = played(then)
            first = next(
                (
                    (number, beat)
                    for number, step in enumerate(was.steps)
                    for beat, old in enumerate(step.beats)
                    if answers(decide(new, old.before)) != answers(old.decision)
                ),
                None,
            )
            differs = first_difference(was, now)
            if first is None:
                # Nobody is told otherwise in any moment; at most the moments come at other times.
                assert differs is None or was.steps[differs[0]].beats != now.steps[differs[0]].beats
            elif differs is not None:
                assert differs <= first
                found += differs == first
            else:
                # The same moves are no longer possible, or what they mean has become another.
                number, _ = first
                assert len(now.steps) <= number or any(
                    a.event != b.event or a.before != b.before for a, b in zip(was.steps, now.steps, strict=False)
                )
    assert found


@pytest.mark.parametrize("book", presets())
def test_up_to_the_first_difference_both_possessions_are_the_same(book: str) -> None:
    here = demo(book)
    was = played(here)
    for then in edits(here):
        now = played(then)
        differs = first_difference(was, now)
        if differs is None:
            continue
        number, beat = differs
        assert [s.before for s in was.steps[: number + 1]] == [s.before for s in now.steps[: number + 1]]
        old, new = was.steps[number].beats, now.steps[number].beats
        assert [answers(b.decision) for b in old[:beat]] == [answers(b.decision) for b in new[:beat]]
        assert answers(old[beat].decision) != answers(new[beat].decision) or len(old) != len(new)


def test_a_book_that_says_the_same_goes_as_before() -> None:
    here = demo()
    noted = changed(here, Sentence(kind="sentence", place=0, do="why", words="It opens the lane."))
    titled = changed(here, Line(kind="line", key="title", value="Tuesday"))
    for then in (here, noted, titled):
        assert difference(told(here), told(then)) is None


def test_another_possession_is_none_of_its_before() -> None:
    here = demo()
    other = changed(changed(here, OPPOSITE), Show(kind="show", start="1 RW*; 2 T; 3 LW; 4 RC; 5 LC", moves="1>2"))
    assert difference(told(here), told(other)) is None


def test_another_way_to_fill_is_said_with_both_ways() -> None:
    here = floor("1>2")
    told_of = difference(told(here), told(changed(here, ELBOW)))
    assert told_of is not None
    assert (told_of.before.head, told_of.before.said) == ("Before", "3 fills the top along the arc (I)")
    assert (told_of.after.head, told_of.after.said) == ("Now", "3 fills the top through the elbow (I)")
    assert told_of.said == "Move 1: 3 fills the top along the arc (I). Now: 3 fills the top through the elbow (I)."
    for side in (told_of.before, told_of.after):
        assert side.still.startswith("<")


def test_a_hole_is_said_as_one() -> None:
    here = demo()
    told_of = difference(told(here), told(changed(here, OPPOSITE)))
    assert told_of is not None
    assert told_of.said == "Move 2: 2 comes out to the right corner (H). Now: 2 has no answer."


@pytest.mark.parametrize("book", presets())
def test_what_is_said_before_and_now_is_never_the_same(book: str) -> None:
    here = demo(book)
    for then in edits(here):
        told_of = difference(told(here), told(then))
        assert told_of is None or told_of.before.said != told_of.after.said


@pytest.mark.parametrize("book", presets())
def test_the_stop_that_is_pointed_at_lies_in_the_step_that_differs_and_not_after_it(book: str) -> None:
    here = demo(book)
    for then in edits(here):
        was, now = told(here), told(then)
        differs, at = difference(was, now), first_difference(was.played, now.played)
        if differs is None or at is None:
            continue
        assert 0 <= differs.stop < len(now.stops)
        assert now.stops[differs.stop].step == at[0] + 1
        runs = [r.start_s for r in now.show.timeline.runs if (r.step, r.beat) == at]
        if runs:
            assert now.show.moments[differs.stop].t_s <= min(runs) + 0.05


def test_an_edit_on_the_page_shows_before_and_now_and_a_move_does_not(tmp_path_factory: pytest.TempPathFactory) -> None:
    coach = Visitor(client(tmp_path_factory.mktemp("shelf")))

    def differs() -> str | None:
        told_of: dict[str, str] | None = coach.floor["differs"]
        return None if told_of is None else told_of["said"]

    assert coach.change({"kind": "choose", "name": "exit", "value": "opposite corner"}) == 200
    edited = differs()
    assert edited is not None
    assert edited.startswith("Move 2: ")
    assert coach.change({"kind": "cut", "keep": 2}) == 200
    assert differs() is None
    assert coach.back("undo") == 200
    assert differs() is None
    assert coach.back("undo") == 200
    back = differs()
    assert back is not None
    assert back.startswith("Move 2: ")
