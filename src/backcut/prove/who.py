"""Who a player is in a moment, in words without numbers and sides: "the corner passer", "the player in the lane"."""

from __future__ import annotations

from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.event import PASSES, EventKind
from backcut.offence.inside import INSIDE_PLACES
from backcut.offence.rules import CORNERS
from backcut.offence.situation import Cause, Doing, Guard, Player, Situation

_CUTTERS = {
    Cause.PASSED: "the cutter",
    Cause.DENIED: "the back cutter",
    Cause.DRIBBLED_AT: "the player who was dribbled at",
    Cause.KICKED_OUT: "the player who kicked out",
    Cause.FLASHED: "the player who flashed",
}


def who(book: Book, situation: Situation, player: Player) -> str:
    """Who this is, by what the player has just done or is in the middle of; else by where he stands."""
    if player.number == situation.ball:
        return "the player with the ball"
    last = situation.last
    if last is not None and last.fresh and last.player == player.number and last.kind in PASSES:
        if last.kind is EventKind.SKIP:
            return "the skip passer"
        if last.kind is EventKind.KICK_OUT:
            return "the player who kicked out"
        return "the corner passer" if last.origin in CORNERS else "the passer"
    if last is not None and last.fresh and last.target is player.at and player.doing not in (Doing.CUTTING, Doing.LANE):
        return "the player who is dribbled at"
    if player.doing in (Doing.CUTTING, Doing.LANE):
        return _CUTTERS.get(player.cause or Cause.PASSED, "the cutter")
    if player.guard is Guard.DENIES:
        return "the denied filler" if player.doing is Doing.FILLING else "the denied player"
    if player.doing is Doing.FILLING:
        return "the filler"
    if player.doing is Doing.OUT:
        return "the player coming out"
    if player.doing is Doing.FLASHED:
        return "the player who flashed"
    if player.at in INSIDE_PLACES:
        return "the inside player"
    return f"the player {_where(book, situation, player)}"


def _where(book: Book, situation: Situation, player: Player) -> str:
    index, holder = book.rules.index, situation.holder
    if player.at in index and holder.at in index:
        steps = abs(index[player.at] - index[holder.at])
        if steps == 1:
            return "one pass away"
        return f"{('two', 'three', 'four', 'five', 'six')[steps - 2]} passes away" if steps else "at the ball"
    return f"at the {plain_title(player.at)}"


def plain_title(spot: object) -> str:
    """A spot's name without its side: "wing", "corner", "top"."""
    title = str(getattr(spot, "title", spot))
    return title.removeprefix("left ").removeprefix("right ")


def said_by(book: Book, rank: int | None) -> str:
    """A sentence by its letter and cue, "H (Out)"; who is told by none is told by the dribble."""
    return "The dribble" if rank is None else f"{letter(rank)} ({book.cue(rank)})"


def way_out_of(book: Book, player: Player) -> int | None:
    """The rank of the sentence that says where this player comes out of the lane; None where none does."""
    owner = book.rules.owner.get(player.cause or Cause.PASSED)
    return next((rank for rank, phrase in book.rules.habits if phrase.name == owner), None)
