"""Every fact a condition can be made of: each is one record, and grammar, documents and tests derive from it."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from backcut.court.spots import Spot
from backcut.engine.advance import stopped_on_the_way
from backcut.offence.action import CUTS, Kind
from backcut.offence.event import PASSES, EventKind
from backcut.offence.inside import INSIDE_PLACES, height
from backcut.offence.moment import Moment
from backcut.offence.situation import IN_LANE, Doing, Guard, Player
from backcut.prove.conditions.fact import AllFact, Fact, Groups, PlayerFact, Shown, SpotFact
from backcut.prove.conditions.place import SIDES
from backcut.prove.property import Seen


def _those(numbers: Iterable[int]) -> Groups:
    return (frozenset(numbers),)


def _who(is_so: Callable[[Player], bool]) -> Callable[[Seen, frozenset[Spot]], Groups]:
    return lambda seen, spots: _those(player.number for player in seen.situation.players if is_so(player))


def _at(seen: Seen, spots: frozenset[Spot]) -> Groups:
    return _those(player.number for player in seen.situation.players if player.at in spots)


def _on_one_side(seen: Seen, spots: frozenset[Spot]) -> Groups:
    return tuple(group for side in SIDES.values() for group in _at(seen, side))


def _one_pass_away(seen: Seen, spots: frozenset[Spot]) -> Groups:
    moment = Moment(seen.book.rules, seen.situation)
    return _those(player.number for player in seen.situation.players if moment.one_pass_away(player))


def _told(*kinds: Kind, doing: Doing | None = None) -> Callable[[Seen, frozenset[Spot]], Groups]:
    """Those who are told to do one of these, and those who are in the middle of it."""

    def players(seen: Seen, spots: frozenset[Spot]) -> Groups:
        told = {action.player for action in seen.decision.actions if action.kind in kinds}
        return _those(told | {p.number for p in seen.situation.players if p.doing is doing and _on_the_way(p)})

    return players


def _moves(seen: Seen, spots: frozenset[Spot]) -> Groups:
    told = {action.player for action in seen.decision.actions if action.moves}
    return _those(told | {player.number for player in seen.situation.players if _on_the_way(player)})


def _on_the_way(player: Player) -> bool:
    return player.doing in (Doing.CUTTING, Doing.FILLING, Doing.OUT) and not stopped_on_the_way(player)


def _empty(seen: Seen, spot: Spot) -> bool:
    place = seen.book.rules.index.get(spot)
    if place is not None:
        return Moment(seen.book.rules, seen.situation).where[place] is None
    return all(player.at is not spot or player.doing in IN_LANE for player in seen.situation.players)


def _fresh(seen: Seen) -> EventKind | None:
    last = seen.situation.last
    return last.kind if last is not None and last.fresh else None


_START = "1:T* 2:RW 3:LW 4:RC 5:LC"
_CUTS = "1:R(cutting from T, left of the ball) 2:RW* 3:LW 4:RC 5:LC | pass by 1 from T"
_LANE = "1:R(in the lane from T, left of the ball, because passed) 2:RW* 3:LW 4:RC 5:LC | pass by 1 from T"
_OUT = "1:R(in the lane from T, left of the ball, because passed) 2:RW* 3:T 4:RC 5:LW | pass by 1 from T"
_INSIDE = "1:T* 2:RW 3:LW 4:RC 5:Lb"

PLAYER_FACTS = (
    PlayerFact(
        "has the ball",
        ("have the ball",),
        "has the ball in the hands",
        lambda seen, spots: _those({seen.situation.ball}),
        Shown("5 has the ball", "1:T 2:RW 3:LW 4:RC 5:LC*", _START),
    ),
    PlayerFact(
        "has the ball at a spot",
        tuple(f"have the ball {at} {{place}}" for at in ("at", "in", "on")),
        "has the ball there",
        lambda seen, spots: _those({seen.situation.ball} if seen.situation.holder.at in spots else ()),
        Shown("somebody has the ball in a corner", "1:LC* 2:RW 3:LW 4:RC 5:T", _START),
    ),
    PlayerFact(
        "is at a spot",
        tuple(f"{verb} {at} {{place}}" for at in ("at", "in", "on") for verb in ("are", "stand")),
        "is there or is going there: a player on the way counts where the run goes, a cutter at the rim",
        _at,
        Shown("somebody stands at the top", _START, "1:LC* 2:RW 3:LW 4:RC 5:Rb"),
        of_ball=True,
    ),
    PlayerFact(
        "is on a side",
        ("are on {side}", "stand on {side}"),
        "is on that half of the floor, as the offence looks at the basket; top, high post and rim are on neither",
        _at,
        Shown("two of us are on the left side", _START, "1:T* 2:RW 3:N 4:RC 5:LC"),
        of_ball=True,
    ),
    PlayerFact(
        "is on one side",
        ("are on one side", "stand on one side", "are on the same side"),
        "of these players, so many are on the same half of the floor",
        _on_one_side,
        Shown("three of us are on one side", "1:LW* 2:RW 3:N 4:Lb 5:LC", _START),
        whole=True,
    ),
    PlayerFact(
        "is in the lane",
        ("are in the lane",),
        "runs to the rim or is there; who stands at a block or an elbow is not",
        _who(lambda player: player.doing in IN_LANE),
        Shown("somebody is in the lane", _LANE, _START),
        of_ball=True,
    ),
    PlayerFact(
        "is inside",
        ("are inside", "stand inside", "play inside"),
        "is in the lane or on a spot that is not on the perimeter",
        _who(lambda player: player.at in INSIDE_PLACES or player.doing in IN_LANE),
        Shown("somebody plays inside", _INSIDE, _START),
        of_ball=True,
    ),
    PlayerFact(
        "is above the free-throw line",
        ("are above the free-throw line", "stand above the free-throw line"),
        "is at the top or at a slot; wings stand on the line extended or below it",
        _who(lambda player: height(player.at) > height(Spot.N)),
        Shown("nobody is above the free-throw line", "1:N* 2:RW 3:LW 4:RC 5:LC", _START),
        of_ball=True,
    ),
    PlayerFact(
        "is one pass away",
        ("are one pass away", "stand one pass away", "are beside the ball", "stand beside the ball"),
        "is on the very next spot of the ring from the ball",
        _one_pass_away,
        Shown("3 is one pass away", _START, "1:T 2:RW* 3:LW 4:RC 5:LC"),
    ),
    PlayerFact(
        "is denied",
        ("are denied",),
        "has a defender who denies the pass",
        _who(lambda player: player.guard is Guard.DENIES),
        Shown("somebody is denied", "1:T* 2:RW! 3:LW 4:RC 5:LC", _START),
    ),
    PlayerFact(
        "cuts",
        ("cut",),
        "is told to cut, or is on the way to the rim",
        _told(*CUTS, doing=Doing.CUTTING),
        Shown("somebody cuts", _CUTS, _START),
        act=True,
    ),
    PlayerFact(
        "fills",
        ("fill",),
        "is told to move up to the next spot, or is on the way to a spot of the ring",
        _told(Kind.FILL, doing=Doing.FILLING),
        Shown("3 fills", _LANE, _START),
        act=True,
    ),
    PlayerFact(
        "comes out",
        ("come out",),
        "is told to come out of the lane, or is on the way out",
        _told(Kind.EXIT, doing=Doing.OUT),
        Shown("1 comes out", _OUT, _LANE),
        act=True,
    ),
    PlayerFact(
        "moves",
        ("move", "run"),
        "is told to run, or is on the way",
        _moves,
        Shown("nobody moves", _START, _LANE),
        act=True,
    ),
    PlayerFact(
        "has no answer",
        ("have no answer",),
        "no sentence says what to do, or two send to one spot",
        _told(Kind.NO_ANSWER),
        Shown(
            "somebody has no answer",
            "1:R(in the lane from T, left of the ball) 2:RW* 3:LW 4:RC 5:LC 6:T",
            _START,
        ),
        act=True,
    ),
)

SPOT_FACTS = (
    SpotFact(
        "is empty",
        ("are empty", "are free", "are open"),
        "nobody is there or is going there",
        _empty,
        Shown("a spot beside the ball is empty", _LANE, _START),
    ),
    SpotFact(
        "is taken",
        ("are taken",),
        "somebody is there or is going there",
        lambda seen, spot: not _empty(seen, spot),
        Shown("both corners are taken", _START, "1:T* 2:RW 3:LW 4:RC 5:N"),
    ),
)

_ENDS = (EventKind.SHOT, EventKind.LAY_UP)

ALL_FACTS = (
    AllFact(
        "all have settled",
        ("all have settled", "everybody has settled"),
        ("not all have settled", "somebody has not settled"),
        "no sentence asks anybody to move, and nobody is on the way",
        lambda seen: seen.settled,
        Shown("all have settled", _START, _LANE),
    ),
    AllFact(
        "a shot goes up",
        ("a shot goes up",),
        ("no shot goes up",),
        "the possession has just ended with a shot or a lay-up",
        lambda seen: seen.situation.ended in _ENDS,
        Shown("a shot goes up", f"{_START} | ended shot", _START),
    ),
    AllFact(
        "a pass has just been thrown",
        ("a pass has just been thrown", "the ball has just been passed"),
        ("no pass has just been thrown", "the ball has not just been passed"),
        "nobody has answered the pass yet",
        lambda seen: _fresh(seen) in PASSES,
        Shown("a pass has just been thrown", "1:T 2:RW* 3:LW 4:RC 5:LC | pass by 1 from T just now", _LANE),
    ),
    AllFact(
        "the ball has just been kicked out",
        ("the ball has just been kicked out",),
        ("the ball has not just been kicked out",),
        "nobody has answered the kick-out yet",
        lambda seen: _fresh(seen) is EventKind.KICK_OUT,
        Shown(
            "the ball has just been kicked out",
            "1:R(in the lane from T, left of the ball, because kicked out) 2:RW* 3:LW 4:RC 5:LC "
            "| kick out by 1 from R just now",
            "1:T 2:RW* 3:LW 4:RC 5:LC | pass by 1 from T just now",
        ),
    ),
)

FACTS: tuple[Fact, ...] = (*PLAYER_FACTS, *SPOT_FACTS, *ALL_FACTS)
