"""A situation in one line, read and written: short ids for tests, names for coaches."""

from __future__ import annotations

from functools import cache
from typing import Any

from lark import Lark, Token, Transformer
from lark.exceptions import UnexpectedInput, VisitError

from backcut.court.spots import spot_from_text
from backcut.errors import BackcutError, NotationError, SituationError
from backcut.offence.event import EventKind
from backcut.offence.situation import IN_LANE, Cause, Doing, Guard, Last, Player, Situation
from backcut.offence.spot_words import SPOT_WORDS, where_it_stops

_GRAMMAR = rf"""
start: player (";"? player)* tail*
player: NUMBER ":"? SPOT flag* ("(" ","? attr (","? attr)* ")")?
      | NUMBER ":"? SPOT ("," attr)+
flag: BALL | DENIED | SAGGED | JUMPED
attr: BALLWORD -> ball
    | GUARDWORD -> guarded
    | DOING "from"i SPOT -> doing
    | SIDE _OF_THE_BALL -> side
    | "in"i NUMBER -> order
    | "because"i CAUSE -> cause
    | "jammed"i -> jammed
    | "forgets"i -> forgets
tail: "|" LAST "by"i NUMBER "from"i SPOT ("to"i SPOT)? FRESH? -> last
    | "|" "count"i NUMBER -> count
    | "|" "ended"i END -> ended
BALL: "*"
DENIED: "!"
SAGGED: "_"
JUMPED: "^"
BALLWORD: /ball\b/i
GUARDWORD: /denied|sagged|jumped/i
DOING: /cutting|in\s+the\s+lane|coming\s+out|filling|flashed/i
SIDE: /left|right/i
_OF_THE_BALL: /of\s+the\s+ball/i
CAUSE: /passed|denied|dribbled\s+at|kicked\s+out|flashed/i
FRESH: /just\s+now/i
LAST: /pass\s+to\s+the\s+cutter|pass\s+inside|pass|skip|kick\s+out|dribble/i
END: /lay-up|shot|turnover/i
NUMBER: /\d{{1,3}}(?!\d)/
SPOT: /(the\s+)?({SPOT_WORDS})(?![A-Za-z])/i
%ignore /\s+/
"""


@cache
def _parser() -> Lark:
    return Lark(_GRAMMAR, parser="lalr")


_GUARD_WORDS = {Guard.DENIES: "denied", Guard.SAGS: "sagged", Guard.JUMPED: "jumped"}
_FLAGS = {Guard.DENIES: "!", Guard.SAGS: "_", Guard.JUMPED: "^"}


def situation_text(situation: Situation, names: bool = False) -> str:
    """A situation in one line: short ids, or the coach's names with `names`. `situation_from_text` reads both."""
    players = []
    for p in situation.players:
        words = []
        if names and p.number == situation.ball:
            words.append("ball")
        if names and p.guard is not Guard.PLAIN:
            words.append(_GUARD_WORDS[p.guard])
        if p.doing is not Doing.STANDING and p.origin is not None:
            words.append(f"{p.doing} from {p.origin.title if names else p.origin}")
        if p.side:
            words.append(f"{'left' if p.side < 0 else 'right'} of the ball")
        if p.order:
            words.append(f"in {p.order}")
        if p.cause is not None:
            words.append(f"because {p.cause}")
        words += ["jammed"] * p.jammed + ["forgets"] * p.forgets
        if names:
            players.append(", ".join([f"{p.number} {p.at.title}", *words]))
        else:
            flags = "*" * (p.number == situation.ball) + _FLAGS.get(p.guard, "")
            players.append(f"{p.number}:{p.at}{flags}" + (f"({', '.join(words)})" if words else ""))
    tail = []
    if (last := situation.last) is not None:
        at, to = (s and (s.title if names else str(s)) for s in (last.origin, last.target))
        aim = f" to {to}" if to else ""
        tail.append(f" | {last.kind} by {last.player} from {at}{aim}" + (" just now" if last.fresh else ""))
    if situation.count:
        tail.append(f" | count {situation.count}")
    if situation.ended is not None:
        tail.append(f" | ended {situation.ended}")
    return ("; " if names else " ").join(players) + "".join(tail)


def _words(token: Token) -> str:
    return " ".join(token.lower().split())


class _ReadSituation(Transformer[Token, Situation]):
    def player(self, items: list[Any]) -> tuple[Player, bool]:
        number, spot, *rest = items
        known: dict[str, Any] = {}
        for item in rest:
            known.update(item)
        ball = known.pop("ball", False)
        return Player(int(number), spot_from_text(str(spot)), **known), ball

    def flag(self, items: list[Any]) -> dict[str, Any]:
        mark = str(items[0])
        if mark == "*":
            return {"ball": True}
        return {"guard": next(guard for guard, flag in _FLAGS.items() if flag == mark)}

    def ball(self, items: list[Any]) -> dict[str, Any]:
        return {"ball": True}

    def guarded(self, items: list[Any]) -> dict[str, Any]:
        return {"guard": next(guard for guard, word in _GUARD_WORDS.items() if word == items[0].lower())}

    def doing(self, items: list[Any]) -> dict[str, Any]:
        return {"doing": Doing(_words(items[0])), "origin": spot_from_text(str(items[1]))}

    def side(self, items: list[Any]) -> dict[str, Any]:
        return {"side": -1 if items[0].lower() == "left" else 1}

    def order(self, items: list[Any]) -> dict[str, Any]:
        return {"order": int(items[0])}

    def cause(self, items: list[Any]) -> dict[str, Any]:
        return {"cause": Cause(_words(items[0]))}

    def jammed(self, items: list[Any]) -> dict[str, Any]:
        return {"jammed": True}

    def forgets(self, items: list[Any]) -> dict[str, Any]:
        return {"forgets": True}

    def last(self, items: list[Any]) -> dict[str, Any]:
        spots = [spot_from_text(str(item)) for item in items[2:] if item.type == "SPOT"]
        fresh = any(item.type == "FRESH" for item in items)
        target = spots[1] if len(spots) > 1 else None
        return {"last": Last(EventKind(_words(items[0])), int(items[1]), spots[0], fresh, target)}

    def count(self, items: list[Any]) -> dict[str, Any]:
        return {"count": int(items[0])}

    def ended(self, items: list[Any]) -> dict[str, Any]:
        return {"ended": EventKind(_words(items[0]))}

    def start(self, items: list[Any]) -> Situation:
        known: dict[str, Any] = {}
        players: list[Player] = []
        ball: list[int] = []
        for item in items:
            if isinstance(item, dict):
                known.update(item)
                continue
            players.append(item[0])
            ball += [item[0].number] * item[1]
        if len(ball) != 1:
            raise SituationError(
                f"One player must have the ball, here {len(ball)} have: write * or 'ball' after that player."
            )
        numbers = [player.number for player in players]
        if twice := sorted({n for n in numbers if numbers.count(n) > 1}):
            raise SituationError(f"{twice[0]} stands in two places: name each number once.")
        standing = [p.at for p in players if p.doing not in IN_LANE]
        if shared := sorted({spot for spot in standing if standing.count(spot) > 1}):
            raise SituationError(f"Two players stand at the {shared[0].title}: a spot takes one.")
        return Situation(tuple(sorted(players, key=lambda p: p.number)), ball=ball[0], **known)


def situation_from_text(text: str) -> Situation:
    """Read a situation: "1:T* 2:RW! 3:LW 4:RC 5:LC", or "1 top, ball; 2 right wing, denied; ...".

    Raises: NotationError for what cannot be read, SituationError for what cannot be.
    """
    try:
        return _ReadSituation().transform(_parser().parse(text))
    except UnexpectedInput as error:
        column, here = where_it_stops(text, error)
        raise NotationError(
            f'The situation cannot be read at column {column}: {here}. Write "1:T* 2:RW 3:LW 4:RC 5:LC" or '
            '"1 top, ball; 2 right wing; 3 left wing; 4 right corner; 5 left corner".'
        ) from None
    except VisitError as error:
        if isinstance(error.orig_exc, BackcutError):
            raise error.orig_exc from None
        raise
