"""Bad input gets one clear message and exit code 2, and nothing is written; no traceback ever reaches the user."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backcut.court.spots import Spot
from backcut.errors import BackcutError
from backcut.files import write_whole
from backcut.offence.book_text import MOST_BYTES
from backcut.offence.library import presets

from .told import Told, backcut


def one_message(said: Told) -> str:
    """The one message of a command that was used wrongly."""
    assert (said.code, said.out) == (2, "")
    assert said.err.endswith("\n")
    assert said.err.count("\n") == 1
    assert "Traceback" not in said.err
    return said.err.strip()


#: Each row: what is in the file, and what the message says after the file's name.
BAD_FILES = {
    "empty": (b"", ": the file is empty. Start a book with: backcut book new "),
    "blank": (b" \n\t\n\xef\xbb\xbf", ": "),
    "not UTF-8": ("Title: Caf\xe9\n".encode("latin-1"), ", line 1: this is not UTF-8 text."),
    "not UTF-8 in line 3": (b"Title: x\n\n# \xff\n", ", line 3: this is not UTF-8 text."),
    "UTF-16": ("Title: x\n".encode("utf-16"), ", line 1: this is not UTF-8 text."),
    "binary": (bytes(range(256)) * 20, ", line "),
    "zeros": (b"Title: x\n\x00\n", ": this is not a text file."),
    "5 MB": (b"Otherwise I hold.\n" * 300_000, ": 5.4 MB is too big for a book; a book is a few pages of text, 64 kB"),
}


@pytest.mark.parametrize("command", [("play",), ("count",), ("book", "check"), ("book", "format")], ids=" ".join)
@pytest.mark.parametrize("kind", BAD_FILES)
def test_a_file_that_is_no_book_is_told_why(command: tuple[str, ...], kind: str, tmp_path: Path) -> None:
    data, says = BAD_FILES[kind]
    file = tmp_path / "ours.txt"
    file.write_bytes(data.replace(b"\xef\xbb\xbf", b"") if kind == "blank" else data)
    assert one_message(backcut(*command, file)).startswith(f"{file}{says}")
    assert [path.name for path in tmp_path.iterdir()] == ["ours.txt"]


@pytest.mark.parametrize("command", [("play",), ("count",), ("book", "check"), ("book", "format")], ids=" ".join)
def test_a_folder_and_a_missing_file_are_no_books(command: tuple[str, ...], tmp_path: Path) -> None:
    assert one_message(backcut(*command, tmp_path)).startswith(f"{tmp_path}: this file cannot be read (Is a directory)")
    missing = one_message(backcut(*command, tmp_path / "none.txt"))
    assert missing.startswith(f"{tmp_path / 'none.txt'}: there is no such file")
    assert all(name in missing for name in presets())
    assert "there is no such file" in one_message(backcut(*command, "a" * 300))


def test_a_formation_has_no_text_to_check() -> None:
    assert "no shipped book is called so" in one_message(backcut("book", "check", "five-out"))


def test_a_byte_order_mark_and_other_line_ends_do_no_harm(tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    file.write_bytes(b"\xef\xbb\xbfTitle: Ours\r\nFormation: five-out\rOtherwise I hold, wide, feet set.")
    assert backcut("book", "check", file).code == 0


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="this system has no endless file")
def test_an_endless_file_is_too_big() -> None:
    assert f"{MOST_BYTES // 1000} kB at most" in one_message(backcut("book", "check", "/dev/zero"))


#: Each row: the words of the command and how its one message begins.
WRONG_USE = {
    "a pass to nobody": (("--moves", "T>LS"), 'Move "T>LS" (column 1): Nobody stands at the left slot; there are'),
    "a pass to oneself": (("--moves", "T>1"), 'Move "T>1" (column 1): The pass of 1 reaches nobody'),
    "a pass to a number nobody wears": (("--moves", "T>RW, 2>9"), 'Move "2>9" (column 7): Nobody wears 9'),
    "a pass without the ball": (
        ("--moves", "RW>T"),
        'Move "RW>T" (column 1): 2 cannot pass: 1 has the ball, at the top',
    ),
    "a pass to nobody cutting": (("--moves", "T>cutter"), 'Move "T>cutter" (column 1): Nobody is cutting'),
    "a pass to a denied player": (
        ("--start", "1:T* 2:RW! 3:LW 4:RC 5:LC", "--moves", "1>2"),
        'Move "1>2" (column 1): 2 is denied, the pass is shut.',
    ),
    "a denial of the ball": (("--moves", "deny T"), 'Move "deny T" (column 1): 1 has the ball and cannot be denied'),
    "a dribble too far": (
        ("--moves", "dribble 1>RC"),
        'Move "dribble 1>RC" (column 1): 1 stands at the top and cannot',
    ),
    "a dribble too far from the end": (
        ("--moves", "T>RW, RW>RC, dribble RC>T"),
        'Move "dribble RC>T" (column 14): 4 stands at the right corner and cannot dribble to the top',
    ),
    "a dribble inside": (("--moves", "dribble 1>Lb"), 'Move "dribble 1>Lb" (column 1): 1 can dribble to a spot of the'),
    "a cut of nobody": (("--moves", "jam 2"), 'Move "jam 2" (column 1): 2 is not cutting'),
    "a move after the end": (("--moves", "shot, T>RW"), 'Move "T>RW" (column 7): The possession has ended with a shot'),
    "a move that cannot be read": (("--moves", "T>RW, jump high"), "The move list cannot be read at column 12: "),
    "a number too long": (("--moves", "9" * 5000), "The move list cannot be read at column 1: "),
    "an unknown spot at the start": (("--start", "1:T* 2:XX"), "The situation cannot be read at column 8: "),
    "a spot the formation lacks at the start": (
        ("--start", "1:T* 2:RS 3:LW 4:RC 5:LC"),
        "Five-out has no right slot in this book. Its ring is: left corner, left wing, top, right wing, right corner.",
    ),
    "two on one spot": (("--start", "1:T* 2:T"), "Two players stand at the top: a spot takes one."),
    "nobody with the ball": (("--start", "1:T 2:RW"), "One player must have the ball, here 0 have"),
    "a start that has ended": (("--start", "1:T* 2:RW | ended shot"), "The start has ended with a shot already."),
    "a start on the rim": (("--start", "1:T* 2:R"), "2 stands at the rim: the rim is run to, never held."),
    "a start with a pass of nobody": (("--start", "1:T* 2:RW | pass by 7 from T"), "Nobody wears 7 at the start."),
    "a start with a dribble off the ring": (
        ("--start", "1:T* 2:RW | dribble by 1 from T to Lb just now", "--moves", "deny 2"),
        "Five-out has no left block in this book.",
    ),
    "a cut from off the ring": (
        ("--start", "1:T* 2:R(cutting from Lb, left of the ball, jammed)", "--moves", "sag 2"),
        "Five-out has no left block in this book.",
    ),
    "a cut from neither side": (
        ("--start", "1:LW* 2:R(cutting from T, jammed)", "--moves", "forget 1"),
        "2 is cutting, but nothing says on which side of the ball the cut began.",
    ),
    "an unknown court": (("--court", "moon"), 'No court is called "moon". The courts are: fiba'),
    "an unknown squad": (("--squad", "moon"), 'No squad is called "moon". '),
}


@pytest.mark.parametrize(("words", "says"), list(WRONG_USE.values()), ids=list(WRONG_USE))
def test_a_possession_that_cannot_be_played_is_told_why(words: tuple[str, ...], says: str) -> None:
    assert one_message(backcut("play", "five-out", *words)).startswith(says)
    assert one_message(backcut("play", "five-out", *words, "--json")).startswith(says)


@pytest.mark.parametrize(
    "words",
    [
        ("play", "five-out", "--moves", "RW>T"),
        ("play", "five-out", "--moves", "T>"),
        ("play", "five-out", "--start", "1:T 2:RW"),
        ("play", "five-out", "--court", "moon"),
        ("play", "five-out", "--squad", "moon"),
        ("play", "none.txt"),
    ],
    ids=" ".join,
)
def test_no_page_is_begun_for_a_possession_that_cannot_be_played(words: tuple[str, ...], tmp_path: Path) -> None:
    one_message(backcut(*words, "--html", tmp_path / "page.html"))
    assert list(tmp_path.iterdir()) == []
    page = tmp_path / "page.html"
    page.write_text("mine", encoding="utf-8")
    one_message(backcut(*words, "--html", page))
    assert page.read_text(encoding="utf-8") == "mine"


def test_a_book_is_not_begun_where_it_cannot_be_written(tmp_path: Path) -> None:
    file = tmp_path / "a file"
    file.write_text("mine", encoding="utf-8")
    assert one_message(backcut("book", "new", file / "ours.txt")).endswith("Name another place.")
    assert one_message(backcut("book", "new", tmp_path / ("a" * 300))).endswith("Name another place.")
    assert "left alone" in one_message(backcut("book", "new", tmp_path))
    assert "No shipped book is called" in one_message(backcut("book", "new", tmp_path / "x.txt", "--from", "none"))
    said = one_message(backcut("book", "new", tmp_path / "x.txt", "--title", "\udcff"))
    assert said.endswith("nothing was written.")
    assert [path.name for path in tmp_path.iterdir()] == ["a file"]
    assert file.read_text(encoding="utf-8") == "mine"


def test_a_file_is_written_whole_or_not_at_all(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    with pytest.raises(BackcutError, match="cannot be written"):
        write_whole(tmp_path / "folder", "text")
    assert [path.name for path in tmp_path.iterdir()] == ["folder"]


@pytest.mark.parametrize(
    "words", [("nothing",), ("play",), ("book",), ("book", "dance"), ("play", "five-out", "--seed", "x"), ("--no",)]
)
def test_a_command_that_is_none_ends_with_exit_code_2(words: tuple[str, ...]) -> None:
    said = backcut(*words)
    assert said.code == 2
    assert "Usage: backcut" in said.out + said.err


def test_an_unknown_court_has_no_formations() -> None:
    assert one_message(backcut("formations", "--court", "moon")).startswith('No court is called "moon"')


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("book", "check", "five-out.txt"), 2, "^five-out.txt: there is no such file"),
        (("play", "five-out", "--moves", "RW>T"), 2, r'^Move "RW>T" \(column 1\): 2 cannot pass'),
        (("play", "."), 2, r"^\.: this file cannot be read"),
        (("play", "five-out", "--moves", "T>RW"), 0, "^$"),
    ],
)
def test_the_command_itself_says_the_same(words: tuple[str, ...], code: int, says: str, tmp_path: Path) -> None:
    command = [sys.executable, "-m", "backcut", *words]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == code
    assert re.search(says, done.stderr)
    assert done.stderr.count("\n") == (1 if code else 0)
    assert list(tmp_path.iterdir()) == []


_WHO = st.sampled_from([*"123456", *Spot, "cutter", "left wing"])
_MOVE = (
    st.tuples(_WHO, _WHO).map(">".join)
    | st.tuples(st.sampled_from(["deny ", "sag ", "jump ", "free ", "jam ", "forget ", "shot ", "lay-up "]), _WHO).map(
        "".join
    )
    | st.tuples(_WHO, _WHO).map(lambda pair: f"dribble {pair[0]}>{pair[1]}")
    | st.tuples(_WHO, _WHO).map(lambda pair: f"deny {pair[0]}+{pair[1]}")
    | st.just("turnover")
)
_MOVES = st.lists(st.tuples(st.sampled_from(["", "", "early "]), _MOVE).map("".join), min_size=1, max_size=6).map(
    ", ".join
)


def ends_well(said: Told) -> None:
    assert said.code in (0, 2)
    assert said.err.count("\n") == (1 if said.code else 0)
    assert (said.out == "") == (said.code == 2)


@settings(deadline=None, derandomize=True, database=None)
@given(st.sampled_from(["five-out", "four-out", "three-out", *presets()]), _MOVES)
def test_no_move_list_ends_in_a_traceback(book: str, moves: str) -> None:
    ends_well(backcut("play", book, "--json", "--moves", moves))


@settings(deadline=None, derandomize=True, database=None)
@given(st.text(alphabet="123TRWLC>,+ -cutersdny!²\xa0", min_size=1, max_size=12).filter(str.strip), st.integers(0, 2))
def test_no_odd_text_ends_in_a_traceback(text: str, place: int) -> None:
    option = ("--moves", "--start", "--court")[place]
    ends_well(backcut("play", "five-out", f"{option}={text}", "--json"))
