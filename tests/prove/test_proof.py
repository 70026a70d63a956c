"""One cause is one finding, nearest first; rounds that never end; numbers, limits and what is not judged."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tests.engine.floor import opened
from tests.prove.books import named, read
from tests.prove.judged import CUT, FILL, HOLD, OUT, SKIP, written

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.engine.play import one_step
from backcut.offence.event import Event, EventKind
from backcut.offence.library import preset_text
from backcut.offence.situation import Player, Situation
from backcut.prove.depth import Depth
from backcut.prove.fold import Turn
from backcut.prove.judge import Broken, judge_always, judge_eventually
from backcut.prove.own import asked_of
from backcut.prove.proof import Proof, Wanted, prove
from backcut.prove.property import Always, Breach, Eventually, Numbers, Seen, properties
from backcut.prove.walk import MOST, Edge, Walk, walk

OPPOSITE = "opposite-corner"
#: Four on six spots, nobody inside.
SIX_SPOTS = written(SKIP, CUT, OUT, FILL, HOLD, formation="four-out", lines=["Inside players: 0"])


def only(name: str, **numbers: float) -> list[Wanted]:
    """One property alone, with these numbers."""
    prop = properties()[name]
    return [(prop, dict(prop.numbers) | numbers)]


def causes(proof: Proof) -> list[str]:
    return [finding.breach.cause for finding in proof.findings]


# ── one cause, one finding ──────────────────────────────────────────────


def test_one_cause_is_one_finding_however_many_situations_show_it() -> None:
    proof = prove(named(OPPOSITE), (Depth.SETTLED, Depth.DENIED), only("one to a spot"))
    (finding,) = proof.findings
    assert finding.situations > 2
    assert finding.depth is Depth.SETTLED


def test_mirror_images_are_counted_and_not_listed() -> None:
    book = named(OPPOSITE)
    assert len(prove(book, asked=only("one to a spot") + only("an answer for everybody")).findings) == 2
    for prop in (prop for prop in properties().values() if isinstance(prop, Always) and prop.of_holes):
        unfolded = judge_always(walk(book, mirrored=False), prop, {})
        findings = prove(book, asked=[(prop, {})]).findings
        assert [finding.situations for finding in findings] == [len(broken.nodes) for broken in unfolded]


def test_a_finding_is_told_with_the_numbers_and_on_the_side_of_its_possession() -> None:
    for finding in prove(named(OPPOSITE), asked=only("one to a spot") + only("an answer for everybody")).findings:
        shown = finding.possession
        assert shown is not None
        troubles = decide(named(OPPOSITE), shown.seen).troubles
        assert finding.breach.players == tuple(trouble.player for trouble in troubles)
        assert finding.breach.text == troubles[0].text
        played = one_step(named(OPPOSITE), shown.steps[-1].before, shown.steps[-1].event)
        assert shown.seen in [beat.before for beat in played.beats] + [played.after]


def test_the_nearest_finding_comes_first_and_what_never_happens_last() -> None:
    half = written(CUT, OUT, FILL, HOLD, lines=["Ring: LC LW T", "Players: 3"])
    for book in (named("first-month"), named(OPPOSITE), half):
        findings = prove(book, (Depth.SETTLED, Depth.DENIED)).findings
        places = [(finding.possession is None, finding.far) for finding in findings]
        assert len(places) > 1
        assert places == sorted(places)
    assert findings[-1].possession is None


def test_the_nearest_possession_has_as_many_events_as_the_finding_says() -> None:
    for finding in prove(named("first-month"), (Depth.SETTLED, Depth.DENIED)).findings:
        assert finding.possession is not None
        # A catch and a drive come before a start with a player at the rim.
        driven = 2 if finding.possession.start.holder.at is Spot.R else 0
        assert finding.far == len(finding.possession.steps) + driven


def test_a_finding_of_a_deeper_walk_is_told_at_the_depth_that_shows_it_first() -> None:
    findings = prove(named("first-month"), (Depth.SETTLED, Depth.DENIED)).findings
    assert {(f.prop.name, f.depth) for f in findings} == {
        ("somebody back", Depth.SETTLED),
        ("an outlet for the ball", Depth.DENIED),
    }
    assert {f.depth for f in prove(named("first-month"), (Depth.DENIED,)).findings} == {Depth.DENIED}


# ── numbers, and what is asked ──────────────────────────────────────────


def test_a_number_that_is_set_changes_the_verdict() -> None:
    three = [prove(SIX_SPOTS, asked=only("three on one side", whatever=whatever)) for whatever in (0, 1)]
    assert [proof.clean for proof in three] == [True, False]
    late = [prove(named("first-month"), asked=only("runs in time", seconds=seconds)) for seconds in (60, 0)]
    assert [proof.clean for proof in late] == [True, False]


def test_a_number_stands_in_the_sentence_of_the_finding() -> None:
    finding = prove(named("first-month"), asked=only("runs in time", seconds=0.5)).findings[0]
    assert "longer than 0.5 seconds" in finding.prop.sentence(finding.numbers)


def test_a_property_that_the_book_switches_off_is_not_judged() -> None:
    text = preset_text("first-month").replace("Court: mini\n", "Court: mini\nDo not prove: somebody back\n")
    book = read(text)
    asked = asked_of(book)
    assert asked.problems == ()
    switched_off = prove(book, asked=asked.properties)
    assert switched_off.clean
    assert "somebody back" not in {prop.name for prop, _ in switched_off.asked}
    assert {finding.prop.name for finding in prove(book).findings} == {"somebody back"}


def test_what_comes_of_a_hole_is_no_finding_of_its_own() -> None:
    # Behind the taken corner nobody is back and holes stay: only the hole itself is told.
    found = prove(named("opposite-own")).findings
    assert {finding.prop.name for finding in found if finding.breach.spot is not None} == {"one to a spot"}
    proof = prove(named("opposite-own"), (Depth.SETTLED,), only("every line-up"))
    assert (proof.findings, [prop.name for prop in proof.not_judged]) == ([], ["every line-up"])
    assert not proof.clean


# ── stopped early ───────────────────────────────────────────────────────


def test_stopped_by_hand_a_proof_keeps_what_it_has_found_and_is_not_clean() -> None:
    def stop(where: str, count: int) -> None:
        if where == Depth.DENIED and count == 90:
            raise KeyboardInterrupt

    proof = prove(named("first-month"), (Depth.SETTLED, Depth.DENIED), progress=stop)
    assert proof.stopped
    assert not proof.clean
    assert "Nobody gets back when a shot goes up." in causes(proof)
    assert [covered.depth for covered in proof.covered] == [Depth.SETTLED, Depth.DENIED]
    assert [covered.waiting > 0 for covered in proof.covered] == [False, True]


def test_a_clean_book_that_was_not_looked_through_is_not_called_clean() -> None:
    def stop(where: str, count: int) -> None:
        if count == 20:
            raise KeyboardInterrupt

    book = opened("school-team")
    whole, stopped, limited = prove(book), prove(book, progress=stop), prove(book, most=20)
    assert [proof.findings for proof in (whole, stopped, limited)] == [[], [], []]
    assert [proof.clean for proof in (whole, stopped, limited)] == [True, False, False]


def test_a_limit_says_how_many_were_waiting_and_which_sentence_made_most_of_them() -> None:
    book = opened("school-team")
    proof = prove(book, (Depth.DENIED,), only("one to a spot"), most=100)
    (covered,) = proof.covered
    assert covered.waiting > 0
    assert covered.situations < MOST
    assert covered.multiplied_by is not None
    assert 0 <= covered.multiplied_by < len(book.sentences)
    assert not proof.clean
    assert not proof.stopped


# ── rounds that never end ───────────────────────────────────────────────


def _begins(seen: Seen, numbers: Numbers) -> Iterator[int | None]:
    if seen.situation.count:
        yield None


def _is_over(seen: Seen, numbers: Numbers, player: int | None) -> bool:
    return seen.situation.count == 0


WAITS = Eventually(
    name="the wait",
    says="What waits comes to an end.",
    why="Invented.",
    begins=_begins,
    ends=_is_over,
    breach=lambda seen, numbers, player: Breach("It waits for ever.", f"It waits at {seen.situation.count}."),
)


def floor(ways: dict[int, Sequence[int]], ended: int | None = None) -> Walk:
    """A walk made by hand: its places are numbers, told apart by the count; at 0 the wait is over."""
    book = opened("five-out")
    same = Turn((1, 2))
    made = Walk(book, Depth.SETTLED, {1: 0, 2: 0}, False)
    for place, onward in ways.items():
        shot = EventKind.SHOT if place == ended else None
        here = Situation((Player(1, Spot.T), Player(2, Spot.RW)), 1, count=place, ended=shot)
        made.situations.append(here)
        made.decisions.append(decide(opened("five-out"), here))
        made.settled.append(True)
        made.looked.append(True)
        made.far.append(place)
        made.parent.append(None)
        made.edges.append([Edge(Event(EventKind.PASS, 1, 2), list(ways).index(to), same) for to in onward])
    return made


def rounds(made: Walk, **numbers: float) -> list[Broken]:
    return judge_eventually(made, WAITS, numbers)


def lap(made: Walk, start: int, broken: Broken) -> list[int]:
    """The places that the way on goes through, from a place of the walk."""
    return [start] + [made.situations[edge.target].count for edge in broken.onward]


def test_a_round_that_never_ends_is_found_with_its_lap() -> None:
    made = floor({0: [1], 1: [2], 2: [3], 3: [4], 4: [2]})
    (broken,) = rounds(made)
    assert lap(made, 1, broken) == [1, 2, 3, 4, 2]
    assert [made.situations[node].count for node in broken.nodes] == [1, 2, 3, 4]


def test_a_round_that_a_pass_can_leave_is_none_unless_whatever_is_asked() -> None:
    made = floor({0: [1], 1: [2], 2: [3], 3: [1, 0]})
    assert rounds(made) == []
    (broken,) = rounds(made, whatever=1)
    assert lap(made, 1, broken) == [1, 2, 3, 1]


def test_a_round_that_only_a_shot_can_leave_never_ends() -> None:
    made = floor({0: [1], 1: [2, 9], 2: [1], 9: []}, ended=9)
    (broken,) = rounds(made)
    assert lap(made, 1, broken) == [1, 2, 1]


def test_a_round_that_leads_on_to_another_is_judged_by_the_last_one() -> None:
    out = floor({0: [1], 1: [2], 2: [1, 3], 3: [4], 4: [3, 0]})
    assert rounds(out) == []
    held = floor({0: [1], 1: [2], 2: [1, 3], 3: [4], 4: [3]})
    (broken,) = rounds(held)
    assert lap(held, 1, broken) == [1, 2, 3, 4, 3]


def test_where_nothing_comes_after_it_the_wait_has_no_end() -> None:
    made = floor({0: [1], 1: [2], 2: []})
    (broken,) = rounds(made)
    assert lap(made, 1, broken) == [1, 2]


def test_what_nobody_has_looked_at_may_be_the_end() -> None:
    made = floor({0: [1], 1: [2], 2: [1]})
    assert len(rounds(made)) == 1
    made.looked[2] = False
    assert rounds(made) == []


def test_numbers_that_change_places_on_the_way_round_are_followed() -> None:
    """Who waits is followed through the numbers of the folded situations: after two passes 1 wears 2, and waits on."""
    made = floor({1: [2], 2: [1]})
    made.edges[0] = [Edge(None, 1, Turn((2, 1)))]
    made.edges[1] = [Edge(None, 0, Turn((1, 2)))]
    asked: list[tuple[int, int | None]] = []

    def begins(seen: Seen, numbers: Numbers) -> Iterator[int | None]:
        yield from [1] if seen.situation.count == 1 else []

    def ends(seen: Seen, numbers: Numbers, player: int | None) -> bool:
        asked.append((seen.situation.count, player))
        return seen.situation.count == 2 and player == 1

    waits = Eventually(name="x", says="x", why="x", begins=begins, ends=ends, breach=WAITS.breach)
    # From 1 at place 1 to 2 at place 2 (not over), to 2 at place 1, to 1 at place 2: there it is over.
    assert judge_eventually(made, waits, {}) == []
    assert {(2, 1), (2, 2)} <= set(asked)


def test_in_four_out_on_six_spots_three_stay_on_one_side_while_the_ball_is_skipped_across_and_back() -> None:
    # By geometry: a side has three spots next to one another. Once they are taken, a skip over the slot asks nobody to
    # move: who skips holds, and no spot next to the ball is empty. A pass to the next spot across spreads them again.
    assert prove(SIX_SPOTS, asked=only("three on one side")).findings == []
    found = {f.breach.cause: f for f in prove(SIX_SPOTS, asked=only("three on one side", whatever=1)).findings}
    shown = found["Three stay on one side, with the ball on that side."].possession
    assert shown is not None
    afters = [step.after for step in shown.steps]
    for situation in afters:
        sides = [player.at.side for player in situation.players]
        assert max(sides.count(-1), sides.count(1)) == 3
    # The last of these is a picture in which the ball has been before: the lap.
    pictures = [frozenset((p.at, p.number == s.ball) for p in s.players) for s in afters]
    assert pictures[-1] in pictures[:-1]
    assert EventKind.SKIP in {step.event.kind for step in shown.steps[1:]}


def test_everything_asked_is_judged_and_named() -> None:
    proof = prove(named("first-month"), (Depth.SETTLED,))
    assert [prop.name for prop, _ in proof.asked] == list(properties())
    assert proof.depths == (Depth.SETTLED,)
    assert {covered.depth for covered in proof.covered} >= {Depth.SETTLED}
