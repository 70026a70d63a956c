"""The whole page as one file: style, fonts, drawing, words, story and script; nothing is fetched."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable
from functools import cache
from hashlib import sha256
from html import escape
from importlib.resources import files

from backcut.page.book import book, reasons
from backcut.page.bundle import joined
from backcut.page.data import story
from backcut.page.key import key
from backcut.page.now import caption, decisions, now
from backcut.page.strip import strip
from backcut.picture.floor import Floor, floor
from backcut.picture.marks import defs
from backcut.picture.moment import floor_label, glows, scene
from backcut.picture.scene import to_svg
from backcut.picture.show import Show

#: Own design, no source: floor kept beyond the lowest mark on a small screen, in cm, and air round the drawn court.
BELOW_CM = 200.0
AIR_CM = 22.0

FONTS = {"normal": "literata-roman.woff2", "italic": "literata-italic.woff2"}
LOGO = (
    '<svg viewBox="0 0 24 24" aria-hidden="true"><circle cx="18" cy="17.5" r="4"/>'
    '<path d="M15 13.5C13.5 11 15 6 7 3.6"/>'
    '<path class="tip" d="M3 3l6.2-1.2L7.6 7.4Z"/></svg>'
)
LIGHT = (
    '<fieldset class="pick needs-script"><legend class="unseen">Light</legend>'
    '<label><input type="radio" name="light" value="day"><span>Day</span></label>'
    '<label><input type="radio" name="light" value="night"><span>Night</span></label></fieldset>'
)


def static(*names: str) -> bytes:
    """A file of the page's own, as it is."""
    return files("backcut.page").joinpath("static", *names).read_bytes()


@cache
def fonts() -> str:
    """The two cuts of Literata as rules of the style sheet, the files inside."""
    rules = "".join(
        f"@font-face{{font-family:Literata;font-weight:400 800;font-style:{style};"
        f"src:url(data:font/woff2;base64,{b64encode(static('fonts', name)).decode()})}}\n"
        for style, name in FONTS.items()
    )
    return f"/* Literata, SIL Open Font License 1.1, Copyright 2017 The Literata Project Authors */\n{rules}"


@cache
def script(first: str = "page.js") -> str:
    """The board's modules that `first` needs, as one script."""
    board = files("backcut.page").joinpath("static", "board")
    modules = {file.name: file.read_text(encoding="utf-8") for file in board.iterdir() if file.name.endswith(".js")}
    return joined(modules, first)


def _hash(text: str) -> str:
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


def lowest_cm(show: Show, drawn: Floor) -> float:
    """How far down the floor anything of this show reaches, with air below it, not past mid-court."""
    tracks = [*show.timeline.players.values(), *show.timeline.defenders.values(), show.timeline.ball]
    low = max((float(track.place_m[:, 1].max()) * 100 for track in tracks), default=0.0)
    arrows = (y * 100 for moment in show.moments for arrow in moment.arrows for _, y in arrow.path_m)
    return min(max(low, *arrows, 0.0) + BELOW_CM, drawn.room.bottom + AIR_CM / 2)


def picture(show: Show, drawn: Floor, symbols: str) -> str:
    """The floor with everybody on it, as it stands at the first moment; the script moves it on."""
    moment, room = show.moments[0], drawn.room
    now = scene(show, moment, room)
    corner = f"{room.left - AIR_CM:.0f} {room.top - AIR_CM / 2:.0f}"
    size = f"{room.right - room.left + 2 * AIR_CM:.0f} {room.bottom - room.top + AIR_CM:.0f}"
    trails = "".join(f'<path class="trail" data-player="{player}"/>' for player in show.timeline.players)
    return (
        f'<svg class="half" viewBox="{corner} {size}" preserveAspectRatio="xMidYMin slice" role="img" '
        'aria-labelledby="floor-title floor-said"><title id="floor-title">Half court, basket at the top.</title>'
        f'<desc id="floor-said">{escape(floor_label(show, moment))}</desc>{symbols}{drawn.svg}'
        f'<g>{to_svg(glows(moment, show.timeline))}</g><g id="trails">{trails}</g>'
        f'<g id="under">{to_svg(now.under)}</g><g>{to_svg(now.bodies)}</g>'
        f'<g id="over">{to_svg(now.over)}</g></svg>'
    )


def shape(show: Show, drawn: Floor) -> dict[str, str]:
    """What the style must know of this show: the floor's shape, whole and cut, and the length of the time line."""
    room = drawn.room
    wide, high = room.right - room.left + 2 * AIR_CM, room.bottom - room.top + AIR_CM
    cut = lowest_cm(show, drawn) - room.top + AIR_CM / 2
    return {
        "shape": f"{wide / high:.3f}",
        "cut-shape": f"{wide:.0f} / {cut:.0f}",
        "end": f"{show.timeline.duration_s:.2f}",
    }


def main(show: Show, drawn: Floor, *, about: str = "", symbols: str = "") -> str:
    """Book, floor, time line and everybody now; below them every decision, the reasons and the key.

    `about` is markup that stands under the title; `symbols` defines the marks where the page does not do so elsewhere.
    """
    parts = [
        f'<header class="head"><h1>{escape(show.title)}</h1><p>{escape(show.subtitle)}</p>{about}</header>',
        book(show) if show.sentences else "",
        court(show, drawn, symbols),
        now(show),
    ]
    return f'<main><div class="spread">{"".join(parts)}</div>{below(show)}</main>'


def court(show: Show, drawn: Floor, symbols: str = "") -> str:
    """The floor, its caption and its time line."""
    return (
        f'<section class="court" id="floor" aria-label="Floor"><figure>{picture(show, drawn, symbols)}'
        f'<figcaption class="caption" id="caption" aria-live="polite">{caption(show.moments[0])}</figcaption></figure>'
        f"{strip(show)}</section>"
    )


def below(show: Show) -> str:
    """What stands under the floor: every decision, the reasons, the key."""
    lists = [decisions(show) if len(show.moments) > 1 else "", reasons(show)]
    return "".join([*(f'<div class="below">{part}</div>' for part in lists if part), key(show)])


def whole(title: str, kind: str, style: str, code: str, parts: Iterable[str]) -> str:
    """A page around its parts: head, policy, name and light, script. `kind` becomes the body's class."""
    policy = (
        f"default-src 'none'; style-src {_hash(style)}; script-src {_hash(code)}; font-src data:; "
        "base-uri 'none'; form-action 'none'"
    )
    return "\n".join(
        [
            '<!doctype html>\n<html lang="en" class="no-script">\n<head>\n<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{policy}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{escape(title)} · Backcut</title>\n<style>{style}</style>\n</head>",
            f'<body class="{kind}">\n<header class="top"><span class="name">{LOGO}Backcut</span>{LIGHT}</header>',
            *parts,
            f'<script type="module">{code}</script>\n</body>\n</html>\n',
        ]
    )


def footer(show: Show) -> str:
    """The lines of small print at the foot."""
    notes = "".join(f"<p>{escape(note)}</p>" for note in show.notes)
    return f'<footer class="below notes">{notes}</footer>' if notes else ""


def told(show: Show, drawn: Floor) -> str:
    """The story that the page's script reads."""
    return f'<script type="application/json" id="story">{story(show, drawn.room)}</script>'


def page(show: Show, *, kind: str) -> str:
    """The page; `kind` is "possession" or "film" and becomes the body's class."""
    drawn = floor(show.court, show.denial_word)
    own = ";".join(f"--{name}:{value}" for name, value in shape(show, drawn).items())
    style = f"{fonts()}{static('style.css').decode()}:root{{{own}}}\n"
    parts = [main(show, drawn, symbols=defs()), footer(show), told(show, drawn)]
    return whole(show.title, kind, style, script(), parts)
