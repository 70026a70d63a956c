"""The reference page of what a proof asks for, made from the properties."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.prove.property import Property, properties

_KINDS = {
    "always": "## Always\n\nIn every situation that the book comes to.",
    "eventually": "## Eventually\n\nWhat has begun also ends, whatever passes come after.",
    "sometimes": "## Sometimes\n\nSomewhere, at least once.",
}


def properties_page() -> str:
    """docs/properties.md."""
    return "\n".join(_lines()) + "\n"


def _lines() -> Iterator[str]:
    yield "# What a proof asks for"
    yield "\n<!-- Made by scripts/make_reference.py from the code; do not edit by hand. -->\n"
    yield "`backcut prove` asks a [book](book.md) for all of these. `Do not prove:` and a name switch one off; `Prove:`"
    yield "and its sentence with another number set the number. How a proof works: [proving](proving.md)."
    for kind, heading in _KINDS.items():
        yield f"\n{heading}\n"
        yield "| name | what has to hold | why |"
        yield "| --- | --- | --- |"
        yield from (_row(prop) for prop in properties().values() if prop.kind == kind)


def _row(prop: Property) -> str:
    slots = {name for name in prop.numbers if f"{{{name}}}" in prop.says}
    also = [f"`{name}` is {value:g}" for name, value in prop.numbers.items() if name not in slots]
    says = prop.sentence(prop.numbers) + (f" ({', '.join(also)})" if also else "")
    return f"| {prop.name} | {says} | {prop.why} |"
