"""What one player is told until all stand, and what a changed book tells him instead."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from backcut.court.spots import Spot
from backcut.engine.decide import decide
from backcut.engine.play import settle
from backcut.engine.possession import Beat
from backcut.engine.words import action_words
from backcut.errors import MoveError
from backcut.offence.action import Action, Kind, Route
from backcut.offence.book import Book
from backcut.offence.situation import Situation

#: What asks nothing new of a player.
_REST = frozenset({Kind.HOLD, Kind.BALL, Kind.FORGET})
#: Ways of a run that its words leave out.
_ROUTES = {
    Route.FRONT: "in front of the defender",
    Route.BEHIND_DEFENDER: "behind the defender",
    Route.FAR_SIDE: "to the far side of the rim",
    Route.ALONG_ARC: "along the arc",
    Route.THROUGH_ELBOW: "through the elbow",
    Route.THROUGH_LANE: "through the lane",
}
#: Those that are worth saying even where there is no other to tell them from.
_SAID = ((Kind.FILL, Route.THROUGH_ELBOW), (Kind.FILL, Route.THROUGH_LANE), (Kind.CUT, Route.FAR_SIDE))


class When(StrEnum):
    """When an answer is given: at once; after others; after the same runs as now; or just sooner or later than now."""

    NOW = "now"
    LATER = "later"
    THEN = "then"
    SOONER = "sooner"
    PUT_OFF = "put off"


@dataclass(frozen=True, slots=True)
class Wanted:
    """An answer a player could have; `words` go after the number: "fills the top", "then comes out to the top".

    That others go first, or that it comes sooner or later than now, is in `when` alone.
    """

    kind: Kind
    target: Spot
    route: Route
    when: When
    words: str


@dataclass(frozen=True, slots=True)
class Told:
    """What one player is told from here until all stand.

    `acts` are what he has to do, in order, each with its beat, a hole in the book too; `first` is his answer at once,
    which may be to hold; `silent` are the players whom the book leaves without an answer on the way.
    """

    beats: tuple[Beat, ...]
    first: Action
    acts: tuple[tuple[int, Action], ...]
    silent: frozenset[int]

    @property
    def present(self) -> Wanted:
        """What he is told first: at once, else when his turn comes; to hold where it never does."""
        beat, action = self.acts[0] if self.acts else (0, self.first)
        return self.wanted(action, beat, When.LATER if beat else When.NOW, self)

    def wanted(self, action: Action, beat: int, when: When, now: Told) -> Wanted:
        """One of his actions in words, told from what he is told `now`."""
        words = action_words(action, self.beats[beat].before)
        others = [was.route for _, was in now.acts if (was.kind, was.target) == (action.kind, action.target)]
        apart = bool(others) and action.route not in others
        if action.route in _ROUTES and (apart or (action.kind, action.route) in _SAID):
            words += f", {_ROUTES[action.route]}"
        words = f"then {words}" if when is When.THEN else words
        return Wanted(action.kind, action.target, action.route, when, words)


def told(book: Book, situation: Situation, player: int) -> Told | None:
    """What a book tells a player from this situation until all stand; None where its players never settle."""
    try:
        return _gather(settle(book, situation)[0], player)
    except MoveError:
        return None


def told_now(book: Book, situation: Situation, player: int) -> Told:
    """The same of the book that is played: its answers at once, where its players never settle."""
    known = told(book, situation, player)
    return known if known is not None else _gather((Beat(situation, decide(book, situation)),), player)


def answer(beat: Beat, player: int) -> Action:
    """The player's answer of one beat."""
    return next(action for action in beat.decision.actions if action.player == player)


def _gather(beats: tuple[Beat, ...], player: int) -> Told:
    actions = [answer(beat, player) for beat in beats]
    acts: list[tuple[int, Action]] = []
    for beat, action in enumerate(actions):
        again = bool(acts) and not action.moves and _what(acts[-1][1]) == _what(action)
        if (action.moves or action.kind not in _REST) and not again:
            acts.append((beat, action))
    silent = frozenset(trouble.player for beat in beats for trouble in beat.decision.troubles)
    return Told(beats, actions[0], tuple(acts), silent)


def _what(action: Action) -> tuple[Kind, Spot, Route]:
    return action.kind, action.target, action.route


def instead(book: Book, situation: Situation, player: int, now: Told) -> Wanted | None:
    """The first thing a changed book tells the player that he is not told now, or not at this time.

    What comes after the first follows from it. None where there is none, and where the changed book leaves somebody
    without an answer who has one now: that is no answer, but a hole.
    """
    other = told(book, situation, player)
    if other is None or not other.silent <= now.silent:
        return None
    wanted = next(_otherwise(other, now), None)
    return wanted if wanted is not None and wanted.kind is not Kind.NO_ANSWER else None


def _otherwise(other: Told, now: Told) -> Iterator[Wanted]:
    before, after = [_what(action) for _, action in now.acts], [_what(action) for _, action in other.acts]
    same = next((i for i, pair in enumerate(zip(before, after, strict=False)) if pair[0] != pair[1]), None)
    same = min(len(before), len(after)) if same is None else same
    if same < len(after):
        beat, action = other.acts[same]
        yield other.wanted(action, beat, When.THEN if same else When.LATER if beat else When.NOW, now)
    elif same < len(before) and same:
        spot = other.acts[-1][1].target
        yield Wanted(Kind.HOLD, spot, Route.PLAIN, When.THEN, f"goes no farther than the {spot.title}")
    elif before and not after and other.first.kind is not Kind.FORGET:
        yield other.wanted(other.first, 0, When.NOW, now)
    elif after and (beat := other.acts[0][0]) != (was := now.acts[0][0]):
        # The same runs: only another time of the first is an answer, the others' times follow from it.
        when = When.NOW if not beat else When.SOONER if beat < was else When.PUT_OFF
        known = other.wanted(other.acts[0][1], beat, when, now)
        yield Wanted(known.kind, known.target, known.route, when, f"{known.words}, at once") if not beat else known
