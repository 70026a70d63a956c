"""A possession told from a book: the floor, the sentences and what each decided."""

from __future__ import annotations

from dataclasses import replace

from backcut.page.document import page
from backcut.picture.show import Moment, Show


def possession_page(show: Show) -> str:
    """The show as one HTML file that fetches nothing. A show without moments stands at its first second."""
    return page(show if show.moments else replace(show, moments=(Moment(0.0, None, ""),)), kind="possession")
