"""Ways out of a finding: each was proved before it was offered, and nothing but the one sentence is touched."""

from __future__ import annotations

from functools import cache

import pytest
from tests.prove.books import read

from backcut.cli.prove_text import proof_lines
from backcut.offence.book_text import Entry, entries_from_text
from backcut.offence.edit import choose
from backcut.offence.library import preset_text
from backcut.prove.proof import Key, Proof, prove
from backcut.prove.suggest import OFFERED, Way, Ways

#: The school team as its coach may have written it: with one more comment, and notes of its own.
OPPOSITE = choose(preset_text("school-team"), "exit", "opposite corner").replace(
    "Fill. When", "# ask the assistants about this one\nFill. When", 1
)

#: Two on two spots of one side. Nobody can get above the free-throw line there, whatever a book of theirs says.
CORNERED = """
Title: Two in one corner of the floor
Formation: five-out
Ring: LC LW
Players: 2

# the fill has nothing to fill
Cut. When I pass to the next spot, I cut to the rim.
  Why: we have played for weeks like that

Out. When my cut is over, I come out to the first open spot.

Fill. When the next spot toward the ball is empty, I fill it at once.
  Mistake: waits

Back home. When a shot goes up, the highest of us gets back and the rest rebound.

Wide. Otherwise I hold, wide, feet set.
"""
BACK = ("somebody back", "Nobody is back when all stand.")
SPEAKS = ("every sentence speaks", "(Fill) never speaks.")
SILENT = ("an answer for everybody", "(Out) names no spot to come out to.")
TAKEN = ("one to a spot", "(Out) sends a player in the lane to a spot that is taken.")


@cache
def proved(text: str) -> Proof:
    return prove(read(text))


@cache
def looking(text: str) -> Ways:
    return Ways(text, proved(text))


@cache
def offered(text: str, key: Key) -> list[Way]:
    (finding,) = (finding for finding in proved(text).findings if finding.key == key)
    return looking(text).out_of(finding)


def keys(proof: Proof) -> set[Key]:
    return {finding.key for finding in proof.findings}


def written(text: str) -> list[Entry]:
    """All that stands in a text but blank lines."""
    return [entry for entry in entries_from_text(text) if entry.kind != "blank"]


@pytest.mark.parametrize("key", [SILENT, TAKEN])
def test_each_way_out_of_the_corner_opposite_the_ball_is_proved_to_remove_the_finding_and_to_make_no_new_one(
    key: Key,
) -> None:
    before = keys(proved(OPPOSITE))
    assert before == {SILENT, TAKEN}
    ways = offered(OPPOSITE, key)
    assert 0 < len(ways) <= OFFERED
    for way in ways:
        after = proved(way.text)
        assert key not in keys(after)
        assert keys(after) <= before
        assert len(after.findings) == way.leaves
        assert 0 < way.differs <= way.moments


def test_the_first_way_out_is_the_first_open_spot_and_leads_to_a_clean_book() -> None:
    first, *_ = offered(OPPOSITE, SILENT)
    assert first.says == 'Let H say: "When my cut is over, I come out to the first open spot."'
    assert proved(first.text).clean


@pytest.mark.parametrize("key", [SILENT, TAKEN])
def test_all_that_is_written_round_the_changed_sentence_stays_as_it_is(key: Key) -> None:
    old = written(OPPOSITE)
    for way in offered(OPPOSITE, key):
        new = written(way.text)
        assert [entry.kind for entry in new] == [entry.kind for entry in old]
        changed = [(a, b) for a, b in zip(old, new, strict=True) if a.raw != b.raw]
        assert [a.raw for a, _ in changed] == ["Out. When my cut is over, I come out to the corner opposite the ball."]
        assert f'Let H say: "{changed[0][1].raw.removeprefix("Out. ")}"' == way.says
        # Not even a blank line goes.
        assert way.text.replace(changed[0][1].raw, changed[0][0].raw) == OPPOSITE


def test_a_sentence_that_never_speaks_is_taken_out_with_its_notes_and_nothing_else() -> None:
    (way,) = (way for way in offered(CORNERED, SPEAKS) if way.says == "Take C Fill out")
    gone = [entry.raw.strip() for entry in written(CORNERED) if entry.raw not in {e.raw for e in written(way.text)}]
    assert gone == ["Fill. When the next spot toward the ball is empty, I fill it at once.", "Mistake: waits"]
    assert [e.raw for e in written(CORNERED) if e.raw.strip() not in gone] == [e.raw for e in written(way.text)]


def test_a_way_says_how_many_findings_it_leaves_those_of_never_too() -> None:
    ways = offered(CORNERED, SPEAKS)
    assert ways
    for way in ways:
        after = proved(way.text)
        assert len(after.findings) == way.leaves
        assert any(finding.possession is None for finding in after.findings)
        assert SPEAKS not in keys(after)


def test_where_no_change_of_one_sentence_helps_that_is_said() -> None:
    assert offered(CORNERED, BACK) == []
    proof = proved(CORNERED)
    said = list(proof_lines("cornered.txt", proof, {finding.key: [] for finding in proof.findings}, apart=False))
    at = next(place for place, line in enumerate(said) if line.endswith(BACK[1]))
    finding = said[at : said.index("", at)]
    assert finding[-1].strip() == "No change of one sentence or one choice removes this without making something new."


def test_a_change_is_looked_at_once_for_all_findings_of_a_proof() -> None:
    tried: list[int] = []
    proof = proved(CORNERED)
    ways = Ways(CORNERED, proof, tried.append)
    for finding in proof.findings[:2]:
        ways.out_of(finding)
    assert tried == list(range(1, len(tried) + 1))
    assert len(set(ways.quick)) == tried[-1]
