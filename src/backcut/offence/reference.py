"""The reference, two pages of Markdown, made from the phrases, choices and kinds themselves."""

from __future__ import annotations

from collections.abc import Iterable

from backcut.court.spots import INSIDE, PERIMETER, Spot
from backcut.offence.choices import CHOICES, Choice
from backcut.offence.formation import formations
from backcut.offence.meanings import ACTION_MEANINGS, EVENT_MEANINGS
from backcut.offence.phrase import Example, Phrase, phrases
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
        *(f"- [{phrase.name}](#{_anchor(phrase.name)}): {_open(phrase)}" for phrase in phrases().values()),
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


def _table(head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> list[str]:
    return [_row(head), _row("---" for _ in head), *map(_row, rows), ""]


def _row(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _anchor(name: str) -> str:
    return name.replace(" ", "-")


def _open(phrase: Phrase) -> str:
    """The sentence with its choices open: "When my cut is over, I come out to (exit)."."""
    return phrase.says.replace("{", "(").replace("}", ")").replace("[ ", " [")


def _phrase(phrase: Phrase) -> list[str]:
    lines = [
        f"## {phrase.name.capitalize()}",
        "",
        f"> **{phrase.cue}.** {_open(phrase)}",
        "",
        *([f"For example: {phrase.sentence({})}", ""] if phrase.slots else []),
        f"- Why: {phrase.why}",
        f"- Common mistake: {phrase.mistake}",
        f"- Worked example: {_example(phrase.example)}",
    ]
    reads = [name for name in phrase.uses if name not in phrase.slots]
    for words, names in (("To choose in the sentence", phrase.slots), ("It also asks for", reads)):
        if names:
            lines.append(f"- {words}: {', '.join(f'[{name}](#choice-{_anchor(name)})' for name in names)}.")
    return [*lines, ""]


def _example(example: Example) -> str:
    lines = " and ".join(f'"{name.capitalize()}: {value}"' for name, value in (example.choices or {}).items())
    book = f", {lines}" if lines else ""
    return (
        f"{formations()[example.formation].title}{book}, moves `{example.moves}`. "
        f"{example.player} answers with *{example.kind}* and, when all have settled, is at the {example.spot.title}."
    )


def _choice(choice: Choice) -> list[str]:
    users = [phrase.name for phrase in phrases().values() if choice.name in phrase.uses]
    return [
        f"### Choice: {choice.name}",
        "",
        f"{choice.asks} Asked for by {', '.join(f'[{name}](#{_anchor(name)})' for name in users)}.",
        "",
        *_table(
            ("value", "in the sentence", "who does it, and why"),
            (
                (value.name + (" (default)" if value.name == choice.default else ""), value.words, value.who)
                for value in choice.values
            ),
        ),
    ]


def _moves() -> list[str]:
    return [
        "# Moves and situations in one line",
        "",
        _MADE,
        "",
        "## A list of moves",
        "",
        "Moves stand in their order with commas between: `T>RW, deny 3, RW>T`. After each move the sentences of the",
        "book answer until all have settled; then the next move comes.",
        "",
        "- A player is named by number (`3`), by the spot where the player stands (`RW`, `right wing`), or, in the",
        "  lane, as `cutter`.",
        "- Several players at once: `deny 2+3`. Without a name, `lay-up`, `shot` and `turnover` mean the player with",
        "  the ball.",
        "- `early` before a move lets it come before the cutter is out: `T>RW, early RW>RC`.",
        "- `after 3 beats` before a move says exactly when it comes: `T>RW, after 3 beats deny 3`. In each beat",
        "  everybody starts on what the book asks, and whoever was on the way arrives. `after 0 beats` is before",
        "  anybody has answered; if all have settled sooner, the move comes then. It stands in the place of `early`.",
        "- A pass to the cutter always comes while the cutter is in the lane; `jam` while the cut is run; `jump` and",
        "  `forget` go with the pass before them.",
        "- Capital letters or small ones, more spaces or none: it is read the same.",
        "",
        *_table(
            ("event", "written", "means"),
            ((str(kind), f"`{meaning.written}`", meaning.means) for kind, meaning in EVENT_MEANINGS.items()),
        ),
        "Which kind of pass it is follows from where passer and catcher are.",
        "",
    ]


def _actions() -> list[str]:
    return [
        "## What players do",
        "",
        "The words of `kind` in the JSON of `backcut play`.",
        "",
        *_table(("action", "means"), ((str(kind), means) for kind, means in ACTION_MEANINGS.items())),
    ]


def _situations() -> list[str]:
    lines = [
        "## A situation",
        "",
        "Where everybody is, in short ids or in a coach's names; both are read, in a book's line `Start:` and after",
        "`--start`. Marks after the spot: `*` has the ball, `!` is denied, `_` is sagged off, `^` the defender jumped",
        "to the ball.",
        "",
    ]
    for words, text in _EXAMPLES:
        situation = situation_from_text(text)
        lines += [f"{words}", "", "```", situation_text(situation), situation_text(situation, names=True), "```", ""]
    return lines


_EXAMPLES = (
    ("All stand, 1 has the ball:", "1:T* 2:RW 3:LW 4:RC 5:LC"),
    ("2 and 3 are denied; the defender of 4 sags:", "1:T* 2:RW! 3:LW! 4:RC_ 5:LC"),
    (
        "1 has just passed and cuts; the side is the side of the ball on which the cut began:",
        "1:R(cutting from T, left of the ball) 2:RW* 3:LW 4:RC 5:LC | pass by 1 from T",
    ),
    (
        "1 waits in the lane, 3 is on the way to the top, one count has been said:",
        "1:R(in the lane from T, left of the ball, because passed) 2:RW* 3:T(filling from LW) 4:RC 5:LC "
        "| pass by 1 from T | count 1",
    ),
)


def _spots() -> list[str]:
    groups = (("perimeter", PERIMETER), ("inside", INSIDE), ("run to, never held", (Spot.R,)))
    return [
        "## The spots",
        "",
        *_table(
            ("id", "name", "where"),
            ((f"`{spot}`", spot.title, where) for where, spots in groups for spot in spots),
        ),
        *_table(
            ("formation", "ring", "start", "ball"),
            (
                (
                    formation.title,
                    " ".join(formation.ring),
                    f"`{situation_text(formation.situation())}`",
                    formation.ball.title,
                )
                for formation in formations().values()
            ),
        ),
    ]
