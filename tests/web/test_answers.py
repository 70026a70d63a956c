"""Not in our team: what a player could be told at a stop, and the change of the book that says it."""

from __future__ import annotations

import pytest
from tests.web.floors import Visitor, client, floor

from backcut.engine.words import action_words
from backcut.errors import BackcutError
from backcut.offence.library import presets
from backcut.offence.reading import book_from_text
from backcut.prove.instead import told_now
from backcut.prove.wanted import answers, sayings
from backcut.web.answers import answers_at, sayings_at
from backcut.web.evening import DEMO
from backcut.web.floor import Floor
from backcut.web.stops import told


def demo(book: str = "school-team") -> Floor:
    return floor(", ".join(DEMO), book=book)


@pytest.mark.parametrize("book", presets())
def test_what_is_offered_is_what_the_rules_find_for_the_moment_that_is_seen(book: str) -> None:
    here = demo(book)
    now = told(here)
    for place, stop in enumerate(now.stops):
        for player in stop.asked.players:
            found = answers(here.text, now.played.book, stop.asked, player.number)
            offered = answers_at(here, place, player.number)
            assert len(offered) == len(found)
            assert all(one.words.startswith(wanted.words) for one, wanted in zip(offered, found, strict=True))
            assert len({one.id for one in offered}) == len(offered)
            assert len({one.words for one in offered}) == len(offered)


@pytest.mark.parametrize("book", presets())
def test_the_first_answer_is_the_one_on_the_floor(book: str) -> None:
    here = demo(book)
    now = told(here)
    seen = 0
    for place, stop in enumerate(now.stops):
        step = now.played.steps[stop.step - 1] if stop.step else None
        beats = [] if step is None else [beat for beat in step.beats if beat.before == stop.asked]
        for beat in beats[:1]:
            for action in (one for one in beat.decision.actions if one.moves):
                seen += 1
                (first, *_) = answers_at(here, place, action.player)
                assert first.words.startswith(action_words(action, beat.before))
    assert seen


def test_a_change_that_is_written_is_what_the_player_is_told_then() -> None:
    """Every answer that one change would say at the first decision: the change written, and the book asked again."""
    here = floor("1>2")
    asked = told(here).stops[1].asked
    tried = 0
    for player in range(1, 6):
        for wanted in answers_at(here, 1, player)[1:]:
            for saying in sayings_at(here, 1, player, wanted.id):
                tried += 1
                now = told_now(book_from_text(saying.text)[0], asked, player)
                does = {(str(one.kind), str(one.target)) for _, one in now.acts} | {(now.first.kind, now.first.target)}
                assert tuple(wanted.id.split("|")[:2]) in does, saying.says
                assert saying.says
                assert saying.changes.endswith(".")
                assert saying.changes[0].isupper()
    assert tried


def test_the_sayings_are_those_the_rules_find_and_the_one_that_changes_least_comes_first() -> None:
    here = floor("1>2")
    stop = told(here).stops[1]
    book = told(here).played.book
    wanted = next(one for one in answers(here.text, book, stop.asked, 1) if one.words == "holds, top")
    (same,) = (one for one in answers_at(here, 1, 1) if one.words == "holds, top")
    found = sayings(here.text, book, stop.asked, 1, wanted)
    assert [one.text for one in found] == [one.text for one in sayings_at(here, 1, 1, same.id)]
    assert [one.differs for one in found] == sorted(one.differs for one in found)


@pytest.mark.parametrize(
    ("stop", "player", "says"),
    [
        (0, 9, "Nobody wears 9. On the floor are 1, 2, 3, 4, 5."),
        (7, 1, "There is no decision 8: this possession has "),
        (-1, 1, "There is no decision 0: this possession has "),
    ],
)
def test_a_stop_or_a_player_there_is_not_is_one_clear_sentence(stop: int, player: int, says: str) -> None:
    with pytest.raises(BackcutError) as refused:
        answers_at(floor("1>2"), stop, player)
    assert str(refused.value).startswith(says)
    with pytest.raises(BackcutError):
        sayings_at(floor("1>2"), stop, player, "")


def test_an_answer_that_is_none_there_says_to_look_again() -> None:
    with pytest.raises(BackcutError, match="Look again"):
        sayings_at(floor("1>2"), 1, 1, "sings|rim|straight|now")


def test_the_page_is_told_the_same_in_the_one_envelope(tmp_path_factory: pytest.TempPathFactory) -> None:
    asks = client(tmp_path_factory.mktemp("shelf"))
    coach = Visitor(asks)
    offered = asks.get(f"{coach.path}/answers", params={"stop": 1, "player": 1}).json()
    assert offered["ok"] is True
    assert offered["data"] == [one.model_dump() for one in answers_at(demo(), 1, 1)]
    asked = {"stop": 1, "player": 1, "answer": offered["data"][1]["id"]}
    said = asks.post(f"{coach.path}/answers", json=asked).json()
    assert said["ok"] is True
    assert said["data"]
    assert coach.change({"kind": "text", "text": said["data"][0]["text"]}) == 200
    for wrong in ({"stop": 99, "player": 1}, {"stop": 1, "player": 99}, {"stop": 401, "player": 1}, {"stop": "x"}):
        refused = asks.get(f"{coach.path}/answers", params=wrong)
        assert refused.status_code == 422
        assert refused.json()["said"].endswith(".")
