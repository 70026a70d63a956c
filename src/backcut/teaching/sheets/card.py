"""Drill cards to cut: what a parent helper runs a drill from without an explanation."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from backcut.errors import BackcutError
from backcut.language import say
from backcut.teaching.sheets.paper import PAPERS, Paper, Stamp
from backcut.teaching.sheets.picture import picture_data
from backcut.teaching.sheets.press import printed

#: Thickness in mm of the bar beside the cue that counts and beside the one that does not (own design).
TRUE_MM, FALSE_MM = 1.2, 0.25


@dataclass(frozen=True, slots=True)
class Card:
    """A card: its tab and name, one line of purpose, one of needs, a picture as SVG, and the words under it.

    Empty texts are left out, an empty picture too. `more` are further lines, each with its head.
    """

    tab: str
    name: str
    purpose: str
    needs: str
    picture: str = ""
    rotation: tuple[str, ...] = ()
    true: str = ""
    false: str = ""
    say: str = ""
    score: str = ""
    easier: str = ""
    harder: str = ""
    care: str = ""
    more: tuple[tuple[str, str], ...] = ()

    def data(self) -> dict[str, Any]:
        """What the template needs of it."""
        cues = (
            {"head": say("When"), "words": self.true, "bar": TRUE_MM},
            {"head": say("But when"), "words": self.false, "bar": FALSE_MM},
        )
        lines = (
            (say("Say"), self.say),
            (say("Score"), self.score),
            (say("Easier"), self.easier),
            (say("Harder"), self.harder),
            *self.more,
        )
        return {
            "tab": self.tab,
            "name": self.name,
            "purpose": self.purpose,
            "needs": self.needs,
            "picture": picture_data(self.picture) if self.picture else None,
            "rotation": self.rotation,
            "cues": [cue for cue in cues if cue["words"]],
            "lines": [line for line in lines if line[1]],
            "care": self.care,
        }


def cards_pdf(cards: Sequence[Card], stamp: Stamp, paper: Paper) -> bytes:
    """The cards on sheets to cut: four A6 on an A4, two half letters on a letter laid on its side.

    Raises: BackcutError where there is no card, or for a paper that cards are not cut from.
    """
    if not cards:
        raise BackcutError("There is no card to print. Name a drill first.")
    across, down = paper.cards
    if across * down == 1:
        fit = ", ".join(name for name, one in PAPERS.items() if one.cards != (1, 1))
        raise BackcutError(f'--paper "{paper.name}": cards are cut from {fit}.')
    numbered = [
        card.data() | {"number": say("Card {n} of {all}", n=n, all=len(cards))} for n, card in enumerate(cards, 1)
    ]
    sheet = paper if down > 1 else paper.turned
    return printed("cards", sheet, stamp, {"across": across, "down": down, "cards": numbered})
