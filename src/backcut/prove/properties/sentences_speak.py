"""Each sentence of the book speaks somewhere."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from backcut.prove.depth import Depth
from backcut.prove.property import Breach, Numbers, Sometimes
from backcut.prove.who import said_by
from backcut.prove.whole import Whole

#: The quick walks first: most books need no more.
_DEPTHS = (Depth.SETTLED, Depth.DENIED, Depth.DISTURBED, Depth.OVERLAPPED)


def _looks(whole: Whole, numbers: Numbers) -> Iterator[Breach]:
    book = whole.book
    silent = set(range(len(book.sentences)))
    beaten_by: dict[int, set[int]] = {rank: set() for rank in silent}
    for seen in chain(whole.near(_DEPTHS), whole.seen(_DEPTHS)):
        if not silent:
            return
        for action in seen.decision.actions:
            speaks = action.habit
            if speaks is None and action.beat:
                speaks = action.beat[0].habit  # it spoke, but two were sent to one spot or no spot was named
            if speaks is None:
                continue
            silent.discard(speaks)
            for claim in action.beat:
                if claim.habit in silent:
                    beaten_by[claim.habit].add(speaks)
    for rank in sorted(silent):
        above = [said_by(book, winner) for winner in sorted(beaten_by[rank])]
        why = f": wherever it could, {_either(above)} is asked before it" if above else ""
        cause = f"{said_by(book, rank)} never speaks{why}."
        yield Breach(cause, f"{cause} It says: {book.sentences[rank].text}", (), (rank, *sorted(beaten_by[rank])))


def _either(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


PROPERTY = Sometimes(
    name="every sentence speaks",
    says="Each sentence tells somebody something somewhere.",
    why=(
        "A sentence that never speaks is learnt for nothing, or stands below one that always answers first. It has to "
        "win, not only to be asked. Common practice, no source."
    ),
    looks=_looks,
    depths=_DEPTHS,
)
