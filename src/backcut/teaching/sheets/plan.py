"""The running order of one evening on one clipboard page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backcut.language import say, say_many
from backcut.teaching.sheets.paper import Paper, Stamp, day_words
from backcut.teaching.sheets.press import printed


@dataclass(frozen=True, slots=True)
class Block:
    """One line of the running order. `card` is the number of its card, None where it has none."""

    clock: str
    minutes: int
    name: str
    what: tuple[str, ...] = ()
    groups: str = ""
    words: str = ""
    card: int | None = None


@dataclass(frozen=True, slots=True)
class Plan:
    """The page: its title, lines under it, the blocks, questions with their answers, what cannot be met, the care."""

    title: str
    lines: tuple[str, ...]
    blocks: tuple[Block, ...]
    questions: tuple[tuple[str, str], ...] = ()
    not_met: tuple[str, ...] = ()
    care: str = ""


def page_pdf(plan: Plan, stamp: Stamp, paper: Paper) -> bytes:
    """The page, in the largest letters in which it is one page with room to write."""
    blocks = [
        {
            "clock": block.clock,
            "minutes": say_many("{n} min", "{n} min", block.minutes),
            "name": block.name,
            "what": _paragraphs(block.what),
            "groups": block.groups,
            "words": block.words,
            "card": "" if block.card is None else say("Card {n}", n=block.card),
        }
        for block in plan.blocks
    ]
    data = {
        "head": plan.title,
        "day": day_words(stamp.dated),
        "lines": plan.lines,
        "blocks": blocks,
        "questions-head": say("At the water break"),
        "questions": plan.questions,
        "not-met-head": say("Not met:"),
        "not-met": plan.not_met,
        "notes": say("Notes"),
        "care": plan.care,
    }
    return printed("plan", paper, stamp, data)


def _paragraphs(lines: Sequence[str]) -> list[str]:
    """Whole sentences run on, so that the letters can be larger; what is no sentence, such as moves, keeps its line."""
    out: list[str] = []
    for line in lines:
        if out and out[-1].endswith(".") and line.endswith("."):
            out[-1] = f"{out[-1]} {line}"
        else:
            out.append(line)
    return out
