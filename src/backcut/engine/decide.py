"""`decide(book, situation)`: what every player does now, which sentence says so, and which it beat. Pure."""

from __future__ import annotations

from collections import Counter

from backcut.court.spots import Spot
from backcut.engine.possession import Decision, Trouble
from backcut.offence.action import CUTS, Action, Claim, Kind
from backcut.offence.book import Book
from backcut.offence.moment import Moment
from backcut.offence.phrase import Answer
from backcut.offence.situation import IN_LANE, Doing, Player, Situation


def decide(book: Book, situation: Situation) -> Decision:
    """Everybody's answer in this situation. Sentences are asked in order of rank; the first that speaks wins."""
    rules = book.rules
    moment = Moment(rules, situation)
    never_cuts = rules.never_cuts
    habits = rules.in_play if situation.ended is None else rules.at_the_end
    actions: list[Action] = []
    troubles: list[Trouble] = []
    for player in situation.players:
        winner: tuple[int, Answer] | None = None
        beaten: list[Claim] = []
        for rank, phrase in habits:
            answer = phrase.answer(moment, player)
            if answer is None or (never_cuts and answer.kind in CUTS and player.number in never_cuts):
                continue
            if winner is None:
                winner = rank, answer
            else:
                beaten.append(Claim(rank, answer.kind, answer.target))
        action, trouble = _action(moment, player, winner, tuple(beaten))
        actions.append(action)
        if trouble is not None:
            troubles.append(trouble)
    _keep_apart(actions, troubles)
    return Decision(tuple(actions), tuple(troubles))


def _action(
    moment: Moment, player: Player, winner: tuple[int, Answer] | None, beaten: tuple[Claim, ...]
) -> tuple[Action, Trouble | None]:
    number, at = player.number, player.at
    if number == moment.holder.number and (target := moment.dribbled_at()) is not None:
        return Action(number, Kind.DRIBBLE, at, target), None
    if player.doing is Doing.CUTTING and not player.jammed:
        # A cut is finished before anything else is asked.
        return Action(number, Kind.HOLD, at, at, winner[0] if winner else None), None
    if winner is None or (player.doing is Doing.LANE and _has_no_way_out(moment, player)):
        if number == moment.holder.number:
            return Action(number, Kind.BALL, at, at), None
        claims = (Claim(winner[0], winner[1].kind, winner[1].target),) if winner else ()
        trouble = Trouble("silent", number, None, None, f"No sentence says what {number} does, {_place(player)}.")
        return Action(number, Kind.NO_ANSWER, at, at, None, claims), trouble
    rank, answer = winner
    if player.forgets and (answer.kind not in (Kind.HOLD, Kind.BALL) or answer.target is not at):
        return Action(number, Kind.FORGET, at, at, rank, beaten), None
    return Action(number, answer.kind, at, answer.target, rank, beaten, answer.route), None


def _place(player: Player) -> str:
    return "in the lane" if player.doing in IN_LANE else f"at the {player.at.title}"


def _has_no_way_out(moment: Moment, player: Player) -> bool:
    """Whether the time to come out has come and the book's exit names no spot."""
    return moment.may_come_out(player) and moment.way_out(player) is None


def _runs_through(action: Action) -> bool:
    """Whether several may run there at once: the lane is run through, never held."""
    return action.target is Spot.R or action.kind is Kind.SHALLOW_CUT


def _keep_apart(actions: list[Action], troubles: list[Trouble]) -> None:
    """Hold those who are sent to a spot that is taken or that another is sent to, and say so: nobody shares a spot."""
    aimed = [action for action in actions if action.moves and not _runs_through(action)]
    if not aimed:
        return
    counts = Counter(action.target for action in aimed)
    held = {action.player for action in aimed if counts[action.target] > 1}
    staying = {
        action.origin: action.player
        for action in actions
        if not action.moves or action.target is action.origin or action.player in held
    }
    while clash := [a for a in aimed if a.player not in held and staying.get(a.target, a.player) != a.player]:
        # Whoever is held stays, and may be in the way of the next.
        held.update(action.player for action in clash)
        staying.update((action.origin, action.player) for action in clash)
    for i, action in enumerate(actions):
        if action.player in held:
            others = [other.player for other in aimed if other.target is action.target and other is not action]
            stays = staying.get(action.target, action.player)
            actions[i], trouble = _held(action, others, None if stays == action.player else stays)
            troubles.append(trouble)


def _held(action: Action, others: list[int], stays: int | None) -> tuple[Action, Trouble]:
    """The action of a player who is held, and what is said about it: who else is sent there, or who stands there."""
    claim = () if action.habit is None else (Claim(action.habit, action.kind, action.target),)
    stopped = Action(action.player, Kind.NO_ANSWER, action.origin, action.origin, None, claim + action.beat)
    why = f"where {stays} already is" if stays is not None else f"and so is {' and '.join(map(str, others))}"
    text = f"{action.player} is sent to the {action.target.title}, {why}."
    return stopped, Trouble("clash", action.player, action.habit, action.target, text)
