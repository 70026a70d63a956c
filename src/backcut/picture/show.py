"""What a page shows of a possession: the sentences, the moments of decision, and the possession in time.

Everything here is filled in by whoever tells the story; nothing here knows a rule of the offence. Places are metres of
the house frame, times seconds from the start of the timeline. A player is a number, a sentence is a letter (A is asked
first). Texts are plain words: the page escapes them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from backcut.court.record import Court
from backcut.court.spots import Spot
from backcut.motion.timeline import Timeline

Place = tuple[float, float]


class ArrowKind(StrEnum):
    """The kinds of line of action; run, pass, dribble and screen are drawn as in federation manuals."""

    CUT = "cut"
    FILL = "fill"
    PASS = "pass"
    SHUT = "shut"
    DRIBBLE = "dribble"
    SCREEN = "screen"
    HAND_OFF = "hand-off"


class Stance(StrEnum):
    """How a defender is drawn; the first four values are those of `offence.situation.Guard`."""

    PLAIN = "plain"
    DENIES = "denies"
    SAGS = "sags"
    JUMPED = "jumped to the ball"
    ON_BALL = "on the ball"
    HELPS = "helps"


@dataclass(frozen=True, slots=True)
class Sentence:
    """One habit of the book as the page prints it: "Back." is the cue, `text` the sentence after it."""

    letter: str
    cue: str
    text: str
    why: str = ""
    mistake: str = ""


@dataclass(frozen=True, slots=True)
class Beaten:
    """A sentence that also wanted the player: `text` goes on after its cue ("which wanted 2 at the top")."""

    letter: str
    cue: str
    text: str = ""
    why: str = ""


@dataclass(frozen=True, slots=True)
class Answer:
    """What one player does now.

    `text` is what "Everybody, now" prints after the number ("fills the top"); `note` is the whole sentence that stands
    under the sentence of the book ("2 cuts to the rim. X2 is 0.4 m past the mark."), by default number and text.
    `lit` puts the marker on the sentence and on the move: it won just now. `moves` is whether the player leaves his
    place.
    """

    player: int
    kind: str
    letter: str | None
    text: str
    lit: bool = False
    beat: tuple[Beaten, ...] = ()
    note: str = ""
    moves: bool = True


@dataclass(frozen=True, slots=True)
class Arrow:
    """A line of action along `path_m`; a pass that is shut stops at the hand of the receiver's own defender.

    `player` runs, dribbles or passes; `to_player` catches, or would have. `label` is the word beside the tab.
    """

    kind: ArrowKind
    player: int
    path_m: tuple[Place, ...]
    letter: str | None = None
    label: str = ""
    lit: bool = False
    to_player: int | None = None


@dataclass(frozen=True, slots=True)
class OpenSpot:
    """A spot nobody stands on; `near` when it is one pass from the ball."""

    spot: Spot
    near: bool = False


@dataclass(frozen=True, slots=True)
class Moment:
    """One decision: when, what happened before it (`event`: "1 passes to 3"), and what everybody answers.

    `caption` is one or two sentences; where the words of a lit answer ("2 back cuts") occur in it, they are set bold.
    """

    t_s: float
    event: str | None
    caption: str
    answers: tuple[Answer, ...] = ()
    arrows: tuple[Arrow, ...] = ()
    guards: Mapping[int, Stance] = field(default_factory=dict)
    open_spots: tuple[OpenSpot, ...] = ()


@dataclass(frozen=True, slots=True)
class Show:
    """Everything one page shows. `subtitle` stands under the title, `notes` are lines of small print at the foot.

    `denial_word` ("denied from 6.75 m") draws the denial mark on the arc with these words; empty draws none.
    """

    title: str
    subtitle: str
    court: Court
    spots: Mapping[Spot, Place]
    sentences: tuple[Sentence, ...]
    moments: tuple[Moment, ...]
    timeline: Timeline
    notes: tuple[str, ...] = ()
    denial_word: str = ""
