"""Events, answers and claims in a coach's words: present tense, numbers for players."""

from __future__ import annotations

from collections.abc import Callable

from backcut.engine.possession import Step
from backcut.offence.action import Action, Claim, Kind, Route, letter
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import IN_LANE, Doing, Situation

_EVENTS: dict[EventKind, Callable[[Event], str]] = {
    EventKind.PASS: lambda e: f"{e.player} passes to {e.receiver}",
    EventKind.SKIP: lambda e: f"{e.player} skips to {e.receiver}",
    EventKind.TO_CUTTER: lambda e: f"{e.player} finds {e.receiver} at the rim",
    EventKind.INSIDE: lambda e: f"{e.player} passes inside to {e.receiver}",
    EventKind.KICK_OUT: lambda e: f"{e.player} kicks out to {e.receiver}",
    EventKind.DENY: lambda e: _both(e, "X{0} denies {0}"),
    EventKind.SAG: lambda e: _both(e, "X{0} sags off {0}"),
    EventKind.JUMP: lambda e: _both(e, "X{0} jumps to the ball"),
    EventKind.FREE: lambda e: _both(e, "X{0} lets {0} be"),
    EventKind.JAM: lambda e: f"The cut of {e.player} is taken away",
    EventKind.FORGET: lambda e: _both(e, "{0} forgets"),
    EventKind.LAY_UP: lambda e: f"{e.player} lays the ball up",
    EventKind.SHOT: lambda e: f"{e.player} shoots",
    EventKind.TURNOVER: lambda e: f"{e.player} loses the ball",
}


def _both(event: Event, text: str) -> str:
    return " and ".join(text.format(number) for number in event.players)


def event_words(step: Step) -> str:
    """What happened: "1 passes to 2", "X3 denies 3", "1 dribbles at 2"."""
    event = step.event
    if event.kind is not EventKind.DRIBBLE:
        return _EVENTS[event.kind](event)
    for player in step.before.players:
        if player.at is event.spot and player.doing not in IN_LANE:
            return f"{event.player} dribbles at {player.number}"
    return f"{event.player} dribbles to the {event.spot.title if event.spot else 'next spot'}"


_KINDS: dict[Kind, Callable[[Action], str]] = {
    Kind.CUT: lambda a: "cuts behind the defender to the rim" if a.route is Route.REAR else "cuts to the rim",
    Kind.BACK_CUT: lambda a: "back cuts along the baseline" if a.route is Route.BASELINE else "back cuts",
    Kind.SHALLOW_CUT: lambda a: "cuts shallow, to the high post",
    Kind.EXIT: lambda a: f"comes out to the {a.target.title}",
    Kind.FILL: lambda a: f"fills the {a.target.title}",
    Kind.COME_TO_BALL: lambda a: "comes to the ball",
    Kind.REPLACE: lambda a: f"takes the {a.target.title} back",
    Kind.SCREEN: lambda a: f"screens at the {a.target.title}",
    Kind.USE_SCREEN: lambda a: f"comes off the screen to the {a.target.title}",
    Kind.FLASH: lambda a: f"flashes to the {a.target.title}",
    Kind.SLIDE: lambda a: f"slides on to the {a.target.title}",
    Kind.HAND_OFF: lambda a: f"takes the hand-off, to the {a.target.title}",
    Kind.INSIDE: lambda a: f"moves to the {a.target.title}",
    Kind.CLEAR: lambda a: f"clears the path, to the {a.target.title}",
    Kind.BALL: lambda a: f"has the ball, {a.origin.title}",
    Kind.LOOK_TO_DRIBBLE: lambda a: f"looks to dribble at one of the two who are denied, {a.origin.title}",
    Kind.DRIBBLE: lambda a: f"dribbles to the {a.target.title}",
    Kind.HOLD: lambda a: f"holds, {a.origin.title}",
    Kind.GET_BACK: lambda a: f"gets back to the {a.target.title}" if a.moves else f"stays back, {a.target.title}",
    Kind.REBOUND: lambda a: "goes for the rebound",
    Kind.FORGET: lambda a: "forgets and stays",
    Kind.NO_ANSWER: lambda a: "has no answer",
}

#: The word beside an arrow.
LABELS: dict[Kind, str] = {
    Kind.CUT: "cut",
    Kind.BACK_CUT: "back cut",
    Kind.SHALLOW_CUT: "shallow cut",
    Kind.EXIT: "out",
    Kind.FILL: "fill",
    Kind.COME_TO_BALL: "to the ball",
    Kind.REPLACE: "back",
    Kind.SCREEN: "screen",
    Kind.USE_SCREEN: "off the screen",
    Kind.FLASH: "flash",
    Kind.SLIDE: "slide on",
    Kind.HAND_OFF: "hand-off",
    Kind.INSIDE: "inside",
    Kind.CLEAR: "clear",
    Kind.DRIBBLE: "dribble",
    Kind.GET_BACK: "back",
}


def action_words(action: Action, situation: Situation | None = None) -> str:
    """What one player does, after the number: "fills the top". `situation` tells a runner from one who waits."""
    if situation is not None and action.kind is Kind.HOLD:
        match situation.player(action.player).doing:
            case Doing.CUTTING:
                return "is on the way to the rim"
            case Doing.LANE:
                return "is at the rim, waits for the others"
            case Doing.FLASHED:
                return f"shows at the {action.origin.title}"
    return _KINDS[action.kind](action)


_WANTED: dict[Kind, str] = {
    Kind.CUT: "to cut to the rim",
    Kind.BACK_CUT: "to back cut",
    Kind.HOLD: "to hold",
    Kind.BALL: "to keep the ball",
    Kind.REBOUND: "to rebound",
}


def claim_words(claim: Claim, player: int) -> str:
    """What a beaten sentence wanted: "wanted 2 at the top"."""
    return f"wanted {player} {_WANTED.get(claim.kind, f'at the {claim.target.title}')}"


def why_beaten(book: Book, winner: int, beaten: int) -> str:
    """Why one sentence beats another: its rank, or that the other speaks only when nothing else does."""
    if book.sentences[beaten].phrase.covers_rest:
        return "It speaks only when nothing else does."
    return f"{letter(winner)} stands above {letter(beaten)}."
