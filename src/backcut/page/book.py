"""The book beside the floor: each sentence with its letter, the one that won with the marker and those it beat."""

from __future__ import annotations

from html import escape

from backcut.page.words import section, sentence_case, tab, who
from backcut.picture.show import Answer, Moment, Sentence, Show

#: With more sentences than this those at rest are set smaller, so that the book stands beside the floor (estimate: what
#: fits on a screen 900 pixels high).
LONG = 6


def state(letter: str, moment: Moment) -> str:
    """What a sentence does at this moment: "won" just now, at "work", or "rest"."""
    mine = [answer for answer in moment.answers if answer.letter == letter]
    if any(answer.lit for answer in mine):
        return "won"
    return "work" if mine else "rest"


def _note(answers: list[Answer]) -> str:
    """Answers of one sentence in one line; the same words for several players are said once."""
    said: dict[str, list[int]] = {}
    for answer in answers:
        text = answer.note.removeprefix(f"{answer.player} ") if answer.note else sentence_case(answer.text)
        said.setdefault(text, []).append(answer.player)
    lines = (f"{' '.join(map(who, players))} {escape(text)}" for text, players in said.items())
    return "".join(f'<p class="note">{line}</p>' for line in lines)


def _beaten(answers: list[Answer]) -> str:
    """Those beaten, each once; the reason is said with the first of a sentence only."""
    items: dict[str, None] = {}
    reasoned: set[str] = set()
    for claim in (claim for answer in answers for claim in answer.beat):
        rest = f", {escape(sentence_case(claim.text))}" if claim.text else "."
        why = f" <i>{escape(sentence_case(claim.why))}</i>" if claim.why and claim.letter not in reasoned else ""
        reasoned.add(claim.letter)
        items[f"<li>{tab(claim.letter, 'beaten')}beats <b>{escape(claim.cue)}</b>{rest}{why}</li>"] = None
    return f'<ul class="beat" aria-label="Beaten">{"".join(items)}</ul>' if items else ""


def remarks(letter: str, moment: Moment) -> str:
    """What stands under a sentence now: who follows it and why, and whom it beat."""
    mine = [answer for answer in moment.answers if answer.letter == letter]
    won = [answer for answer in mine if answer.lit]
    return _note(won or mine) + _beaten(won)


def book(show: Show) -> str:
    """The book, as it stands at the first moment."""
    moment = show.moments[0]
    habits = "".join(_habit(s, moment) for s in show.sentences)
    style = "book long" if len(show.sentences) > LONG else "book"
    return f'<section class="{style}" aria-label="The book"><ol>{habits}</ol></section>'


def _habit(sentence: Sentence, moment: Moment) -> str:
    now = state(sentence.letter, moment)
    mark = {"won": "on", "work": "", "rest": "bare"}[now]
    current = ' aria-current="true"' if now == "won" else ""
    return (
        f'<li class="habit {now}" data-letter="{escape(sentence.letter)}"{current}>{tab(sentence.letter, mark)}'
        f'<p class="says"><span><b>{escape(sentence_case(sentence.cue))}</b> {escape(sentence.text)}</span></p>'
        f'<div class="remarks">{remarks(sentence.letter, moment)}</div></li>'
    )


def reasons(show: Show) -> str:
    """Why each sentence stands in the book, and the mistake it forbids; empty when the book gives neither."""
    rows = []
    for s in show.sentences:
        lines = [f"<p>{escape(s.why)}</p>"] if s.why else []
        lines += [f'<p class="soft"><b>Mistake.</b> {escape(s.mistake)}</p>'] if s.mistake else []
        if lines:
            rows.append(f"<div><dt>{tab(s.letter, 'bare')}<b>{escape(s.cue)}</b></dt><dd>{''.join(lines)}</dd></div>")
    if not rows:
        return ""
    return section("reasons", "why", "Why these sentences", f"<dl>{''.join(rows)}</dl>")
