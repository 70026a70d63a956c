"""The reference is made from the code, is complete, and is never behind it."""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path
from types import ModuleType

import pytest

from backcut.offence.action import Kind
from backcut.offence.choices import CHOICES, Choice
from backcut.offence.event import EventKind
from backcut.offence.meanings import ACTION_MEANINGS, EVENT_MEANINGS
from backcut.offence.moves import moves_from_text
from backcut.offence.reference import moves_page, phrases_page
from backcut.offence.situation_text import situation_from_text

ROOT = Path(__file__).parent.parent.parent


def script() -> ModuleType:
    spec = importlib.util.spec_from_file_location("make_reference", ROOT / "scripts" / "make_reference.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("name", ["phrases.md", "moves.md", "properties.md", "conditions.md"])
def test_the_written_reference_is_up_to_date(name: str, tmp_path: Path) -> None:
    script().write(tmp_path)
    made = (tmp_path / name).read_text(encoding="utf-8")
    written = (ROOT / "docs" / name).read_text(encoding="utf-8")
    assert written == made, "write it anew: python scripts/make_reference.py"


def test_every_kind_has_one_meaning() -> None:
    assert list(ACTION_MEANINGS) == list(Kind)
    assert list(EVENT_MEANINGS) == list(EventKind)
    for meanings in (list(ACTION_MEANINGS.values()), [meaning.means for meaning in EVENT_MEANINGS.values()]):
        assert len(set(meanings)) == len(meanings)
        assert all(re.fullmatch(r"[A-Z].{8,100}\.", words) for words in meanings)


def test_every_kind_stands_in_the_one_table() -> None:
    page = moves_page()
    for kind in EventKind:
        assert f"| {kind} | `{EVENT_MEANINGS[kind].written}` | {EVENT_MEANINGS[kind].means} |" in page
    for action in Kind:
        assert f"| {action} | {ACTION_MEANINGS[action]} |" in page


@pytest.mark.parametrize("choice", CHOICES.values(), ids=CHOICES)
def test_every_choice_stands_there_with_its_values_and_who_does_it(choice: Choice) -> None:
    page = phrases_page()
    start = page.index(f"### Choice: {choice.name}\n")
    section = page[start:].split("\n### ")[0]
    assert choice.asks in section
    for value in choice.values:
        default = " (default)" if value.name == choice.default else ""
        assert f"| {value.name}{default} | {value.words} | {value.who} |" in section


def test_every_link_in_the_reference_has_its_heading() -> None:
    page = phrases_page()
    headings = re.findall(r"^#+ (.+)$", page, re.MULTILINE)
    anchors = {re.sub(r"[^\w -]", "", heading.lower()).replace(" ", "-") for heading in headings}
    links = set(re.findall(r"\]\(#([^)]+)\)", page))
    assert links
    assert links <= anchors
    assert len(headings) == len(anchors)


def test_every_situation_in_the_reference_is_read_the_same_in_both_ways() -> None:
    blocks = re.findall(r"```\n(.+)\n(.+)\n```", moves_page())
    assert len(blocks) >= 3
    for short, names in blocks:
        assert situation_from_text(short) == situation_from_text(names)


def test_every_move_list_in_the_reference_is_read() -> None:
    lists = [*re.findall(r"moves `([^`]+)`", phrases_page()), "T>RW, deny 3, RW>T", "T>RW, early RW>RC"]
    assert len(lists) > 15
    for text in lists[-2:]:
        assert f"`{text}`" in moves_page()
    for text in lists:
        assert moves_from_text(text)
