"""The denial mark tried at another depth: whose feet are over it, who is denied, and who cuts then."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from backcut.court.record import Court
from backcut.engine.decide import decide
from backcut.engine.gym import Gym, gym
from backcut.engine.possession import Decision
from backcut.engine.reads import FOOT_M, denied, past_mark_m
from backcut.engine.words import action_words
from backcut.motion.timeline import Pose, Timeline, pose
from backcut.offence.action import Action, letter
from backcut.offence.book import Book
from backcut.offence.situation import IN_LANE, Guard, Situation
from backcut.picture.floor import TOOTH_CM
from backcut.web.mark_line import handle_m, limits_m, mark_at, mark_path, mark_text

__all__ = ["handle_m", "limits_m", "mark_at", "mark_path", "mark_text", "preview"]

Floats = NDArray[np.float64]

#: What a small change of place is, to find the way straight out of the mark, in metres.
_NUDGE_M = 1e-4


def preview(
    book: Book,
    timeline: Timeline,
    situation: Situation,
    t_s: float,
    mark_m: float | None = None,
    here: Gym | None = None,
) -> dict[str, Any]:
    """The mark at a depth (None: the book's own) against everybody as he stands at `t_s` in `situation`.

    `denied` are the players one pass away whose defender denies them then, by the book's own measure; `cuts` are the
    answers that come of it, and would not come if nobody denied. Depths are kept within the court's limits.

    Raises: CourtError or MotionError for a court or a squad that is not known.
    """
    here = here or gym(book)
    court = here.court
    low, high = limits_m(court)
    depth = round(min(max(book.mark_m if mark_m is None else mark_m, low), high), 3) + 0.0
    how, now = book.values["denial"], pose(timeline, t_s)
    shut = list(_denied(book, situation, now, court, how, depth))
    cuts = list(_cuts(book, situation, shut))
    x, y = handle_m(court, here.placing.spots, depth)
    return {
        "mark_m": depth,
        "line": mark_text(depth),
        "words": _words(situation, depth, how, shut, cuts),
        "how": how,
        "limits_m": [low, high],
        "path": mark_path(court, depth),
        "teeth": mark_path(court, depth, TOOTH_CM / 2),
        "handle": {"x_cm": round(x * 100), "y_cm": round(y * 100)},
        "feet": list(_feet(now, court, depth)),
        "denied": shut,
        "cuts": [{"player": a.player, "words": action_words(a), "letter": letter(a.habit)} for a in cuts],
    }


def one_pass_away(book: Book, situation: Situation) -> list[int]:
    """The players who can be denied now: on the ring, next to the ball, and not in the lane."""
    index, holder = book.rules.index, situation.holder
    if situation.ended is not None or holder.doing in IN_LANE or holder.at not in index:
        return []
    return [
        player.number
        for player in situation.players
        if player.doing not in IN_LANE and player.at in index and abs(index[player.at] - index[holder.at]) == 1
    ]


def _denied(book: Book, situation: Situation, now: Pose, court: Court, how: str, mark_m: float) -> Iterator[int]:
    ball = np.array(now.ball[:2])
    for number in one_pass_away(book, situation):
        man, defender = np.array(now.players[number]), np.array(now.defenders[number][:2])
        if bool(denied(ball, man, defender, court, how, mark_m)):
            yield number


def _cuts(book: Book, situation: Situation, shut: Sequence[int]) -> Iterator[Action]:
    """The answers that come of these denials: those that would be others if nobody denied."""
    if situation.ended is not None:
        return
    with_them, without = _answers(book, situation, shut), _answers(book, situation, ())
    free = {(action.player, action.kind, action.target) for action in without.actions}
    for action in with_them.actions:
        if action.moves and (action.player, action.kind, action.target) not in free:
            yield action


def _answers(book: Book, situation: Situation, shut: Sequence[int]) -> Decision:
    players = (
        replace(player, guard=Guard.DENIES if player.number in shut else Guard.PLAIN)
        for player in situation.players
        if player.number in shut or player.guard is Guard.DENIES
    )
    return decide(book, situation.with_players(*players))


def _feet(now: Pose, court: Court, mark_m: float) -> Iterator[dict[str, Any]]:
    """Both feet of every defender who is not on the ball: front, straight out of the mark, and back."""
    for number, (x, y, _) in now.defenders.items():
        if number == now.holder:
            continue
        body = np.array([x, y])
        out = _outward(body, court)
        for which, ahead_m in (("front", FOOT_M), ("back", -FOOT_M)):
            foot = body + ahead_m * out
            past = float(past_mark_m(body, court, mark_m)) + ahead_m
            yield {
                "player": number,
                "foot": which,
                "x_cm": round(float(foot[0]) * 100),
                "y_cm": round(float(foot[1]) * 100),
                "past_m": round(past, 2) + 0.0,
                "over": past > 0,
            }


def _outward(place: Floats, court: Court) -> Floats:
    """The unit vector along which a place gets farther past the mark."""
    nudges = np.eye(2) * _NUDGE_M
    slope = past_mark_m(place + nudges, court) - past_mark_m(place - nudges, court)
    size = float(np.hypot(*slope))
    return slope / size if size > 0 else np.array([0.0, 1.0])


def _words(situation: Situation, mark_m: float, how: str, shut: Sequence[int], cuts: Sequence[Action]) -> str:
    where = (
        "Denied by a hand in the lane, wherever the feet are." if how == "hand" else f"Denied from {mark_text(mark_m)}."
    )
    if situation.ended is not None:
        return where
    if not shut:
        return f"{where} Nobody one pass away is denied."
    who = _list([f"X{number}" for number in shut])
    over = f"{who} {'denies' if len(shut) == 1 else 'deny'}"
    if not cuts:
        return f"{where} {over}. The book has no other answer for it."
    return f"{where} {over}: {_list([f'{action.player} {action_words(action)}' for action in cuts])}."


def _list(parts: Sequence[str]) -> str:
    return " and ".join([", ".join(parts[:-1]), parts[-1]]) if len(parts) > 1 else "".join(parts)
