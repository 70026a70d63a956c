"""Run `backcut` as the command does, in this process, and keep what it says."""

from __future__ import annotations

import io
import json
import sys
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from typing import Any
from unittest.mock import patch

from backcut.cli.main import run


@dataclass(frozen=True)
class Told:
    """What a command said and how it ended."""

    code: int
    out: str
    err: str

    @property
    def data(self) -> Any:
        """The JSON it printed."""
        return json.loads(self.out)

    @property
    def words(self) -> str:
        """What it printed, in one line: tables and long lines are wrapped to the width of the terminal."""
        return " ".join(self.out.split())


def backcut(*words: object) -> Told:
    """What `backcut WORDS` says; anything but an error of ours is raised, as the user would see it."""
    out, err, code = io.StringIO(), io.StringIO(), 0
    with patch.object(sys, "argv", ["backcut", *map(str, words)]), redirect_stdout(out), redirect_stderr(err):
        try:
            run()
        except SystemExit as end:
            code = end.code if isinstance(end.code, int) else 0 if end.code is None else 1
    return Told(code, out.getvalue(), err.getvalue())
