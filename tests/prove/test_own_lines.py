"""What a book asks to be proved: less, with other numbers, in the coach's own words; and what is wrong with that."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from backcut.errors import NotationError
from backcut.offence.problems import Code
from backcut.offence.reading import book_from_text
from backcut.prove.conditions.facts import FACTS
from backcut.prove.conditions.reference import FORMS, PLACES, SIDES, SPOTS, WHOM, conditions_page
from backcut.prove.conditions.sentence import own_from_text
from backcut.prove.own import Asked, asked_of, chosen, problems_of
from backcut.prove.proof import prove
from backcut.prove.property import Always, Property, properties

DOCS = Path(__file__).parents[2] / "docs"
BOOK = """\
Title: Sound
Formation: five-out
When I pass to the next spot, I cut to the rim.
When my cut is over, I come out to the first open spot.
When the next spot toward the ball is empty, I fill it at once.
Otherwise I hold, wide, feet set.
"""
KNOWN: dict[str, Property] = {
    prop.name: prop
    for prop in (
        Always("three seconds", "Nobody waits in the lane longer than {seconds} seconds.", "A rule.", {"seconds": 3.0}),
        Always(
            "two numbers", "At most {few} of {many} of us stand still", "None.", {"few": 1, "many": 4, "whatever": 0}
        ),
        Always("one to a spot", "Nobody is sent where somebody stands.", "None."),
    )
}


def asked(*lines: str) -> Asked:
    book, problems = book_from_text(BOOK + "\n".join(lines) + "\n")
    assert problems == ()
    return asked_of(book, KNOWN)


def numbers(asked: Asked) -> dict[str, dict[str, float]]:
    return {prop.name: dict(numbers) for prop, numbers in asked.properties}


def test_a_silent_book_asks_for_everything_that_is_shipped() -> None:
    assert numbers(asked()) == {name: dict(prop.numbers) for name, prop in KNOWN.items()}
    book, _ = book_from_text(BOOK)
    assert [prop.name for prop, _ in asked_of(book).properties] == list(properties())
    assert asked() == Asked(asked().properties, (), frozenset(), False)


def test_a_property_is_switched_off_by_its_name() -> None:
    assert list(numbers(asked("Do not prove: One To  A Spot."))) == ["three seconds", "two numbers"]


@pytest.mark.parametrize(
    ("line", "seconds"),
    [
        ("Nobody waits in the lane longer than 4 seconds.", 4.0),
        ("nobody WAITS in\n  the lane, longer than 2.5 seconds", 2.5),
        ("Nobody waits in the lane longer than 1 second.", 1.0),
        ("Nobody waits in the lane longer than five seconds.", 5.0),
        ("three seconds, with seconds at 6", 6.0),
        ("three seconds", 3.0),
    ],
)
def test_the_sentence_of_a_property_sets_its_number(line: str, seconds: float) -> None:
    read = asked(f"Prove: {line}")
    assert read.problems == ()
    assert numbers(read)["three seconds"] == {"seconds": seconds}


def test_a_number_that_is_not_in_the_sentence_is_set_behind_it() -> None:
    read = asked("Prove: At most 2 of 3 of us stand still, with whatever at 1.")
    assert numbers(read)["two numbers"] == {"few": 2, "many": 3, "whatever": 1}
    again = asked("Prove: two numbers with few at 3 and whatever at 1")
    assert numbers(again)["two numbers"] == {"few": 3, "many": 4, "whatever": 1}


def test_the_sentence_of_every_shipped_property_is_read_with_its_own_numbers() -> None:
    for prop in properties().values():
        book, _ = book_from_text(f"{BOOK}Prove: {prop.sentence(prop.numbers)}\n")
        read = asked_of(book)
        assert (read.problems, len(read.properties)) == ((), len(properties()))
        assert {p.name: n for p, n in read.properties}[prop.name] == prop.numbers


def test_own_properties_come_last_with_the_sentence_as_their_name() -> None:
    read = asked("Prove: never are  two of us\n  in the lane.", "Prove: Sometimes 5 has the ball at the right corner")
    assert [prop.sentence(set_) for prop, set_ in read.properties[len(KNOWN) :]] == [
        "Never are two of us in the lane.",
        "Sometimes 5 has the ball at the right corner.",
    ]
    assert [prop.kind for prop, _ in read.properties[len(KNOWN) :]] == ["always", "sometimes"]


def test_the_numbers_and_sides_that_are_spoken_of_are_told() -> None:
    assert asked("Prove: Never does 5 cut when 2 or 3 is denied.").named == {2, 3, 5}
    assert asked("Prove: Never are two of us in the lane.").named == frozenset()
    assert not asked("Prove: Never is a corner empty.", "Prove: Never is the far corner taken.").sided
    assert not asked("Prove: Never are four of us on one side or on the ball side.").sided
    assert asked("Prove: Never are four of us on the left side.").sided
    assert asked("Prove: Sometimes RC is empty.").sided


@pytest.mark.parametrize(
    ("line", "column", "code", "wrong", "right"),
    [
        ("Prove: Never is somebody denyed.", 26, Code.UNKNOWN_SENTENCE, 'on with "denyed."', 'mean "denied"?'),
        ("Prove: Always, in the", 16, Code.UNKNOWN_SENTENCE, 'on with "in the"', '"somebody"'),
        ("Prove: Always, the top is", 26, Code.UNKNOWN_SENTENCE, "ends too early", 'stand: "empty", "taken"'),
        ("Prove: Nobody waits in the lane longer than -1 seconds.", 8, Code.UNKNOWN_SENTENCE, "nothing", "3 seconds."),
        ("Prove: We win.", 8, Code.UNKNOWN_SENTENCE, '"We win" is nothing', '"Never", "Sometimes"'),
        ("Prove: one to each spot", 8, Code.UNKNOWN_SENTENCE, "nothing that can be", '"one to a spot"'),
        ("Prove:", 7, Code.UNKNOWN_SENTENCE, "says nothing", "three seconds, two numbers, one to a spot"),
        (f"Prove: {'Never is 5 denied or ' * 30}", 8, Code.UNKNOWN_SENTENCE, "too long", "shorter"),
        ("Prove: Never does 17 cut.", 8, Code.NOBODY, "Nobody wears 17", "1, 2, 3, 4, 5"),
        ("Prove: Never is the left slot taken.", 8, Code.LACKING_SPOT, "no left slot", "left corner, left wing"),
        ("Prove: Never is a slot taken.", 8, Code.LACKING_SPOT, "no left slot", "left corner, left wing"),
        ("Prove: Never does that player cut.", 8, Code.UNKNOWN_SENTENCE, "there is none", "Whenever somebody"),
        (
            "Prove: Always, when somebody cuts and somebody fills, that player moves",
            8,
            Code.UNKNOWN_SENTENCE,
            "there are two",
            "Whenever somebody",
        ),
        ("Prove: three seconds with minutes at 3", 8, Code.UNKNOWN_VALUE, 'no number "minutes"', "It has: seconds."),
        ("Prove: one to a spot with seconds at 3", 8, Code.UNKNOWN_VALUE, 'no number "seconds"', "It has none."),
        ("Do not prove: three second", 15, Code.UNKNOWN_VALUE, 'is called "three second"', "three seconds"),
        ("Do not prove: zzz", 15, Code.UNKNOWN_VALUE, 'is called "zzz"', "two numbers"),
        ("Do not prove:", 14, Code.UNKNOWN_VALUE, "names no property", "Known are: three seconds"),
    ],
)
def test_a_line_that_cannot_be_read_is_told_with_its_place(
    line: str, column: int, code: Code, wrong: str, right: str
) -> None:
    (problem,) = asked("# A note.", line).problems
    assert (problem.line, problem.column, problem.code) == (8, column, code)
    assert wrong in problem.wrong
    assert right in problem.right


def test_the_place_is_found_in_the_second_line_of_a_long_sentence() -> None:
    (problem,) = asked("Prove: Always, when all have settled,", "    somebody stands at the tip.").problems
    assert (problem.line, problem.column) == (8, 28)


def test_what_is_said_twice_or_both_ways_is_told_in_order_of_place() -> None:
    found = asked(
        "Prove: three seconds, with seconds at 4",
        "Prove: Nobody waits in the lane longer than 5 seconds.",
        "Do not prove: two numbers",
        "Do not prove: two numbers",
        "Prove: two numbers",
        "Prove: Never does 5 cut.",
        "Prove: never does 5 CUT",
    ).problems
    assert [(problem.line, problem.code) for problem in found] == [
        (8, Code.SAID_TWICE),
        (10, Code.SAID_TWICE),
        (11, Code.CONTRADICTION),
        (13, Code.SAID_TWICE),
    ]
    assert "first in line 7" in found[0].wrong
    assert "switched off in line 9" in found[2].wrong


def test_an_unreadable_line_leaves_the_others_standing() -> None:
    book, problems = book_from_text(f"{BOOK}Prove: Never do we lose.\nProve: Never does 5 cut.\n")
    assert problems == ()
    assert len(problems_of(book)) == 1
    assert [prop.name for prop, _ in asked_of(book, {}).properties] == ["Never does 5 cut"]


def test_a_walk_that_tells_the_players_and_sides_apart_finds_the_very_one_and_the_very_side() -> None:
    book, _ = book_from_text(
        f"{BOOK}Prove: Never has 5 the ball at the right wing.\nProve: Sometimes 4 has the ball at the left corner.\n"
    )
    read = asked_of(book, {})
    (finding,) = prove(book, asked=read.properties, named=read.named, sided=read.sided).findings
    assert finding.breach.text == "5 has the ball at the right wing."
    assert finding.possession is not None
    holder = finding.possession.seen.holder
    assert (holder.number, holder.at) == (5, "RW")


def test_the_names_on_a_command_line_are_whole_or_begin_so() -> None:
    names = list(properties())
    among = [(prop, prop.numbers) for prop in KNOWN.values()]
    assert [prop.name for prop, _ in chosen([names[0].upper(), names[1]])] == names[:2]
    assert [prop.name for prop, _ in chosen(["three sec", "THREE SECONDS", "two num"], among)] == [
        "three seconds",
        "two numbers",
    ]


def test_a_number_on_a_command_line_is_set_over_that_of_the_book() -> None:
    book = [(KNOWN["three seconds"], {"seconds": 5.0}), (KNOWN["two numbers"], KNOWN["two numbers"].numbers)]
    assert chosen(["three seconds"], book) == [(KNOWN["three seconds"], {"seconds": 5.0})]
    assert chosen(["three seconds=4"], book) == [(KNOWN["three seconds"], {"seconds": 4.0})]
    assert chosen(["three seconds : Seconds = 0.5"], book) == [(KNOWN["three seconds"], {"seconds": 0.5})]
    assert chosen(["two numbers:few=3", "two numbers:many=5"], book)[0][1] == {"few": 3, "many": 5, "whatever": 0}


def test_a_property_that_the_book_switches_off_can_be_named_on_the_command_line() -> None:
    name = next(iter(properties()))
    book, _ = book_from_text(f"{BOOK}Do not prove: {name}\nProve: Never does 5 cut.\n")
    assert [prop.name for prop, _ in chosen([name, "never does"], asked_of(book).properties)] == [
        name,
        "Never does 5 cut",
    ]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("three secnds", 'No property is called "three secnds". Did you mean three seconds'),
        ("nothing of the kind", "The properties are: "),
        ("", 'No property is called ""'),
        ("t", '"t" could be '),
        ("three seconds:seconds", 'Write for example "three seconds:seconds=4"'),
        ("three seconds=", '"" in "three seconds=" is no number'),
        ("three seconds=soon", '"soon" in "three seconds=soon" is no number'),
        ("three seconds=-1", "Write a number from 0 up"),
        ("three seconds=inf", "Write a number from 0 up"),
        ("three seconds:minutes=1", 'has no number "minutes". It has: seconds.'),
        ("two numbers=1", "has several numbers: few, many, whatever"),
        ("one to a spot=1", '"one to a spot" has no number to set'),
    ],
)
def test_a_name_on_the_command_line_that_cannot_be_is_one_clear_error(text: str, said: str) -> None:
    with pytest.raises(NotationError, match=re.escape(said)):
        chosen([text], [(prop, prop.numbers) for prop in KNOWN.values()])


def test_the_page_of_conditions_is_up_to_date_and_has_every_fact() -> None:
    page = conditions_page()
    assert (DOCS / "conditions.md").read_text("utf-8") == page, "write it anew: python scripts/make_reference.py"
    for fact in FACTS:
        assert fact.means in page


def test_everything_the_page_of_conditions_offers_is_read() -> None:
    for text, _ in FORMS:
        assert own_from_text(text)
    for who, _ in WHOM:
        assert own_from_text(f"Whenever somebody cuts, {who} {'move' if who.endswith('us') else 'moves'}")
    for place, _ in PLACES:
        assert own_from_text(f"Always 5 stands at {place}")
    for side in SIDES:
        assert own_from_text(f"Always 5 is on {side}")
    for spots, _ in SPOTS:
        assert own_from_text(f"Always {spots} is empty")


def test_every_line_that_the_page_of_a_book_shows_is_read() -> None:
    page = (DOCS / "book.md").read_text("utf-8")
    shown = next(block for block in page.split("```") if block.startswith("\nDo not prove:"))
    book, problems = book_from_text(BOOK + shown)
    assert problems == ()
    assert problems_of(book) == ()
    assert len(book.proofs) == shown.strip().count("\n") + 1
