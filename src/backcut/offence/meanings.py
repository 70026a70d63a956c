"""What every kind of event and of action means, in a coach's words: one place for the reference and for help texts."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from backcut.offence.action import Kind
from backcut.offence.event import EventKind


class EventMeaning(NamedTuple):
    """How an event is written in a move list, and what it means."""

    written: str
    means: str


EVENT_MEANINGS: Mapping[EventKind, EventMeaning] = {
    EventKind.PASS: EventMeaning("T>RW", "A pass to the next spot of the ring."),
    EventKind.SKIP: EventMeaning("T>RC", "A pass over one spot of the ring or more, empty spots counted."),
    EventKind.TO_CUTTER: EventMeaning("RW>cutter", "A pass to a player in the lane; the first one in, if several are."),
    EventKind.INSIDE: EventMeaning("RW>Rb", "A pass to a player who plays inside or has flashed."),
    EventKind.KICK_OUT: EventMeaning("Rb>RC", "A pass from inside or from the lane back out to the ring."),
    EventKind.DENY: EventMeaning(
        "deny 2+3", "The defender stands in the passing lane; the pass to this player is shut."
    ),
    EventKind.SAG: EventMeaning("sag 2", "The defender drops off toward the basket."),
    EventKind.JUMP: EventMeaning("jump 1", "The passer's defender jumps to the ball as the pass goes."),
    EventKind.FREE: EventMeaning("free 3", "The defender stops denying, sagging or jumping."),
    EventKind.JAM: EventMeaning("jam 1", "A defender stands in the cut: it is taken away."),
    EventKind.DRIBBLE: EventMeaning("dribble 1>RW", "The ball is dribbled to the next spot of the ring."),
    EventKind.FORGET: EventMeaning("forget 4", "The player forgets what the book asks, until the ball moves again."),
    EventKind.LAY_UP: EventMeaning("lay-up", "The player with the ball lays it up; the possession ends."),
    EventKind.SHOT: EventMeaning("shot", "The player with the ball shoots; the possession ends."),
    EventKind.TURNOVER: EventMeaning("turnover", "The ball is lost; the possession ends."),
}

ACTION_MEANINGS: Mapping[Kind, str] = {
    Kind.CUT: "Runs to the rim after a pass.",
    Kind.BACK_CUT: "Runs to the rim behind a defender who denies, or because the ball is dribbled at the player.",
    Kind.SHALLOW_CUT: "Cuts to the high post only, because the block on the ball side is taken.",
    Kind.EXIT: "Comes out of the lane to an open spot.",
    Kind.FILL: "Moves up to the next spot toward the ball, which is empty.",
    Kind.COME_TO_BALL: "Denied on the way to fill: takes a step to the passer, two hands ready.",
    Kind.REPLACE: "The cut is taken away: goes back to the spot the cut began from.",
    Kind.SCREEN: "Screens: for the next player away from the ball, or for the player on the block.",
    Kind.USE_SCREEN: "Comes off the screen to the spot the cutter left.",
    Kind.FLASH: "Comes to the high post or the elbow, because both players beside the ball are denied.",
    Kind.SLIDE: "Slides on by one spot, away from the dribble.",
    Kind.HAND_OFF: "Comes behind the dribbler and takes the ball by hand.",
    Kind.INSIDE: "An inside player moves as the ball moves.",
    Kind.CLEAR: "An inside player steps out of a cutter's path.",
    Kind.BALL: "Has the ball and stays.",
    Kind.DRIBBLE: "Dribbles to the next spot.",
    Kind.LOOK_TO_DRIBBLE: "Has the ball and looks to dribble at one of the two beside it, who are both denied.",
    Kind.HOLD: "Stays on the spot; or, cutting, runs on to the rim or waits there for the others.",
    Kind.GET_BACK: "Runs back on defence when a shot goes up.",
    Kind.REBOUND: "Goes for the rebound when a shot goes up.",
    Kind.FORGET: "Stays, though a sentence asks for a move: the player forgets.",
    Kind.NO_ANSWER: "No sentence has an answer, or two players are sent to one spot: the player waits, and it is said.",
}
