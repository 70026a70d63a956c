"""No word of ours is hard-wired: spoken in an invented language, page and paper hold no English but the book's."""

from __future__ import annotations

import json
import re
from gettext import NullTranslations
from html.parser import HTMLParser

from tests.engine.floor import book

from backcut.language import speaking
from backcut.teaching.quizzes import paper_quiz, quiz, quiz_page


class Invented(NullTranslations):
    """Every word of a message in brackets; its `{values}` as they are."""

    def gettext(self, message: str) -> str:
        """The message in the invented language."""
        parts = re.split(r"(\{[^}]*\})", message)
        return "".join(part if part.startswith("{") else re.sub(r"[A-Za-z]+", "\u00e6", part) for part in parts)

    def ngettext(self, one: str, many: str, n: int) -> str:
        """The message for so many."""
        return self.gettext(one if n == 1 else many)


class Text(HTMLParser):
    """What a page says: its text and the attributes that are read out."""

    def __init__(self) -> None:
        super().__init__()
        self.said: list[str] = []
        self.quiet = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note what is read out."""
        self.quiet += tag in ("style", "script")
        self.said += [value or "" for name, value in attrs if name in ("aria-label", "title", "placeholder", "alt")]

    def handle_endtag(self, tag: str) -> None:
        """Leave what nobody reads."""
        self.quiet -= tag in ("style", "script")

    def handle_data(self, data: str) -> None:
        """Note the text."""
        if not self.quiet:
            self.said.append(data)


def strings(value: object) -> list[str]:
    if isinstance(value, dict):
        return [one for key, each in value.items() if key not in QUIET for one in strings(each)]
    if isinstance(value, list):
        return [one for each in value for one in strings(each)]
    return [value] if isinstance(value, str) else []


#: What nobody reads: names of things, and drawings, whose text is looked at as a page's.
QUIET = ("key", "id", "ask", "plates")
COACH = re.compile(r"\b(?:X?\d+|[A-Z])\b")


def ours(texts: list[str], books_own: list[str]) -> list[str]:
    """The English that is left when the coach's own words are taken out, longest first."""
    left = []
    for text in texts:
        if text.lstrip().startswith("<"):
            page = Text()
            page.feed(text)
            left += ours(page.said, books_own)
            continue
        text = text.replace("Backcut", "")
        for own in sorted(books_own, key=len, reverse=True):
            text = text.replace(own, "")
        left += re.findall(r"[A-Za-z]{2,}", COACH.sub("", re.sub(r"\{[^}]*\}", "", text)))
    return left


def test_no_word_of_the_page_is_hard_wired() -> None:
    for name in ("school-team", "four-out-school-team", "two-bigs", "first-month"):
        this = book(name)
        with speaking("xx", Invented()):
            html = quiz_page(this, quiz(this, 40, 2))
            paper = paper_quiz(this, 12, 2)
            own = [this.title, *(this.cue(rank) for rank in range(len(this.sentences)))]
            own += [sentence.text for sentence in this.sentences]
            page = Text()
            page.feed(html)
            data = json.loads(html.partition('id="quiz">')[2].partition("</script>")[0])
            assert ours(page.said, own) == []
            assert ours(strings(data), own) == []
            said = [part for q in paper for part in (q.told, q.words, *q.choices, q.answer, q.because)]
            assert ours(said, own) == []


def test_a_language_from_the_right_is_set_from_the_right() -> None:
    this = book("first-month")
    with speaking("ar", Invented()):
        assert '<html lang="ar" dir="rtl"' in quiz_page(this, quiz(this, 2, 1))
