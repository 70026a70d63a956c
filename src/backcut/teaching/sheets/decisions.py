"""The pictures that teach one sentence: what to see, what to do, and what comes of it; one decision each."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from backcut.engine.words import action_words
from backcut.language import say
from backcut.motion.timeline import pose
from backcut.offence.action import Action, Kind, letter
from backcut.offence.event import EventKind
from backcut.picture.show import Answer, Arrow, Moment, Show
from backcut.picture.story import show as story
from backcut.teaching.examples import Example
from backcut.teaching.sheets.contrast import contrast
from backcut.teaching.sheets.picture import MOST_ARROWS, is_ball

#: Pictures on a handout at most (the look).
ROWS: Final = 3
#: Moments nearer than this are the same (rounding of times, no source).
SAME_S: Final = 0.01
#: A passer who is nearer than this to where the pass was thrown has stayed (own design: the disc covers it).
STAYED_M: Final = 0.5

_OF_DEFENDERS = frozenset({EventKind.DENY, EventKind.SAG, EventKind.JUMP, EventKind.JAM, EventKind.FREE})


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture and the words beside it: a head, what happens, and an aside in italic.

    `tabs` are the letters beside players who stay, `defenders` are drawn whatever their stance.
    """

    head: str
    moment: Moment
    words: tuple[str, ...]
    aside: str = ""
    tabs: tuple[tuple[int, str], ...] = ()
    defenders: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Told:
    """A sentence in pictures: the show they are taken from, up to three pictures, and which is the decision itself."""

    show: Show
    pictures: tuple[Picture, ...]
    key: int

    @property
    def decision(self) -> Picture:
        """The picture of the decision itself."""
        return self.pictures[self.key]


def parted(moment: Moment, rank: int | None = None, player: int | None = None) -> list[Moment]:
    """The moment as pictures of at most four arrows: first the ball and the sentence that won, then the others.

    Only the moves of the sentence of this `rank` stay lit; runs told in the same words stay together where they can.
    """
    ours = None if rank is None else str(letter(rank))
    text = {answer.player: answer.text for answer in moment.answers}
    first = text.get(player or 0, "")

    def order(arrow: Arrow) -> tuple[bool, bool, bool]:
        return arrow.letter != ours, text.get(arrow.player) != first, arrow.player != player

    ball = [arrow for arrow in moment.arrows if is_ball(arrow)]
    runs = sorted((arrow for arrow in moment.arrows if not is_ball(arrow)), key=order)
    runs = [replace(run, lit=run.lit and ours in (None, run.letter)) for run in runs]
    if len(ball) + len(runs) <= MOST_ARROWS:
        return [replace(moment, arrows=(*ball, *runs))]
    groups = [[run for run in runs if order(run)[:2] == key] for key in dict.fromkeys(order(run)[:2] for run in runs)]
    pages = [list(ball)]
    for group in groups:
        if len(pages[-1]) + len(group) > MOST_ARROWS and len(pages[-1]) > (len(ball) if len(pages) == 1 else 0):
            pages.append([])
        for run in group:
            if len(pages[-1]) == MOST_ARROWS:
                pages.append([])
            pages[-1].append(run)
    return [replace(moment, arrows=tuple(page)) for page in pages]


def told(example: Example) -> Told:
    """The sentence of an example in pictures. Raises: CourtError or MotionError where it cannot be put in time."""
    steps = example.possession.steps
    show = story(example.book, steps)
    key = _key(show, example)
    moment, own = show.moments[key], str(letter(example.rank))
    step = steps[example.beat[0]]
    near = frozenset(step.event.players) if step.event.kind in _OF_DEFENDERS else frozenset[int]()
    stays = not example.action.moves
    rest = parted(moment, example.rank, example.player)
    if stays:  # what the others do is another picture
        others = tuple(arrow for arrow in moment.arrows if not is_ball(arrow))
        go, rest = _held(show, moment, example.beat[0]), [replace(moment, arrows=others)] if others else []
    else:
        go, rest = rest[0], rest[1:]
    pictures = [_see(show, key, example, near)]
    tabs = ((example.player, own),) if stays else ()
    pictures.append(
        Picture(say("Go."), go, _doing(example, moment, go), _beats(moment, example), tabs=tabs, defenders=near)
    )
    later = list(show.moments[key + 1 :])
    for one in rest:
        pictures.append(Picture(say("And."), _plain(one), _runs(one.arrows, moment.answers), defenders=near))
    if later:
        told_later = tuple(dict.fromkeys(words for one in later for words in _lit(one)))
        pictures.append(Picture(say("Then."), _plain(parted(later[-1])[0]), told_later))
    return Told(show, tuple(pictures[:ROWS]), 1)


def _plain(moment: Moment) -> Moment:
    """The moment with nothing lit: only what the sentence itself asks for is a road."""
    return replace(moment, arrows=tuple(replace(arrow, lit=False) for arrow in moment.arrows))


def _held(show: Show, moment: Moment, number: int) -> Moment:
    """The moment of one who stays, once the ball has got there; its line stays while the passer does."""
    ends = [f.end_s for f in show.timeline.flights if f.step == number and f.to_player is not None]
    t_s = max([moment.t_s, *ends])
    there = pose(show.timeline, t_s).players
    ball = (a for a in moment.arrows if is_ball(a) and math.dist(a.path_m[0], there[a.player]) < STAYED_M)
    return replace(moment, t_s=t_s, arrows=tuple(ball))


def _key(show: Show, example: Example) -> int:
    """The place among the moments at which the sentence speaks."""
    number, beat = example.beat
    cue_s, own = show.timeline.cues_s[number], str(letter(example.rank))
    begins = [
        run.start_s for run in show.timeline.runs if (run.step, run.beat, run.player) == (number, beat, example.player)
    ]
    asked = [
        place
        for place, moment in enumerate(show.moments)
        if any(a.lit and a.player == example.player and a.letter == own for a in moment.answers)
    ]
    if begins and asked:
        return max((p for p in asked if show.moments[p].t_s <= begins[0] + SAME_S), default=asked[0])
    return max((p for p, m in enumerate(show.moments) if m.event and m.t_s <= cue_s + SAME_S), default=0)


def _see(show: Show, key: int, example: Example, near: frozenset[int]) -> Picture:
    moment = show.moments[key]
    you = say("You are {player}.", player=example.player)
    if moment.event is None and key > 0 and example.beat[1] > 0:  # asked because of what others did
        before = show.moments[key - 1]
        shown, said = _plain(parted(before)[0]), _happened(before)
    else:
        first = next((one for one in reversed(show.moments[: key + 1]) if one.event), moment)
        shown = replace(first, arrows=tuple(arrow for arrow in first.arrows if is_ball(arrow)))
        said = [f"{first.event}."] if first.event else []
    why = _why(moment, example) if example.action.kind is not Kind.EXIT else ""
    return Picture(
        say("See."), shown, (" ".join([you, *said]), *([why] if why else [])), contrast(example), defenders=near
    )


def _happened(moment: Moment) -> list[str]:
    event = [f"{moment.event}."] if moment.event else []
    return [*event, *_lit(moment)]


def _why(moment: Moment, example: Example) -> str:
    """What was read off the moment: the end of the note on the player's answer."""
    answer = next((a for a in moment.answers if a.player == example.player), None)
    passed = example.possession.steps[example.beat[0]].event.kind is EventKind.PASS
    if answer is None or (example.action.kind is Kind.CUT and not passed):
        return ""  # a cut that no pass to the next spot began
    return answer.note.removeprefix(f"{answer.player} {answer.text}.").strip()


def _does(action: Action) -> str:
    return say("{does}.", does=f"{action.player} {action_words(action)}")


def _lit(moment: Moment) -> list[str]:
    return [_line(answer) for answer in moment.answers if answer.lit]


def _line(answer: Answer) -> str:
    """What a player does, with the letter of the sentence that says so."""
    does = f"{answer.player} {answer.text}"
    return say("{does} ({letter}).", does=does, letter=answer.letter) if answer.letter else f"{does}."


def _doing(example: Example, moment: Moment, go: Moment) -> tuple[str, ...]:
    shown = {arrow.player for arrow in go.arrows if not is_ball(arrow)} - {example.player}
    others = [_line(answer) for answer in moment.answers if answer.player in shown and answer.lit]
    where = _why(moment, example) if example.action.kind is Kind.EXIT else ""  # which spot, and not when
    return (f"{_does(example.action)} {where}".strip(), *([" ".join(others)] if others else []))


def _runs(arrows: Sequence[Arrow], answers: Sequence[Answer]) -> tuple[str, ...]:
    players = {arrow.player for arrow in arrows}
    return tuple(_line(answer) for answer in answers if answer.player in players)


def _beats(moment: Moment, example: Example) -> str:
    answer = next((a for a in moment.answers if a.player == example.player), None)
    if answer is None or answer.letter != str(letter(example.rank)):
        return ""
    # That the last sentence of all wanted something too is no news.
    rest = {str(letter(rank)) for rank, s in enumerate(example.book.sentences) if s.phrase.covers_rest}
    told = [one for one in answer.beat if one.letter not in rest]
    return " ".join(
        say("Asked before {letter} {cue}, {wanted}.", letter=one.letter, cue=one.cue, wanted=one.text)
        for one in told[:1]
    )
