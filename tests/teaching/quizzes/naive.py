"""What the second reading says of a question: who runs where next, by the naive oracle and by three rules beside it.

The oracle knows the ring. What it does not know is read here once more, from the sentences alone, in plain strings:
the flash, the shot and the inside players. All common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tests.engine.second import Asked, choices_of, ring_of, ruled
from tests.oracle.floor import half_of_floor, is_one_pass_away, other_half, steps
from tests.oracle.reading import Outcome

from backcut.offence.book import Book
from backcut.offence.event import EventKind
from backcut.teaching.quizzes import Question

Run = tuple[str, str, str]
_HEIGHT = {"T": 5, "S": 4, "W": 3, "C": 0}
_BLOCK, _ELBOW = {"left": "Lb", "right": "Rb"}, {"left": "Le", "right": "Re"}
_SLOT = {"left": "LS", "right": "RS"}


@dataclass(frozen=True)
class Facts:
    """A question in plain strings: who stood where, what happened, who is asked, after how many runs of his own."""

    book: Book
    where: dict[int, str]
    inside: dict[int, str]
    ball: int
    kind: EventKind
    by: int
    receiver: int | None
    denied: tuple[int, ...]
    spot: str | None
    player: int
    own_runs: int
    now: dict[int, str]
    beat: int

    @property
    def outcome(self) -> Outcome:
        """What the oracle says comes of it."""
        if self.kind is EventKind.DRIBBLE:
            asked = Asked("dribble", self.spot or "")
        elif self.kind is EventKind.DENY:
            asked = Asked("deny", self.by) if len(self.denied) == 1 else Asked("deny pair", self.ball)
        else:
            asked = Asked(str(self.kind), self.receiver or 0)
        return ruled(self.book, self.where, self.ball, asked)

    @property
    def flashes(self) -> bool:
        """Whether both beside the ball are denied and the book answers that with a flash."""
        return len(self.denied) == 2 and "flash" in self.book.rules.names

    @property
    def ends(self) -> dict[int, list[str]]:
        """Every spot that anybody runs to, by number; after a shot and a flash of those that run at once."""
        if self.kind is EventKind.SHOT:
            return {n: [self.after_shot(n)] for n in self.where if n != self.by}
        if self.flashes:
            return {n: [to] for n in self.where if (to := self.at_flash(n)) is not None}
        return {n: [run[2] for run in runs if run[0] != "hold"] for n, runs in self.outcome.did.items()}

    def next(self, player: int | None = None) -> Run:
        """The next run of the one asked: what, from where, to where; "hold" where there is none."""
        number = self.player if player is None else player
        if number in self.inside and self.kind is EventKind.SHOT:
            return "rebound", self.inside[number], self.inside[number]
        if number in self.inside:
            home = self.inside_home(self.now[number])
            return ("hold" if home == self.now[number] else "inside", self.now[number], home)
        if self.kind is EventKind.SHOT:
            highest = number in self.highest()
            return ("get back" if highest else "rebound", self.where[number], self.after_shot(number))
        if self.flashes:
            to = self.at_flash(number)
            kind = "hold" if to is None else "back cut" if number in self.denied else "flash"
            return kind, self.where[number], to or self.where[number]
        runs = self.outcome.did[number]
        return runs[self.own_runs] if runs else ("hold", self.where[number], self.where[number])

    def at_flash(self, number: int) -> str | None:
        """Where one runs when both beside the ball are denied: they back cut, the farthest come to the high post."""
        if number in self.denied:
            return "R"
        ring = ring_of(self.book)
        far = {n: steps(ring, at, self.where[self.ball]) for n, at in self.where.items() if n not in self.denied}
        if number == self.ball or far[number] < max(far.values()):
            return None
        own = _ELBOW.get(half_of_floor(self.where[number]) or "", "Re")
        alone = sum(d == far[number] for d in far.values()) == 1
        taken = set(self.inside.values())
        return next((spot for spot in (("N", own) if alone else (own,)) if spot not in taken), None)

    def highest(self) -> list[int]:
        """Who stands highest of those outside without the ball."""
        heights = {n: _HEIGHT[at[-1]] for n, at in self.where.items() if n != self.by}
        return [n for n, height in heights.items() if height == max(heights.values())]

    def after_shot(self, number: int) -> str:
        """Where one stands after a shot: the highest goes to the top, or to his own slot where that is another's."""
        at, shooter = self.where[number], self.where.get(self.by, "")
        if number not in self.highest() or _HEIGHT[at[-1]] >= _HEIGHT["S"]:
            return at
        own = _SLOT[half_of_floor(at) or ""]
        wanted = [own, "T"] if len(self.highest()) > 1 else ["T", own]
        return next(spot for spot in wanted if spot != shooter)

    def inside_home(self, own: str) -> str:
        """Where an inside player belongs while the ball is where it is."""
        half = half_of_floor(self.ball_spot)
        mine = half_of_floor(own) or ""
        if "two inside" in self.book.rules.names:
            if half is None:
                return _BLOCK[mine] if own.endswith("sc") else own
            return _BLOCK[mine] if mine == half else _ELBOW[mine]
        return _BLOCK[other_half(half) or ""]

    @property
    def holder(self) -> int:
        """Who has the ball after what happened."""
        if self.kind is EventKind.DRIBBLE:
            return self.outcome.ball
        return self.receiver or self.ball

    @property
    def ball_spot(self) -> str:
        """Where the ball is after what happened."""
        return self.outcome.where[self.holder] if self.kind is EventKind.DRIBBLE else self.now[self.holder]

    @property
    def phrases(self) -> set[str]:
        """The sentences that could be named for the next run: one, as the words of the sentences say."""
        names, kind, at = self.book.rules.names, self.next()[0], self.next()[1]
        if self.kind is EventKind.SHOT:
            return {"shot"}
        if self.player in self.inside:
            return {"inside", "two inside"} & set(names) if kind != "hold" else {"hold"}
        corner = at in ("LC", "RC")
        match kind:
            case "cut":
                if self.kind is EventKind.SKIP:
                    return {"skip pass"}
                return {"corner pass"} if corner and "corner pass" in names else {"cut"}
            case "back cut":
                return {"dribble at"} if self.kind is EventKind.DRIBBLE else {"back cut"}
            case "take the hand-off" | "slide on":
                return {"dribble at"}
            case "hold":
                skipped = self.kind is EventKind.SKIP and self.player == self.by
                return {"skip pass"} if skipped else {"hold"}
            case _:
                return {kind}

    @property
    def filling_waits(self) -> bool:
        """Whether somebody cuts and the book lets nobody fill before the catcher has looked."""
        cuts = any(runs and runs[0][0] == "cut" for runs in self.outcome.did.values())
        return cuts and self.book.values["when to fill"] == "looked"

    def farther(self, spot: str) -> bool:
        """Whether a spot lies farther from the ball than the one asked stands."""
        ring, own, ball = ring_of(self.book), self.now[self.player], self.ball_spot
        return own in ring and spot in ring and steps(ring, spot, ball) > steps(ring, own, ball)

    def others_at(self, spot: str) -> bool:
        """Whether another runs there by and by, or stands there all the time."""
        ends = {n: spots for n, spots in self.ends.items() if n != self.player}
        stays = {n: self.where[n] for n, spots in ends.items() if not spots}
        stays[self.holder] = self.ball_spot
        return any(spot in spots for spots in ends.values()) or spot in stays.values()


def facts(question: Question) -> Facts:
    """The question as the second reading sees it."""
    at = question.occasion
    before, event, ring = at.step.before, at.step.event, ring_of(at.book)
    stood = {p.number: str(p.at) for p in before.players}
    own = [
        action
        for beat in at.step.beats[: at.beat]
        for action in beat.decision.actions
        if action.player == at.player and action.moves and str(action.kind) != "dribble at"
    ]
    return Facts(
        book=at.book,
        where={n: spot for n, spot in stood.items() if spot in ring},
        inside={n: spot for n, spot in stood.items() if spot not in ring},
        ball=before.ball,
        kind=event.kind,
        by=event.player,
        receiver=event.receiver,
        denied=event.players if event.kind is EventKind.DENY else (),
        spot=None if event.spot is None else str(event.spot),
        player=at.player,
        own_runs=len(own),
        now={p.number: str(p.at) for p in at.now.players},
        beat=at.beat,
    )


__all__ = ["Facts", "choices_of", "facts", "is_one_pass_away"]
