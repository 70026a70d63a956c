"""The move list: "T>RW, deny 3, RW>T, jam 2, dribble 5>LW, after 2 beats LW>cutter", read and written."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import Any, NamedTuple

from lark import Lark, Token, Transformer
from lark.exceptions import UnexpectedInput

from backcut.court.spots import Spot, spot_from_text
from backcut.errors import BackcutError, NotationError, SituationError
from backcut.offence.event import MOST_BEATS, PASSES, Event, EventKind
from backcut.offence.situation import IN_LANE, Situation
from backcut.offence.spot_words import SPOT_WORDS, where_it_stops

_GRAMMAR = rf"""
start: move ("," move)* ","?
move: (early | after)? (throw | dribble | guard | ending)
early: EARLY
after: AFTER NUMBER BEATS
throw: who ">" who
dribble: "dribble"i who ">" who
guard: GUARD who ("+" who)*
ending: ENDING who?
who: NUMBER | SPOT | CUTTER
GUARD: /deny|sag|jump|free|jam|forget/i
ENDING: /lay-?up|shot|turnover/i
EARLY: /early/i
AFTER: /after/i
BEATS: /beats?/i
CUTTER: /cutter/i
NUMBER: /\d{{1,3}}(?!\d)/
SPOT: /(the\s+)?({SPOT_WORDS})(?![A-Za-z])/i
%ignore /\s+/
"""


@dataclass(frozen=True, slots=True)
class Who:
    """A player as a move list names one: by number, by spot, or "cutter"."""

    text: str

    def number(self, situation: Situation) -> int:
        """The number meant in this situation. Raises: NotationError if nobody is meant, or more than one cutter."""
        if self.text.isdigit():
            try:
                return situation.player(int(self.text)).number
            except SituationError as error:
                raise NotationError(str(error)) from None
        if self.text.lower() == "cutter":
            lane = [p for p in situation.players if p.doing in IN_LANE and p.number != situation.ball]
            if not lane:
                raise NotationError(
                    "Nobody is cutting, so no pass can reach the cutter: let somebody pass and cut first."
                )
            return min(lane, key=lambda p: p.order).number
        spot = spot_from_text(self.text)
        for player in situation.players:
            if player.at is spot and player.doing not in IN_LANE:
                return player.number
        there = ", ".join(f"{p.number} {p.at}" for p in situation.players)
        raise NotationError(f"Nobody stands at the {spot.title}; there are {there}.")


@dataclass(frozen=True, slots=True)
class Move:
    """One move as written: its text, where it starts in the list, and what it says."""

    text: str
    column: int
    kind: EventKind
    who: tuple[Who, ...]
    to: Who | None = None
    early: bool = False
    after: int | None = None

    def event(self, situation: Situation) -> Event:
        """The event meant in this situation. Raises: NotationError naming the move and its place in the list."""
        try:
            event = self._what(situation)
        except NotationError as error:
            raise self.error(error) from None
        return replace(event, early=self.early, after=self.after)

    def to_come(self) -> Event:
        """The event as far as it is known before its situation: its kind, and when it comes."""
        to_cutter = self.kind is EventKind.PASS and self.to is not None and self.to.text.lower() == "cutter"
        return Event(EventKind.TO_CUTTER if to_cutter else self.kind, 0, early=self.early, after=self.after)

    def _what(self, situation: Situation) -> Event:
        if not self.who:
            return Event(self.kind, situation.ball)
        numbers = [who.number(situation) for who in self.who]
        if self.kind is EventKind.DRIBBLE and self.to is not None:
            return Event(self.kind, numbers[0], spot=self._spot(situation))
        receiver = self.to.number(situation) if self.to is not None else None
        return Event(self.kind, numbers[0], receiver, also=tuple(numbers[1:]))

    def _spot(self, situation: Situation) -> Spot:
        assert self.to is not None
        text = self.to.text
        if text.isdigit() or text.lower() == "cutter":
            return situation.player(self.to.number(situation)).at
        return spot_from_text(text)

    def error(self, error: BackcutError) -> NotationError:
        """The same error with the move's place in front."""
        return NotationError(f'Move "{self.text}" (column {self.column}): {error}')


_KINDS = {
    "deny": EventKind.DENY,
    "sag": EventKind.SAG,
    "jump": EventKind.JUMP,
    "free": EventKind.FREE,
    "jam": EventKind.JAM,
    "forget": EventKind.FORGET,
    "layup": EventKind.LAY_UP,
    "lay-up": EventKind.LAY_UP,
    "shot": EventKind.SHOT,
    "turnover": EventKind.TURNOVER,
}


class _When(NamedTuple):
    """When a move comes, and where the move starts in the text."""

    first: int
    early: bool = False
    after: int | None = None


class _ReadMoves(Transformer[Token, list[Move]]):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.text = text

    def start(self, moves: list[Any]) -> list[Move]:
        return list(moves)

    def who(self, items: list[Any]) -> tuple[Who, Token]:
        return Who(str(items[0])), items[0]

    def early(self, items: list[Any]) -> _When:
        return _When(items[0].start_pos, early=True)

    def after(self, items: list[Any]) -> _When:
        return _When(items[0].start_pos, after=int(items[1]))

    def move(self, items: list[Any]) -> Move:
        kind, who, to, first, last = items[-1]
        when = items[0] if len(items) > 1 else _When(first)
        text = " ".join(self.text[when.first : last].split())
        return Move(text, when.first + 1, kind, who, to, when.early, when.after)

    def throw(self, items: list[Any]) -> Any:
        (who, first), (to, last) = items
        return EventKind.PASS, (who,), to, first.start_pos, last.end_pos

    def dribble(self, items: list[Any]) -> Any:
        (who, first), (to, last) = items
        start = self.text.lower().rfind("dribble", 0, first.start_pos)
        return EventKind.DRIBBLE, (who,), to, start, last.end_pos

    def guard(self, items: list[Any]) -> Any:
        return (
            _KINDS[items[0].lower()],
            tuple(who for who, _ in items[1:]),
            None,
            items[0].start_pos,
            items[-1][1].end_pos,
        )

    def ending(self, items: list[Any]) -> Any:
        last = items[-1][1] if len(items) > 1 else items[0]
        return _KINDS[items[0].lower()], tuple(who for who, _ in items[1:]), None, items[0].start_pos, last.end_pos


@cache
def _parser() -> Lark:
    return Lark(_GRAMMAR, parser="lalr")


def moves_from_text(text: str) -> list[Move]:
    """Read a move list such as "T>RW, deny 3, RW>T, jam 2, dribble 5>LW".

    Raises: NotationError with the column and what may stand there.
    """
    if not text.strip():
        raise NotationError('The move list is empty. Write for example "T>RW, deny 3, RW>T".')
    try:
        moves = _ReadMoves(text).transform(_parser().parse(text))
    except UnexpectedInput as error:
        column, here = where_it_stops(text, error)
        raise NotationError(
            f'The move list cannot be read at column {column}: {here}. A move is "T>RW", "1>cutter", "deny 3", '
            '"deny 2+3", "sag 2", "jump 1", "free 3", "jam 1", "dribble 1>RW", "forget 4", "lay-up", "shot", '
            '"turnover", each with "early" before it if it comes before the cutter is out, or instead with '
            f'"after 2 beats" ({MOST_BEATS} at most) if it comes after so many beats of answers; players by number or '
            "spot."
        ) from None
    for move in moves:
        if move.after is not None and move.after > MOST_BEATS:
            raise move.error(
                NotationError(
                    f"All have settled long before {move.after} beats. Write {MOST_BEATS} or fewer, or leave it out: "
                    "then the move comes when all have settled."
                )
            )
    return moves


def move_text(event: Event) -> str:
    """An event in the notation of the move list, players by number."""
    who = "+".join(map(str, event.players))
    when = _when_text(event)
    if event.kind in PASSES:
        return f"{when}{who}>{event.receiver}"
    if event.kind is EventKind.DRIBBLE:
        return f"{when}dribble {who}>{event.spot}"
    return f"{when}{event.kind} {who}"


def _when_text(event: Event) -> str:
    if event.after is not None:
        return f"after {event.after} beat{'' if event.after == 1 else 's'} "
    # A pass to a cutter by number would otherwise wait until the cutter is out.
    return "early " if event.early or event.kind is EventKind.TO_CUTTER else ""
