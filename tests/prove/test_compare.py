"""Two books compared: what a coach is told differs, in how many moments, and whether a younger book stays true."""

from __future__ import annotations

import json
from dataclasses import replace
from itertools import permutations

import pytest
from tests.engine.floor import FOUR_SPOTS, THREE_SPOTS, excepting, on_ring, opened, ran

from backcut.court.spots import Spot
from backcut.engine.advance import kind_of_pass
from backcut.engine.play import one_step
from backcut.offence.book import Book, Sentence
from backcut.offence.event import Event
from backcut.offence.formation import formation
from backcut.offence.phrase import phrases
from backcut.offence.situation import Situation
from backcut.prove.compare import USUAL, Comparison, compare, contradictions, images
from backcut.prove.compare_words import contradiction_lines, lines, to_dict
from backcut.prove.depth import Depth
from backcut.prove.differ import Sort
from backcut.prove.fold import roles
from backcut.prove.lift import lift
from backcut.prove.starts import starts
from backcut.prove.walk import walk

SETTLED = (Depth.SETTLED,)
BOOKS = ("first-month", "school-team", "four-out-school-team", "two-bigs")


def saying(base: Book, **choices: str) -> Book:
    """The same book with these choices made, whatever its sentences said before."""
    said = {key.replace("_", " "): value for key, value in choices.items()}
    sentences = tuple(replace(s, values={k: v for k, v in s.values.items() if k not in said}) for s in base.sentences)
    return replace(base, sentences=sentences, choices=dict(base.choices) | said)


def one_line(name: str, **choices: str) -> Book:
    """Cut, come out, fill at once, hold: the book of a one-line rule, with its exit."""
    named = ("cut", "come out", "fill", "hold")
    plain = replace(opened("five-out"), title=name, sentences=tuple(Sentence(phrases()[n]) for n in named))
    return saying(plain, when_to_fill="at once", **choices)


def texts(compared: Comparison, sort: Sort = Sort.WHAT) -> dict[str, int]:
    """What differs, and in how many moments."""
    return {difference.text: difference.moments for difference in compared.of(sort)}


# ── nothing differs from itself ─────────────────────────────────────────


@pytest.mark.parametrize("name", BOOKS)
def test_a_book_does_not_differ_from_itself(name: str) -> None:
    compared = compare(opened(name), opened(name))
    assert compared.same
    assert compared.moments > 0
    assert compared.differences == []
    assert not any(s for s in (compared.reading.only_a, compared.reading.only_b, compared.reading.otherwise))


def test_a_choice_that_no_sentence_reads_changes_nothing() -> None:
    # First month has no sentence about denial.
    assert compare(opened("first-month"), saying(opened("first-month"), denied_corner="hold")).same


# ── counts ──────────────────────────────────────────────────────────────


@pytest.mark.parametrize("name", ["first-month", "school-team", "five-out"])
def test_five_out_has_600_line_ups_to_compare(name: str) -> None:
    # Common practice, computed: 5! x 5 ways to stand with the ball, with and without skips.
    assert compare(opened(name), opened(name), SETTLED).situations == 5 * 4 * 3 * 2 * 5


@pytest.mark.parametrize("name", BOOKS)
@pytest.mark.parametrize("depth", USUAL)
def test_line_ups_by_formula_are_those_that_players_told_apart_come_to(name: str, depth: Depth) -> None:
    this = opened(name)
    assert compare(this, this, (depth,)).situations == lift(walk(this, depth)).settled


def test_the_images_of_a_situation_are_counted_as_by_hand() -> None:
    for situation in walk(opened("five-out"), Depth.DENIED).situations[:60]:
        assert images(situation) == len(by_hand(situation))


def by_hand(situation: Situation) -> set[Situation]:
    """Every way numbers can change places, on both sides, one by one."""
    numbers = [player.number for player in situation.players]
    found = set()
    for shown in (situation, situation.mirrored()):
        for worn in permutations(numbers):
            called = dict(zip(numbers, worn, strict=True))
            players = sorted((replace(p, number=called[p.number]) for p in shown.players), key=lambda p: p.number)
            last = shown.last and replace(shown.last, player=called[shown.last.player])
            found.add(replace(shown, players=tuple(players), ball=called[shown.ball], last=last))
    return found


@pytest.mark.parametrize(
    ("name", "ring", "choices"),
    [
        ("three-out", THREE_SPOTS, {"skip_passer": "cut"}),
        ("three-out", THREE_SPOTS, {"exit": "opposite own"}),
        ("four-out", FOUR_SPOTS, {"skip_passer": "cut"}),
        ("four-out", FOUR_SPOTS, {"exit": "opposite own"}),
        ("four-out", FOUR_SPOTS, {"who_fills": "nearest only", "exit": "filler's spot"}),
    ],
)
def test_folded_counts_are_those_of_playing_every_moment_with_everybody_told_apart(
    name: str, ring: tuple[Spot, ...], choices: dict[str, str]
) -> None:
    a, b = on_ring(name, ring), on_ring(name, ring, **choices)
    moments = differing = 0
    everyone = [replace(start, situation=image) for start in starts(a) for image in by_hand(start.situation)]
    apart = walk(a, Depth.SETTLED, told_apart=True, mirrored=False, begin=everyone)
    for node, edges in enumerate(apart.edges):
        for edge in edges:
            if edge.event is None:
                continue
            moments += 1
            one, other = (one_step(which, apart.situations[node], edge.event) for which in (a, b))
            differing += ran(one) != ran(other) or one.after.spots() != other.after.spots()
    compared = compare(a, b, SETTLED)
    assert differing > 0
    assert (compared.moments, compared.differing) == (moments, differing)


@pytest.mark.parametrize(
    "choices",
    [{"corner_passer": "hold"}, {"skip_passer": "cut"}, {"when_to_fill": "at once"}, {"denied_corner": "hold"}],
)
def test_as_many_moments_differ_whichever_book_is_asked_first(choices: dict[str, str]) -> None:
    a, b = opened("five-out"), saying(opened("five-out"), **choices)
    one, other = compare(a, b, SETTLED), compare(b, a, SETTLED)
    assert one.differing + one.retimed + len(one.reading.choices) > 0
    assert (one.situations, one.moments, one.differing, one.retimed) == (
        other.situations,
        other.moments,
        other.differing,
        other.retimed,
    )


# ── what a coach is told ────────────────────────────────────────────────


def test_a_corner_passer_who_holds_changes_the_passes_out_of_a_corner_and_nothing_else() -> None:
    # Common practice, no source: in five-out nobody stands behind the corner, so whether that passer cuts and comes
    # back or holds is nobody else's business. One pass to the next spot leaves either corner: 2 x 5! moments.
    a = opened("five-out")
    compared = compare(a, saying(a, corner_passer="hold"), SETTLED)
    assert texts(compared) == {"the corner passer holds instead of cutting to the rim and coming back": 2 * 120}
    assert compared.differing == 240
    assert compared.retimed == 0
    assert [(c.name, c.a, c.b) for c in compared.reading.choices] == [("corner passer", "cut and come back", "hold")]


def passes_that_differ(a: Book, b: Book) -> dict[tuple[str, str], bool]:
    """Per pass to the next spot of a full ring in five-out, whether the two books answer it otherwise."""
    start = a.start()
    ring = a.formation.ring
    found = {}
    for place in range(len(ring) - 1):
        for origin, target in ((ring[place], ring[place + 1]), (ring[place + 1], ring[place])):
            passer, catcher = (next(p.number for p in start.players if p.at is s) for s in (origin, target))
            here = replace(start, ball=passer)
            event = Event(kind_of_pass(a, here, catcher), passer, catcher)
            one, other = (one_step(which, here, event) for which in (a, b))
            found[str(origin), str(target)] = ran(one) != ran(other) or one.after.spots() != other.after.spots()
    return found


@pytest.mark.parametrize(
    ("exit_", "differs"),
    [
        # Silent when the ball is in the middle (wing to top); sent where the far corner stands (corner to wing).
        ("opposite corner", {"LW>T", "RW>T", "LC>LW", "RC>RW"}),
        # No corner is opposite the top; the other corner is taken in all but the pass from the wing to the corner.
        ("opposite own", {"T>LW", "T>RW", "LW>T", "RW>T", "LC>LW", "RC>RW"}),
        # The end of the line is the only spot that is open once all behind have moved up.
        ("end of the line", set()),
    ],
)
def test_a_one_line_exit_differs_from_the_first_open_spot_in_as_many_passes_as_coaches_can_count(
    exit_: str, differs: set[str]
) -> None:
    # Common practice, computed: of the 8 passes to the next spot in five-out 4 are right under "the corner opposite
    # the ball" and 2 under "the corner opposite where I came from".
    a, b = one_line("First open"), one_line("One line", exit=exit_)
    compared = compare(a, b, SETTLED)
    passes = sum(
        moments for text, moments in texts(compared).items() if text.startswith(("the passer", "the corner passer"))
    )
    assert passes == 120 * len(differs)
    assert {f"{one}>{other}" for (one, other), unlike in passes_that_differ(a, b).items() if unlike} == differs


def test_the_nearest_only_fills_differs_from_a_chain_in_all_but_the_pass_from_the_wing_to_the_top() -> None:
    # Common practice, computed: only behind a wing who passed to the top does exactly one player stand; behind the
    # other passers stand none (then "the spot the filler left" is silent), two or three.
    a = one_line("Chain")
    b = one_line("Nearest", exit="filler's spot", who_fills="nearest only")
    unlike = passes_that_differ(a, b)
    assert {f"{one}>{other}" for (one, other), differs in unlike.items() if not differs} == {"LW>T", "RW>T"}
    found = texts(compare(a, b, SETTLED))
    assert found["the corner passer has no answer instead of coming back"] == 240
    assert found["the passer comes out to the top instead of coming out to the corner opposite the ball"] == 240
    assert found[
        "the passer comes out to the wing opposite the ball instead of coming out to the corner opposite the ball"
    ]


def test_a_fill_at_once_is_a_difference_of_time_and_not_of_runs() -> None:
    compared = compare(opened("five-out"), saying(opened("five-out"), when_to_fill="at once"), SETTLED)
    assert compared.differing == 0
    assert set(texts(compared, Sort.TIME)) == {"the fill comes earlier", "the way out comes earlier"}
    assert [chosen.name for chosen in compared.times] == ["when to fill"]
    assert not compared.same


@pytest.mark.parametrize(
    ("name", "value"), [("hold count", "two"), ("signal", "fist"), ("denial", "hand"), ("when to fill", "count of two")]
)
def test_a_choice_of_time_changes_no_run_and_is_named(name: str, value: str) -> None:
    a = opened("school-team")
    compared = compare(a, saying(a, **{name.replace(" ", "_"): value}), SETTLED)
    assert compared.of(Sort.WHAT) == []
    assert [chosen.name for chosen in compared.times] == [name]


def test_another_way_of_the_same_run_is_said_apart() -> None:
    compared = compare(opened("five-out"), saying(opened("five-out"), fill_path="through the elbow"), SETTLED)
    assert compared.differing == 0
    assert set(texts(compared, Sort.WAY)) == {"the fill goes through the elbow instead of along the arc"}


def test_a_denied_filler_who_holds_shows_only_where_denials_are_looked_at() -> None:
    a = opened("school-team")
    b = saying(a, denied_filler="hold")
    assert compare(a, b, SETTLED).differences == []
    found = texts(compare(a, b))
    assert found["the denied filler holds instead of back cutting and coming out"] > 0


def test_no_text_has_a_number_or_a_side_in_it() -> None:
    for a, b in (("first-month", "school-team"), ("school-team", "first-month")):
        for difference in compare(opened(a), opened(b)).differences:
            assert not any(character.isdigit() for character in difference.text), difference.text
            assert " left" not in difference.text
            assert " right" not in difference.text


def test_the_shortest_example_can_be_played_by_both_books() -> None:
    a = opened("five-out")
    b = saying(a, corner_passer="hold")
    (difference,) = compare(a, b, SETTLED).differences
    shown, answer = difference.shown.possession(), difference.shown.answered_by(b)
    passer = answer.event.player
    assert shown.moves == "4>2"
    assert ran(shown.steps[-1])[passer] == ["cut R", "come out RC"]
    assert passer not in ran(answer)
    assert difference.shown.events == 1


def test_sentences_are_told_that_stand_in_one_book_only() -> None:
    reading = compare(opened("first-month"), opened("school-team"), SETTLED).reading
    assert reading.only_a == ()
    cues = [line.split(":")[0].split(" ", 1)[1] for line in reading.only_b]
    assert cues == ["Dribble", "Flash", "Back", "Corner pass", "Skip", "Jammed", "Catch", "Back home"]
    assert [pair[0].split(":")[0] for pair in reading.otherwise] == ["A Cut", "C Fill"]
    assert "No skip passes were compared: only School team has a sentence for them." in reading.notes


def test_another_order_of_the_same_sentences_is_told() -> None:
    a = opened("first-month")
    b = replace(a, sentences=(a.sentences[2], a.sentences[0], a.sentences[1], a.sentences[3]))
    (note,) = compare(a, b, SETTLED).reading.notes
    assert note == "The sentences are asked in another order: Fill, Cut, Out, Wide instead of Cut, Out, Fill, Wide."


def test_an_exception_by_number_is_told_and_played() -> None:
    a = opened("five-out")
    compared = compare(a, excepting(a, never_cuts=4), SETTLED)
    assert compared.reading.notes == ("4 never cuts in Five-out only.",)
    # 4 has the ball in one of five moments: passes of 4 to the next spot, 8 x 4!, are answered without a cut.
    held = [d for d in compared.of(Sort.WHAT) if " instead of cutting to the rim" in d.text and "kick" not in d.text]
    assert sum(difference.moments for difference in held) == 8 * 24


@pytest.mark.parametrize(
    ("other", "said"),
    [
        ("four-out-school-team", "do not share a ring: LC LW T RW RC against LC LW LS RS RW RC."),
        ("two-bigs", "do not send out the same players: 5 outside and 0 inside against 3 outside and 2 inside."),
    ],
)
def test_books_on_other_rings_or_with_other_players_are_read_only(other: str, said: str) -> None:
    compared = compare(opened("school-team"), opened(other))
    assert compared.apart is not None
    assert said in compared.apart
    assert compared.moments == 0
    assert not compared.same
    assert any(line.startswith("Only in ") for line in lines(compared))


def test_fewer_players_are_other_players() -> None:
    four = replace(opened("five-out"), formation=formation("five-out").on_ring(opened("five-out").formation.ring, 4))
    assert "4 outside" in str(compare(opened("five-out"), four).apart)


def test_the_whole_comparison_is_told_in_lines_and_as_data() -> None:
    a = opened("five-out")
    compared = compare(a, replace(saying(a, corner_passer="hold"), title="Wide corners"), SETTLED)
    said = lines(compared)
    total = f"{compared.moments:,}"
    assert said[0].startswith(f"Wide corners instead of Five-out: other runs in 240 of {total} moments")
    assert f"In 240 of {total}: the corner passer holds instead of cutting to the rim and coming back." in said
    assert 'Corner passer: "hold" instead of "cut and come back".' in said
    data = json.loads(json.dumps(to_dict(compared)))
    assert data["differing"] == 240
    assert data["differences"][0]["moves"] == "4>2"
    assert [
        action["kind"] for action in data["differences"][0]["b"]["steps"][0]["actions"] if action["player"] == 4
    ] == ["hold"]


def test_stopped_early_it_tells_what_it_has() -> None:
    def stop(where: str, count: int) -> None:
        if "compared" in where and count == 40:
            raise KeyboardInterrupt

    a = opened("five-out")
    compared = compare(a, saying(a, corner_passer="hold"), SETTLED, stop)
    assert compared.stopped
    assert 0 < compared.moments < compare(a, a, SETTLED).moments
    assert any(line.startswith("Stopped before all was compared") for line in lines(compared))


def test_a_walk_that_was_made_already_is_used() -> None:
    a = opened("five-out")
    made = walk(a, Depth.SETTLED)
    compared = compare(a, saying(a, corner_passer="hold"), SETTLED, walks=(made,))
    assert compared.differences[0].shown.walk is made
    assert roles(a) == made.role


# ── younger and older ───────────────────────────────────────────────────


def test_first_month_stays_true_in_the_school_team() -> None:
    found = contradictions(opened("first-month"), opened("school-team"))
    assert found.of(Sort.WHAT) == []
    assert set(texts(found, Sort.TIME)) == {"the fill comes later", "the way out comes later"}
    assert set(texts(found, Sort.WAY)) == {"the cut goes behind the defender instead of in front of the defender"}
    said = contradiction_lines(found)
    assert said[0] == "First month stays true in School team."
    assert 'When to fill: "once the catcher has looked" instead of "at once".' in said


def test_the_school_team_does_not_stay_true_in_first_month() -> None:
    found = texts(contradictions(opened("school-team"), opened("first-month")))
    assert any(text.startswith("the denied player holds instead of back cutting") for text in found)


def test_a_more_special_sentence_contradicts_unless_it_says_the_same() -> None:
    younger = opened("first-month")
    same = replace(younger, sentences=(Sentence(phrases()["corner pass"]), *younger.sentences))
    other = saying(same, corner_passer="hold")
    assert contradictions(younger, same).differences == []
    found = contradictions(younger, other)
    assert set(texts(found)) == {"the corner passer holds instead of cutting to the rim and coming back"}
    assert "A Cut: the corner passer holds" in contradiction_lines(found)[1]


def test_a_sentence_not_yet_learnt_contradicts_nothing_where_the_younger_only_hold() -> None:
    younger = opened("first-month")
    older = replace(younger, sentences=(Sentence(phrases()["back cut"]), *younger.sentences))
    assert compare(younger, older).differing > 0
    assert contradictions(younger, older).differences == []


def test_a_learnt_sentence_that_says_more_later_is_a_contradiction() -> None:
    nearest = one_line("Nearest", who_fills="nearest only")
    found = texts(contradictions(nearest, one_line("Chain"), SETTLED))
    assert "after a pass a player farther away moves up instead of holding" in found


def test_where_the_younger_book_is_silent_nothing_can_be_contradicted() -> None:
    silent = one_line("Opposite corner", exit="opposite corner")
    assert compare(silent, one_line("First open"), SETTLED).differing > 0
    assert contradictions(silent, one_line("First open"), SETTLED).of(Sort.WHAT) == []
