"""The occasions of a book: all stand, one thing happens, and in some beat of the answers one player is asked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from backcut.engine.decide import decide
from backcut.engine.play import one_step
from backcut.engine.possession import Beat, Step
from backcut.engine.words import action_words, event_words
from backcut.errors import BackcutError
from backcut.language import say
from backcut.offence.action import Action, Kind
from backcut.offence.book import Book
from backcut.offence.event import PASSES, Event, EventKind
from backcut.offence.situation import Doing, Guard, Situation
from backcut.prove.depth import Depth, may_happen
from backcut.prove.walk import walk

#: What the ball or a defender may do, and the phrase without which nobody is asked anything by it.
NEEDS = {
    EventKind.PASS: "hold",
    EventKind.SKIP: "skip pass",
    EventKind.DENY: "back cut",
    EventKind.DRIBBLE: "dribble at",
    EventKind.SHOT: "shot",
}


@dataclass(frozen=True, slots=True)
class Occasion:
    """One player asked in one beat of a step that begins with all standing."""

    book: Book
    step: Step
    beat: int
    player: int

    @property
    def asked(self) -> Beat:
        """The situation of this beat and everybody's answers."""
        return self.step.beats[self.beat]

    @property
    def now(self) -> Situation:
        """The situation in which the player is asked."""
        return self.asked.before

    @property
    def action(self) -> Action:
        """What the book tells the player."""
        return self.told(self.player)

    def told(self, player: int) -> Action:
        """What the book tells another player in the same beat."""
        return next(action for action in self.asked.decision.actions if action.player == player)

    @property
    def passed(self) -> bool:
        """Whether the player has just passed."""
        event = self.step.event
        return event.kind in PASSES and event.player == self.player

    @property
    def denied(self) -> bool:
        """Whether the player's own defender denies."""
        return self.now.player(self.player).guard is Guard.DENIES

    @property
    def dribbled(self) -> bool:
        """Whether the ball is on its way to another spot on the dribble."""
        return self.step.event.kind is EventKind.DRIBBLE and self.beat == 0

    @property
    def cues(self) -> int:
        """How much there is to see at once: sentences beaten, players denied, players sent off in this beat.

        The sentence for the rest is beaten by every other, so it is no cue.
        """
        beaten = sum(not self.book.sentences[claim.habit].phrase.covers_rest for claim in self.action.beat)
        denied = sum(player.guard is Guard.DENIES for player in self.now.players)
        return beaten + denied + sum(action.moves for action in self.asked.decision.actions)

    def runs(self, player: int) -> list[Action]:
        """Every run of one player in the whole step, in order."""
        told = (action for beat in self.step.beats for action in beat.decision.actions)
        return [action for action in told if action.player == player and action.moves]

    def still_to_run(self) -> list[Action]:
        """Every run of this beat and of those after it."""
        told = (action for beat in self.step.beats[self.beat :] for action in beat.decision.actions)
        return [action for action in told if action.moves]

    @property
    def happened(self) -> str:
        """What has happened so far: "1 passes to 2. 1 cuts to the rim."."""
        so_far = [
            say("{player} {does}", player=action.player, does=action_words(action))
            for beat in self.step.beats[: self.beat]
            for action in beat.decision.actions
            if action.moves and action.kind is not Kind.DRIBBLE
        ]
        return " ".join(f"{told}." for told in (event_words(self.step), *so_far))


def standing(book: Book) -> list[Situation]:
    """Every situation in which all stand, nobody denied, the ball outside; numbers and sides are not told apart."""
    through = walk(book, Depth.DENIED)
    return [
        situation
        for situation, rest in zip(through.situations, through.settled, strict=True)
        if rest
        and situation.holder.at in book.rules.index
        and all(player.doing is Doing.STANDING and player.guard is Guard.PLAIN for player in situation.players)
    ]


def events(book: Book, situation: Situation) -> Iterator[Event]:
    """What may happen here that a sentence of the book answers."""
    for event in may_happen(book, situation, decide(book, situation), True, Depth.DENIED):
        if NEEDS.get(event.kind, "nothing") in book.rules.names:
            yield event


def played(book: Book, situation: Situation, event: Event) -> Step | None:
    """The event and everybody's answers to it; None where the book leaves something open or nobody ever settles."""
    try:
        step = one_step(book, situation, event)
    except BackcutError:
        return None
    return None if any(beat.decision.troubles for beat in step.beats) else step


def occasions(book: Book, step: Step) -> Iterator[Occasion]:
    """Everybody in every beat of a step in which the answer is plain.

    Who runs is asked when told to run; who stays is asked once, at first. After a flash only the first beat is
    asked: who comes out where is another sentence's.
    """
    only_first = any(action.kind is Kind.FLASH for action in step.beats[0].decision.actions) if step.beats else False
    for place, beat in enumerate(step.beats[:1] if only_first else step.beats):
        for action in beat.decision.actions:
            if action.moves or place == 0:
                yield Occasion(book, step, place, action.player)


def turned(situation: Situation, event: Event, wears: Mapping[int, int], mirrored: bool) -> tuple[Situation, Event]:
    """The same with other numbers on the shirts and, where `mirrored`, on the other side of the floor."""
    if mirrored:
        situation = situation.mirrored()
        event = replace(event, spot=event.spot and event.spot.mirror)
    players = sorted((replace(p, number=wears[p.number]) for p in situation.players), key=lambda p: p.number)
    last = situation.last and replace(situation.last, player=wears[situation.last.player])
    receiver = None if event.receiver is None else wears[event.receiver]
    also = tuple(wears[number] for number in event.also)
    return (
        replace(situation, players=tuple(players), ball=wears[situation.ball], last=last),
        replace(event, player=wears[event.player], receiver=receiver, also=also),
    )
