"""What was changed since a book was looked at, in the book's own letters."""

from __future__ import annotations

import pytest

from backcut.offence.library import preset_text
from backcut.web.proof_changed import changed_since

TEAM = preset_text("school-team")
OPPOSITE = TEAM.replace("the first open spot", "the corner opposite the ball")
FIRST = preset_text("first-month")
WIDE = "Wide. Otherwise I hold, wide, feet set."
SKIP = "Skip. When I skip the ball, I hold for a count."


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("in front of my defender", "in front, or behind a defender who jumped to the ball", "You changed A after"),
        ("Squad: girls-u13", "Squad: boys-u16", "You changed the squad after"),
        ("Court: mini", "Court: FIBA", "You changed the court after"),
        (WIDE, f"{SKIP}\n\n{WIDE}", "You put in D after"),
        (
            "Formation: five-out",
            "Formation: five-out\nDenial mark: 0.5 m inside the arc",
            "You changed the denial mark",
        ),
        ("Formation: five-out", "Formation: five-out\nTop: 0 m off, 8 m out", "You changed the top after"),
        (WIDE, f"{WIDE}\n4 never fills a corner.\n", "You changed who is excepted by number after"),
        (WIDE, f"{WIDE}\nDo not prove: somebody back.\n", "You changed what has to hold after"),
    ],
)
def test_what_was_changed_is_said_in_the_books_own_letters(old: str, new: str, said: str) -> None:
    assert old in FIRST
    assert changed_since(FIRST, FIRST.replace(old, new)).startswith(said)


def test_a_sentence_that_was_taken_out_is_named_by_the_letter_it_had() -> None:
    without = FIRST.replace(FIRST[FIRST.index("Fill.") : FIRST.index("Wide.")], "")
    assert changed_since(FIRST, without).startswith("You took out C (Fill) after these pictures were made.")


def test_a_sentence_that_was_moved_is_moved() -> None:
    out = FIRST[FIRST.index("Out.") : FIRST.index("Fill.")]
    moved = FIRST.replace(out, "").replace("Cut. When", f"{out}Cut. When")
    assert changed_since(FIRST, moved) == "You moved A after these pictures were made. Look again?"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("# The first month", "# The second month"),
        ("Mistake: Passes", "Mistake: Passes on"),
        ("Title: First", "Title: 1st"),
    ],
)
def test_a_comment_a_note_or_a_title_makes_no_picture_old(old: str, new: str) -> None:
    assert old in FIRST
    assert changed_since(FIRST, FIRST.replace(old, new, 1)) == ""


# Over the wire.
