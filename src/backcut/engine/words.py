"""Events, answers and claims in a coach's words: present tense, numbers for players."""

from __future__ import annotations

from backcut.engine.possession import Step
from backcut.language import noted, say
from backcut.offence.action import Action, Claim, Kind, Route, letter
from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.offence.situation import IN_LANE, Doing, Situation

_EVENTS: dict[EventKind, str] = {
    EventKind.PASS: noted("{player} passes to {receiver}"),
    EventKind.SKIP: noted("{player} skips to {receiver}"),
    EventKind.TO_CUTTER: noted("{player} finds {receiver} at the rim"),
    EventKind.INSIDE: noted("{player} passes inside to {receiver}"),
    EventKind.KICK_OUT: noted("{player} kicks out to {receiver}"),
    EventKind.DENY: noted("X{player} denies {player}"),
    EventKind.SAG: noted("X{player} sags off {player}"),
    EventKind.JUMP: noted("X{player} jumps to the ball"),
    EventKind.FREE: noted("X{player} lets {player} be"),
    EventKind.JAM: noted("The cut of {player} is taken away"),
    EventKind.FORGET: noted("{player} forgets"),
    EventKind.LAY_UP: noted("{player} lays the ball up"),
    EventKind.SHOT: noted("{player} shoots"),
    EventKind.TURNOVER: noted("{player} loses the ball"),
}


def event_words(step: Step) -> str:
    """What happened: "1 passes to 2", "X3 denies 3", "1 dribbles at 2"."""
    event = step.event
    if event.kind is not EventKind.DRIBBLE:
        each = (say(_EVENTS[event.kind], player=player, receiver=event.receiver) for player in event.players)
        return say(" and ").join(each)
    for player in step.before.players:
        if player.at is event.spot and player.doing not in IN_LANE:
            return say("{player} dribbles at {other}", player=event.player, other=player.number)
    if event.spot is None:
        return say("{player} dribbles to the next spot", player=event.player)
    return say("{player} dribbles to the {spot}", player=event.player, spot=event.spot.title)


_KINDS: dict[Kind, str] = {
    Kind.CUT: noted("cuts to the rim"),
    Kind.BACK_CUT: noted("back cuts"),
    Kind.SHALLOW_CUT: noted("cuts shallow, to the high post"),
    Kind.EXIT: noted("comes out to the {target}"),
    Kind.FILL: noted("fills the {target}"),
    Kind.COME_TO_BALL: noted("comes to the ball"),
    Kind.REPLACE: noted("takes the {target} back"),
    Kind.SCREEN: noted("screens at the {target}"),
    Kind.USE_SCREEN: noted("comes off the screen to the {target}"),
    Kind.FLASH: noted("flashes to the {target}"),
    Kind.SLIDE: noted("slides on to the {target}"),
    Kind.HAND_OFF: noted("takes the hand-off, to the {target}"),
    Kind.INSIDE: noted("moves to the {target}"),
    Kind.CLEAR: noted("clears the path, to the {target}"),
    Kind.BALL: noted("has the ball, {origin}"),
    Kind.LOOK_TO_DRIBBLE: noted("looks to dribble at one of the two who are denied, {origin}"),
    Kind.DRIBBLE: noted("dribbles to the {target}"),
    Kind.HOLD: noted("holds, {origin}"),
    Kind.GET_BACK: noted("gets back to the {target}"),
    Kind.REBOUND: noted("goes for the rebound"),
    Kind.FORGET: noted("forgets and stays"),
    Kind.NO_ANSWER: noted("has no answer"),
}
_REAR = noted("cuts behind the defender to the rim")
_BASELINE = noted("back cuts along the baseline")
_STAYS_BACK = noted("stays back, {target}")


def _words_of(action: Action) -> str:
    if action.kind is Kind.CUT and action.route is Route.REAR:
        return _REAR
    if action.kind is Kind.BACK_CUT and action.route is Route.BASELINE:
        return _BASELINE
    return _STAYS_BACK if action.kind is Kind.GET_BACK and not action.moves else _KINDS[action.kind]


_LABELS: dict[Kind, str] = {
    Kind.CUT: noted("cut"),
    Kind.BACK_CUT: noted("back cut"),
    Kind.SHALLOW_CUT: noted("shallow cut"),
    Kind.EXIT: noted("out"),
    Kind.FILL: noted("fill"),
    Kind.COME_TO_BALL: noted("to the ball"),
    Kind.REPLACE: noted("back"),
    Kind.SCREEN: noted("screen"),
    Kind.USE_SCREEN: noted("off the screen"),
    Kind.FLASH: noted("flash"),
    Kind.SLIDE: noted("slide on"),
    Kind.HAND_OFF: noted("hand-off"),
    Kind.INSIDE: noted("inside"),
    Kind.CLEAR: noted("clear"),
    Kind.DRIBBLE: noted("dribble"),
    Kind.GET_BACK: noted("back"),
}


def label(kind: Kind) -> str:
    """The word beside an arrow; empty where there is none."""
    return say(_LABELS[kind]) if kind in _LABELS else ""


def action_words(action: Action, situation: Situation | None = None) -> str:
    """What one player does, after the number: "fills the top". `situation` tells a runner from one who waits."""
    if situation is not None and action.kind is Kind.HOLD:
        match situation.player(action.player).doing:
            case Doing.CUTTING:
                return say("is on the way to the rim")
            case Doing.LANE:
                return say("is at the rim, waits for the others")
            case Doing.FLASHED:
                return say("shows at the {spot}", spot=action.origin.title)
    return say(_words_of(action), target=action.target.title, origin=action.origin.title)


_WANTED: dict[Kind, str] = {
    Kind.CUT: noted("to cut to the rim"),
    Kind.BACK_CUT: noted("to back cut"),
    Kind.HOLD: noted("to hold"),
    Kind.BALL: noted("to keep the ball"),
    Kind.REBOUND: noted("to rebound"),
}
_AT = noted("at the {target}")


def claim_words(claim: Claim, player: int) -> str:
    """What a beaten sentence wanted: "wanted 2 at the top"."""
    wanted = _WANTED.get(claim.kind, _AT)
    return say("wanted {player} {what}", player=player, what=say(wanted, target=claim.target.title))


def why_beaten(book: Book, winner: int, beaten: int) -> str:
    """Why one sentence beats another: its rank, or that the other speaks only when nothing else does."""
    if book.sentences[beaten].phrase.covers_rest:
        return say("It speaks only when nothing else does.")
    return say("{winner} stands above {beaten}.", winner=letter(winner), beaten=letter(beaten))
