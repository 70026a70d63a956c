"""`backcut prove`: what a coach reads, what ends with 0, 1 or 2, and what is written and what is left alone."""

from __future__ import annotations

import os
import re
import shlex
import signal
import subprocess
import sys
from html import escape
from pathlib import Path

import pytest

from backcut.offence.library import open_book, preset_text, presets
from backcut.prove import words
from backcut.prove.property import properties
from backcut.prove.starts import starts
from backcut.prove.walk import walk

from .test_bad_input import one_message
from .told import Told, backcut

BOOKS = Path(__file__).parents[1] / "books"
#: School team, but cutters come out to the corner opposite the ball, which is not there or taken.
HOLED = preset_text("school-team").replace("the first open spot", "the corner opposite the ball")

#: A finding as text: its place and cause, how many situations show it, and how many events the nearest is away.
FOUND = re.compile(
    r"^(?P<place>\d+)\. (?P<cause>.+)\n.+ Not so: (?P<situations>[\d,]+) situations?, "
    r"the nearest (?:at the start|after (?P<events>[\d,]+) events?)\.$",
    re.M,
)
#: Where it shows, and how to play it.
SHOWN = re.compile(r"^   Here: (?P<here>.+)\n   Play it: backcut (?P<words>.+)$", re.M)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A coach's folder, with his book in it and nothing else; the commands are run there."""
    (tmp_path / "ours.txt").write_text(preset_text("first-month"), encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def files(folder: Path) -> dict[str, str]:
    """Every file in a folder with its text."""
    return {path.name: path.read_text("utf-8") for path in folder.iterdir() if path.is_file()}


def number(text: str | None) -> int:
    """A number as it is printed."""
    return int((text or "0").replace(",", ""))


def ours(folder: Path, *lines: str) -> None:
    """The coach's book, which names no squad, with more lines at its top."""
    rest = [line for line in preset_text("first-month").splitlines() if not line.startswith("Squad:")]
    (folder / "ours.txt").write_text("\n".join([*lines, *rest]), encoding="utf-8")


def test_a_clean_book_ends_with_0_and_says_what_was_looked_at() -> None:
    said = backcut("prove", "school-team")
    assert (said.code, said.err) == (0, "")
    assert said.out.startswith("School team: clean.\n")
    seen = walk(open_book("school-team")[0])
    folded = len(seen.situations)
    every = sum(seen.images(node) for node in range(folded))
    assert f"settled: {every:,} situations ({folded:,} with mirror images folded), {seen.moves:,} moves," in said.out
    for prop in properties().values():
        assert re.search(rf"^  {prop.kind}: .*\b{prop.name}\b", said.out, re.M)
    assert "Not asked for: denied, overlapped, disturbed." in said.out
    assert "Reading load: corner " in said.out


def test_what_was_not_tried_is_said() -> None:
    assert (
        'No skip passes were tried: the book has no sentence for them ("skip pass").'
        in backcut("prove", "first-month").out
    )


def test_findings_end_with_1_the_nearest_first() -> None:
    said = backcut("prove", "first-month")
    assert (said.code, said.err) == (1, "")
    assert said.out.startswith("First month: 2 findings.\n\n1. Nobody gets back when a shot goes up.\n")
    away = [number(found["events"]) for found in FOUND.finditer(said.out)]
    assert away == sorted(away)
    assert len(away) == 2


def test_into_a_file_go_words_only() -> None:
    out = backcut("prove", "first-month").out
    assert out == out.lstrip()
    assert all(letter == "\n" or letter.isprintable() for letter in out)


def test_every_depth_that_was_asked_for_has_its_line() -> None:
    out = backcut("prove", "first-month", "--depth", "Disturbed, denied,settled,denied").out
    assert re.findall(r"^  (settled|denied|overlapped|disturbed): ", out, re.M) == ["settled", "denied", "disturbed"]
    assert "Not asked for: overlapped." in out


def test_a_possession_says_how_it_begins_where_the_book_begins_otherwise() -> None:
    lines = backcut("prove", "first-month").out.split("\n")
    assert lines[lines.index("     1 lays the ball up.") - 1] == (
        "     1 has caught the ball and driven to the rim from the top."
    )
    assert "Not so" in lines[lines.index("     1 shoots.") - 1]


def test_each_start_is_told_as_what_it_is() -> None:
    book, _ = open_book("two-bigs")
    for start in starts(book):
        said = words.begins(start.situation)
        if "throw-in by" in start.said:
            assert said.startswith(f"{start.said[-1]} has thrown the ball in to {start.situation.ball}, at the ")
        elif "driven" in start.said:
            assert said.startswith(f"{start.said[0]} has caught the ball and driven to the rim from the ")
        else:
            assert said == f"{start.situation.ball} has the ball at the {start.situation.holder.at.title}."


#: What first month leaves open: a proof of this alone takes no time.
BACK_ONLY = ("--property", "somebody back")

#: Each row: the options, and what the one message says.
WRONG_USE = {
    "unknown depth": (("--depth", "deep"), '"deep" is no depth. There are: settled, denied, overlapped, disturbed'),
    "no depth": (("--depth", " , "), "No depth to look to. There are: settled"),
    "unknown property": (("--property", "out of bounds"), 'No property is called "out of bounds". The properties are'),
    "two that begin so": (("--property", "three"), '"three" could be three on one side or three seconds.'),
    "a number it has not": (("--property", "one to a spot=2"), '"one to a spot" has no number to set.'),
    "no number": (("--property", "three seconds=long"), '"long" in "three seconds=long" is no number.'),
    "endless": (("--property", "three seconds=inf"), '"inf" in "three seconds=inf" is no number.'),
    "nothing to look at": (("--most", 0), "--most 0 is too small: nothing would be looked at."),
    "less than nothing": (("--most", -1), "--most -1 is too small"),
    "change 0": (("--apply", 0), "--apply 0: ways out are numbered from 1."),
    "a change that is not there": (
        ("--apply", 99, *BACK_ONLY),
        "There is no way out 99: there are 2. See them with --suggest.",
    ),
    "a file for nothing": (("--to", "new.txt"), "--to says where --apply writes the new book."),
    "over a file": (("--apply", 1, "--to", "ours.txt"), "ours.txt: this file exists already and is left alone."),
    "page over the book": (("--html", "ours.txt"), "--html ours.txt: this is the book itself."),
    "model over the book": (("--model", "./ours.txt"), "--model ours.txt: this is the book itself."),
    "page and model in one": (("--html", "x", "--model", "x"), "--model x: this is the file of --html too."),
    "page is a folder": (("--html", "."), ".: this file cannot be written (Is a directory)."),
    "page under a file": (("--html", "ours.txt/x.html"), "ours.txt/x.html: this file cannot be written (Not a dir"),
    "too long a name": (("--html", "x" * 300), f"{'x' * 300}: this file cannot be written (File name too long)."),
    "two books": (("school-team", "--html", "x.html", "--suggest"), "--suggest, --html: for one book only."),
    "two books, few situations": (("school-team", "--most", 9), "--most: for one book only."),
    "the second is no book": (("theirs.txt",), "theirs.txt: there is no such file"),
}


@pytest.mark.parametrize(("options", "says"), WRONG_USE.values(), ids=WRONG_USE)
def test_wrong_use_is_one_message_and_nothing_is_written(options: tuple[object, ...], says: str, folder: Path) -> None:
    before = files(folder)
    assert one_message(backcut("prove", "ours.txt", *options)).startswith(says)
    assert files(folder) == before


@pytest.mark.parametrize("option", ["--html", "--model", "--to"])
def test_where_one_file_cannot_be_written_none_is(option: str, folder: Path) -> None:
    places = {"--html": "page.html", "--model": "model.prism", "--to": "new.txt"} | {option: "ours.txt/x"}
    before = files(folder)
    said = one_message(backcut("prove", "ours.txt", "--apply", 1, *(word for pair in places.items() for word in pair)))
    assert said == "ours.txt/x: this file cannot be written (Not a directory). Name another place."
    assert files(folder) == before


def test_no_change_is_applied_to_what_is_clean(folder: Path) -> None:
    (folder / "ours.txt").write_text(preset_text("school-team"), encoding="utf-8")
    said = one_message(backcut("prove", "ours.txt", "--apply", 1))
    assert said == "There is no way out 1: nothing was found in School team."
    assert list(files(folder)) == ["ours.txt"]


@pytest.mark.parametrize("second", [(), ("school-team",)], ids=["one book", "two books"])
def test_the_problems_of_a_book_come_first_and_nothing_is_proved(second: tuple[str, ...], folder: Path) -> None:
    ours(folder, "Squad: giants", "Prove: Sometimes 9 cuts.")
    said = backcut("prove", "ours.txt", *second)
    assert (said.code, said.err) == (1, "")
    assert said.out.startswith('2 problems in this book:\nours.txt:1:1: No squad is called "giants".')
    assert "ours.txt:2:8: Nobody wears 9." in said.out
    assert said.out.endswith("A book with problems is not proved. Put these right first.\n")
    assert "Looked at" not in said.out


def test_a_book_with_problems_writes_nothing(folder: Path) -> None:
    ours(folder, "Do not prove: everything")
    said = backcut("prove", "ours.txt", "--apply", 1, "--html", "x.html", "--model", "x.prism", "--json")
    assert said.code == 1
    assert [problem["wrong"] for problem in said.data["problems"]] == ['No property is called "everything".']
    assert list(files(folder)) == ["ours.txt"]


@pytest.mark.parametrize("book", ["first-month", "two-bigs", BOOKS / "opposite-own.txt"])
def test_json_holds_the_same_numbers_as_the_text(book: str | Path) -> None:
    out, data = backcut("prove", book, "--apart").out, backcut("prove", book, "--apart", "--json").data
    told = [(f["cause"], number(f["situations"]), number(f["events"])) for f in FOUND.finditer(out)]
    assert told == [(f["cause"], f["situations"], f["events"]) for f in data["findings"]]
    assert [shown["here"] for shown in SHOWN.finditer(out)] == [f["text"] for f in data["findings"]]
    assert (data["clean"], data["stopped"], data["written"]) == (False, False, [])
    for one in data["covered"]:
        sizes = (
            f"{one['situations']:,} situations ({one['folded']:,} with mirror images folded), {one['moves']:,} moves"
        )
        also = f"{one['depth']}, {one['situations']:,}"
        assert (f"  {one['depth']}: {sizes}, " if one["depth"] == "settled" else also) in out
    [timed] = data["in_time"]
    assert f"{timed['situations']:,} situations with their clocks, {timed['passes']:,} passes" in out
    [apart] = data["told_apart"]
    line_ups = f"{apart['line_ups']:,} of {apart['possible']:,} settled line-ups"
    assert f"players told apart: {apart['situations']:,} situations; {line_ups}." in out
    for name in data["not_judged"]:
        assert re.search(rf"^  Not judged, .*\b{name}\b", out, re.M)


def test_a_property_is_named_by_how_it_begins_and_with_a_number() -> None:
    said = backcut("prove", "school-team", "--property", "runs=2", "--property", "Three Seconds.", "--json")
    assert {p["name"]: p["says"] for p in said.data["properties"]} == {
        "runs in time": "Nobody is asked for a run that takes the squad longer than 2 seconds.",
        "three seconds": "Nobody without the ball is told to stay in the lane longer than 3 seconds.",
    }
    assert said.code == 1
    assert {finding["property"] for finding in said.data["findings"]} == {"runs in time"}


def test_with_little_to_look_at_a_book_is_never_called_clean(folder: Path) -> None:
    said = backcut("prove", "school-team", "--most", 5, "--model", "x.prism")
    assert (said.code, said.err) == (1, "")
    assert said.out.startswith("School team: nothing found so far, but not everything was looked at.\n")
    assert re.search(r"^  settled: .* Not looked at: \d+ situations that were found\.$", said.out, re.M)
    assert said.out.endswith("x.prism was not written: only what was walked through to its end can be.\n")
    assert list(files(folder)) == ["ours.txt"]


def test_where_nothing_has_to_hold_nothing_is_called_clean(folder: Path) -> None:
    ours(folder, *(f"Do not prove: {name}" for name in properties()))
    said = backcut("prove", "ours.txt")
    assert said.code == 0
    assert said.out.startswith("First month: nothing was asked for, so nothing was proved.\n")


def test_a_coachs_own_property_is_found_by_its_number_and_side(folder: Path) -> None:
    ours(folder, "Prove: Always, when all have settled, 5 is at the left corner.", "Do not prove: somebody back")
    out = backcut("prove", "ours.txt").out
    assert re.search(r"^  settled: [\d,]+ situations \(left and right told apart\), ", out, re.M)
    assert out.split("\n")[2] == "1. 5 is not at the left corner."
    assert "; Always, when all have settled, 5 is at the left corner." in out


def test_what_never_happens_is_said_once_and_has_nothing_to_play(folder: Path) -> None:
    ours(folder, "Prove: Sometimes 5 has the ball at the top, and 5 is in the lane.", "Do not prove: somebody back")
    said = backcut("prove", "ours.txt", "--html", "x.html")
    assert said.code == 1
    assert said.out.count("It never happens that") == 1
    assert "Play it" not in said.out
    assert "It never happens, so there is no picture." in files(folder)["x.html"]


def test_apply_writes_a_new_book_that_proves_clean_and_leaves_the_old_one(folder: Path) -> None:
    old = files(folder)["ours.txt"]
    said = backcut("prove", "ours.txt", "--apply", 1)
    assert said.code == 1
    assert said.out.endswith("ours-2.txt: the book with way out 1. ours.txt is as it was.\n")
    new = files(folder)["ours-2.txt"]
    assert files(folder) == {"ours.txt": old, "ours-2.txt": new}
    added = '"When a shot goes up, the highest of us gets back and the rest rebound."'
    assert f"Way out 1: Add as A: {added}" in said.out
    assert [line for line in old.splitlines() if line not in new.splitlines()] == []
    assert added.strip('"') in " ".join(new.split())
    assert backcut("prove", "ours-2.txt").out.startswith("First month: clean.")


def test_the_next_change_gets_the_next_name_or_the_one_that_is_said(folder: Path) -> None:
    (folder / "ours-2.txt").write_text("", encoding="utf-8")
    said = backcut("prove", "ours.txt", "--apply", 2, *BACK_ONLY, "--json")
    assert said.data["written"] == ["ours-3.txt"]
    backcut("prove", "ours.txt", "--apply", 1, *BACK_ONLY, "--to", "new/theirs.txt")
    assert backcut("prove", folder / "new" / "theirs.txt").code == 0
    assert files(folder / "new").keys() == {"theirs.txt"}
    assert files(folder)["ours-2.txt"] == ""


def test_one_change_for_two_findings_has_one_number_and_says_what_else_it_does_once(folder: Path) -> None:
    out = backcut("prove", "ours.txt", "--suggest", *BACK_ONLY).out
    assert re.findall(r"^   Way out (\d): ", out, re.M) == ["1", "2", "1", "2"]
    assert out.count("It changes answers in ") == 2


def test_the_page_holds_every_finding_and_every_way_out(folder: Path) -> None:
    said = backcut("prove", "ours.txt", "--suggest", "--html", "page.html")
    assert said.out.endswith("Written: page.html\n")
    page = files(folder)["page.html"]
    found = [*FOUND.finditer(said.out)]
    assert len(found) == 2
    for one in found:
        assert f"<h3>{escape(one['cause'])}</h3>" in page
        assert f'id="possession-{one["place"]}"' in page
    ways = re.findall(r"^   Way out (\d: .+)$", said.out, re.M)
    for told in [shown["here"] for shown in SHOWN.finditer(said.out)] + [way.replace(":", ".", 1) for way in ways]:
        assert escape(told) in page
    for prop in properties().values():
        assert escape(prop.sentence(prop.numbers)) in page


def test_a_model_is_written_in_the_language_its_name_asks_for(folder: Path) -> None:
    backcut("prove", "ours.txt", "--model", "walk.prism")
    backcut("prove", "ours.txt", "--model", "walk.jani")
    assert files(folder)["walk.prism"].startswith("mdp\n")
    assert files(folder)["walk.jani"].startswith("{")


def play_lines(said: Told) -> list[tuple[str, list[str]]]:
    """Where each finding shows, in words, and the words of the command that plays it, as a shell splits them."""
    return [(shown["here"], shlex.split(shown["words"])) for shown in SHOWN.finditer(said.out)]


#: Above the free-throw line: the top and the slots.
BACK = {"T", "LS", "RS"}


@pytest.mark.parametrize("file", sorted(BOOKS.glob("*.txt")), ids=lambda file: file.stem)
def test_every_line_that_plays_a_finding_shows_the_trouble(file: Path, tmp_path: Path) -> None:
    book = tmp_path / "My team's books" / file.name
    book.parent.mkdir()
    book.write_bytes(file.read_bytes())
    said = backcut("prove", book)
    lines = play_lines(said)
    assert len(lines) == len([*FOUND.finditer(said.out)])
    assert len(lines) >= 3
    for here, line in lines:
        last = backcut(*line, "--json").data["steps"][-1]
        if "above the free-throw line" in here:
            shooter = last["ball"] if last["kind"] in ("shot", "lay-up") else None
            to = {action["to"] for action in last["actions"] if action["player"] != shooter}
            assert not to & BACK
        else:
            assert here in [trouble["text"] for trouble in last["open"]]
            rows = [row.split("│") for row in backcut(*line).out.splitlines() if row.count("│") == 6]
            assert here in " ".join(" ".join(row[3] for row in rows).split())


@pytest.mark.parametrize("name", presets())
def test_what_is_shown_of_a_shipped_book_can_be_played(name: str) -> None:
    for _, line in play_lines(backcut("prove", name, "--depth", "settled,denied")):
        assert backcut(*line).code == 0


def test_ctrl_c_keeps_what_was_found(tmp_path: Path) -> None:
    pty = pytest.importorskip("pty", reason="this system has no pseudo terminals")
    book, page = tmp_path / "ours.txt", tmp_path / "page.html"
    book.write_text(HOLED, encoding="utf-8")
    # On a terminal the command says what it is looking at, so the test knows when to stop it.
    ours_end, its_end = pty.openpty()
    command = [sys.executable, "-m", "backcut", "prove", str(book), "--depth", "overlapped", "--suggest"]
    with subprocess.Popen(
        [*command, "--html", str(page)], stdout=its_end, stderr=subprocess.PIPE, env=os.environ | {"TERM": "xterm"}
    ) as running:
        os.close(its_end)
        out = b""
        while b"situations so far" not in out:
            out += os.read(ours_end, 4096)
        running.send_signal(signal.SIGINT)
        while more := _read(ours_end):
            out += more
        assert running.stderr is not None
        err = running.stderr.read()
    os.close(ours_end)
    told = out.decode("utf-8")
    assert (running.returncode, err) == (1, b"")
    assert "Traceback" not in told
    assert "1. H (Out) names no spot to come out to." in told
    assert "Looked at, until it was stopped:" in told
    assert "Ways out were not looked for: it was stopped." in told
    assert re.search(r"\d findings? so far", page.read_text("utf-8"))


def _read(terminal: int) -> bytes:
    """What comes next on a terminal; nothing once its other end is closed."""
    try:
        return os.read(terminal, 4096)
    except OSError:
        return b""
