"""Not in our team: another answer of a player at one moment, and the one change of the book that says it.

Every change of one sentence, one choice or one exception of this player is tried in the very situation that is shown.
What the changed book tells him there, at once or on the way until all stand, is what that change would say.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.engine.play import settle
from backcut.errors import MoveError
from backcut.offence.book import Book
from backcut.offence.reading import book_from_text
from backcut.offence.situation import Cause, Doing, Guard, Situation
from backcut.prove.compare import compare
from backcut.prove.depth import Depth
from backcut.prove.instead import Wanted, When, instead, told_now
from backcut.prove.one_change import Change, changes
from backcut.prove.walk import Walk, walk

__all__ = ["Saying", "Wanted", "When", "answers", "right", "sayings"]

#: Ways that are offered for one answer, and differences told of each: more is no help.
OFFERED = 5
TOLD = 2

#: Told how many changes have been compared; whoever wants to stop raises KeyboardInterrupt.
Progress = Callable[[int], None]


@dataclass(frozen=True, slots=True)
class Saying:
    """A change of the book that says an answer: in words, the new text, and what it changes.

    In `differs` of the `moments` compared at `depth` somebody has other runs, in `retimed` the same ones at another
    time or another way; the moment that was pointed at counts too where it comes up there. `changed` says the most
    frequent differences; `apart` why the two books could not be compared, where they could not.
    """

    says: str
    text: str
    wanted: Wanted
    differs: int
    retimed: int
    moments: int
    changed: tuple[str, ...]
    depth: Depth
    apart: str | None = None

    @property
    def elsewhere(self) -> str:
        """What it changes in the whole book, in two or three sentences."""
        if self.apart is not None:
            return self.apart
        of, there = f" of {self.moments:,} moments", f"while {self.depth.says}"
        if not self.differs and not self.retimed:
            return f"It changes none{of} that come up {there}."
        parts = [f"in {self.differs:,}{of} somebody runs otherwise"] if self.differs else []
        if self.retimed:
            parts.append(f"in {self.retimed:,}{'' if parts else of} the same is run at another time or another way")
        told = "".join(f" {text[:1].upper()}{text[1:]}." for text in self.changed)
        return f"I{', '.join(parts)[1:]}, {there}.{told}"


def answers(text: str, book: Book, situation: Situation, player: int) -> list[Wanted]:
    """What this player is told here, first, then everything that one change of the book would say instead.

    `text` is the book's; `situation` is one that is asked, as before a beat: the first answer is given there or, where
    the player waits for others, later in the same step. Raises: SituationError if nobody wears the number.
    """
    situation.player(player)
    now = told_now(book, situation, player)
    tried = (instead(change.book, situation, player, now) for change in changes(text, book, player, now.beats))
    others = dict.fromkeys(wanted for wanted in tried if wanted is not None)
    return [now.present, *sorted(others, key=lambda wanted: list(When).index(wanted.when))]


def sayings(
    text: str, book: Book, situation: Situation, player: int, wanted: Wanted, progress: Progress | None = None
) -> list[Saying]:
    """The changes that make the book say `wanted` here, the one that changes fewest moments first; five at most.

    Empty where no single change says it, and where the book says it already. Raises: SituationError if nobody wears
    the number.
    """
    situation.player(player)
    now, depth = told_now(book, situation, player), _depth(situation)
    problems = len(book_from_text(text)[1])
    found: dict[tuple[object, ...], Saying] = {}
    for change in changes(text, book, player, now.beats):
        if instead(change.book, situation, player, now) != wanted:
            continue
        new = change.write(text)
        other, left = book_from_text(new)
        if len(left) > problems or instead(other, situation, player, now) != wanted:
            continue
        saying = _saying(change, new, wanted, _walk(text, depth), other)
        # Of changes alike those that do the same are offered once.
        found.setdefault((change.alike or new, saying.differs, saying.retimed, saying.changed), saying)
        if progress is not None:
            progress(len(found))
    return sorted(found.values(), key=lambda one: (one.apart is not None, one.differs, one.retimed))[:OFFERED]


def right(book: Book, situation: Situation, player: int) -> frozenset[Spot]:
    """The spots that are right when this player is asked where he goes: where he runs now, and where he ends.

    Who holds now and moves later in this step is right with either. Raises: SituationError if nobody wears the number.
    """
    return rights(book, situation)[situation.player(player).number]


def rights(book: Book, situation: Situation) -> dict[int, frozenset[Spot]]:
    """What is right for each player, as `right` says it."""
    now = {action.player: action.target for action in decide(book, situation).actions}
    try:
        _, after = settle(book, situation)
    except MoveError:
        return {number: frozenset({target}) for number, target in now.items()}
    return {number: frozenset({target, after.player(number).at}) for number, target in now.items()}


def _saying(change: Change, text: str, wanted: Wanted, walked: Walk, other: Book) -> Saying:
    made = compare(walked.book, other, (walked.depth,), walks=(walked,))
    told = tuple(difference.text for difference in made.differences[:TOLD])
    return Saying(change.says, text, wanted, made.differing, made.retimed, made.moments, told, walked.depth, made.apart)


@lru_cache(maxsize=8)
def _walk(text: str, depth: Depth) -> Walk:
    """The walk through the book in a text: every change of it is compared along the same one."""
    return walk(book_from_text(text)[0], depth)


def _depth(situation: Situation) -> Depth:
    """How far must be looked so that moments like this one come up at all."""
    players = situation.players
    if any(player.jammed or player.forgets for player in players):
        return Depth.DISTURBED
    denied = any(
        player.guard in (Guard.DENIES, Guard.JUMPED)
        or player.cause in (Cause.DENIED, Cause.FLASHED)
        or player.doing is Doing.FLASHED
        for player in players
    )
    return Depth.DENIED if denied else Depth.SETTLED
