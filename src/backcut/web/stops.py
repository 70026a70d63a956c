"""The stops of a floor's time line: the start, every decision, and when all stand; what can be done at each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from backcut.engine.decide import decide
from backcut.engine.possession import Beat, Step
from backcut.engine.words import action_words
from backcut.motion.timeline import pose
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.event import Event, EventKind
from backcut.offence.situation import IN_LANE, Guard, Situation
from backcut.picture.action_lines import open_spots
from backcut.picture.show import Answer, Moment, Show, Stance
from backcut.picture.story import show
from backcut.prove.wanted import rights
from backcut.web.envelope import CanData, CellData
from backcut.web.floor import Floor, Played, played, read
from backcut.web.what_if import at_the_start, in_step, when_all_stand

#: A stop at the end is worth having when it is so long after the last decision (estimate: two looks).
END_S = 0.4
#: Runs that start this soon after a moment have begun with it (estimate of what an eye takes in at once).
WITH_IT_S = 0.3

_STANCES = {Guard.DENIES: Stance.DENIES, Guard.SAGS: Stance.SAGS, Guard.JUMPED: Stance.JUMPED}
_GUARD_WORDS = {Guard.DENIES: "denying", Guard.SAGS: "sagging", Guard.JUMPED: "jumped to the ball"}


@dataclass(frozen=True, slots=True)
class Stop:
    """Where a moment lies: `step` steps have begun, `beats` beats of the last one; `stands`: nobody is on the way.

    `situation` is where everybody counts then; `asked` the one in which the answers that are seen were given.
    """

    step: int
    beats: int
    stands: bool
    situation: Situation
    asked: Situation


@dataclass(frozen=True)
class Told:
    """A floor in time: its book, what it was played to, its show with a start and an end, a stop for each moment."""

    text: str
    played: Played
    show: Show
    stops: tuple[Stop, ...]

    def cans(self, place: int) -> list[CanData]:
        """What can be done at a stop."""
        stop = self.stops[place]
        step = self.played.steps[stop.step - 1] if stop.step else None
        return _cans(self.text, self.played.begins if step is None else step, stop.step, stop.beats, stop.stands)

    def right(self, place: int) -> dict[str, list[str]]:
        """Where each player goes, in words: the answer that is seen, and where he stands when it is over."""
        return _right(self.text, self.stops[place].asked)

    def cells(self, place: int) -> list[CellData]:
        """The places of the floor at a stop: everybody where the rules count him, then the empty spots."""
        stop, spots = self.stops[place], self.show.spots
        there: list[CellData] = []
        for player in stop.situation.players:
            if player.doing in IN_LANE or player.at not in spots:
                x, y = pose(self.show.timeline, self.show.moments[place].t_s).players[player.number]
            else:
                x, y = spots[player.at]
            ball = player.number == stop.situation.ball
            guard = _GUARD_WORDS.get(player.guard)
            words = [player.at.title, str(player.number)] + ["has the ball"] * ball
            words += [f"defender {guard}"] if guard else []
            ident = f"p{player.number}"
            there.append(_cell(ident, (x, y), ", ".join(words), player.number, ball))
        taken = {player.at for player in stop.situation.players}
        for spot in self.played.book.formation.ring:
            if spot not in taken and spot in spots:
                x, y = spots[spot]
                there.append(_cell(str(spot), (x, y), f"{spot.title}, empty", None, False))
        return there


def _cell(ident: str, place: tuple[float, float], label: str, player: int | None, ball: bool) -> CellData:
    x, y = place
    return CellData(id=ident, x=round(x * 100), y=round(y * 100), label=label, player=player, ball=ball)


#: What can be done at a stop, and what is right there, depends on the book and on the stop's step alone: a possession
#: that goes on asks again for the stops it had.
@lru_cache(maxsize=1024)
def _cans(text: str, step: Step | Situation, number: int, beats: int, stands: bool) -> list[CanData]:
    book, _ = read(text)
    if isinstance(step, Situation):
        return at_the_start(book, step)
    return when_all_stand(book, step, number) if stands else in_step(book, step, number, beats)


@lru_cache(maxsize=1024)
def _right(text: str, asked: Situation) -> dict[str, list[str]]:
    book, _ = read(text)
    return {str(n): sorted(spot.title for spot in spots) for n, spots in rights(book, asked).items()}


@lru_cache(maxsize=32)
def told(floor: Floor) -> Told:
    """The floor in time. Raises: BackcutError where it cannot be played, placed or timed."""
    seen = played(floor)
    steps = seen.steps or (_nothing_yet(seen.book, seen.begins),)
    line = show(seen.book, steps)
    first = _standing_moment(seen.book, seen.begins, line, 0.0, f"{seen.begins.ball} has the ball.")
    if not seen.steps:
        return Told(floor.text, seen, replace(line, moments=(first,)), (Stop(0, 0, True, seen.begins, seen.begins),))
    moments, stops = [first, *line.moments], [Stop(0, 0, True, seen.begins, seen.begins)]
    stops += _stops(seen, line)
    after, end_s = seen.steps[-1].after, line.timeline.duration_s
    if after.ended is None and end_s - moments[-1].t_s > END_S and not _left_open(seen.steps[-1]):
        said = f"All stand. {after.ball} has the ball, {after.holder.at.title}."
        moments.append(_standing_moment(seen.book, after, line, end_s, said))
        stops.append(Stop(len(steps), len(steps[-1].beats), True, after, after))
    return Told(floor.text, seen, replace(line, moments=tuple(moments)), tuple(stops))


def _nothing_yet(book: Book, begins: Situation) -> Step:
    """A step in which nothing happens: somebody has to stand there in time too."""
    event = Event(EventKind.FREE, begins.ball)
    return Step(event, "", begins, (Beat(begins, decide(book, begins)),), begins)


def _left_open(step: Step) -> bool:
    return any(beat.decision.troubles for beat in step.beats)


def _standing_moment(book: Book, situation: Situation, line: Show, t_s: float, said: str) -> Moment:
    decision = decide(book, situation)
    answers = tuple(
        Answer(a.player, str(a.kind), letter(a.habit), action_words(a, situation), moves=False)
        for a in decision.actions
    )
    guards: Mapping[int, Stance] = {
        p.number: Stance.ON_BALL if p.number == situation.ball else _STANCES.get(p.guard, Stance.PLAIN)
        for p in situation.players
    }
    return Moment(t_s, None, said, answers, (), guards, open_spots(book, situation))


def _stops(seen: Played, line: Show) -> Iterator[Stop]:
    """The stop of each moment that was told: which step has begun by then, and how far its answers have come."""
    before = (0, 0)
    for moment in line.moments:
        begun = max((n for n, cue_s in enumerate(line.timeline.cues_s) if cue_s <= moment.t_s + 1e-6), default=0)
        step = seen.steps[begun]
        running = [r.beat for r in line.timeline.runs if r.step == begun and r.start_s <= moment.t_s + WITH_IT_S]
        beats = max(running, default=-1) + 1
        # What is asked here is the first beat that was not seen at the stop before.
        first = min(before[1] if before[0] == begun else 0, len(step.beats) - 1)
        before = begun, beats
        here = step.beats[beats].before if beats < len(step.beats) else step.after
        yield Stop(begun + 1, beats, False, here, step.beats[first].before if step.beats else step.after)
