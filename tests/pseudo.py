"""A made-up language: every message bracketed, so that a word that is hard-wired shows."""

from __future__ import annotations

import re
from gettext import NullTranslations

OPEN, CLOSE = "\u2045", "\u2046"


class _Pseudo(NullTranslations):
    """Says every message in brackets that no coach writes; the values put in keep their own."""

    def gettext(self, message: str) -> str:
        return f"{OPEN}{message}{CLOSE}"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return self.gettext(msgid1 if n == 1 else msgid2)


PSEUDO = _Pseudo()


def is_pseudo(text: str) -> bool:
    """Whether all of a text comes from the catalogue."""
    return not hard_wired(text)


def hard_wired(text: str, *own: str) -> list[str]:
    """The words of a text that are in no brackets; `own` are the coach's own, which may be."""
    for one in sorted(own, key=len, reverse=True):
        text = text.replace(one, " ")
    while (shorter := re.sub(f"{OPEN}[^{OPEN}{CLOSE}]*{CLOSE}", " ", text)) != text:
        text = shorter
    return re.findall(r"[^\W\d_]{2,}", text)
