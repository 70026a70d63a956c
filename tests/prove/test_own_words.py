"""A coach's own words: each fact is so where it should be, each sentence is read as it is meant."""

from __future__ import annotations

from functools import cache

import pytest

from backcut.engine.decide import decide
from backcut.engine.play import settled, stand
from backcut.offence.book import Book, plain_book
from backcut.offence.formation import formation
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_from_text
from backcut.prove.conditions.condition import Condition
from backcut.prove.conditions.fact import AllFact, Fact, PlayerFact
from backcut.prove.conditions.facts import ALL_FACTS, FACTS, PLAYER_FACTS, SPOT_FACTS
from backcut.prove.conditions.sentence import NotRead, OwnSentence, own_from_text
from backcut.prove.own_property import own_property
from backcut.prove.property import Always, Eventually, Property, Seen, Sometimes
from backcut.prove.walk import walk

BY_NAME = [pytest.param(fact, id=fact.name) for fact in FACTS]
FACTS_BY_NAME = {fact.name: fact for fact in FACTS}
START = "1:T* 2:RW 3:LW 4:RC 5:LC"
TWO_IN = (
    "1:R(in the lane from T, left of the ball, because passed) 2:R(cutting from RW, left of the ball) "
    "3:LW 4:RC* 5:LC | pass by 2 from RW"
)


@cache
def book() -> Book:
    return plain_book(formation("five-out"))


def seen(situation: str | Situation) -> Seen:
    there = situation_from_text(situation) if isinstance(situation, str) else situation
    decision = decide(book(), there)
    return Seen(book(), there, decision, settled(book(), there, decision) and stand(there) == there)


@cache
def reached() -> tuple[Seen, ...]:
    """Every situation of the plain five-out book, one player of each pair denied or none."""
    made = walk(book(), mirrored=False)
    return tuple(seen(situation) for situation in made.situations)


def condition(words: str) -> Condition:
    return own_from_text(f"Always, {words}.").then


def own(text: str) -> Property:
    return own_property(text, own_from_text(text))


def broken(text: str, situation: str) -> list[str]:
    prop = own(text)
    assert isinstance(prop, Always)
    return [breach.text for breach in prop.looks(seen(situation), {})]


@pytest.mark.parametrize("fact", BY_NAME)
def test_a_fact_is_so_in_its_one_situation_and_not_in_its_other(fact: Fact) -> None:
    shown = condition(fact.shown.says)
    (leaf,) = shown.leaves()
    assert leaf.fact is fact  # type: ignore[attr-defined]
    assert shown.holds(seen(fact.shown.so))
    assert not shown.holds(seen(fact.shown.not_so))


def test_every_fact_has_a_name_and_words_of_its_own() -> None:
    assert len({fact.name for fact in FACTS}) == len(FACTS)
    ways = [way for fact in FACTS for way in fact.says]
    assert len(set(ways)) == len(ways)


@pytest.mark.parametrize("fact", PLAYER_FACTS, ids=lambda fact: fact.name)
def test_every_way_to_say_it_of_a_player_is_read_in_the_same_sense(fact: PlayerFact) -> None:
    for way in fact.says:
        head, _, rest = way.format(place="a corner", side="the ball side").partition(" ")
        one = {"are": "is", "have": "has"}.get(head, f"{head}s")
        no = ("is not", "are not") if head == "are" else (f"does not {head}", f"do not {head}")
        plain = condition(f"5 {one} {rest}")
        assert condition(f"two of us {head} {rest}").words() == plain.words().replace(
            plain.words().split(" ", 2)[1], fact.says[0].split(" ")[0], 1
        ).replace("5", "at least two of us", 1)
        ask = f"{one} 5 {rest}" if head in ("are", "have") else f"does 5 {head} {rest}"
        assert own_from_text(f"Never {ask}.").then == plain
        if fact.whole:
            with pytest.raises(NotRead):
                condition(f"5 {no[0]} {rest}")
        else:
            assert condition(f"5 {no[0]} {rest}").words() == plain.words(so=False)
            assert condition(f"two of us {no[1]} {rest}")
        if fact.of_ball and head == "are":
            assert condition(f"the ball is {rest}").words() == plain.words().replace("5", "the ball", 1)


@pytest.mark.parametrize("fact", [*SPOT_FACTS, *ALL_FACTS], ids=lambda fact: fact.name)
def test_every_way_to_say_it_of_a_spot_or_of_all_is_read_in_the_same_sense(fact: Fact) -> None:
    if isinstance(fact, AllFact):
        assert len({condition(way) for way in fact.says}) == 1
        assert {condition(way).words(so=False) for way in fact.says_not} == {fact.says[0]}
        return
    for way in fact.says:
        state = way.removeprefix("are ")
        assert condition(f"the top is {state}") == own_from_text(f"Never is the top {state}").then
        assert condition(f"the top is not {state}").words() == condition(f"the top is {state}").words(so=False)


CONDITIONS = [
    *(fact.shown.says for fact in FACTS),
    "the ball is at the top and two of us are denied or nobody moves",
    "exactly two of us are on the ball side",
    "at most one of us is in the lane",
    "more than two of us are above the free-throw line",
    "fewer than three of us move",
    "the ball-side corner is empty",
    "somebody stands in the far corner",
    "every spot is taken",
    "no spot beside the ball is empty",
    "the player with the ball is in the lane",
    "5 does not stand at the top",
    "1 or 2 has the ball",
    "4 and 5 are not denied",
]


@pytest.mark.parametrize("words", CONDITIONS)
def test_what_is_written_back_means_the_same(words: str) -> None:
    assert condition(condition(words).words()) == condition(words)


@pytest.mark.parametrize("words", CONDITIONS)
def test_the_contrary_is_so_exactly_where_it_is_not_so(words: str) -> None:
    so = condition(words)
    contrary = so.words(so=False)
    try:
        other = condition(contrary)
    except NotRead:
        assert contrary.startswith(("not ", "neither ", "it is not so that "))
        return
    assert all(other.holds(one) is not so.holds(one) for one in reached())


@pytest.mark.parametrize("words", CONDITIONS)
def test_who_names_no_side_sees_no_difference_between_left_and_right(words: str) -> None:
    so = condition(words)
    sides = [leaf.place.sided for leaf in so.leaves() if leaf.place is not None]
    differs = any(so.holds(one) is not so.holds(seen(one.situation.mirrored())) for one in reached())
    assert differs <= any(sides)


def test_a_side_that_is_named_is_told_from_the_other() -> None:
    for words in ("somebody has the ball at the right wing", "two of us are on the left side", "LC is taken"):
        so = condition(words)
        assert any(leaf.place is not None and leaf.place.sided for leaf in so.leaves())
        assert any(so.holds(one) is not so.holds(seen(one.situation.mirrored())) for one in reached())


def test_and_binds_closer_than_or() -> None:
    read = condition("5 has the ball or 4 is denied and 3 cuts")
    assert read.words() == "5 has the ball or 4 is denied and 3 cuts"
    assert read.holds(seen("1:T 2:RW 3:LW 4:RC 5:LC*"))


@pytest.mark.parametrize(
    ("text", "kind", "when", "then"),
    [
        ("Always somebody stands at the top", "always", None, "somebody is at the top"),
        ("Always, when nobody moves, 5 has the ball.", "always", "nobody moves", "5 has the ball"),
        ("Always 5 has the ball when nobody moves", "always", "nobody moves", "5 has the ball"),
        ("whenever nobody moves, 5 has the ball", "always", "nobody moves", "5 has the ball"),
        ("If nobody moves, always 5 has the ball", "always", "nobody moves", "5 has the ball"),
        ("NEVER ARE TWO OF US\n  IN THE LANE", "never", None, "at least two of us are in the lane"),
        ("Never does 4 cut when nobody is denied", "never", "nobody is denied", "4 cuts"),
        ("When 4 is denied, never has 4 the ball", "never", "4 is denied", "4 has the ball"),
        ("Never is 5 denied or 4 in the lane", "never", None, None),
        ("Never is 5 denied or does 4 cut", "never", None, None),
        ("Never is 5 denied and 4 cuts", "never", None, "5 is denied and 4 cuts"),
        ("Sometimes, when 5 has the ball, 4 cuts", "sometimes", "5 has the ball", "4 cuts"),
        ("Whenever 4 cuts, soon 4 comes out", "in the end", "4 cuts", "4 comes out"),
        ("When 4 cuts, sooner or later, 4 comes out", "in the end", "4 cuts", "4 comes out"),
    ],
)
def test_a_sentence_is_read_as_it_is_meant(text: str, kind: str, when: str | None, then: str | None) -> None:
    if then is None:
        with pytest.raises(NotRead):
            own_from_text(text)
        return
    assert own_from_text(text) == OwnSentence(kind, condition(then), None if when is None else condition(when))


def test_where_a_sentence_stops_making_sense_is_told_with_what_could_stand_there() -> None:
    with pytest.raises(NotRead) as misspelt:
        own_from_text("Never is somebody  denyed.")
    assert (misspelt.value.at, misspelt.value.meant) == (19, "denied")
    assert '"in the lane"' in misspelt.value.may
    with pytest.raises(NotRead) as short:
        own_from_text("Always, the top is")
    assert (short.value.at, short.value.meant) == (18, None)
    assert short.value.may == ('"empty"', '"taken"')


def test_what_must_always_be_so_breaks_where_it_is_not_and_says_how() -> None:
    assert broken("Always, when nobody moves, somebody stands at the top", START) == []
    assert broken("Always, when nobody moves, 5 has the ball", START) == ["Nobody moves and 5 does not have the ball."]
    assert broken("Always, 5 has the ball or a corner is empty and 1 cuts", START) == [
        "5 does not have the ball and no corner is empty and 1 does not cut."
    ]


def test_what_must_never_be_so_breaks_where_it_is_with_the_players_by_number() -> None:
    assert broken("Never are two of us in the lane", START) == []
    assert broken("Never are two of us in the lane", TWO_IN) == ["1 and 2 are in the lane."]
    assert broken("Never are both corners taken", START) == ["The left corner and the right corner are taken."]


def test_the_cause_of_a_breach_says_who_it_is_without_a_number() -> None:
    prop = own("Whenever somebody is denied, that player cuts")
    assert isinstance(prop, Always)
    assert list(prop.looks(seen("1:T* 2:RW! 3:LW 4:RC 5:LC"), {})) == []
    found = list(prop.looks(seen("1:T* 2:RW 3:LW! 4:RC! 5:LC!"), {}))
    assert {breach.cause for breach in found} == {"The denied player does not cut."}
    assert [breach.text for breach in found] == [
        "4 is denied and 4 does not cut.",
        "5 is denied and 5 does not cut.",
    ]
    assert [breach.players for breach in found] == [(4,), (5,)]


def test_a_breach_names_the_sentence_that_told_and_the_spot() -> None:
    prop = own("Never does somebody fill while the top is empty")
    assert isinstance(prop, Always)
    (breach,) = prop.looks(seen(FACTS_BY_NAME["fills"].shown.so), {})
    assert breach.spot == "T"
    assert [book().sentences[rank].phrase.name for rank in breach.habits] == ["fill"]


def test_a_side_of_the_ball_is_nowhere_while_the_ball_is_at_the_top() -> None:
    assert broken("Always the ball-side corner is taken", "1:T 2:RW* 3:LW 4:RC 5:LC") == []
    assert broken("Always the ball-side corner is taken", START) == ["There is no ball-side corner."]
    assert broken("Always the far corner is empty", "1:T 2:RW* 3:LW 4:RC 5:LC") == ["The far corner is not empty."]


def test_that_player_is_whoever_somebody_was() -> None:
    text = "Never is somebody denied and that player stands in a corner"
    assert broken(text, "1:T* 2:RW! 3:LW 4:RC 5:LC") == []
    assert broken(text, "1:T 2:RW* 3:LW 4:RC! 5:LC") == ["4 is denied and 4 is at a corner."]


def test_the_kinds_of_sentence_become_the_kinds_of_property() -> None:
    assert isinstance(own("Never does 5 cut"), Always)
    assert isinstance(own("Sometimes 5 cuts"), Sometimes)
    prop = own("Whenever somebody is in the lane, in the end that player comes out")
    assert isinstance(prop, Eventually)
    begun = seen(TWO_IN)
    assert list(prop.begins(begun, {})) == [1, 2]
    assert not prop.ends(begun, {}, 1)
    assert prop.breach(begun, {}, 1).text == "1 is in the lane, and it may never come to it that 1 comes out."
    assert prop.kind == "eventually"
