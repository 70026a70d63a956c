"""What stands still in a clip: paper, floor, lines of action, and the sentence that is spoken, for one moment."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from html import escape

from backcut.language import direction, say
from backcut.page.document import AIR_CM, lowest_cm
from backcut.page.plain import plain_style, tokens
from backcut.picture.floor import Floor, floor
from backcut.picture.marks import FLAG_HALF_CM, defs
from backcut.picture.moment import floor_label, scene
from backcut.picture.scene import Line, Primitive, to_svg
from backcut.picture.show import Moment, Show

#: Marks on a phone (the look).
SIZE = 1.22
#: Sizes of letters in pixels of a 720 p picture; how wide a letter is of its size on average, measured on Literata.
SENTENCE_PX, CAPTION_PX, TITLE_PX = 40, 30, 26
LETTER = 0.5
LEADING = 1.35
MARGIN_PX = 28


@dataclass(frozen=True, slots=True)
class Shape:
    """How large a clip is and where in it the floor lies, in pixels; words stand under it or beside it."""

    wide_px: int
    high_px: int
    floor_px: int
    words_x_px: int
    words_wide_px: int


UPRIGHT = Shape(720, 1280, 720, MARGIN_PX, 720 - 2 * MARGIN_PX)
WIDE = Shape(1280, 720, 800, 800 + MARGIN_PX, 480 - 2 * MARGIN_PX)


class Lines(Enum):
    """Which lines of action are shown: all where it stands, none of the ball where it moves, none at game speed."""

    ALL = "all"
    RUNS = "runs"
    NONE = "none"

    def shows(self, line: Line) -> bool:
        """Whether this line is shown: a lane that is shut is true only where it stands."""
        return self is Lines.ALL or (self is Lines.RUNS and line.style.split()[0] not in ("shut", "hand"))


@dataclass(frozen=True, slots=True)
class Sheet:
    """The drawing of what stands still in the clips of a show."""

    show: Show
    shape: Shape
    light: str
    drawn: Floor
    foot_cm: float

    @classmethod
    def of(cls, show: Show, shape: Shape, light: str) -> Sheet:
        """The sheet for a show. Raises: KeyError for a light there is not."""
        tokens(light)
        ground = floor(show.court, show.denial_word)
        return cls(show, shape, light, ground, lowest_cm(show, ground))

    @property
    def px_cm(self) -> float:
        """Pixels to the centimetre of the floor, so that all its width is seen."""
        room = self.drawn.room
        return self.shape.floor_px / (room.right - room.left + 2 * AIR_CM)

    @property
    def rows(self) -> tuple[int, int]:
        """The first row of pixels in which the floor lies, and the one after the last."""
        high = round((self.foot_cm - self.drawn.room.top + AIR_CM) * self.px_cm)
        top = MARGIN_PX + 2 * TITLE_PX if self.shape is UPRIGHT else max((self.shape.high_px - high) // 2, 0)
        return top, min(top + high, self.shape.high_px)

    def place(self, x_cm: float, y_cm: float) -> tuple[float, float]:
        """Where a place of the floor is in the picture, in pixels."""
        room = self.drawn.room
        middle = self.shape.floor_px / 2
        x = middle + (x_cm - (room.left + room.right) / 2) * self.px_cm
        return x, self.rows[0] + (y_cm - room.top + AIR_CM / 2) * self.px_cm

    def under(self, moment: Moment, lines: Lines) -> str:
        """Everything below the players: paper, floor, words, and the lines of action as far as they are shown."""
        here = scene(self.show, moment, self.drawn.room).under
        shown = [one for one in here if not isinstance(one, Line) or lines.shows(one)]
        return self._svg(self.drawn.svg, shown, self._words(moment), paper=True)

    def over(self, moment: Moment) -> str:
        """The lettering above the players."""
        return self._svg("", scene(self.show, moment, self.drawn.room).over, "", paper=False)

    def _svg(self, ground: str, marks: Sequence[Primitive], words: str, *, paper: bool) -> str:
        shape, room = self.shape, self.drawn.room
        x, y = self.place(0.0, 0.0)
        left, _ = self.place(room.left - AIR_CM, 0.0)
        top, foot = self.rows
        sheet = f'<rect class="paper" width="{shape.wide_px}" height="{shape.high_px}"/>' if paper else ""
        seen = f'<rect x="{left:.2f}" y="{top}" width="{shape.floor_px}" height="{foot - top}"/>'
        cut = f'<clipPath id="seen">{seen}</clipPath>'
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{shape.wide_px}" height="{shape.high_px}" '
            f'viewBox="0 0 {shape.wide_px} {shape.high_px}"><style>{plain_style(self.light, SIZE, SIZE)}{self._style()}'
            f"</style>{defs()}{cut}{sheet}"
            f'<g clip-path="url(#seen)"><g class="half" transform="translate({x:.3f} {y:.3f}) scale({self.px_cm:.5f})">'
            f"{ground}{to_svg(marks)}</g></g>{words}</svg>"
        )

    def _style(self) -> str:
        known = tokens(self.light)
        return (
            f".paper{{fill:{known['page']}}} .word{{font-family:Literata;fill:{known['ink']}}} "
            f".word.soft{{fill:{known['soft']}}} .tab{{fill:{known['ink']}}} .tabbed{{fill:{known['page']}}} "
            f".mark{{fill:{known['mark']}}} .on{{fill:{known['on-mark']}}}"
        )

    def _words(self, moment: Moment) -> str:
        """The book's title, the sentence that won, what happens, and what everybody does."""
        x, (top, foot) = self.shape.words_x_px, self.rows
        if self.shape is UPRIGHT:
            title, y = self._lines([self.show.title], x, MARGIN_PX + TITLE_PX, TITLE_PX, "soft"), foot + 3.0 * MARGIN_PX
        else:
            title, y = self._lines([self.show.title], x, top + TITLE_PX, TITLE_PX, "soft"), top + 3.6 * TITLE_PX
        said, y = self._sentence(moment, x, y)
        caption = wrapped(moment.caption, self.shape.words_wide_px, CAPTION_PX)
        said += self._lines(caption, x, y + CAPTION_PX, CAPTION_PX, "")
        y += (len(caption) * LEADING + 1.4) * CAPTION_PX
        each = [f"{answer.player}  {answer.text}" for answer in moment.answers]
        return title + said + self._lines(each, x, y + CAPTION_PX, TITLE_PX, "soft")

    def _sentence(self, moment: Moment, x: float, y: float) -> tuple[str, float]:
        """The sentence that won, its letter in a tab beside it; the place below it."""
        spoken = next((answer.letter for answer in moment.answers if answer.lit and answer.letter), None)
        sentence = next((one for one in self.show.sentences if one.letter == spoken), None)
        if sentence is None:
            return "", y
        high = SENTENCE_PX * 1.3
        k = high / (2 * FLAG_HALF_CM)
        tab = (
            f'<g transform="translate({x + 24 * k:.1f} {y - SENTENCE_PX * 0.34:.1f}) scale({k:.4f})">'
            '<path class="tab" d="M-24-25H8A25 25 0 0 1 8 25H-24Z"/>'
            f'<text class="word tabbed" x="-5" y="13" font-size="36" font-weight="700" text-anchor="middle">'
            f"{escape(sentence.letter)}</text></g>"
        )
        indent = 70 * k
        first, *more = wrapped(f"{sentence.cue}. {sentence.text}", self.shape.words_wide_px - indent, SENTENCE_PX)
        cue, rest = first[: len(sentence.cue) + 1], first[len(sentence.cue) + 1 :]
        out = [
            f'<text class="word" x="{x + indent:.1f}" y="{y:.1f}" font-size="{SENTENCE_PX}" direction="{direction()}">'
            f'<tspan font-weight="700">{escape(cue)}</tspan>{escape(rest)}</text>'
        ]
        step = SENTENCE_PX * LEADING
        for number, line in enumerate(more, 1):
            out.append(self._lines([line], x + indent, y + number * step, SENTENCE_PX, ""))
        return tab + "".join(out), y + len(more) * step + SENTENCE_PX * 0.7

    def _lines(self, lines: list[str], x: float, y: float, size: float, style: str) -> str:
        return "".join(
            f'<text class="word {style}" x="{x:.1f}" y="{y + i * size * LEADING:.1f}" font-size="{size}">'
            f"{escape(line)}</text>"
            for i, line in enumerate(lines)
        )


def wrapped(text: str, wide_px: float, size_px: float) -> list[str]:
    """Text in lines that fit, by the average width of a letter."""
    return textwrap.wrap(text, max(8, int(wide_px / (LETTER * size_px)))) or [""]


def in_words(show: Show, first: int, last: int) -> str:
    """The clip in words, for whoever cannot see it: who is where, then decision by decision."""
    begins = say("At the start: {there}", there=floor_label(show, show.moments[first]))
    told = [moment.caption for moment in show.moments[first : last + 1]]
    spoken = []
    for moment in show.moments[first : last + 1]:
        for answer in moment.answers:
            if answer.lit and answer.letter:
                one = next(one for one in show.sentences if one.letter == answer.letter)
                spoken.append(f"{one.letter} {one.cue}. {one.text}")
    return "\n".join([show.title, begins, *told, *dict.fromkeys(spoken)])
