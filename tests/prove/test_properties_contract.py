"""What every property owes the coach who reads it."""

from __future__ import annotations

import re

import pytest

from backcut.prove.property import Always, Eventually, Property, Sometimes, properties

_EVERY = [pytest.param(prop, id=name) for name, prop in properties().items()]
_SOURCES = re.compile(r"common practice, no source\.?$|from memory\)\.?$|\([A-Z][^()]+\)\.$", re.I)


def test_there_are_properties_of_each_kind_and_each_has_a_name_of_its_own() -> None:
    found = properties()
    assert {prop.kind for prop in found.values()} == {"always", "eventually", "sometimes"}
    assert all(name == prop.name == prop.name.lower().strip() for name, prop in found.items())
    assert len({prop.says for prop in found.values()}) == len(found)


@pytest.mark.parametrize("prop", _EVERY)
def test_a_property_is_a_sentence_with_its_numbers_in_it(prop: Property) -> None:
    said = prop.sentence(prop.numbers)
    assert said.endswith(".")
    assert said[0].isupper()
    assert not re.search(r"[{}]", said)
    assert isinstance(prop, (Always, Eventually, Sometimes))


@pytest.mark.parametrize("prop", _EVERY)
def test_a_property_says_what_a_coach_has_from_it_and_where_it_comes_from(prop: Property) -> None:
    assert _SOURCES.search(prop.why), prop.why


def test_only_runs_and_waits_are_put_in_time() -> None:
    assert {name for name, prop in properties().items() if prop.timed} == {"three seconds", "runs in time"}
