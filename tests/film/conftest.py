"""What the film tests share: the invented possession, and the folder of real data where there is one."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from .invented import Sample


@pytest.fixture
def sample(tmp_path: Path) -> Sample:
    """The invented possession on a FIBA court: corner, attacking right, metres."""
    return Sample(tmp_path)


@pytest.fixture(scope="session")
def real() -> Callable[[str], Path]:
    """A file of the folder of real data that the variable BACKCUT_DATA names; skips where it is absent."""

    def find(name: str) -> Path:
        folder = os.environ.get("BACKCUT_DATA")
        if not folder:
            pytest.skip("BACKCUT_DATA names no folder of real tracking data, which is not shipped")
        path = Path(folder) / name
        if not path.exists():
            pytest.skip(f"the folder named by BACKCUT_DATA has no {name}")
        return path

    return find
