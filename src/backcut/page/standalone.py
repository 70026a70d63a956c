"""One moment as a drawing that stands alone: an SVG file with its style and its fonts inside, nothing fetched."""

from __future__ import annotations

import re
import textwrap
from functools import cache
from html import escape

from backcut.page.document import AIR_CM, fonts, static
from backcut.page.words import seconds
from backcut.picture.floor import floor
from backcut.picture.marks import defs
from backcut.picture.moment import floor_label, glows, scene
from backcut.picture.scene import to_svg
from backcut.picture.show import Show

#: Own design, no source: the paper round the floor and the lines of words under it, in cm of the floor; letters a line.
MARGIN_CM = 60.0
LINE_CM = 62.0
LETTERS = 62
LIGHTS = ("day", "night", "print")

_PRINT = (
    "--page:#FFF;--leaf:#FFF;--floor:#FFF;--lane:#EEE;--ink:#000;--soft:#333;--line:#808080;--edge:#555;--rule:#AAA;"
    "--mark:#D6D6D6;--on-mark:#000;"
)


def standalone(show: Show, place: int, *, light: str = "day", wide_px: int = 1600) -> str:
    """The moment at this place of the show, with its caption and the book's title under it.

    `light` is "day", "night" or "print". Raises: IndexError where there is no such moment, KeyError for another light.
    """
    moment, drawn = show.moments[place], floor(show.court, show.denial_word)
    room, now = drawn.room, scene(show, moment, drawn.room)
    lines = textwrap.wrap(f"{seconds(moment.t_s)}: {moment.caption}", LETTERS) or [""]
    left, top = room.left - MARGIN_CM - AIR_CM, room.top - MARGIN_CM - AIR_CM
    wide = room.right - room.left + 2 * (MARGIN_CM + AIR_CM)
    below = room.bottom + MARGIN_CM + LINE_CM
    high = below + (len(lines) + 0.6) * LINE_CM - top
    words = "".join(
        f'<text class="words" x="{room.left:.0f}" y="{below + i * LINE_CM:.0f}">{escape(line)}</text>'
        for i, line in enumerate(lines)
    )
    at = f'x="{room.left:.0f}" y="{below + len(lines) * LINE_CM:.0f}"'
    title = f'<text class="words soft" {at}>{escape(show.title)}</text>'
    said = escape(f"{moment.caption} {floor_label(show, moment)}")
    box = f"{left:.0f} {top:.0f} {wide:.0f} {high:.0f}"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="half" width="{wide_px}" height="{wide_px * high / wide:.0f}" '
        f'viewBox="{box}" role="img"><title>{escape(f"{show.title}, {seconds(moment.t_s)}")}</title>'
        f"<desc>{said}</desc><style>{escape(_style(light), quote=False)}</style>{defs()}"
        f'<rect class="paper" x="{left:.0f}" y="{top:.0f}" width="{wide:.0f}" height="{high:.0f}"/>{drawn.svg}'
        f"<g>{to_svg(glows(moment, show.timeline))}</g><g>{to_svg(now.under)}</g><g>{to_svg(now.bodies)}</g>"
        f"<g>{to_svg(now.over)}</g>{words}{title}</svg>\n"
    )


@cache
def _style(light: str) -> str:
    """The rules of the page's style that a drawing needs: colours and marks, without page, media and motion."""
    sheet = static("style.css").decode()
    marks = sheet[sheet.index("/* the floor;") : sheet.index(".caption {")]
    day, night = re.findall(r"^:root(?:\[data-light=night\])? \{(.*?)\n\}", sheet, flags=re.S | re.M)
    tokens = day + {"day": "", "night": night, "print": _PRINT}[light]
    own = ".away{display:none}.half .words{font-size:44px;text-anchor:start}.half .soft{fill:var(--soft)}"
    return f"{fonts()}svg{{{tokens}}}{marks}.paper{{fill:var(--page)}}{own}"
