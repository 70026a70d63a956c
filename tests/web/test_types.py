"""The types that the page's modules are checked against are those of the server's answers."""

from __future__ import annotations

from scripts.make_types import FILE, types


def test_the_types_of_the_answers_are_as_the_server_has_them() -> None:
    assert FILE.read_text(encoding="utf-8") == types(), "Write them anew: python scripts/make_types.py"
