"""How one player is told otherwise by two books, in words without numbers and sides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from backcut.court.spots import Spot
from backcut.engine.words import label
from backcut.offence.action import Kind, Route
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import IN_LANE, Player, Situation
from backcut.prove.told import Answer, Told
from backcut.prove.who import plain_title, who


class Sort(StrEnum):
    """In what two answers differ: runs and end; the same runs another way; the same runs at another time."""

    WHAT = "what"
    WAY = "way"
    TIME = "time"


@dataclass(frozen=True, slots=True)
class Unlike:
    """One player told otherwise. `sentences` are the ranks, in either book, behind the first answer that differs."""

    sort: Sort
    text: str
    sentences: tuple[int | None, int | None]


#: Per kind: after a player's name, after "instead of", and what is added where the spot matters.
_SAYS: dict[Kind, tuple[str, str, str]] = {
    Kind.CUT: ("cuts to the rim", "cutting to the rim", ""),
    Kind.BACK_CUT: ("back cuts", "back cutting", ""),
    Kind.SHALLOW_CUT: ("cuts shallow", "cutting shallow", ""),
    Kind.EXIT: ("comes out", "coming out", " to {}"),
    Kind.FILL: ("moves up", "moving up", " to {}"),
    Kind.COME_TO_BALL: ("comes to the ball", "coming to the ball", ""),
    Kind.REPLACE: ("takes the spot back", "taking the spot back", ""),
    Kind.SCREEN: ("screens", "screening", " at {}"),
    Kind.USE_SCREEN: ("comes off the screen", "coming off the screen", ""),
    Kind.FLASH: ("flashes", "flashing", " to {}"),
    Kind.SLIDE: ("slides on", "sliding on", " to {}"),
    Kind.HAND_OFF: ("takes the hand-off", "taking the hand-off", ", to {}"),
    Kind.INSIDE: ("moves inside", "moving inside", ", to {}"),
    Kind.CLEAR: ("clears the path", "clearing the path", ", to {}"),
    Kind.DRIBBLE: ("dribbles", "dribbling", " to {}"),
    Kind.GET_BACK: ("gets back", "getting back", " to {}"),
    Kind.REBOUND: ("goes for the rebound", "going for the rebound", ""),
    Kind.BALL: ("keeps the ball", "keeping the ball", ""),
    Kind.LOOK_TO_DRIBBLE: ("looks to dribble at a denied player", "looking to dribble at a denied player", ""),
    Kind.HOLD: ("holds", "holding", ""),
    Kind.FORGET: ("forgets", "forgetting", ""),
    Kind.NO_ANSWER: ("has no answer", "having no answer", ""),
}
_BACK = ("comes back", "coming back")
_AFTER: dict[EventKind, str] = {
    EventKind.PASS: "after a pass",
    EventKind.SKIP: "after a skip pass",
    EventKind.TO_CUTTER: "after a pass to the cutter",
    EventKind.INSIDE: "after a pass inside",
    EventKind.KICK_OUT: "after a kick-out",
    EventKind.JUMP: "after a pass",
    EventKind.JAM: "when a cut is taken away",
    EventKind.FORGET: "when somebody forgets",
    EventKind.DRIBBLE: "after a dribble",
    EventKind.SHOT: "after a shot",
    EventKind.LAY_UP: "after a lay-up",
}
_ROUTES: dict[Route, str] = {
    Route.PLAIN: "straight",
    Route.FRONT: "in front of the defender",
    Route.REAR: "behind the defender",
    Route.BEHIND_DEFENDER: "behind the defender",
    Route.BASELINE: "along the baseline",
    Route.FAR_SIDE: "to the far side of the rim",
    Route.ALONG_ARC: "along the arc",
    Route.THROUGH_ELBOW: "through the elbow",
    Route.THROUGH_LANE: "through the lane",
}


def said(kind: Kind, spot: str = "", doing: bool = False) -> str:
    """One answer after a player's name, "moves up to the top"; or after "instead of", "moving up to the top"."""
    words = _SAYS[kind]
    return words[doing] + (words[2].format(spot) if spot else "")


@dataclass(frozen=True, slots=True)
class View:
    """The floor as one player sees it right after an event: spots by the ball, and by where the player stood."""

    index: Mapping[Spot, int]
    ball: Spot | None
    stood: Spot

    @classmethod
    def of(cls, book: Book, situation: Situation, player: Player) -> View:
        """How a player sees the floor in this situation."""
        holder, last = situation.holder, situation.last
        ball = None if holder.doing in IN_LANE else holder.at
        if last is not None and last.fresh and last.target is not None:
            ball = last.target
        stood = player.origin if player.doing in IN_LANE and player.origin is not None else player.at
        return cls(book.rules.index, ball, stood)

    def spot(self, spot: Spot) -> str:
        """A spot without left and right: "the corner opposite the ball", "the wing beside the ball", "the top"."""
        name = f"the {plain_title(spot)}"
        ball_side = self.ball.side if self.ball is not None else 0
        beside = self.ball is not None and abs(self.index.get(spot, -9) - self.index.get(self.ball, 99)) == 1
        if beside:
            name += " beside the ball"
        if spot.side == 0 or (beside and ball_side):
            return name
        if ball_side:
            return name + (" on the ball's side" if spot.side == ball_side else " opposite the ball")
        if self.stood.side:
            return name + (" on the same side" if spot.side == self.stood.side else " on the other side")
        return name

    def says(self, runs: Sequence[Answer], doing: bool = False, spots: bool = True) -> str:
        """What a player is told, one answer after the other: "cuts to the rim and comes back"."""
        kinds = [run.kind for run in runs]
        parts = [
            _BACK[doing]
            if run.kind is Kind.EXIT and run.target is self.stood
            else said(run.kind, self.spot(run.target) if spots else "", doing)
            for run in runs
        ]
        if Kind.EXIT in kinds:
            parts = parts[: kinds.index(Kind.EXIT) + 1]  # who is out plays on like the others
        *first, last = dict.fromkeys(parts) or [said(Kind.HOLD, "", doing)]
        return f"{', '.join(first)} and {last}" if first else last


def unlike(book: Book, after: Situation, event: Event, player: Player, a: Told, b: Told) -> Iterator[Unlike]:
    """How `b` tells one player otherwise than `a`, right after an event."""
    if a.what != b.what:
        yield Unlike(Sort.WHAT, _what(book, after, event, player, a, b), _sentences(a, b))
        return
    for one, other in zip(a.runs, b.runs, strict=True):
        name = "the way out" if one.kind is Kind.EXIT else f"the {label(one.kind) or one.kind}"
        sentences = one.habit, other.habit
        if one.route is not other.route:
            yield Unlike(Sort.WAY, f"{name} goes {_ROUTES[other.route]} instead of {_ROUTES[one.route]}", sentences)
        if one.beat != other.beat:
            yield Unlike(Sort.TIME, f"{name} comes {'earlier' if other.beat < one.beat else 'later'}", sentences)


def _common(a: Told, b: Told) -> int:
    """How many runs two begin with alike."""
    count = 0
    for one, other in zip(a.runs, b.runs, strict=False):
        if one.what != other.what:
            break
        count += 1
    return count


def _sentences(a: Told, b: Told) -> tuple[int | None, int | None]:
    """The sentences behind the first run that differs; behind holding, the one that spoke for it."""
    place = _common(a, b)
    one, other = (told.runs[place].habit if place < len(told.runs) else told.holds_by for told in (a, b))
    return one, other


def _what(book: Book, after: Situation, event: Event, player: Player, a: Told, b: Told) -> str:
    """Who does what instead of what: "the corner passer holds instead of cutting to the rim and coming back"."""
    place, role = _common(a, b), _role(book, after, event, player)
    if a.restless is not b.restless:
        return f"{role} {'comes to rest' if a.restless else 'never comes to rest'}"
    view = View.of(book, after, player)
    both, more_a, more_b = a.runs[:place], a.runs[place:], b.runs[place:]
    if place and not (more_a and more_b) and {run.kind for run in (both[-1], *more_a, *more_b)} == {Kind.FILL}:
        return f"{role} moves up {'farther' if more_b else 'less far'}"
    if more_a and more_b and more_a[0].kind is more_b[0].kind:
        more_a, more_b = more_a[:1], more_b[:1]  # what comes after follows from it
    for spots in (False, True):
        if place and not more_b:
            return f"{role} {view.says(both, spots=spots)} without {view.says(more_a, True, spots)}"
        if place and not more_a:
            return f"{role} also {view.says(more_b, spots=spots)}"
        if view.says(more_a, spots=spots) != view.says(more_b, spots=spots):
            return f"{role} {view.says(more_b, spots=spots)} instead of {view.says(more_a, True, spots)}"
    return f"{role} goes to another spot"


def _role(book: Book, after: Situation, event: Event, player: Player) -> str:
    """Who this is, and after what, where that does not already say it."""
    then = _AFTER.get(event.kind, "at the end")
    if after.ended is not None:
        return f"{then} {'the player with' if player.number == after.ball else 'a player without'} the ball"
    called = who(book, after, player)
    if called.endswith("passes away"):
        called = "a player farther away"
    elif called.startswith("the player who") or not called.startswith(("the player", "the inside player")):
        return called
    if event.kind is EventKind.DENY:
        then = f"when {'two are' if event.also else 'one is'} denied"
    return f"{then} {called}"
