"""The list of findings: each with its still, then what has to hold and what was looked at, and the book beside it."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from backcut.offence.action import letter
from backcut.offence.situation_text import situation_text
from backcut.page.book import LONG
from backcut.page.finding import Asked, Heading, Item
from backcut.page.words import section, sentence_case, tab
from backcut.picture.story import subtitle

#: Small signs beside words; each differs by shape, and the word says the same.
SIGNS = {
    "hole": '<circle class="broken" cx="10" cy="10" r="7.5"/>',
    "holds": '<circle class="solid" cx="10" cy="10" r="10"/><path class="tick" d="M5.4 10.4l3.2 3.2 6-6.6"/>',
    "unseen": '<path class="solid" d="M1 10a2.2 2.2 0 1 0 4.4 0a2.2 2.2 0 1 0-4.4 0M7.8 10a2.2 2.2 0 1 0 4.4 0'
    'a2.2 2.2 0 1 0-4.4 0M14.6 10a2.2 2.2 0 1 0 4.4 0a2.2 2.2 0 1 0-4.4 0"/>',
}


def sign(name: str) -> str:
    """A small sign for the eye only."""
    return f'<svg class="sign" viewBox="0 0 20 20" aria-hidden="true">{SIGNS[name]}</svg>'


def counted(number: int) -> str:
    """How many findings, in words."""
    return f"{number} finding{'s' * (number != 1)}"


def opening_word(text: str) -> str:
    """The text with a capital, as it begins a line."""
    return text[:1].upper() + text[1:]


def listed(heading: Heading, items: Sequence[Item], pictures: Sequence[str]) -> str:
    """The whole list; `pictures` is the still of each item, as markup."""
    book = heading.book
    head = f'<header class="head"><h1>{escape(book.title)}</h1><p>{escape(subtitle(book))}</p></header>'
    found = f"{_findings(heading, items, pictures)}{_asked(heading, items)}{_not_looked_at(heading)}"
    return f'<main class="proof" id="list">{head}<div class="found">{found}</div>{_book(heading, items)}</main>'


def _book(heading: Heading, items: Sequence[Item]) -> str:
    book = heading.book
    rows = []
    for rank, sentence in enumerate(book.sentences):
        mark = str(letter(rank))
        behind = [place for place, item in enumerate(items, 1) if mark in item.letters]
        links = "".join(f' <a href="#finding-{place}" aria-label="Finding {place}">{place}</a>' for place in behind)
        word = "finding" if len(behind) == 1 else "findings"
        note = f'<p class="note">{sign("hole")}<span><b>Behind {word}</b>{links}</span></p>' if behind else ""
        rows.append(
            f'<li class="habit{" work" if behind else ""}">{tab(mark, "" if behind else "bare")}<p class="says">'
            f"<b>{escape(sentence_case(book.cue(rank)))}</b> {escape(sentence.text)}</p>{note}</li>"
        )
    style = "book long" if len(rows) > LONG else "book"
    return section(style, "bh", "The book", f"<ol>{''.join(rows)}</ol>")


def _findings(heading: Heading, items: Sequence[Item], pictures: Sequence[str]) -> str:
    if items:
        title = f"{counted(len(items))}{' so far' if heading.stopped else ''}"
        both = enumerate(zip(items, pictures, strict=True), 1)
        rows = (_finding(place, item, picture) for place, (item, picture) in both)
        inner = f'<ol class="finds">{"".join(rows)}</ol>'
    else:
        title = "Nothing found so far" if heading.stopped else "Nothing found"
        judged = sum(asked.judged for asked in heading.asked)
        things = "One thing has" if judged == 1 else f"{judged} things have"
        all_did = f"{things} to hold. Wherever the ball went, {'it' if judged == 1 else 'they all'} did."
        inner = "" if heading.stopped or not judged else f'<p class="clean">{all_did}</p>'
    lead = "".join(f"<p>{escape(line)}</p>" for line in heading.covered)
    return section("findings", "fh", title, f'<div class="soft">{lead}</div>{inner}')


def _finding(place: int, item: Item, picture: str) -> str:
    here = f'<p class="here"><b>Here:</b> {escape(sentence_case(item.here))}</p>' if item.here else ""
    letters = "".join(tab(mark) for mark in item.letters)
    return (
        f'<li class="find" id="finding-{place}">{picture}<div class="tells">'
        f'<p class="kind"><b>{place}</b>{escape(opening_word(item.property))}{letters}</p>'
        f"<h3>{escape(sentence_case(item.title))}</h3>"
        f'<p class="small soft">{escape(opening_word(sentence_case(item.count)))}</p>'
        f"{_steps(item)}{here}{_moves(item)}{_ways_out(item)}</div></li>"
    )


def _steps(item: Item) -> str:
    rows = "".join(f"<li>{escape(sentence_case(line))}</li>" for line in item.lines)
    return f'<ol class="steps">{rows}</ol>' if rows else ""


def _moves(item: Item) -> str:
    """The move list, to be copied; with the start where it is not the book's own."""
    said = [("Moves", item.moves)] if item.moves else []
    if item.start is not None and item.start != item.book.start():
        said.insert(0, ("Start", situation_text(item.start)))
    return "".join(
        f'<p class="small soft">{what}: <span class="moves">{escape(text)}</span></p>' for what, text in said
    )


def _ways_out(item: Item) -> str:
    if not item.ways_out:
        return ""
    rows = "".join(f"<li>{escape(sentence_case(way))}</li>" for way in item.ways_out)
    return f'<h4>{"A way out" if len(item.ways_out) == 1 else "Ways out"}</h4><ul class="ways">{rows}</ul>'


def _asked(heading: Heading, items: Sequence[Item]) -> str:
    rows = "".join(f"<li>{_judged(heading, asked, items)}</li>" for asked in heading.asked)
    return section("asked", "ah", "What has to hold", f"<ul>{rows}</ul>") if rows else ""


def _judged(heading: Heading, asked: Asked, items: Sequence[Item]) -> str:
    found = [place for place, item in enumerate(items, 1) if item.property.casefold() == asked.name.casefold()]
    if found:
        mark, verdict = "hole", f'<a href="#finding-{found[0]}">{counted(len(found))}</a>'
    elif not asked.judged:
        mark, verdict = "unseen", "not judged"
    else:
        mark, verdict = "holds", "nothing found so far" if heading.stopped else "holds"
    said = f"<b>{escape(sentence_case(opening_word(asked.name)))}</b> {escape(asked.sentence)}"
    return f'{sign(mark)}<p>{said}</p><p class="verdict">{verdict}</p>'


def _not_looked_at(heading: Heading) -> str:
    rows = "".join(f"<li>{sign('unseen')}<p>{escape(line)}</p></li>" for line in heading.not_looked_at)
    return section("looked", "lh", "Not looked at", f"<ul>{rows}</ul>") if rows else ""
