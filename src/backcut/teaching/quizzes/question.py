"""A question: what is asked on which occasion, and the answers to choose from, each with why or why not."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from backcut.court.spots import Spot
from backcut.engine.words import action_words
from backcut.files import digest
from backcut.language import say
from backcut.offence.action import letter
from backcut.offence.situation_text import situation_text
from backcut.teaching.quizzes.occasion import Occasion


class Ask(StrEnum):
    """The four kinds of question; the value is what JSON says."""

    WHERE = "where"
    WHO = "who"
    MISTAKE = "mistake"
    SENTENCE = "sentence"


class Slip(StrEnum):
    """The usual mistakes that can be played (common practice, no source)."""

    STANDS = "stands"
    FIGHTS = "fights the denial"
    WATCHES = "watches"
    CAMPS = "stays in the lane"
    CUTS = "cuts without a pass"
    AWAY = "goes away from the ball"
    TAKEN = "goes where another goes"
    DRIFTS = "drifts"
    EARLY = "fills too early"


@dataclass(frozen=True, slots=True)
class Deed:
    """What a player does wrong: stays, or goes to a spot, or part of the way to the ball."""

    slip: Slip
    to: Spot | None = None
    part: float = 1.0


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer to choose. `why` says in one sentence why it is right, or why not.

    Which of `spot`, `player`, `rank` and `slip` is set depends on what is asked.
    """

    text: str
    right: bool
    why: str
    spot: Spot | None = None
    player: int | None = None
    rank: int | None = None
    slip: Slip | None = None


@dataclass(frozen=True, slots=True)
class Question:
    """`rank` is the sentence that decides it; `deed` is what is played in its place where a mistake is asked for."""

    ask: Ask
    occasion: Occasion
    rank: int
    words: str
    choices: tuple[Choice, ...]
    deed: Deed | None = None

    @property
    def right(self) -> tuple[Choice, ...]:
        """Every right answer."""
        return tuple(choice for choice in self.choices if choice.right)

    @property
    def name(self) -> str:
        """A short name that stays the same for the same question of the same book."""
        at = self.occasion
        parts = (self.ask, situation_text(at.step.before), at.step.text, at.beat, at.player, self.rank, self.deed)
        return digest("|".join(map(str, parts)))[:8]

    @property
    def answer(self) -> str:
        """What is right, in words: "4 fills the top."."""
        return say("{player} {does}.", player=self.occasion.player, does=action_words(self.occasion.action))

    @property
    def sentence(self) -> tuple[str, str, str]:
        """The sentence that decides it: letter, cue word, words."""
        book = self.occasion.book
        return str(letter(self.rank)), book.cue(self.rank), book.sentences[self.rank].text

    @property
    def level(self) -> int:
        """How hard it is, 1 to 3, by the cues that compete (own choice of the steps)."""
        cues = self.occasion.cues
        return 1 if cues <= 1 else 2 if cues <= 2 else 3
