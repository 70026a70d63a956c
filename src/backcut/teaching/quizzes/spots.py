"""Where do you go, and who fills it: questions that are answered by a tap on the floor."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.court.spots import Spot
from backcut.language import say
from backcut.offence.action import CUTS, Kind
from backcut.offence.situation import IN_LANE
from backcut.teaching.quizzes.occasion import Occasion
from backcut.teaching.quizzes.question import Ask, Choice, Question

#: Answers whose end is a spot to tap; the others end where they began, or are told in words only.
_TAPPED = CUTS | {Kind.EXIT, Kind.FILL, Kind.SLIDE, Kind.HAND_OFF, Kind.FLASH, Kind.INSIDE, Kind.GET_BACK}
_STAYS = frozenset({Kind.HOLD})


def cells(occasion: Occasion) -> tuple[Spot, ...]:
    """The spots that can be tapped: the ring, the rim, and what is inside where somebody plays or is sent there."""
    ring, others = occasion.book.formation.ring, {Spot.R, occasion.action.target}
    for beat in occasion.step.beats:
        others |= {spot for action in beat.decision.actions for spot in (action.origin, action.target)}
    if occasion.action.kind is Kind.INSIDE:
        others |= {Spot.LB, Spot.RB, Spot.LE, Spot.RE}
    if occasion.action.kind is Kind.FLASH:
        others |= {Spot.N, Spot.LE, Spot.RE}
    return (*ring, *sorted(others - set(ring), key=list(Spot).index))


def where(occasion: Occasion) -> Iterator[Question]:
    """Where do you go: every spot of the floor can be tapped, one is right."""
    action = occasion.action
    runs = action.kind in _TAPPED and action.moves and action.target is not action.origin
    stays = action.kind in _STAYS and not occasion.runs(occasion.player)
    if action.habit is None or not (runs or stays):
        return
    choices = tuple(
        Choice(
            _spot_words(spot, occasion),
            spot is action.target,
            _right(occasion) if spot is action.target else _why_not(occasion, spot),
            spot=spot,
        )
        for spot in cells(occasion)
    )
    words = say("You are {player}. Where do you go now?", player=occasion.player)
    yield Question(Ask.WHERE, occasion, action.habit, words, choices)


def who(occasion: Occasion) -> Iterator[Question]:
    """Who fills it, of a spot to which one player alone runs; after a shot, who gets back."""
    action = occasion.action
    if action.kind is Kind.GET_BACK:
        yield from _who_gets_back(occasion)
    if action.kind is not Kind.FILL or action.habit is None:
        return
    runs = [run for beat in occasion.step.beats for run in beat.decision.actions if run.moves]
    if sum(run.target is action.target for run in runs) != 1:
        return
    choices = tuple(
        Choice(
            str(player.number),
            player.number == action.player,
            _right(occasion) if player.number == action.player else _not_the_filler(occasion, player.number),
            player=player.number,
        )
        for player in occasion.now.players
    )
    words = say("The {spot} is empty. Who fills it?", spot=action.target.title)
    yield Question(Ask.WHO, occasion, action.habit, words, choices)


def _who_gets_back(occasion: Occasion) -> Iterator[Question]:
    told = {action.player: action for action in occasion.asked.decision.actions}
    back = [number for number, action in told.items() if action.kind is Kind.GET_BACK]
    rank = occasion.action.habit
    if rank is None or occasion.player != back[0] or len(back) == len(told):
        return
    shooter = occasion.step.event.player

    def why(number: int) -> str:
        if number in back:
            return say("{player} stands highest of those without the ball.", player=number)
        if number == shooter:
            return say("{player} has shot.", player=number)
        return say("{player} stands lower and goes for the rebound.", player=number)

    choices = tuple(Choice(str(n), n in back, why(n), player=n) for n in told)
    yield Question(Ask.WHO, occasion, rank, say("A shot goes up. Who gets back?"), choices)


def _spot_words(spot: Spot, occasion: Occasion) -> str:
    """What a cell is called to the ear: the spot, who stands there, and who has the ball."""
    here = [player.number for player in occasion.now.players if player.at is spot]
    words = spot.title
    for number in here:
        told = say("{spot}, {player}, has the ball") if number == occasion.now.ball else say("{spot}, {player}")
        words = told.format(spot=words, player=number)
    return words


def _right(occasion: Occasion) -> str:
    """Why it is right, in one sentence."""
    action = occasion.action
    match action.kind:
        case Kind.CUT | Kind.SHALLOW_CUT:
            return say("You passed: the cut comes first.") if occasion.passed else say("This cut is yours.")
        case Kind.BACK_CUT if occasion.denied:
            return say("Your defender is in the passing lane, so nobody is behind.")
        case Kind.BACK_CUT:
            return say("The ball comes at you: make room behind your defender.")
        case Kind.FILL:
            return say("{player} stands next to the empty {spot}, behind it as seen from the ball.", **_of(occasion))
        case Kind.EXIT:
            return say("The lane is free again, and the {spot} is the spot that is left.", **_of(occasion))
        case Kind.HOLD:
            return say("Nothing asks {player} to move, so {player} stays.", **_of(occasion))
        case _:
            return say("{player} is asked to the {spot}.", **_of(occasion))


def _of(occasion: Occasion) -> dict[str, object]:
    return {"player": occasion.player, "spot": occasion.action.target.title}


def _why_not(occasion: Occasion, spot: Spot) -> str:
    """Why a spot is not right: the usual mistake it would be."""
    action, now = occasion.action, occasion.now
    if spot is action.origin:
        return _not_there(occasion)
    if spot is Spot.R and now.player(occasion.player).doing not in IN_LANE:
        if occasion.passed or occasion.denied:
            return say("No sentence asks you to cut here.")
        return say("You did not pass and nobody denies you, so there is no cut.")
    if spot is now.holder.at:
        return say("{other} stands there with the ball.", other=now.ball)
    going = [run.player for run in occasion.still_to_run() if run.target is spot and run.player != occasion.player]
    if going:
        return say("{other} goes there: two on one spot are guarded by one.", other=going[0])
    there = [p.number for p in now.players if p.at is spot and p.number != occasion.player]
    if there:
        return say("{other} is there.", other=there[0])
    if action.kind is Kind.EXIT:
        return say("It is open, but the {spot} comes first.", **_of(occasion))
    if action.kind is Kind.FILL:
        return say("The hole is the {spot}, next to you toward the ball.", **_of(occasion))
    if action.kind in CUTS:
        return say("First you cut to the rim; where you come out is asked after that.")
    return say("Nobody asks you there.")


def _not_there(occasion: Occasion) -> str:
    """Why it is not right to stay."""
    action = occasion.action
    if action.kind is Kind.FILL:
        return say("Then the {spot} stays empty.", **_of(occasion))
    if action.kind is Kind.EXIT:
        return say("Whoever stays in the lane is in the way of the next cutter.")
    if action.kind is Kind.BACK_CUT and occasion.denied:
        return say("That is to fight the denial: the pass does not come.")
    if action.kind in CUTS and occasion.passed:
        return say("That is to pass and stand.")
    return say("A sentence asks you to move.")


def _not_the_filler(occasion: Occasion, number: int) -> str:
    """Why this player does not fill the spot that another fills."""
    now, index, filler = occasion.now, occasion.book.rules.index, occasion.player
    player = now.player(number)
    if number == now.ball:
        return say("{player} has the ball.", player=number)
    if player.doing in IN_LANE:
        return say("{player} is on the cut and comes out last.", player=number)
    if player.at not in index:
        return say("{player} plays inside.", player=number)
    ball, hole, own = index[now.holder.at], index[occasion.action.target], index[player.at]
    if (own - ball) * (hole - ball) <= 0:
        return say("{player} stands on the other side of the ball.", player=number)
    if abs(own - ball) < abs(hole - ball):
        return say("{player} stands nearer to the ball and would go away from it.", player=number)
    return say("{player} stands farther back; {filler} is next to the hole.", player=number, filler=filler)
