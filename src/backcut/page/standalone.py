"""One moment as a drawing that stands alone: an SVG file with its style and its fonts inside, nothing fetched."""

from __future__ import annotations

import re
import textwrap
from functools import cache
from html import escape

from backcut.page.document import AIR_CM, fonts, lowest_cm
from backcut.page.plain import marks_style, tokens
from backcut.page.words import seconds
from backcut.picture.floor import floor
from backcut.picture.marks import defs
from backcut.picture.moment import floor_label, glows, scene
from backcut.picture.scene import to_svg
from backcut.picture.show import Show

#: Own design, no source, in cm of the floor: paper round it, words and lines under it, room for a letter in a line.
MARGIN_CM = 60.0
WORDS_CM = 54
LINE_CM = 74.0
LETTER_CM = 26.0
#: What an XML file may not hold, not even escaped (XML 1.0, production 2); a title may.
_NOT_XML = re.compile("[^\\t\\n\\r\\x20-\\uD7FF\\uE000-\\uFFFD\\U00010000-\\U0010FFFF]")


def standalone(show: Show, place: int, *, light: str = "day", wide_px: int = 1600) -> str:
    """The moment at this place of the show, with its caption and the book's title under it.

    `light` is "day", "night" or "print". Raises: IndexError where there is no such moment, KeyError for another light.
    """
    moment, drawn = show.moments[place], floor(show.court, show.denial_word)
    room, now, foot = drawn.room, scene(show, moment, drawn.room), lowest_cm(show, drawn)
    letters = int((room.right - room.left) / LETTER_CM)
    lines = textwrap.wrap(f"{seconds(moment.t_s)}: {moment.caption}", letters) or [""]
    left, top = room.left - MARGIN_CM - AIR_CM, room.top - MARGIN_CM - AIR_CM
    wide = room.right - room.left + 2 * (MARGIN_CM + AIR_CM)
    below = foot + LINE_CM + MARGIN_CM / 2
    high = below + (len(lines) + 0.6) * LINE_CM - top
    words = "".join(
        f'<text class="words" x="{room.left:.0f}" y="{below + i * LINE_CM:.0f}">{escape(line)}</text>'
        for i, line in enumerate(lines)
    )
    at = f'x="{room.left:.0f}" y="{below + len(lines) * LINE_CM:.0f}"'
    title = f'<text class="words soft" {at}>{escape(textwrap.shorten(show.title, letters, placeholder=" …"))}</text>'
    said = escape(f"{moment.caption} {floor_label(show, moment)}")
    left_top = f'x="{left:.0f}" y="{top:.0f}"'
    box = f"{left:.0f} {top:.0f} {wide:.0f} {high:.0f}"
    whole = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="half" width="{wide_px}" height="{wide_px * high / wide:.0f}" '
        f'viewBox="{box}" role="img"><title>{escape(f"{show.title}, {seconds(moment.t_s)}")}</title>'
        f"<desc>{said}</desc><style>{escape(_style(light), quote=False)}</style>{defs()}"
        f'<clipPath id="seen"><rect {left_top} width="{wide:.0f}" height="{foot - top:.0f}"/></clipPath>'
        f'<rect class="paper" {left_top} width="{wide:.0f}" height="{high:.0f}"/><g clip-path="url(#seen)">{drawn.svg}'
        f"<g>{to_svg(glows(moment, show.timeline))}</g><g>{to_svg(now.under)}</g><g>{to_svg(now.bodies)}</g>"
        f"<g>{to_svg(now.over)}</g></g>{words}{title}</svg>\n"
    )
    return _NOT_XML.sub("", whole)


@cache
def _style(light: str) -> str:
    """The rules of the page's style that a drawing needs: colours and marks, without page, media and motion."""
    said = "".join(f"--{name}:{value};" for name, value in tokens(light).items())
    words = f".half .words{{font-size:{WORDS_CM}px;text-anchor:start}}.half .soft{{fill:var(--soft)}}"
    return f"{fonts()}svg{{{said}}}{marks_style()}.away{{display:none}}.paper{{fill:var(--page)}}{words}"
