"""The properties named on a command line: by name or by how the name begins, with numbers after "="."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from backcut.errors import NotationError
from backcut.offence.settings import nearest
from backcut.prove.property import Numbers, Property, properties

#: Between a property and its number there stands a colon, before the value "=".
_OF, _IS = ":", "="


def chosen(
    names: Sequence[str], among: Sequence[tuple[Property, Numbers]] | None = None
) -> list[tuple[Property, Numbers]]:
    """The properties called so, each once, in the order named: "out of the lane", "out", "out=4", "out:seconds=4".

    `among` are a book's properties with its numbers; they come before the shipped ones, of which those that the book
    switches off can be named as well. Raises: NotationError for the first that cannot be.
    """
    known: dict[str, tuple[Property, Numbers]] = {prop.name: (prop, prop.numbers) for prop in properties().values()}
    known |= {prop.name: (prop, numbers) for prop, numbers in among or ()}
    found: dict[str, tuple[Property, Numbers]] = {}
    for text in names:
        named, is_, value = text.partition(_IS)
        name, of, number = named.partition(_OF)
        prop, numbers = found.get(key := _name(name, known), known[key])
        if is_:
            which = _which(prop, " ".join(number.lower().split()) if of else None)
            numbers = dict(numbers) | {which: _value(text, value)}
        elif of:
            raise NotationError(f'"{text}" gives no value. Write for example "{text}=4".')
        found[key] = prop, numbers
    return list(found.values())


def _name(text: str, known: Mapping[str, object]) -> str:
    said = " ".join(text.lower().split()).rstrip(".")
    if exact := [name for name in known if name.lower() == said]:
        return exact[0]
    begin = [name for name in known if said and name.lower().startswith(said)]
    if len(begin) == 1:
        return begin[0]
    if begin:
        raise NotationError(f'"{text}" could be {" or ".join(begin)}. Write more of the name.')
    listed = ", ".join(known)
    hint = nearest(said, [name.lower() for name in known]) if known else ""
    hint = f"{hint} " if hint.startswith("Did") else ""
    raise NotationError(f'No property is called "{text}". {hint}The properties are: {listed}.')


def _which(prop: Property, number: str | None) -> str:
    names = list(prop.numbers)
    listed = ", ".join(names)
    if not names:
        raise NotationError(f'"{prop.name}" has no number to set. Name it alone.')
    if number is None and len(names) > 1:
        raise NotationError(f'"{prop.name}" has several numbers: {listed}. Write "{prop.name}:{names[0]}=4".')
    if number is not None and number not in names:
        raise NotationError(f'"{prop.name}" has no number "{number}". It has: {listed}.')
    return names[0] if number is None else number


def _value(text: str, value: str) -> float:
    try:
        number = float(value)
    except ValueError:
        number = math.nan
    if not math.isfinite(number) or number < 0:
        raise NotationError(f'"{value.strip()}" in "{text}" is no number. Write a number from 0 up, for example 4.')
    return number
