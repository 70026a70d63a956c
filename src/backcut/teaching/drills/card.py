"""A drill in words, as it stands on its card: a parent can run it from this without an explanation."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from backcut.engine.gym import USUAL_SQUAD
from backcut.language import say, say_many
from backcut.offence.book import Book
from backcut.offence.situation import Guard
from backcut.teaching.care import age_of, care
from backcut.teaching.drills.cues import Cue
from backcut.teaching.drills.drill import Drill
from backcut.teaching.drills.reps import MOST_WAIT_S
from backcut.teaching.drills.stages import Stage, defence, title
from backcut.teaching.mistakes import usual_mistake

#: Points a game goes to (own design).
POINTS = 10
#: Turns with a false cue that a card names: after them it begins again.
NAMED = 8


@dataclass(frozen=True, slots=True)
class Words:
    """Everything a drill's card says.

    `rotation` is three lines; `true` and `false` are cue and answer, side by side; `instead` says what to do where
    something is not as it should be, and is empty where all is well.
    """

    letter: str
    name: str
    sentence: str
    needs: str
    set_up: str
    rotation: tuple[str, str, str]
    true: str
    false: tuple[str, ...]
    false_turns: str
    defence: str
    say: str
    mistake: str
    score: str
    easier: str
    harder: str
    each: str
    spots: str
    instead: str
    care: str


def words(drill: Drill) -> Words:
    """The card of a drill in the language spoken now."""
    book, rank = drill.book, drill.piece.rank
    sentence, usual = book.sentences[rank], usual_mistake(book.sentences[rank].phrase.name)
    return Words(
        letter=drill.letter,
        name=say("{cue}, {stage}", cue=book.cue(rank), stage=title(drill.stage)),
        sentence=sentence.text,
        needs=_needs(drill),
        set_up=_set_up(drill),
        rotation=_rotation(drill),
        true=_cue(drill.cue, drill.piece.player),
        false=tuple(_cue(cue, drill.piece.player) for cue in drill.false),
        false_turns=_false_turns(drill),
        defence=_defence(drill),
        say=say("Say: {cue}.", cue=book.cue(rank)),
        mistake=say("{mistake} Seen when a player {sign}.", mistake=mistake_of(book, rank), sign=usual.sign),
        score=say(
            "One point for each right answer, one off for a run on the false cue. First line to {points}.",
            points=POINTS,
        ),
        easier=_easier(drill),
        harder=_harder(drill),
        each=_each(drill),
        spots=_spots(drill),
        instead=_instead(drill),
        care=care(age_of(book.squad or USUAL_SQUAD)),
    )


def mistake_of(book: Book, rank: int) -> str:
    """The mistake with a sentence: in the coach's own words, or in those of its phrase."""
    sentence = book.sentences[rank]
    return sentence.mistake or sentence.phrase.mistake


def _needs(drill: Drill) -> str:
    hall, counts = drill.hall, Counter(drill.lines.counts)
    lines = say(" and ").join(
        say_many("{n} line of {each}", "{n} lines of {each}", n, each=each)
        for each, n in sorted(counts.items(), reverse=True)
    )
    return ", ".join(
        (
            say_many("{n} player", "{n} players", hall.players),
            lines,
            say_many("{n} ball", "{n} balls", len(drill.lines.counts)),
            say_many("{n} basket", "{n} baskets", drill.lines.at_work) if drill.needs_ring else say("no basket"),
            say("{minutes} min", minutes=f"{drill.minutes:g}"),
        )
    )


def _set_up(drill: Drill) -> str:
    start = drill.piece.start
    there = ", ".join(say("{player} at the {spot}", player=p.number, spot=p.at.title) for p in start.players)
    guarded = [p.number for p in start.players if p.guard is not Guard.PLAIN]
    said = [say("{there}.", there=there), say("{player} has the ball.", player=start.ball)]
    if guarded:
        said.append(say("Guarded closely: {players}.", players=", ".join(map(str, guarded))))
    return " ".join(said)


def _rotation(drill: Drill) -> tuple[str, str, str]:
    order = say(", ").join(str(number) for number in drill.piece.numbers)
    after = (
        say("then to defence, then to the end of the line")
        if drill.lines.size > drill.piece.size
        else say("then to the end of the line")
    )
    share = (
        say("Two lines share a basket, one from each side: while one goes back, the other runs.")
        if drill.lines.share > 1
        else say("Change sides after every round.")
    )
    return (
        say("After each turn everybody moves one spot round: {order}, {after}.", order=order, after=after),
        say_many(
            "After {n} turn everybody has been everywhere.",
            "After {n} turns everybody has been everywhere.",
            max(drill.lines.counts),
        ),
        share,
    )


def _cue(cue: Cue, player: int) -> str:
    return say("{cue}: {player} {answer}.", cue=cue.words, player=player, answer=cue.answer)


def _false_turns(drill: Drill) -> str:
    if not drill.false:
        return ""
    named = say(", ").join(str(turn + 1) for turn in drill.false_turns[:NAMED])
    return say("False in turns {turns}; then begin again.", turns=named)


def _defence(drill: Drill) -> str:
    said = defence(drill.stage)
    if drill.coach_defends:
        return say("{defence} Too few for defenders: a coach, a parent or a chair stands there.", defence=said)
    return said


def _easier(drill: Drill) -> str:
    if drill.stage is Stage.ALONE:
        return say("Walk it, and say the cue aloud before it comes.")
    return say("Leave the false cue out for one round, or take a defender away.")


def _harder(drill: Drill) -> str:
    if drill.stage is Stage.LIVE:
        return say("Play on: whoever catches passes again, and the next answer counts too.")
    return say("Give the false cue every other time, and do not slow down for it.")


def _each(drill: Drill) -> str:
    said = say(
        "About {each} decisions for each player in {minutes} min.",
        each=round(drill.each),
        minutes=f"{drill.minutes:g}",
    )
    waits = round(drill.lines.wait_s)
    return f"{said} {say('The longest wait is {wait} s.', wait=waits) if waits else say('Nobody waits.')}"


def _spots(drill: Drill) -> str:
    return say("{spots}.", spots=say(", ").join(spot.title for spot in drill.spots))


def _instead(drill: Drill) -> str:
    if drill.lines.wait_s <= MOST_WAIT_S:
        return ""
    return say(
        "Somebody waits {wait} s. Take another ball and a second place, or let those who wait pass in pairs beside it.",
        wait=round(drill.lines.wait_s),
    )
