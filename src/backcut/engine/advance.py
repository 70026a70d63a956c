"""From one situation to the next: what an event changes (`happen`), and what answers change (`follow`)."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from backcut.court.spots import Spot
from backcut.engine.possession import Decision
from backcut.errors import MoveError
from backcut.offence.action import CUTS, Action, Kind
from backcut.offence.book import Book
from backcut.offence.event import ENDS, PASSES, Event, EventKind
from backcut.offence.situation import IN_LANE, Cause, Doing, Guard, Last, Player, Situation

#: Counts are kept up to the largest a book can ask for, so that `decide` stays pure and situations stay few.
MOST_COUNTS = 2

_GUARDS = {
    EventKind.DENY: Guard.DENIES,
    EventKind.SAG: Guard.SAGS,
    EventKind.JUMP: Guard.JUMPED,
    EventKind.FREE: Guard.PLAIN,
}
_ON_THE_WAY = (Doing.FILLING, Doing.OUT)


def arrived(player: Player) -> Player:
    """The player standing where the run went."""
    return replace(player, doing=Doing.STANDING, origin=None, side=0, order=0, cause=None)


def stopped_on_the_way(player: Player) -> bool:
    """Whether a filler is denied on the way: whoever holds then was met while filling, and does not yet stand."""
    return player.doing is Doing.FILLING and player.guard is Guard.DENIES


def kind_of_pass(book: Book, situation: Situation, receiver: int) -> EventKind:
    """Which pass it is from the holder to `receiver`: to the next spot, a skip, inside, to a cutter, or a kick-out."""
    index = book.rules.index
    passer, catcher = situation.holder, situation.player(receiver)
    if catcher.doing in IN_LANE:
        return EventKind.TO_CUTTER
    if catcher.at not in index:
        return EventKind.INSIDE
    if passer.doing in IN_LANE or passer.at not in index:
        return EventKind.KICK_OUT
    return EventKind.PASS if abs(index[passer.at] - index[catcher.at]) == 1 else EventKind.SKIP


def happen(book: Book, situation: Situation, event: Event) -> Situation:
    """The situation right after an event, before anybody has answered it.

    Raises: MoveError if the event cannot happen here: the place, what is wrong, and what would be right.
    """
    still_on(situation)
    for number in event.players:
        situation.player(number)
    if event.kind in PASSES:
        return _pass(book, situation, event)
    if event.kind in _GUARDS:
        return _guard(situation, event)
    if event.kind in ENDS:
        return _end(situation, event)
    return _OTHERS[event.kind](book, situation, event)


def still_on(situation: Situation) -> None:
    """Raises: MoveError once the possession has ended."""
    if situation.ended is not None:
        raise MoveError(f"The possession has ended with a {situation.ended}; nothing can come after it.")


def _must_hold_the_ball(situation: Situation, number: int, what: str) -> None:
    if number != situation.ball:
        holder = situation.holder
        raise MoveError(f"{number} cannot {what}: {holder.number} has the ball, at the {holder.at.title}.")


def _pass(book: Book, situation: Situation, event: Event) -> Situation:
    _must_hold_the_ball(situation, event.player, "pass")
    passer = situation.holder
    if event.receiver is None or event.receiver == event.player:
        raise MoveError(f"The pass of {event.player} reaches nobody: name another player or a spot where one stands.")
    catcher = situation.player(event.receiver)
    if catcher.guard is Guard.DENIES:
        raise MoveError(
            f"{catcher.number} is denied, the pass is shut. Let somebody else have the ball, or write "
            f"'free {catcher.number}' before it."
        )
    index = book.rules.index
    changed: list[Player] = []
    for player in situation.players:
        guard = Guard.PLAIN if player.guard is Guard.DENIES else player.guard
        player = replace(player, guard=guard, forgets=False, jammed=False)
        if player.doing is Doing.FLASHED and player.number != catcher.number:
            # Who flashed and was not found comes out like a cutter.
            player = replace(player, doing=Doing.LANE, at=Spot.R, cause=Cause.FLASHED)
        if player.number == catcher.number and player.doing in _ON_THE_WAY:
            player = arrived(player)
        if player.number == passer.number and (passer.doing in IN_LANE):
            side = _side(index, player.origin, catcher.at) or player.side
            player = replace(player, doing=Doing.LANE, cause=Cause.KICKED_OUT, side=side)
        changed.append(player)
    kind = kind_of_pass(book, situation, catcher.number)
    return replace(
        situation,
        players=tuple(changed),
        ball=catcher.number,
        last=Last(kind, passer.number, passer.at),
        count=0,
    )


def _side(index: Mapping[Spot, int], origin: Spot | None, ball: Spot | None) -> int:
    """The side of the ball on which a spot lies: -1 left, +1 right, 0 where either is off the ring."""
    if origin is None or ball is None or origin not in index or ball not in index:
        return 0
    return (index[origin] > index[ball]) - (index[origin] < index[ball])


def _guard(situation: Situation, event: Event) -> Situation:
    changed = []
    for number in event.players:
        player = situation.player(number)
        if number == situation.ball and event.kind is EventKind.DENY:
            raise MoveError(f"{number} has the ball and cannot be denied: name a player without it.")
        if player.doing in IN_LANE and event.kind is EventKind.DENY:
            raise MoveError(f"{number} is cutting and cannot be denied: write 'jam {number}' to take the cut away.")
        last = situation.last
        if event.kind is EventKind.JUMP and last is not None and last.fresh and last.player != number:
            raise MoveError(f"{number} did not pass, {last.player} did: write 'jump {last.player}' after this pass.")
        changed.append(replace(player, guard=_GUARDS[event.kind]))
    return situation.with_players(*changed)


def _end(situation: Situation, event: Event) -> Situation:
    _must_hold_the_ball(situation, event.player, f"end with a {event.kind}")
    return replace(situation, ended=event.kind)


def _jam(book: Book, situation: Situation, event: Event) -> Situation:
    players = [situation.player(number) for number in event.players]
    for player in players:
        if player.doing is not Doing.CUTTING:
            where = "in the lane already" if player.doing is Doing.LANE else "not cutting"
            raise MoveError(f"{player.number} is {where}: a cut can be taken away on its way to the rim only.")
    return situation.with_players(*(replace(player, jammed=True) for player in players))


def _forget(book: Book, situation: Situation, event: Event) -> Situation:
    return situation.with_players(*(replace(situation.player(number), forgets=True) for number in event.players))


def _dribble(book: Book, situation: Situation, event: Event) -> Situation:
    _must_hold_the_ball(situation, event.player, "dribble")
    index, holder, target = book.rules.index, situation.holder, event.spot
    if target is None or target not in index:
        raise MoveError(f"{event.player} can dribble to a spot of the ring only: {' '.join(book.rules.ring)}.")
    if holder.at not in index or abs(index[holder.at] - index[target]) != 1:
        at = index.get(holder.at, -2)
        near = [spot for spot, place in index.items() if abs(place - at) == 1]
        raise MoveError(
            f"{event.player} stands at the {holder.at.title} and cannot dribble to the {target.title}: "
            f"the next spots are {' and '.join(str(spot) for spot in near) or 'none'}."
        )
    players = tuple(
        replace(p, forgets=False, jammed=False, guard=Guard.PLAIN if p.guard is Guard.DENIES else p.guard)
        for p in situation.players
    )
    last = Last(EventKind.DRIBBLE, holder.number, holder.at, target=target)
    return replace(situation, players=players, last=last, count=0)


_OTHERS: dict[EventKind, Callable[[Book, Situation, Event], Situation]] = {
    EventKind.JAM: _jam,
    EventKind.FORGET: _forget,
    EventKind.DRIBBLE: _dribble,
}


def follow(
    book: Book,
    situation: Situation,
    decision: Decision,
    *,
    running: frozenset[int] = frozenset(),
    counts: bool = True,
) -> Situation:
    """The situation one beat later: everybody has started on the answer given, and runs under way have arrived.

    Where a beat is shorter than a run or a count, `running` are the numbers that are still on their way after it, and
    `counts` says whether a count has gone up.
    """
    actions = {action.player: action for action in decision.actions}
    order = 1 + max((p.order for p in situation.players if p.doing in (*IN_LANE, Doing.FLASHED)), default=-1)
    players = tuple(
        _one(book, situation, player, actions[player.number], order, player.number in running)
        for player in situation.players
    )
    last, ball = situation.last, situation.ball
    if last is not None:
        last = replace(last, fresh=False)
    count = min(situation.count + counts, MOST_COUNTS)
    taker = next((action.player for action in decision.actions if action.kind is Kind.HAND_OFF), None)
    if taker is not None and last is not None and last.target is not None:
        # The one who gave the ball by hand has passed to a neighbour, and answers as a passer does.
        ball, last, count = taker, Last(EventKind.PASS, last.player, last.target), 0
    return replace(situation, players=players, ball=ball, last=last, count=count)


def _one(book: Book, situation: Situation, player: Player, action: Action, order: int, running: bool) -> Player:
    if action.moves and (action.kind in CUTS or (action.kind is Kind.SCREEN and action.target is Spot.R)):
        if player.doing is Doing.CUTTING:
            return replace(player, doing=Doing.CUTTING if running else Doing.LANE, jammed=False)
        return replace(
            player,
            at=action.target,
            doing=Doing.CUTTING,
            guard=Guard.PLAIN,
            origin=player.at,
            side=_cut_side(book, situation, player),
            order=order,
            cause=_cause(situation, player),
            jammed=False,
        )
    if action.moves:
        doing = {Kind.EXIT: Doing.OUT, Kind.FLASH: Doing.FLASHED}.get(action.kind, Doing.FILLING)
        if action.kind in (Kind.INSIDE, Kind.CLEAR, Kind.DRIBBLE, Kind.GET_BACK, Kind.COME_TO_BALL, Kind.REBOUND):
            doing = Doing.STANDING
        side = _side(book.rules.index, player.at, situation.holder.at) if action.kind is Kind.FLASH else 0
        return replace(
            player,
            at=action.target,
            doing=doing,
            guard=Guard.PLAIN if action.kind is Kind.COME_TO_BALL else player.guard,
            origin=player.at if doing is not Doing.STANDING else None,
            side=side,
            order=order if action.kind is Kind.FLASH else 0,
            cause=None,
            jammed=False,
        )
    if running:
        return player
    match player.doing:
        case Doing.CUTTING:
            return replace(player, doing=Doing.LANE, jammed=False)
        case Doing.FILLING | Doing.OUT if not stopped_on_the_way(player):
            return arrived(player)
        case _:
            return player


def _cut_side(book: Book, situation: Situation, player: Player) -> int:
    """The side of the ball on which a cut began; of a dribble, the side it went to."""
    index, last = book.rules.index, situation.last
    if last is not None and last.fresh and last.kind is EventKind.DRIBBLE:
        return _side(index, last.target, last.origin)
    return _side(index, player.at, situation.holder.at)


def _cause(situation: Situation, player: Player) -> Cause:
    last = situation.last
    if last is not None and last.fresh and last.kind is EventKind.DRIBBLE:
        return Cause.DRIBBLED_AT
    if last is not None and last.fresh and last.player == player.number:
        return Cause.PASSED
    return Cause.DENIED
