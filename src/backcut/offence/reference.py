"""The reference as two pages of Markdown, made from the phrases, choices and kinds themselves, so it is never behind."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import zip_longest

from backcut.court.spots import INSIDE, PERIMETER, Spot
from backcut.offence.choices import CHOICES, Choice
from backcut.offence.formation import formations
from backcut.offence.meanings import ACTION_MEANINGS, EVENT_MEANINGS
from backcut.offence.phrase import Example, Phrase, phrases
from backcut.offence.situation import Situation
from backcut.offence.situation_text import situation_from_text, situation_text

_MADE = "<!-- Made by scripts/make_reference.py from the code; do not edit by hand. -->"


def phrases_page() -> str:
    """Every phrase: its sentence, cue, why, common mistake, worked example and choices; then all choices. Markdown."""
    lines = [
        "# The sentences of an offence book",
        "",
        _MADE,
        "",
        "A book is a list of these sentences, and what stands higher wins. Words in [square brackets] may be left out.",
        "Words in (round brackets) are to choose from; each choice is explained once, at the end of this page.",
        "",
        *_list(f"[{_open(phrase)}]({_anchor(phrase.name)})" for phrase in phrases().values()),
        "",
    ]
    for phrase in phrases().values():
        lines += _phrase(phrase)
    lines += [
        "## The choices",
        "",
        "Coaches differ here. A choice is said in its sentence, or on a line of its own, for example",
        '"Denied corner: hold". The first of each list is what holds when the book is silent.',
        "",
    ]
    for choice in CHOICES.values():
        lines += _choice(choice)
    return "\n".join(lines).rstrip() + "\n"


def moves_page() -> str:
    """Every kind of event and action, the notation of move lists, and of situations, with examples. Markdown."""
    return "\n".join([*_moves(), *_actions(), *_situations(), *_spots()]).rstrip() + "\n"


def _list(items: Iterable[str]) -> list[str]:
    return [f"- {item}" for item in items]


def _table(head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> list[str]:
    return [_row(head), _row("---" for _ in head), *map(_row, rows), ""]


def _row(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _anchor(name: str) -> str:
    return f"#{name.replace(' ', '-')}"


def _open(phrase: Phrase) -> str:
    """The sentence with its choices open: "When my cut is over, I come out to (exit)."."""
    return phrase.says.replace("{", "(").replace("}", ")").replace("[ ", " [")


def _phrase(phrase: Phrase) -> list[str]:
    reads = [name for name in phrase.uses if name not in phrase.slots]
    lines = [
        f"## {phrase.name.capitalize()}",
        "",
        f"> **{phrase.cue}.** {phrase.sentence({})}",
        "",
        *([f"Written: {_open(phrase)}", ""] if phrase.slots else []),
        *_list((f"Why: {phrase.why}", f"Common mistake: {phrase.mistake}", f"Worked example: {_example(phrase.example)}")),
    ]
    for words, names in (("To choose in the sentence", phrase.slots), ("It also reads the choices", reads)):
        if names:
            lines.append(f"- {words}: {', '.join(f'[{name}]({_anchor(name_of(name))})' for name in names)}.")
    return [*lines, ""]


def name_of(choice: str) -> str:
    """The heading under which a choice stands; some share their name with a phrase."""
    return f"choice: {choice}"


def _example(example: Example) -> str:
    lines = "; ".join(f'"{name.capitalize()}: {value}"' for name, value in (example.choices or {}).items())
    book = f" with {lines}" if lines else ""
    does = ACTION_MEANINGS[example.kind]
    return (
        f"{formations()[example.formation].title}{book}, moves `{example.moves}`. "
        f"Player {example.player}: *{example.kind}*. {does} Once all have settled, {example.player} is at the "
        f"{example.spot.title}."
    )


def _choice(choice: Choice) -> list[str]:
    users = [phrase.name for phrase in phrases().values() if choice.name in phrase.uses]
    rows = [
        (value.name + (" (default)" if value.name == choice.default else ""), value.words, value.who)
        for value in choice.values
    ]
    return [
        f"### Choice: {choice.name}",
        "",
        f"{choice.asks} Read by: {', '.join(f'[{name}]({_anchor(name)})' for name in users)}.",
        "",
        *_table(("value", "in the sentence", "who does it, and why"), rows),
    ]
