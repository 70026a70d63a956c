"""What the page's script reads: the tracks, and for each decision the drawing and the words, all made here."""

from __future__ import annotations

import json

from backcut.page.book import remarks, state
from backcut.page.now import caption, everybody
from backcut.page.tracks import packed_timeline
from backcut.page.words import stop_word
from backcut.picture.lettering import Box
from backcut.picture.marks import HOLDER_CM
from backcut.picture.moment import FREE_HAND, PLATES, floor_label, lit_players, look_of_the_ball, scene, turn_deg
from backcut.picture.scene import to_svg
from backcut.picture.show import Moment, Show


def told(show: Show, moment: Moment, room: Box) -> dict[str, object]:
    """One decision: time, lines under the players, lettering over them, and every word that changes with it."""
    drawn = scene(show, moment, room)
    states = {s.letter: [state(s.letter, moment), remarks(s.letter, moment)] for s in show.sentences}
    return {
        "t": round(moment.t_s * 100),
        "under": to_svg(drawn.under),
        "over": to_svg(drawn.over),
        "caption": caption(moment),
        "words": len(moment.caption),
        "now": everybody(show, moment),
        "floor": floor_label(show, moment),
        "book": {letter: said for letter, said in states.items() if said[0] != "rest"},
        "plates": {str(n): PLATES[stance] for n, stance in moment.guards.items() if stance in PLATES},
        "free": sorted(n for n, stance in moment.guards.items() if stance in FREE_HAND),
        "lit": sorted(lit_players(moment)),
    }


def held(show: Show) -> list[list[int]]:
    """Who has the ball from when to when (hundredths of a second), and where on his ring it sits (cm)."""
    out = []
    for stretch in show.timeline.held:
        dx, dy = look_of_the_ball(show.timeline, (stretch.start_s + stretch.end_s) / 2)
        span = (round(stretch.start_s * 100), round(stretch.end_s * 100))
        out.append([stretch.player, *span, round(dx * HOLDER_CM), round(dy * HOLDER_CM)])
    return out


def story(show: Show, room: Box) -> str:
    """All of it as JSON that is safe inside a script element."""
    start = turn_deg(0.0)
    data = {
        "tracks": packed_timeline(show.timeline),
        "held": held(show),
        "word": stop_word(bool(show.sentences)),
        "turn": [start, (turn_deg(1.0) - start + 180.0) % 360.0 - 180.0],
        "moments": [told(show, moment, room) for moment in show.moments],
    }
    text = json.dumps(data, separators=(",", ":"), ensure_ascii=False)
    # Only what could end the script element, or begin a comment in it, is escaped: most of the text is markup.
    text = text.replace("</", "<\\/").replace("<!", "\\u003c!").replace("<script", "\\u003cscript")
    return text.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
