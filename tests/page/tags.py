"""What the tests of the pages read off their elements."""

from __future__ import annotations

import re
from base64 import b64encode
from hashlib import sha256
from html.parser import HTMLParser


class Tags(HTMLParser):
    """Ids outside templates, and inside each; what fetches, what acts inline, what is not closed."""

    def __init__(self) -> None:
        super().__init__()
        self.ids: list[list[str]] = [[]]
        self.wrong: list[str] = []
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note what the element fetches or does."""
        if tag not in {"meta", "input", "br"}:
            self.open.append(tag)
        for name, value in attrs:
            if name == "id" and value:
                self.ids[-1 if "template" in self.open[:-1] else 0].append(value)
            fetches = name in {"src", "srcset", "action"} or (name == "href" and not (value or "").startswith("#"))
            if fetches or name == "style" or name.startswith("on"):
                self.wrong.append(f"{tag} {name}={value}")
        if tag == "template":
            self.ids.append([])

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """An element closed where it opens, as in SVG."""
        self.handle_starttag(tag, attrs)
        self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        """The last opened element closes first."""
        assert self.open.pop() == tag


def policy_of(html: str) -> str:
    """The page's content policy, once it is sure that it allows the page's own style and script by their hashes."""
    policy = re.search(r'Security-Policy" content="([^"]+)"', html)
    assert policy is not None
    for element in ("style", 'script type="module"'):
        inner = re.search(rf"<{element}>(.*?)</{element.split()[0]}>", html, re.S)
        assert inner is not None
        assert b64encode(sha256(inner[1].encode()).digest()).decode() in policy[1]
    return policy[1]
