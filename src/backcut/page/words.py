"""Small pieces of the page's text: tabs, numbers in circles, times, words set bold."""

from __future__ import annotations

from html import escape

NO_BREAK = "\u00a0"


def tab(letter: str, style: str = "") -> str:
    """The letter of a sentence in its tab: filled "on", hollow "", bare "bare" or dashed "beaten"."""
    return f'<span class="{f"tab {style}".strip()}">{escape(letter)}</span>'


def who(player: int) -> str:
    """A player's number in its circle."""
    return f'<span class="who">{player}</span>'


def seconds(t_s: float) -> str:
    """A time as the page prints it: "2.8 s"."""
    return f"{t_s:.1f}{NO_BREAK}s"


def sentence_case(text: str) -> str:
    """The text with a full stop, if it has no end of its own."""
    return text if text.endswith((".", "?", "!")) else f"{text}."


def stop_word(lettered: bool) -> str:
    """What a stop of the time line is: a decision of the book, or just a moment where no book speaks."""
    return "decision" if lettered else "moment"


def section(style: str, ident: str, title: str, inner: str) -> str:
    """A section of the page under its own heading."""
    return f'<section class="{style}" aria-labelledby="{ident}"><h2 id="{ident}">{escape(title)}</h2>{inner}</section>'


def with_bold(text: str, phrases: list[str]) -> str:
    """The escaped text, with the first occurrence of each phrase bold."""
    out = escape(text)
    for phrase in phrases:
        out = out.replace(escape(phrase), f"<b>{escape(phrase)}</b>", 1)
    return out
