"""What everybody is told from an event until all have settled, remembered per folded situation."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

from backcut.court.spots import Spot
from backcut.engine.advance import follow
from backcut.engine.decide import decide
from backcut.engine.play import settled, stand
from backcut.engine.possession import Decision
from backcut.offence.action import Action, Kind, Route
from backcut.offence.book import Book
from backcut.offence.situation import Player, Situation
from backcut.prove.fold import Turn, fold, plain
from backcut.prove.walk import Walk

_PLAIN_STILL = frozenset({Kind.HOLD, Kind.BALL})


@dataclass(frozen=True, slots=True)
class Answer:
    """One thing a player is told. `beat` counts from the event, 0 for the first round of answers."""

    beat: int
    kind: Kind
    target: Spot
    route: Route
    habit: int | None
    moves: bool

    @property
    def what(self) -> tuple[Kind, Spot]:
        """What is asked for, whichever way it is run."""
        return self.kind, self.target


@dataclass(frozen=True, slots=True)
class Told:
    """All that one player is told until all have settled, without holding because nothing else speaks.

    `end` is where the player is then; `restless` where the players never settle. `rest` is the sentence that speaks
    when no other does, where it spoke for this player.
    """

    answers: tuple[Answer, ...]
    end: Spot
    rest: int | None = None
    restless: bool = False

    @property
    def runs(self) -> tuple[Answer, ...]:
        """What is to be run, or said aloud where nothing is: no answer, a look to dribble."""
        return tuple(a for a in self.answers if a.moves or a.kind not in _PLAIN_STILL)

    @property
    def holds_by(self) -> int | None:
        """The sentence behind holding: one of its own, else the one that speaks when no other does."""
        return next((answer.habit for answer in self.answers if not answer.moves), self.rest)

    @property
    def what(self) -> tuple[object, ...]:
        """Runs and end: two who are told the same differ at most in when and which way."""
        return tuple(run.what for run in self.runs), self.end, self.restless


@dataclass(slots=True)
class Teller:
    """Asks one book what everybody is told; every folded situation is asked once.

    `known` decisions are not asked again; `ask` may take the place of `decide`.
    """

    book: Book
    role: Mapping[int, int]
    mirror: bool
    known: dict[Situation, Decision] = field(default_factory=dict)
    ask: Callable[[Situation], Decision] | None = None
    _beats: dict[Situation, tuple[Situation, Turn] | None] = field(default_factory=dict)
    _told: dict[Situation, tuple[Told, ...]] = field(default_factory=dict)

    def decision(self, folded: Situation) -> Decision:
        """Everybody's answers in a folded situation."""
        if folded not in self.known:
            self.known[folded] = decide(self.book, folded) if self.ask is None else self.ask(folded)
        return self.known[folded]

    def fold(self, situation: Situation) -> tuple[Situation, Turn]:
        """The folded situation of this book, and how it lies."""
        return fold(plain(self.book, situation), self.role, self.mirror)

    def walked(self, walk: Walk) -> None:
        """Take over what a walk through the same book has found already."""
        for situation, decision, edges in zip(walk.situations, walk.decisions, walk.edges, strict=True):
            self.known[situation] = decision
            for edge in edges:
                if edge.event is None:
                    self._beats[situation] = walk.situations[edge.target], edge.turn

    def beat(self, folded: Situation) -> tuple[Situation, Turn] | None:
        """One beat later, folded, and how it lies in this situation; None once all stand."""
        if folded not in self._beats:
            decision = self.decision(folded)
            if not settled(self.book, folded, decision):
                self._beats[folded] = self.fold(follow(self.book, folded, decision))
            elif (standing := stand(folded)) != folded:
                self._beats[folded] = self.fold(standing)
            else:
                self._beats[folded] = None
        return self._beats[folded]

    def told(self, situation: Situation) -> dict[int, Told]:
        """What each number is told from here until all have settled."""
        folded, turn = self.fold(situation)
        told = self._told.get(folded) or self._tell(folded)
        return {number: turned(here, turn.flipped) for number, here in zip(turn.worn, told, strict=True)}

    def _tell(self, first: Situation) -> tuple[Told, ...]:
        """Follow the beats to what is known or settled, then put the answers together from the back."""
        way: list[tuple[Situation, Turn]] = []
        here, turn = first, Turn(())
        going: set[Situation] = set()
        while here not in self._told and here not in going:
            going.add(here)
            after = None if here.ended is not None else self.beat(here)
            if after is None:
                self._told[here] = self._join(here, {player.number: Told((), player.at) for player in self._end(here)})
                break
            way.append((here, turn))
            here, turn = after
        if here in going and here not in self._told:
            self._told[here] = tuple(Told((), player.at, restless=True) for player in here.players)
        for before, entered in reversed(way):
            rest = zip(turn.worn, self._told[here], strict=True)
            self._told[before] = self._join(before, {number: turned(told, turn.flipped) for number, told in rest})
            here, turn = before, entered
        return self._told[first]

    def _end(self, last: Situation) -> tuple[Player, ...]:
        """Everybody where the last answers have led; once the possession has ended, everybody is asked once more."""
        return last.players if last.ended is None else follow(self.book, last, self.decision(last)).players

    def _join(self, situation: Situation, later: Mapping[int, Told]) -> tuple[Told, ...]:
        return tuple(self._one(action, later[action.player]) for action in self.decision(situation).actions)

    def _one(self, action: Action, later: Told) -> Told:
        habit = action.habit
        answers = [replace(answer, beat=answer.beat + 1) for answer in later.answers]
        by_rest = habit is None or self.book.sentences[habit].phrase.covers_rest
        rest = habit if by_rest and habit is not None else later.rest
        if action.moves or action.kind not in _PLAIN_STILL or not by_rest:
            first = Answer(0, action.kind, action.target, action.route, habit, action.moves)
            if answers and not first.moves and first.what == answers[0].what:
                answers = answers[1:]
            answers.insert(0, first)
        return Told(tuple(answers), later.end, rest, later.restless)


def turned(told: Told, flipped: bool) -> Told:
    """The same seen from the other side of the floor, where `flipped`."""
    if not flipped:
        return told
    return replace(told, answers=tuple(replace(a, target=a.target.mirror) for a in told.answers), end=told.end.mirror)
