"""An offence book: formation, choices, exceptions by number, and the sentences in order of rank."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from backcut.court.spots import Spot
from backcut.errors import SituationError
from backcut.offence.action import letter
from backcut.offence.choices import CHOICES
from backcut.offence.formation import Formation
from backcut.offence.phrase import Phrase, phrases
from backcut.offence.rules import Rules
from backcut.offence.situation import Situation


@dataclass(frozen=True)
class Sentence:
    """One habit of a book. `values` are the choices said inside the sentence; notes the book leaves out are None."""

    phrase: Phrase
    values: Mapping[str, str] = field(default_factory=dict)
    cue: str | None = None
    why: str | None = None
    mistake: str | None = None

    @property
    def text(self) -> str:
        """The sentence in words, without its cue."""
        return self.phrase.sentence(self.values)


@dataclass(frozen=True)
class Exceptions:
    """What a book asks of a number: who stays inside, who never fills a corner, who never cuts."""

    stays_inside: frozenset[int] = frozenset()
    never_corner: frozenset[int] = frozenset()
    never_cuts: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class ProofLine:
    """A line "Prove:" or, where `off`, "Do not prove:", as the coach wrote it; no rule of the offence reads it.

    `line` and `column` count from 1 and are where `text` begins; a long text goes on over several lines.
    """

    text: str
    line: int
    column: int
    off: bool = False

    def place(self, offset: int) -> tuple[int, int]:
        """Line and column, both from 1, of an offset into `text`."""
        before = self.text[:offset]
        down = before.count("\n")
        return self.line + down, (offset - before.rfind("\n") if down else self.column + offset)


@dataclass(frozen=True)
class Book:
    """One offence. `choices` are those set on a line of their own; `proofs` say what has to hold in it.

    `moved` spots lie where the coach put them, in metres. `mark_m` is how far outside the arc the denial mark lies, in
    metres; negative is inside.
    """

    title: str
    formation: Formation
    sentences: tuple[Sentence, ...]
    choices: Mapping[str, str] = field(default_factory=dict)
    exceptions: Exceptions = Exceptions()
    court: str = "fiba"
    squad: str | None = None
    begins: Situation | None = None
    moved: Mapping[Spot, tuple[float, float]] = field(default_factory=dict)
    mark_m: float = 0.0
    proofs: tuple[ProofLine, ...] = ()

    @cached_property
    def values(self) -> Mapping[str, str]:
        """Every choice with its value: said in a sentence, else on a line of its own, else the default."""
        # Of two sentences that say it the first is asked first, so its choice holds.
        said = {name: value for s in reversed(self.sentences) for name, value in s.values.items()}
        return {choice.name: choice.default for choice in CHOICES.values()} | dict(self.choices) | said

    @cached_property
    def rules(self) -> Rules:
        """The book made ready for `decide`."""
        return Rules.of(
            ring=self.formation.ring,
            values=self.values,
            habits=tuple((rank, sentence.phrase) for rank, sentence in enumerate(self.sentences)),
            never_corner=self.exceptions.never_corner,
            never_cuts=self.exceptions.never_cuts,
        )

    def start(self) -> Situation:
        """Where a possession begins: the book's own start, else the formation's, exceptions by number kept.

        Raises: SituationError if more players must stay inside than the formation has.
        """
        if self.begins is not None:
            return self.begins
        start = self.formation.situation()
        inside = {player.number for player in start.players if player.at not in self.formation.ring}
        swaps = sorted(self.exceptions.stays_inside - inside)
        free = sorted(inside - self.exceptions.stays_inside)
        if len(swaps) > len(free):
            raise SituationError(
                f"{', '.join(map(str, sorted(self.exceptions.stays_inside)))} should stay inside, but "
                f"{self.formation.title} has {len(inside)} inside."
            )
        spots = start.spots()
        for number, other in zip(swaps, free, strict=False):
            spots[number], spots[other] = spots[other], spots[number]
        ball = start.holder.at
        players = tuple(replace(player, at=spots[player.number]) for player in start.players)
        return Situation(players, ball=next(player.number for player in players if player.at is ball))

    def cue(self, rank: int) -> str:
        """The cue word of the sentence at this rank, the phrase's own where the book gives none."""
        sentence = self.sentences[rank]
        return sentence.cue or sentence.phrase.cue

    def letters(self) -> dict[str, str]:
        """The letter of each phrase of the book."""
        return {sentence.phrase.name: str(letter(rank)) for rank, sentence in enumerate(self.sentences)}


def plain_book(formation: Formation) -> Book:
    """The plain book of pass and cut for a formation, every choice at its default."""
    inside = {1: ("inside",), 2: ("two inside",)}.get(len(formation.inside), ())
    order = ("dribble at", "back cut", "skip pass", "cut", "cut taken away", "fill", *inside, "shot", "hold")
    return Book(
        title=formation.title,
        formation=formation,
        sentences=tuple(Sentence(phrases()[name]) for name in order),
    )
