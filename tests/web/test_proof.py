"""Proving on the page: in a process of its own, stopped at any time, and every finding opens on the floor."""

from __future__ import annotations

import json
import os
import threading
import time
from collections.abc import Callable, Iterator
from typing import Any
from urllib.error import HTTPError
from urllib.request import Request, urlopen
from xml.etree import ElementTree

import pytest
import uvicorn
from fastapi import FastAPI

from backcut.errors import BackcutError, NotationError
from backcut.files import digest
from backcut.offence.library import preset_text
from backcut.prove.depth import Depth
from backcut.prove.own import asked_of
from backcut.prove.proof import Finding, prove
from backcut.web.desk import Desk
from backcut.web.floor import Floor, played, read
from backcut.web.proof import BusyError, Proofs
from backcut.web.proof_data import ProofData
from backcut.web.proof_floor import on_the_floor
from backcut.web.proof_routes import proof_routes
from backcut.web.proof_view import kind_of, proof_data

WAITS_S = 60.0  # until a test gives up; no test measures time
FIRST = preset_text("first-month")
TEAM = preset_text("school-team")
OPPOSITE = TEAM.replace("the first open spot", "the corner opposite the ball")
ALL = [str(depth) for depth in Depth]


@pytest.fixture
def proofs() -> Iterator[Proofs]:
    made = Proofs()
    yield made
    children = list(made.children)
    made.close()
    assert all(child.wait(WAITS_S) for child in children)


def until(true: Callable[[], bool]) -> None:
    end = time.monotonic() + WAITS_S
    while not true():
        assert time.monotonic() < end, "It never came."
        time.sleep(0.02)


def done(proofs: Proofs, floor: str, text: str, depths: list[str] | None = None) -> dict[str, Any]:
    proofs.start(floor, text, depths or ["settled"])
    until(lambda: proofs.look(floor)["state"] != "looking")
    return proofs.look(floor, text)


def test_nothing_is_started_before_somebody_asks(proofs: Proofs) -> None:
    assert proofs.look("a", TEAM)["state"] == "none"
    assert proofs.children == []


def test_what_the_page_finds_is_what_the_command_finds(proofs: Proofs) -> None:
    told = done(proofs, "a", OPPOSITE)
    book = read(OPPOSITE)[0]
    asked = asked_of(book)
    proof = prove(book, (Depth.SETTLED,), asked.properties, named=asked.named, sided=asked.sided)
    assert proof.findings
    assert [finding["title"] for finding in told["findings"]] == [finding.breach.cause for finding in proof.findings]
    assert {row["name"]: row["verdict"] for row in told["holds"]}["One to a spot."] == "1 finding"
    ProofData(**told)


def test_a_book_without_findings_says_what_holds_and_what_was_not_looked_at(proofs: Proofs) -> None:
    told = done(proofs, "a", TEAM)
    assert (told["state"], told["findings"]) == ("done", [])
    assert told["said"].startswith("Nothing found. ")
    assert all(row["verdict"] == "holds" for row in told["holds"])
    assert [row["depth"] for row in told["not_looked_at"]] == ["denied", "overlapped", "disturbed"]


def test_a_silent_sentence_and_a_clash_have_their_own_signs(proofs: Proofs) -> None:
    kinds = {finding["property"]: finding["kind"] for finding in done(proofs, "a", OPPOSITE)["findings"]}
    assert kinds == {"An answer for everybody": "silent", "One to a spot": "clash"}


def test_each_still_is_whole_markup_and_marks_only_what_the_page_defines(proofs: Proofs) -> None:
    for finding in done(proofs, "a", OPPOSITE)["findings"]:
        still = ElementTree.fromstring(finding["still"])
        assert still.get("viewBox")
        assert still.get("role") == "img"
        assert {node.get("href") for node in still.iter("use")} <= {
            f"#{name}" for name in ("ground", "m-attacker", "m-holder", "m-ball", "m-plain", "m-denies", "m-spot",
                                    "m-near", "m-arms", "m-hand-free")
        }  # fmt: skip


@pytest.mark.parametrize("text", [FIRST, OPPOSITE, preset_text("four-out-school-team"), preset_text("two-bigs")])
def test_every_finding_opens_on_the_floor_as_it_was_found(text: str) -> None:
    """Where no second counts, the floor comes to the very situation that the proof shows."""
    book = read(text)[0]
    proof = prove(book, (Depth.SETTLED, Depth.DENIED, Depth.DISTURBED), asked_of(book).properties)
    shown = [found for found in proof.findings if found.possession is not None]
    for finding in shown:
        possession = finding.possession
        assert possession is not None
        if possession.timed:
            continue
        told = on_the_floor(book, possession)
        floor = played(Floor(text, told.start, tuple(told.moves.split(", ")) if told.moves else ()))
        assert floor.stuck == ""
        assert floor.begins == possession.start
        if not possession.steps:
            continue
        step = floor.steps[told.step]
        here = step.beats[told.beat].before if told.beat < len(step.beats) else step.after
        assert here == possession.seen


def test_what_lives_by_the_second_is_laid_where_everybody_counts_then() -> None:
    book = read(TEAM)[0]
    proof = prove(
        book, (Depth.OVERLAPPED,), [one for one in asked_of(book).properties if one[0].name == "three seconds"]
    )
    late = [found for found in proof.findings if found.possession is not None and found.possession.timed]
    assert late
    for finding in late:
        assert finding.possession is not None
        assert kind_of(finding) == ("late", "Late")
        told = on_the_floor(book, finding.possession)
        floor = played(Floor(TEAM, told.start, tuple(told.moves.split(", "))))
        assert floor.stuck == ""
        assert told.exact
        assert floor.steps[told.step].beats[told.beat].before.spots() == finding.possession.seen.spots()


def test_a_finding_says_after_what_it_shows_and_which_sentence_is_behind_it() -> None:
    book = read(FIRST)[0]
    proof = prove(book, (Depth.DENIED,), asked_of(book).properties)
    when = {found["title"]: found["when"] for found in proof_data(proof)["findings"]}
    assert when["With both players one pass away denied, the ball has no other way on."] == (
        "After 2 denials. Behind it: D Wide."
    )
    assert when["Nobody gets back when a shot goes up."] == "After a shot. Behind it: D Wide."


def test_a_sentence_that_is_never_asked_has_no_picture_and_nothing_to_play() -> None:
    book = read(TEAM)[0]
    proof = prove(book, (Depth.SETTLED,), [one for one in asked_of(book).properties if one[0].name == "one to a spot"])
    prop = next(one for one in asked_of(book).properties if one[0].name == "every sentence speaks")
    from backcut.prove.property import Breach

    proof.findings.append(Finding(*prop, Breach("The sentence G never speaks.", "", habits=(6,)), Depth.SETTLED))
    found = proof_data(proof)["findings"][0]
    assert (found["kind"], found["plays"], found["still"]) == ("never", False, "")


def test_a_coachs_own_sentence_that_does_not_hold_is_not_so() -> None:
    text = FIRST + "\nProve: Never somebody has the ball in a corner.\n"
    book, problems = read(text)
    assert not problems
    asked = asked_of(book)
    assert not asked.problems
    proof = prove(book, (Depth.SETTLED,), asked.properties, named=asked.named, sided=asked.sided)
    assert "Not so" in [found["word"] for found in proof_data(proof)["findings"]]


def test_what_the_first_depth_shows_is_there_before_the_deeper_ones_are_done(proofs: Proofs) -> None:
    proofs.start("a", OPPOSITE, ALL)
    until(lambda: bool(proofs.look("a")["findings"]))
    assert proofs.look("a")["state"] == "looking"
    assert proofs.look("a")["said"].endswith("Stop when you like, what was found stays.")


def test_stopped_it_keeps_what_was_found_and_says_how_much_was_looked_at(proofs: Proofs) -> None:
    proofs.start("a", OPPOSITE, ALL)
    until(lambda: bool(proofs.look("a")["findings"]))
    proofs.stop("a")
    until(lambda: proofs.look("a")["state"] != "looking")
    told = proofs.look("a", OPPOSITE)
    assert told["state"] == "stopped"
    assert len(told["findings"]) >= 2
    assert "What was found stays." in told["said"]


def test_after_a_stop_the_same_process_looks_again(proofs: Proofs) -> None:
    proofs.start("a", TEAM, ["overlapped"])
    until(lambda: "so far" in proofs.look("a")["said"])
    pid = proofs.children[0].pid
    proofs.stop("a")
    until(lambda: proofs.look("a")["state"] == "stopped")
    assert done(proofs, "a", FIRST)["state"] == "done"
    assert [child.pid for child in proofs.children] == [pid]


def test_looking_again_at_the_same_goes_on_and_at_another_text_begins_anew(proofs: Proofs) -> None:
    proofs.start("a", TEAM, ["overlapped"])
    pid = proofs.children[0].pid
    proofs.start("a", TEAM, ["overlapped"])
    assert [child.pid for child in proofs.children] == [pid]
    proofs.start("a", FIRST, ["settled"])
    assert proofs.look("a")["digest"] == digest(FIRST)
    until(lambda: proofs.look("a")["state"] == "done")
    assert len(proofs.children) == 1


def test_a_third_book_at_once_is_refused_in_one_sentence_and_taken_when_one_is_done(proofs: Proofs) -> None:
    proofs.start("a", TEAM, ["overlapped"])
    proofs.start("b", TEAM, ["overlapped"])
    with pytest.raises(BusyError, match="Two books are being looked at already"):
        proofs.start("c", FIRST)
    assert proofs.look("c")["state"] == "none"
    proofs.forget("a")
    assert done(proofs, "c", FIRST)["state"] == "done"


def test_a_floor_that_is_closed_ends_its_proof_at_once(proofs: Proofs) -> None:
    proofs.start("a", TEAM, ["overlapped"])
    child = proofs.children[0]
    proofs.forget("a")
    assert child.wait(WAITS_S)
    assert proofs.look("a")["state"] == "none"


def test_a_process_that_falls_over_leaves_a_floor_that_can_look_again(proofs: Proofs) -> None:
    proofs.start("a", TEAM, ["overlapped"])
    proofs.children[0].kill()
    until(lambda: proofs.look("a")["state"] == "stopped")
    assert done(proofs, "a", FIRST)["state"] == "done"


def test_the_processes_go_when_the_server_does(proofs: Proofs) -> None:
    """The server may be ended so that it can tell nobody: its children see that nobody talks to them any more."""
    proofs.start("a", TEAM, ["overlapped"])
    child = proofs.children[0]
    assert child._process.stdin is not None
    child._process.stdin.close()
    assert child.wait(WAITS_S)


def test_a_word_to_stop_that_comes_too_late_stops_nothing_that_follows(proofs: Proofs) -> None:
    assert done(proofs, "a", FIRST)["state"] == "done"
    proofs.stop("a")
    proofs.children[0].stop()
    assert done(proofs, "a", OPPOSITE)["state"] == "done"


def test_a_book_with_problems_is_not_looked_at_and_the_first_is_named(proofs: Proofs) -> None:
    told = done(proofs, "a", TEAM.replace("I back cut at once", "I fly at once"))
    assert told["state"] == "refused"
    assert told["said"].startswith("Put line 20 of the book right first: ")


def test_a_depth_there_is_not_is_refused_with_those_there_are(proofs: Proofs) -> None:
    with pytest.raises(NotationError, match='"deep" is no depth'):
        proofs.start("a", TEAM, ["deep"])
    assert proofs.children == []


def test_a_way_out_is_offered_with_its_text_and_removes_the_finding(proofs: Proofs) -> None:
    first = done(proofs, "a", OPPOSITE)
    proofs.ways("a", 2)
    until(lambda: proofs.ways("a", 2)["state"] != "looking")
    told = proofs.ways("a", 2)
    assert told["state"] == "done"
    assert "the first open spot" in told["ways"][0]["says"]
    assert told["ways"][0]["changes"].startswith("It changes answers in ")
    after = done(proofs, "b", told["ways"][0]["text"])
    assert first["findings"][1]["title"] not in [finding["title"] for finding in after["findings"]]


def test_ways_out_are_found_though_the_process_has_looked_at_another_book_since(proofs: Proofs) -> None:
    done(proofs, "a", FIRST, ["denied"])
    done(proofs, "b", TEAM)
    assert len(proofs.children) == 1
    proofs.ways("a", 1)
    until(lambda: proofs.ways("a", 1)["state"] != "looking")
    assert proofs.ways("a", 1)["state"] == "done"
    assert proofs.look("a")["ways"]["1"]["state"] == "done"


def test_ways_out_of_no_finding_are_refused(proofs: Proofs) -> None:
    with pytest.raises(BackcutError, match="There is no finding 1 here"):
        proofs.ways("a", 1)


def test_out_of_date_pictures_name_the_letter_that_was_changed(proofs: Proofs) -> None:
    done(proofs, "a", FIRST)
    edited = FIRST.replace("the first open spot", "the end of the line")
    assert proofs.look("a", FIRST)["changed"] == ""
    assert proofs.look("a", edited)["changed"] == "You changed B after these pictures were made. Look again?"


@pytest.fixture
def server(proofs: Proofs) -> Iterator[tuple[str, str]]:
    """A server with one floor, the school team after a denial: its address and the floor's."""
    desk = Desk()
    floor = desk.open(Floor(OPPOSITE, "", ("deny 2",)))
    app = FastAPI()
    app.include_router(proof_routes(desk, proofs), prefix="/api")
    running = uvicorn.Server(uvicorn.Config(app, port=0, log_level="critical", lifespan="off"))
    thread = threading.Thread(target=running.run)
    thread.start()
    until(lambda: running.started)
    port = running.servers[0].sockets[0].getsockname()[1]
    yield f"http://127.0.0.1:{port}/api/floors/{floor.id}", floor.id
    running.should_exit = True
    thread.join()


def asked(address: str, method: str = "GET", body: Any = None) -> Any:
    data = None if body is None else json.dumps(body).encode()
    request = Request(address, data, {"Content-Type": "application/json"}, method=method)
    with urlopen(request, timeout=WAITS_S) as answer:
        return json.load(answer)


def test_over_the_wire_a_book_is_looked_at_and_the_mark_is_tried(server: tuple[str, str]) -> None:
    address, _ = server
    assert asked(f"{address}/proof")["data"]["state"] == "none"
    assert asked(f"{address}/proof", "POST", {"depths": ["settled"]})["ok"]
    until(lambda: asked(f"{address}/proof")["data"]["state"] == "done")
    assert len(asked(f"{address}/proof")["data"]["findings"]) == 2
    assert asked(f"{address}/proof/1/ways", "POST")["data"]["state"] in ("looking", "done")
    assert asked(f"{address}/proof", "DELETE")["ok"]
    mark = asked(f"{address}/mark?mark_m=-1&t=9")["data"]
    assert mark["mark_m"] == -1.0
    assert asked(f"{address}/mark")["data"]["line"] == "the arc"


@pytest.mark.parametrize("query", ["mark_m=nan", "mark_m=much", "t=-1", "t=inf"])
def test_a_mark_that_is_no_number_is_refused(server: tuple[str, str], query: str) -> None:
    with pytest.raises(HTTPError) as refused:
        asked(f"{server[0]}/mark?{query}")
    assert refused.value.code == 422
    refused.value.close()


def test_the_floor_answers_while_a_book_is_looked_at(server: tuple[str, str], proofs: Proofs) -> None:
    address, floor = server
    asked(f"{address}/proof", "POST", {"depths": ["overlapped"]})
    for _ in range(5):
        assert asked(f"{address}/mark")["ok"]
    assert proofs.look(floor)["state"] == "looking"
    assert proofs.children[0].pid != os.getpid()
