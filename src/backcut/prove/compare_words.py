"""A comparison of two books in a coach's words, and as data."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from backcut.engine.report import to_dict as possession_to_dict
from backcut.offence.action import letter
from backcut.offence.situation_text import situation_text
from backcut.prove.compare import Comparison, Difference
from backcut.prove.differ import Sort


def lines(compared: Comparison) -> list[str]:
    """The whole comparison, line by line: what the second book does instead, when, and what stands in one book only."""
    return [*_played(compared), *_read(compared)]


def contradiction_lines(compared: Comparison) -> list[str]:
    """The result of `contradictions` in words: what does not stay true, what is only later, earlier or another way."""
    younger, older = _titles(compared)
    if compared.apart is not None:
        return [compared.apart]
    found = compared.of(Sort.WHAT)
    far = ", as far as it was compared" if compared.stopped else ""
    said = [f"{younger} stays true in {older}{far}." if not found else f"{younger} does not stay true in {older}:"]
    for difference in found:
        said.append(f"In {difference.moments:,} of {compared.moments:,} moments: {_by(compared, difference)}.")
    named = [*_other(compared, "Allowed, in"), *_choices(compared, only_time=True)]
    return [*said, *named, *_unlike(compared), *_stopped(compared)]


def _titles(compared: Comparison) -> tuple[str, str]:
    a, b = compared.a.title, compared.b.title
    return (a, b) if a != b else (f"{a}, the first book", f"{b}, the second book")


def _played(compared: Comparison) -> Iterator[str]:
    a, b = _titles(compared)
    if compared.apart is not None:
        yield compared.apart
        return
    yield (
        f"{b} instead of {a}: other runs in {compared.differing:,} of {compared.moments:,} moments, the same runs at "
        f"another time or another way in {compared.retimed:,}."
    )
    yield f"Compared in every moment of {a}: {compared.situations:,} settled line-ups, players told apart."
    for difference in compared.of(Sort.WHAT):
        yield f"In {difference.moments:,} of {compared.moments:,}: {difference.text}."
    yield from _other(compared, "In")
    yield from _unlike(compared)
    yield from _stopped(compared)


def _other(compared: Comparison, start: str) -> Iterator[str]:
    for difference in compared.of(Sort.WAY, Sort.TIME):
        yield f"{start} {difference.moments:,} of {compared.moments:,}: the same runs, but {difference.text}."


def _unlike(compared: Comparison) -> Iterator[str]:
    if compared.unlike:
        other = _titles(compared)[1]
        yield f"Not compared: {compared.unlike:,} moments with players on the way, to which {other} comes otherwise."


def _stopped(compared: Comparison) -> Iterator[str]:
    if compared.stopped:
        found = f": {compared.waiting:,} situations were found but not looked at" if compared.waiting else ""
        yield f"Stopped before all was compared{found}."


def _by(compared: Comparison, difference: Difference) -> str:
    """A contradiction with the younger book's sentence in front."""
    rank = difference.sentences[0]
    return difference.text if rank is None else f"{letter(rank)} {compared.a.cue(rank)}: {difference.text}"


def _choices(compared: Comparison, only_time: bool = False) -> Iterator[str]:
    for chosen in compared.times if only_time else compared.reading.choices:
        yield f'{chosen.name.capitalize()}: "{chosen.b}" instead of "{chosen.a}".'


def _read(compared: Comparison) -> Iterator[str]:
    reading, (a, b) = compared.reading, _titles(compared)
    yield from (f"Only in {a}: {sentence}" for sentence in reading.only_a)
    yield from (f"Only in {b}: {sentence}" for sentence in reading.only_b)
    for one, other in reading.otherwise:
        yield f"Said otherwise: {one}"
        yield f"    in {b}: {other}"
    yield from _choices(compared)
    yield from reading.notes


def to_dict(compared: Comparison) -> dict[str, Any]:
    """The whole comparison, each difference with the possession that shows it first, answered by both books."""
    reading = compared.reading
    return {
        "a": compared.a.title,
        "b": compared.b.title,
        "apart": compared.apart,
        "situations": compared.situations,
        "moments": compared.moments,
        "differing": compared.differing,
        "retimed": compared.retimed,
        "not_compared": compared.unlike,
        "not_looked_at": compared.waiting,
        "stopped": compared.stopped,
        "differences": [_difference(compared, difference) for difference in compared.differences],
        "only_a": list(reading.only_a),
        "only_b": list(reading.only_b),
        "otherwise": [{"a": one, "b": other} for one, other in reading.otherwise],
        "choices": [{"name": c.name, "a": c.a, "b": c.b, "time": c.time} for c in reading.choices],
        "notes": list(reading.notes),
    }


def _difference(compared: Comparison, difference: Difference) -> dict[str, Any]:
    shown = difference.shown.possession()
    answer = difference.shown.answered_by(compared.b)
    return {
        "sort": str(difference.sort),
        "text": difference.text,
        "moments": difference.moments,
        "sentences": {name: letter(rank) for name, rank in zip("ab", difference.sentences, strict=True)},
        "depth": str(difference.shown.walk.depth),
        "events": difference.shown.events,
        "moves": shown.moves,
        "before": situation_text(answer.before),
        "a": possession_to_dict(compared.a, compared.a.court, shown.start, shown.steps),
        "b": possession_to_dict(compared.b, compared.b.court, answer.before, [answer]),
    }
