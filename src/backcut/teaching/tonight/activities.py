"""What is done in each part of an evening: title, what, groups, what to say, and the card of its drill."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from backcut.errors import BackcutError
from backcut.language import say
from backcut.offence.book import Book
from backcut.teaching.drills.card import words
from backcut.teaching.drills.chains import chains
from backcut.teaching.drills.drill import Drill, Hall, ShortError, drills
from backcut.teaching.drills.reps import MOST_WAIT_S
from backcut.teaching.drills.stages import Stage
from backcut.teaching.drills.team import Teams
from backcut.teaching.examples import Example
from backcut.teaching.tonight.order import Part, Slot

#: Chains of denials that are called out in a block (own design: one every half minute or so).
CHAINS = 6
#: Points the last game goes to (own design).
POINTS = 10
#: A game has two teams, of five at most.
TEAM, A_GAME = 5, 6


@dataclass(frozen=True, slots=True)
class Activity:
    """One line of the running order. `card` is the number of its drill's card, None where it has none."""

    begins: str
    minutes: int
    part: Part
    title: str
    what: tuple[str, ...]
    groups: str = ""
    say: str = ""
    card: int | None = None


@dataclass(slots=True)
class Making:
    """What an evening is made of, and what has been put on cards or could not be met so far."""

    book: Book
    hall: Hall
    shown: dict[int, Example]
    day: int
    review: int
    whole: Teams | None
    breaks: int = 0
    cards: list[Drill] = field(default_factory=list)
    not_met: list[str] = field(default_factory=list)


def activity(making: Making, slot: Slot, begins: str) -> Activity:
    """One line of the running order, which begins at this clock time; a drill in it becomes a card."""
    title, what, groups, cue, card = _KINDS[slot.part](making, slot)
    return Activity(begins, slot.minutes, slot.part, title, tuple(what), groups, cue, card)


_Told = tuple[str, Sequence[str], str, str, int | None]


def _warm_up(making: Making, slot: Slot) -> _Told:
    what = (
        say("Run from spot to spot round the ring: forward, sideways, backward, easy at first."),
        say("Balance on one leg, squat, jump and land softly on two feet; strength for hips and trunk."),
    )
    return say("Warm up"), what, say("all together"), "", None


def _walk(making: Making, slot: Slot) -> _Told:
    book, whole = making.book, making.whole
    cue = say("Say: {cue}.", cue=book.cue(making.day))
    if whole is None:
        return (
            say("Walk through"),
            (say("Cones on the spots; walk the possession of card 1 and say the cues."),),
            "",
            cue,
            None,
        )
    what = [say("No defence. Pass, and everybody answers by the book; stop and ask what comes next.")]
    if each := round(whole.each(slot.minutes * 60, making.day)):
        what.append(say("About {each} answers to {cue} for each player.", each=each, cue=book.cue(making.day)))
    if len(whole.counts) > whole.active:
        what.append(say("Change teams every {burst} s.", burst=round(whole.burst_s)))
    if whole.wait_s > MOST_WAIT_S:
        making.not_met.append(
            say("Walk-through: a team waits {wait} s; let it pass in pairs.", wait=round(whole.wait_s))
        )
    return say("Whole team, no defence"), what, _groups(whole.counts), cue, None


def _drill(stage: Stage, review: bool = False) -> Callable[[Making, Slot], _Told]:
    def told(making: Making, slot: Slot) -> _Told:
        rank = making.review if review else making.day
        try:
            made = drills(making.shown[rank], making.hall, stages=[stage], minutes=slot.minutes)[0]
        except ShortError as short:
            making.not_met.append(str(short))
            return _walk(making, slot)
        making.cards.append(made)
        card = words(made)
        groups = _groups(made.lines.counts)
        return card.name, (card.true, *card.false[:1], card.each), groups, card.say, len(making.cards)

    return told


def _break(making: Making, slot: Slot) -> _Told:
    making.breaks += 1
    what = [say("Water for everybody.")]
    if making.breaks == 1:
        what.append(say("Three questions, below."))
    return say("Drink"), what, "", "", None


def _live(making: Making, slot: Slot) -> _Told:
    players, places = making.hall.players, max(making.hall.baskets, 1)
    if players < 2:
        return _walk(making, slot)
    games = max(1, min(places, players // A_GAME, max(making.hall.balls, 1)))
    sides = _shared(players, 2 * games)
    what = [
        say("Games on half the floor: {sides}.", sides=say(", ").join(_against(sides))),
        say("A basket counts two when {cue} was right on the way to it.", cue=making.book.cue(making.day)),
    ]
    if max(sides) > TEAM:
        what.append(say("Five of each side play; the others come in after every basket."))
    return say("Live"), what, _groups(sides), say("Ask afterwards: what did you see?"), None


def _chains(making: Making, slot: Slot) -> _Told:
    try:
        drawn = chains(making.book, CHAINS)
    except BackcutError:
        return _live(making, slot)
    what = [say("Call these; defenders deny as named, the five answer.")] + [one.moves for one in drawn]
    groups = _groups(making.whole.counts) if making.whole else ""
    return say("Chains of denials"), what, groups, say("Say nothing; ask afterwards."), None


def _end(making: Making, slot: Slot) -> _Told:
    if making.hall.baskets:
        what = say("Two lines shoot after a pass and a cut; the first line to {points} baskets wins.", points=POINTS)
    else:
        what = say(
            "Two lines pass and run a spot on; the first line to {points} passes without a drop wins.", points=POINTS
        )
    said = (what, say("Then all together: each says one thing seen today."))
    return say("End"), said, _groups(_shared(making.hall.players, min(2, making.hall.players))), "", None


_KINDS: dict[Part, Callable[[Making, Slot], _Told]] = {
    Part.WARM_UP: _warm_up,
    Part.WALK: _walk,
    Part.REVIEW: _drill(Stage.ALONE, review=True),
    Part.BREAKDOWN: _drill(Stage.ALONE),
    Part.GUIDED: _drill(Stage.GUIDED),
    Part.BREAK: _break,
    Part.ADVANTAGE: _drill(Stage.ADVANTAGE),
    Part.LIVE: _live,
    Part.CHAINS: _chains,
    Part.END: _end,
}


def _shared(players: int, groups: int) -> tuple[int, ...]:
    each, more = divmod(players, groups)
    return tuple(each + (place < more) for place in range(groups))


def _against(sides: tuple[int, ...]) -> list[str]:
    pairs = zip(sides[::2], sides[1::2], strict=True)
    return [say("{one} against {other}", one=one, other=other) for one, other in pairs]


def _groups(counts: tuple[int, ...]) -> str:
    """Who is in which group, by number: everybody is given one at the door."""
    named: list[str] = []
    first = 1
    for count in counts:
        last = first + count - 1
        named.append(say("{first} to {last}", first=first, last=last) if count > 1 else str(first))
        first += count
    return say(" | ").join(named)
