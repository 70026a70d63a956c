"""Every word of ours on paper, page and clip comes from one catalogue, so that a club can have it in its language.

The sentences of a book are the coach's own and stay as they are written. `scripts/make_catalogue.py` gathers what is
said into `locale/backcut.pot`; a translation lies beside it as `<language>/LC_MESSAGES/backcut.mo`.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from gettext import NullTranslations, translation
from pathlib import Path

LOCALE = Path(__file__).parent / "locale"
#: Languages that are written from the right to the left (ISO 639: Arabic, Persian, Hebrew, Urdu).
FROM_THE_RIGHT = frozenset({"ar", "fa", "he", "ur"})

_ENGLISH = NullTranslations()
_spoken: ContextVar[tuple[str, NullTranslations]] = ContextVar("spoken", default=("en", _ENGLISH))


def noted(message: str) -> str:
    """The message itself, for the catalogue: it is said later."""
    return message


def say(message: str, **values: object) -> str:
    """The message in the language spoken now, with its `{values}` put in."""
    said = _spoken.get()[1].gettext(message)
    return said.format(**values) if values else said


def say_many(one: str, many: str, n: int, **values: object) -> str:
    """The message for so many: its `{n}` is the number."""
    return _spoken.get()[1].ngettext(one, many, n).format(n=n, **values)


def language() -> str:
    """The language spoken now, as its ISO 639 code."""
    return _spoken.get()[0]


def direction() -> str:
    """Which way the language spoken now is written: "ltr" or "rtl"."""
    return "rtl" if language().partition("_")[0] in FROM_THE_RIGHT else "ltr"


@contextmanager
def speaking(code: str, catalogue: NullTranslations | None = None) -> Iterator[None]:
    """Speak this language meanwhile; what its catalogue lacks, and every language there is none for, is English."""
    known = catalogue or translation("backcut", LOCALE, [code], fallback=True)
    token = _spoken.set((code, known))
    try:
        yield
    finally:
        _spoken.reset(token)
