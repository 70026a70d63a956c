"""What the page's script reads: the tracks, and for each decision the drawing and the words, all made here."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import lru_cache

from backcut.motion.timeline import pose
from backcut.page.book import remarks, state
from backcut.page.now import caption, everybody
from backcut.page.tracks import packed_timeline
from backcut.page.words import stop_word
from backcut.picture.lettering import Box
from backcut.picture.marks import HOLDER_CM
from backcut.picture.moment import FREE_HAND, PLATES, floor_label, lit_players, look_of_the_ball, scene, turn_deg
from backcut.picture.scene import to_svg
from backcut.picture.show import Moment, Show


class _Seen:
    """A moment of a show, and of the show no more than its drawing and words depend on: alike where all that is."""

    def __init__(self, show: Show, moment: Moment, room: Box) -> None:
        self.show, self.moment, self.room = show, moment, room
        places, ball = pose(show.timeline, moment.t_s), look_of_the_ball(show.timeline, moment.t_s)
        self._key = (
            (moment.t_s, moment.event, moment.caption, moment.answers, moment.arrows, moment.open_spots),
            tuple(moment.guards.items()),
            (tuple(places.players.items()), tuple(places.defenders.items()), places.ball[:2], places.holder, ball),
            (tuple(show.spots.items()), tuple(s.letter for s in show.sentences), room),
        )

    def __hash__(self) -> int:
        return hash(self._key)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Seen) and self._key == other._key


def told(show: Show, moment: Moment, room: Box) -> dict[str, object]:
    """One decision: time, lines under the players, lettering over them, and every word that changes with it."""
    return dict(_told(_Seen(show, moment, room)))


#: As many decisions as some long possessions have (own choice).
_MOST_TOLD = 256


@lru_cache(maxsize=_MOST_TOLD)
def _told(seen: _Seen) -> Mapping[str, object]:
    """A possession that goes on shows again what has been told of it, so that is drawn once."""
    show, moment, room = seen.show, seen.moment, seen.room
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


def contents(show: Show, room: Box) -> dict[str, object]:
    """All of it, ready to be written as JSON."""
    start = turn_deg(0.0)
    return {
        "tracks": packed_timeline(show.timeline),
        "held": held(show),
        "word": stop_word(bool(show.sentences)),
        "turn": [start, (turn_deg(1.0) - start + 180.0) % 360.0 - 180.0],
        "moments": [told(show, moment, room) for moment in show.moments],
    }


def story(show: Show, room: Box) -> str:
    """All of it as JSON that is safe inside a script element."""
    text = json.dumps(contents(show, room), separators=(",", ":"), ensure_ascii=False)
    # Only what could end the script element, or begin a comment in it, is escaped: most of the text is markup.
    text = text.replace("</", "<\\/").replace("<!", "\\u003c!").replace("<script", "\\u003cscript")
    return text.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
