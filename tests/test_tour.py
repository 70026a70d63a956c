"""The five-minute tour of the README: its commands are run, in order, as a stranger would run them."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]


def commands() -> list[str]:
    """The commands between the two tour marks of the README."""
    text = (ROOT / "README.md").read_text("utf-8")
    tour = text[text.index("<!-- tour:") : text.index("<!-- tour ends -->")]
    return re.findall(r"^\$ (.+)$", tour, flags=re.M)


def test_the_tour_can_be_walked_from_end_to_end(tmp_path: Path) -> None:
    env = os.environ | {"PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}", "COLUMNS": "200"}
    said = ""
    for command in commands():
        done = subprocess.run(command, shell=True, cwd=tmp_path, env=env, capture_output=True, text=True, check=False)
        assert done.returncode == 0, f"{command}\n{done.stdout}\n{done.stderr}"
        said += done.stdout
    # What the README promises beside its commands.
    assert "Here: No sentence says what 2 does, in the lane." in said
    assert "Our team: 2 findings." in said
    assert "Way out 1: Let H say" in said
    assert "Our team: clean." in said
    assert "opposite" in (tmp_path / "ours.txt").read_text("utf-8")
    assert "opposite" not in (tmp_path / "ours-2.txt").read_text("utf-8")
    assert "names no spot to come out to" in (tmp_path / "holes.html").read_text("utf-8")
    assert "600 situations" in said
    assert "the farthest 16 moves away" in said
    assert "problems" in said
    page = (tmp_path / "ours.html").read_text("utf-8")
    assert "Our team" in page
