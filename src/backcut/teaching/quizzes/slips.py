"""What did 3 do wrong: a usual mistake is played, and the words for it stand among words for others.

`said_of` is meant broadly: a mistake is offered as a wrong answer only where nobody could say it of what is played.
"""

from __future__ import annotations

from collections.abc import Iterator

from backcut.court.spots import Spot
from backcut.engine.words import action_words
from backcut.language import noted, say
from backcut.offence.action import Kind
from backcut.offence.situation import IN_LANE, Doing
from backcut.teaching.quizzes.occasion import Occasion
from backcut.teaching.quizzes.question import Ask, Choice, Deed, Question, Slip

#: Answers to choose from at most, and wrong ones at least (own choice: four fit on a phone).
MOST = 4
LEAST_WRONG = 2
#: How much of the way to the ball a drifting player creeps: 40 % of 4 to 6 m is over the 1.2 m at which coaches speak
#: of drifting (common practice, no source).
CREEP = 0.4

_SAID: dict[Slip, str] = {
    Slip.STANDS: noted("{player} passes and stands to watch the pass."),
    Slip.FIGHTS: noted("{player} stays and fights the denial."),
    Slip.WATCHES: noted("{player} watches the ball and leaves the hole empty."),
    Slip.CAMPS: noted("{player} stays in the lane."),
    Slip.CUTS: noted("{player} cuts without having passed."),
    Slip.AWAY: noted("{player} goes away from the ball to fill."),
    Slip.TAKEN: noted("{player} goes where another player goes or stands."),
    Slip.DRIFTS: noted("{player} creeps toward the ball."),
    Slip.EARLY: noted("{player} fills too early, while the cutter is still looked at."),
}
_NOT_SO: dict[Slip, str] = {
    Slip.STANDS: noted("{player} did not pass."),
    Slip.FIGHTS: noted("Nobody denies {player}."),
    Slip.WATCHES: noted("{player} does move."),
    Slip.CAMPS: noted("{player} is not in the lane."),
    Slip.CUTS: noted("{player} does not run to the rim."),
    Slip.AWAY: noted("{player} does not go away from the ball."),
    Slip.TAKEN: noted("Nobody else goes or stands there."),
    Slip.DRIFTS: noted("{player} does not creep: look where the line ends."),
    Slip.EARLY: noted("{player} does not run to fill."),
}
_MOVES = noted("{player} does not stay.")
_STAYS = noted("{player} does not move at all.")
_PASSED = noted("{player} did pass, and stays.")


def mistakes(occasion: Occasion) -> Iterator[Question]:
    """Every usual mistake that can be played on this occasion, each with the words for others that it is not."""
    action = occasion.action
    rank, asked = action.habit, list(deeds(occasion))
    for deed in asked:
        # The early filler holds by one sentence and breaks the other: the one that fills, when its time has come.
        decides = occasion.runs(occasion.player)[0].habit if deed.slip is Slip.EARLY else rank
        if decides is None:
            continue
        wrong = [slip for slip in Slip if slip is not deed.slip and not said_of(slip, occasion, deed)]
        if len(wrong) < LEAST_WRONG:
            continue
        first = sorted(wrong, key=lambda slip: _far(slip, occasion, deed))[: MOST - 1]
        choices = [
            Choice(_words(slip, occasion), slip is deed.slip, _why(slip, occasion, deed), slip=slip)
            for slip in Slip
            if slip in first or slip is deed.slip
        ]
        words = say("What does {player} do wrong?", player=occasion.player)
        yield Question(Ask.MISTAKE, occasion, decides, words, tuple(choices), deed)


def deeds(occasion: Occasion) -> Iterator[Deed]:
    """The usual mistakes that can be played here: each is something else than the book says."""
    action, now = occasion.action, occasion.now
    me, index = now.player(occasion.player), occasion.book.rules.index
    fills_later = next(iter(occasion.runs(occasion.player)), None)
    match action.kind:
        case Kind.CUT if occasion.passed and me.doing is Doing.STANDING:
            yield Deed(Slip.STANDS)
        case Kind.BACK_CUT if occasion.denied:
            yield Deed(Slip.FIGHTS)
        case Kind.FILL:
            yield Deed(Slip.WATCHES)
        case Kind.EXIT:
            yield Deed(Slip.CAMPS)
        case Kind.HOLD if fills_later and _looked_at(occasion):
            if fills_later.kind is Kind.FILL and me.doing is Doing.STANDING:
                yield Deed(Slip.EARLY, fills_later.target)
            return
        case Kind.HOLD if not occasion.runs(occasion.player) and me.at in index and not occasion.dribbled:
            yield Deed(Slip.DRIFTS, now.holder.at, CREEP)
    if action.kind not in (Kind.HOLD, Kind.FILL) or me.at not in index or me.doing in IN_LANE:
        return
    if action.kind is Kind.HOLD and occasion.runs(occasion.player):
        return
    if occasion.dribbled:  # where the ball will be is not to be seen yet
        return
    if not occasion.passed and not occasion.denied:
        yield Deed(Slip.CUTS, Spot.R)
    place, ball = index[me.at], index.get(now.holder.at)
    if ball is None or place == ball:
        return
    away, toward = place + (1 if place > ball else -1), place - (1 if place > ball else -1)
    ring = occasion.book.formation.ring
    if 0 <= away < len(ring) and not any(p.at is ring[away] for p in now.players) and ring[away] is not action.target:
        yield Deed(Slip.AWAY, ring[away])
    if toward != ball and ring[toward] is not action.target and _others_at(occasion, ring[toward]):
        yield Deed(Slip.TAKEN, ring[toward])


def _looked_at(occasion: Occasion) -> bool:
    """Whether the book fills only once the catcher has looked, and the cutter is still to be looked at."""
    cuts = (action.kind is Kind.CUT and action.habit is not None for action in occasion.asked.decision.actions)
    cutting = any(cuts) or any(player.doing is Doing.CUTTING for player in occasion.now.players)
    return occasion.book.values["when to fill"] == "looked" and cutting and occasion.beat == 0


def _others_at(occasion: Occasion, spot: Spot) -> bool:
    """Whether another stands there and stays, or runs there from now on."""
    runs = occasion.still_to_run()
    going = {run.player for run in runs}
    stays = any(
        p.at is spot and p.number not in going and p.number != occasion.player and p.doing not in IN_LANE
        for p in occasion.now.players
    )
    return stays or any(run.target is spot and run.player != occasion.player for run in runs)


def said_of(slip: Slip, occasion: Occasion, deed: Deed) -> bool:
    """Whether somebody could say this mistake of what is played."""
    stays, now = deed.to is None, occasion.now
    me, index = now.player(occasion.player), occasion.book.rules.index
    runs_to_spot = deed.to is not None and deed.to is not Spot.R and deed.part == 1.0
    match slip:
        case Slip.STANDS:
            return stays and occasion.passed
        case Slip.FIGHTS:
            return stays and occasion.denied
        case Slip.WATCHES:
            # Whoever leaves a hole that is his to fill leaves it empty, wherever he goes.
            return stays or occasion.action.kind is Kind.FILL
        case Slip.CAMPS:
            return me.doing in IN_LANE
        case Slip.CUTS:
            return deed.to is Spot.R
        case Slip.AWAY:
            ring = occasion.book.formation.ring
            if not runs_to_spot or deed.to is None or deed.to not in ring or me.at not in index:
                return False
            ball, there = index[now.holder.at], ring.index(deed.to)
            return abs(there - ball) > abs(index[me.at] - ball)
        case Slip.TAKEN:
            return runs_to_spot and deed.to is not None and _others_at(occasion, deed.to)
        case Slip.DRIFTS:
            return deed.to is not None and not said_of(Slip.AWAY, occasion, deed) and deed.to is not Spot.R
        case Slip.EARLY:
            return runs_to_spot


def _far(slip: Slip, occasion: Occasion, deed: Deed) -> tuple[int, int]:
    """How far a wrong answer lies from the right one: what this player could have done comes first."""
    mine = {other.slip for other in deeds(occasion)}
    passer = slip is Slip.STANDS and occasion.passed
    return (0 if slip in mine or passer else 1, list(Slip).index(slip))


def _words(slip: Slip, occasion: Occasion) -> str:
    return say(_SAID[slip], player=occasion.player)


def _why(slip: Slip, occasion: Occasion, deed: Deed) -> str:
    number = occasion.player
    if slip is deed.slip:
        if slip is Slip.EARLY:
            return say("The look at the cutter comes first; then {player} fills.", player=number)
        return say("Right is: {player} {does}.", player=number, does=action_words(occasion.action))
    if slip is Slip.STANDS and occasion.passed:
        return say(_MOVES, player=number)
    if slip is Slip.CUTS and occasion.passed and deed.to is None:
        return say(_PASSED, player=number)
    if slip is Slip.FIGHTS and occasion.denied:
        return say(_MOVES, player=number)
    if slip in (Slip.AWAY, Slip.DRIFTS, Slip.TAKEN, Slip.EARLY) and deed.to is None:
        return say(_STAYS, player=number)
    return say(_NOT_SO[slip], player=number)
